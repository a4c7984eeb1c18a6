/// <reference types="astro/client" />
declare module '*.astro' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js'
  const component: AstroComponentFactory
  export default component
}
declare module 'virtual:method-pages' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js'
  export const pages: ReadonlyMap<string, AstroComponentFactory>
}
