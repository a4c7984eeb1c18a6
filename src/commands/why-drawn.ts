/** Says how much of a site was made anew, and for what that many files share. */
import { countWords } from '../words/numbers.ts'

/** The first word of a dependency, where it is shared by files of many lots; '' is all beside the edition. */
const SHARED: Readonly<Record<string, string>> = {
  '': 'the program, the address or a method page',
  asOf: 'the day of the records',
  site: 'site.yaml',
  producers: 'producers',
  laboratories: 'laboratories',
  laboratory: 'laboratories',
  conditions: 'conditions',
  announcedConditions: 'conditions',
  controls: 'control batches',
  criteria: 'criteria',
}

/** What was made, out of how many. */
export interface Made {
  readonly all: number
  readonly made: number
}

/**
 * "3203 pages: 12 drawn, 3191 unchanged", the same of data files, and how many files were made since something that
 * they share has changed.
 * @param changed of each file that was made anew, what was first found to have changed
 */
export function drawnLines(pages: Made, data: Made, changed: readonly string[]): string[] {
  const shared = changed.flatMap((dependency) => SHARED[/^\w*/.exec(dependency)?.[0] ?? ''] ?? [])
  const counts = [...Map.groupBy(shared, (what) => what)].map(([what, { length }]) => `${what} (${length})`)
  return [
    `${countWords(pages.all, 'page')}: ${pages.made} drawn, ${pages.all - pages.made} unchanged`,
    `${countWords(data.all, 'data file')}: ${data.made} made, ${data.all - data.made} unchanged`,
    ...(counts.length === 0 ? [] : [`Files made anew because of a change in ${counts.join(', ')}`]),
  ]
}
