/** Gives a browser the schemas as code that is made already: see records/schema/standalone.ts. */
import { extname } from 'node:path'
import type { ViteUserConfig } from 'astro'
import { standaloneModule } from '../records/schema/standalone.ts'

type Plugin = Extract<NonNullable<ViteUserConfig['plugins']>[number], { name: string }>

const SCHEMAS = /\/records\/schema\/schemas\.[jt]s$/

export function browserSchemas(): Plugin {
  return {
    name: 'browser-schemas',
    enforce: 'pre',
    load(id) {
      return SCHEMAS.test(id) && this.environment.config.consumer === 'client'
        ? standaloneModule(extname(id))
        : undefined
    },
  }
}
