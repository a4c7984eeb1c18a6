// Astro and the check of its types look for this file in the clone; the installed program has only the other.
export { default } from './src/commands/astro-config.ts'
