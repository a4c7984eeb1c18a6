/** Has Astro make the program that draws the pages, and draw none. */
import { renameSync } from 'node:fs'
import { join } from 'node:path'
import type { AstroIntegration } from 'astro'
import type { Edition } from '../edition/shape/edition.ts'
import { onInterruption } from './interruption.ts'
import type { PageStage } from './page-stage.ts'
import { asksForTrace } from './program.ts'

type Pages = Parameters<NonNullable<AstroIntegration['hooks']['astro:build:setup']>>[0]['pages']

/** Style sheets of each page, by Astro's name of it: all that drawing needs of what Astro found out. */
export type PageStyles = Readonly<Record<string, unknown>>

/**
 * @param edition is in the slot: its method pages go into the program
 * @returns with the program in the stage, and in its site what pages refer to
 */
export async function runAstro(edition: Edition, stage: PageStage): Promise<PageStyles> {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  // Astro is half of all that a build reads: what is refused before this is told without it.
  const astro = await import('astro')
  const stopWatching = onInterruption(stage.remove)
  const before = process.cwd()
  // Astro keeps some of its files where it is started.
  process.chdir(stage.place.root)
  let pages: Pages | undefined
  try {
    await astro.build({
      ...stage.place,
      outDir: stage.site,
      base: edition.address.base,
      ...(edition.address.origin === null ? {} : { site: edition.address.origin }),
      // What fails is thrown as well, and told in words.
      logLevel: asksForTrace() ? 'error' : 'silent',
      integrations: [
        takingProgram(stage, (found) => {
          pages = found
        }),
      ],
    })
  } finally {
    process.chdir(before)
    stopWatching()
  }
  return Object.fromEntries([...(pages ?? [])].map(([name, { styles }]) => [name, styles]))
}

/** Takes the program away before Astro removes it. */
function takingProgram({ site, program }: PageStage, found: (pages: Pages) => void): AstroIntegration {
  return {
    name: 'taking-program',
    hooks: {
      'astro:build:setup': ({ pages }) => found(pages),
      'astro:build:start': ({ setPrerenderer }) =>
        setPrerenderer({
          name: 'taking-program',
          getStaticPaths: () => {
            renameSync(join(site, '.prerender'), program)
            return Promise.resolve([])
          },
          render: ({ url }) => Promise.reject(new RangeError(`no page is drawn here, got ${url}`)),
        }),
    },
  }
}
