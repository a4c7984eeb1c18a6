/** Holds what is about to be published against what was: a certificate that is lost or exchanged stops a build. */
import {
  changedRecords,
  type Loss,
  lossesBetween,
  vanishedPages,
} from '../edition/writers/compare-manifests.ts'
import { fitsPattern } from '../core/measure/text-pattern.ts'
import type { IssuedState, Manifest } from '../edition/writers/manifest.ts'
import { countWords } from '../words/numbers.ts'
import { CommandFailure, EXIT } from './program.ts'

/** Longer lists are cut, with the number of what is left out. */
const LISTED = 20

/** What may vanish: names of lots, with * for any text. */
export type Accepted = readonly string[]

export interface Comparison {
  /** Where the earlier site was read. */
  readonly from: string
  readonly accept: Accepted
  /** Calendar dates that the two sites are of, as YYYY-MM-DD. */
  readonly days: { readonly before: string; readonly after: string }
}

/**
 * @param before what stood earlier
 * @returns lines that tell what else changed, for the reader of the command
 * @throws CommandFailure for a loss that nobody accepted
 */
export function heldAgainst(
  before: IssuedState,
  after: IssuedState,
  { from, accept, days }: Comparison,
): string[] {
  const losses = lossesBetween(before, after)
  const refused = losses.filter(({ lot }) => !accept.some((pattern) => fitsPattern(lot, pattern)))
  if (refused.length > 0)
    throw new CommandFailure(
      [`Against ${from}, ${countWords(refused.length, 'certificate fact')} would be lost or exchanged:`]
        .concat(cut(refused.map(lossSentence)))
        .join('\n'),
      EXIT.failed,
      `${wayBack(days)}; to publish without them, name the lots with --accept SOURCE/LOT (* stands for any text)`,
    )
  return [
    ...listed(`accepted against ${from}`, losses.map(lossSentence)),
    ...listed(
      `records that read otherwise than in ${from}, as far as the site shows them`,
      changedRecords(before, after),
    ),
  ]
}

function wayBack({ before, after }: Comparison['days']): string {
  return after < before
    ? `the earlier site is of ${before}, and what was issued after ${after} is not known on that day: give --as-of ${before} or later`
    : 'restore the records from version control or a backup'
}

/** Tells which pages are gone. @param before addresses of the pages of the earlier site */
export function vanishedLines(
  before: readonly string[],
  after: Pick<Manifest, 'files'>,
  from: string,
): string[] {
  return listed(`pages of ${from} that are gone`, vanishedPages(before, after))
}

function listed(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`${title} (${lines.length}):`, ...cut(lines)]
}

function cut(lines: readonly string[]): string[] {
  const more = lines.length - LISTED
  return [...lines.slice(0, LISTED), ...(more > 0 ? [`and ${more} more`] : [])].map((line) => `  ${line}`)
}

function lossSentence(loss: Loss): string {
  switch (loss.what) {
    case 'lot-vanished':
      return `${loss.lot}: the lot is gone, with its certificates`
    case 'withdrawal-undone':
      return `${loss.lot}: it was withdrawn and is not any more`
    case 'revision-vanished':
      return `${loss.lot}: revision ${loss.number} is gone`
    case 'document-exchanged':
      return `${loss.lot}: the document of revision ${loss.number} is another one`
    case 'date-changed':
      return `${loss.lot}: revision ${loss.number} has another date`
  }
}
