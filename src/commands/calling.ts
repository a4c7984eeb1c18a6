/** How the reader of a message calls another command: as this one was called. */

/** @param rest options and arguments */
export function calling(name: string, rest: string): string {
  // npm tells what it runs: a script of this name in a clone, "npx" for the installed command.
  const isScript = process.env['npm_lifecycle_event'] === 'new'
  return isScript ? `npm run ${name} -- ${rest}` : `npx puteoli ${name} ${rest}`
}
