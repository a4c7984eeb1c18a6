/** What the threads that draw pages of a site are given, and what they say at their end. */
import type { Records } from '../records/load.ts'
import type { Fan } from './draw-in-threads.ts'
import { drawThreads, threadsThatPay } from './draw-threads.ts'
import type { KeptSources } from './kept-sources.ts'
import type { PageProgram } from './page-program.ts'
import type { SiteQuestion } from './site-edition.ts'

export interface SiteThreadsRequest {
  readonly records: Records
  readonly question: SiteQuestion
  /** The site that is replaced. */
  readonly final: string
  /** What threads tell one another of single sources; without it none helps. */
  readonly sources: KeptSources | undefined
  /** Digest of the program. */
  readonly program: string | null
  /** As many as pay where nothing is said. */
  readonly count: number | undefined
}

export interface SiteThreads {
  /** Begins the threads that help to draw so many pages. */
  readonly fan: (pages: number, drawing: PageProgram) => Fan
  /** Lines for the reader of the command. */
  readonly notes: () => readonly string[]
}

export function siteThreads({ sources, program, count, ...site }: SiteThreadsRequest): SiteThreads {
  const notes = new Set<string>()
  return {
    fan: (pages, { entry, styles }) => ({
      threads:
        program === null || sources?.isShared !== true
          ? []
          : drawThreads(count ?? threadsThatPay(pages), () => ({
              ...site,
              program,
              drawing: { entry, styles },
            })),
      isComputed: (source) => sources?.isComputed(source) === true,
      note: (line) => void notes.add(line),
    }),
    notes: () => [...notes],
  }
}
