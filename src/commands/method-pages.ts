/**
 * Gives the method pages of the Edition to Astro as MDX modules, wherever the content folder lies:
 * `virtual:method-pages` maps an id to a component. Loading the records has refused import, export, braces
 * and tags in these texts.
 */
import type { ViteUserConfig } from 'astro'
import type { Edition } from '../edition/shape/edition.ts'
import { currentEdition } from '../edition/shape/slot.ts'

type Plugin = Extract<NonNullable<ViteUserConfig['plugins']>[number], { name: string }>

const INDEX = 'virtual:method-pages'
const TEXT = 'virtual:method-text/'
/** Marks a resolved id as ours, so that no other plugin looks for a file. */
const OURS = '\0'

export function methodPages(): Plugin {
  return {
    name: 'method-pages',
    enforce: 'pre',
    resolveId: (id) => (id === INDEX || id.startsWith(TEXT) ? `${OURS}${id}` : undefined),
    load: (id) =>
      id === `${OURS}${INDEX}`
        ? indexModule()
        : id.startsWith(`${OURS}${TEXT}`)
          ? bodyOf(id.slice(OURS.length + TEXT.length, -'.mdx'.length))
          : undefined,
    configureServer: (server) => {
      let seen: Edition['methods'] | undefined
      server.middlewares.use((_request, _response, next) => {
        const { methods } = currentEdition()
        // A saved page is a new Edition, of which the development server's module graph knows nothing.
        if (seen !== undefined && !isSame(methods, seen))
          for (const environment of Object.values(server.environments))
            environment.moduleGraph.invalidateAll()
        seen = methods
        next()
      })
    },
  }
}

/** A page that was not saved is the same object in every Edition of one run. */
function isSame(now: Edition['methods'], before: Edition['methods']): boolean {
  return now.length === before.length && now.every((page, place) => page === before[place])
}

function indexModule(): string {
  const ids = currentEdition().methods.map((method) => method.id)
  const imports = ids.map(
    (id, index) => `import { Content as page${index} } from ${JSON.stringify(`${TEXT}${id}.mdx`)}`,
  )
  const pairs = ids.map((id, index) => `[${JSON.stringify(id)}, page${index}]`)
  return `${imports.join('\n')}\nexport const pages = new Map([${pairs.join(', ')}])\n`
}

function bodyOf(id: string): string {
  const method = currentEdition().methods.find((candidate) => candidate.id === id)
  if (method === undefined) throw new RangeError(`bodyOf needs a method page of the edition, got ${id}`)
  return method.body
}
