/** How Astro makes the pages. Address, base and folders are given by the commands, which alone run it. */
import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'
import { browserSchemas } from './browser-schemas.ts'
import { methodPages } from './method-pages.ts'

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
