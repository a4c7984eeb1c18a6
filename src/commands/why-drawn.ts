/** Says how much of a site was made anew, and for what that many files share. */
import { countWords } from '../words/numbers.ts'

/** What the first word of a dependency stands for; '' is all beside the edition. */
const WORDS: Readonly<Record<string, string>> = {
  '': 'the program, the address or a method page',
  asOf: 'the day of the records',
  site: 'site.yaml',
  producers: 'producers',
  laboratories: 'laboratories',
  conditions: 'conditions',
  announcedConditions: 'conditions',
  controls: 'control batches and what they rest on',
  criteria: 'criteria',
  methods: 'method pages',
  studies: 'studies',
  study: 'studies and what they rest on',
  laboratory: 'the statistics of laboratories and what they rest on',
  sources: 'sources',
  source: 'sources and what they rest on',
  lots: 'lots',
  lotsOf: 'lots',
  lot: 'lots and what they rest on',
  shipmentsOf: 'shipments',
}
const FURTHER = 'what is taken from other records'

/** Those that rest on others: what changes in site.yaml changes them all. */
const RESTING = /^(?:lot|source|laboratory|study|asked|made) |^controls\b/

/** Of what a file rests on and has changed the one to tell: where there is one, what rests on nothing else. */
export function firstToTell(
  restsOn: Iterable<string>,
  isChanged: (dependency: string) => boolean,
): string | undefined {
  let first: string | undefined
  for (const dependency of restsOn) {
    if (!isChanged(dependency)) continue
    if (!RESTING.test(dependency)) return dependency
    first ??= dependency
  }
  return first
}

/** What was made, out of how many. */
export interface Made {
  readonly all: number
  readonly made: number
}

/**
 * "3203 pages: 12 drawn, 3191 unchanged", the same of data files, and how many files were made again since which records
 * have changed.
 * @param changed of each file that was made anew, what has changed
 */
export function drawnLines(pages: Made, data: Made, changed: readonly string[]): string[] {
  const words = changed.map((dependency) => WORDS[/^\w*/.exec(dependency)?.[0] ?? ''] ?? FURTHER)
  const counts = [...Map.groupBy(words, (what) => what)].map(([what, { length }]) => `${what} (${length})`)
  return [
    `${countWords(pages.all, 'page')}: ${pages.made} drawn, ${pages.all - pages.made} unchanged`,
    `${countWords(data.all, 'data file')}: ${data.made} made, ${data.all - data.made} unchanged`,
    ...(counts.length === 0 ? [] : [`Files made anew because of a change in ${counts.join(', ')}`]),
  ]
}
