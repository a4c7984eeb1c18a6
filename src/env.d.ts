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
declare module 'subset-font' {
  /** As its documentation names them: those that are used here. */
  interface SubsetOptions {
    readonly targetFormat: 'woff2'
    readonly keepFeatures: readonly string[]
    readonly noHinting: boolean
    readonly preserveNameIds: readonly number[]
  }
  export default function subsetFont(font: Buffer, text: string, options: SubsetOptions): Promise<Buffer>
}
