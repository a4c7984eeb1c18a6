// Address, base and output folder are given by the build command, which alone runs Astro (src/commands/build-site.ts).
import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'
import { browserSchemas } from './src/commands/browser-schemas.ts'
import { methodPages } from './src/commands/method-pages.ts'

export default defineConfig({
  output: 'static',
  trailingSlash: 'always',
  // Pages are written to disk while others are rendered.
  build: { format: 'directory', inlineStylesheets: 'never', concurrency: 4 },
  compressHTML: true,
  devToolbar: { enabled: false },
  markdown: { syntaxHighlight: false },
  integrations: [mdx()],
  vite: { build: { assetsInlineLimit: 0 }, plugins: [methodPages(), browserSchemas()] },
})
