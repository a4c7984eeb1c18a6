/** What a row of results says beside its figures: why an outcome is what it is. */
import type { Outcome } from '../../core/criteria/outcome.ts'
import type { Interval } from '../../core/statistics/ratio-interval.ts'
import { resultReasonWords } from '../../words/result-reasons.ts'
import { fullSentence } from '../../words/sentences.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { TableRow } from './result-rows.ts'

/** Outcomes that the figures beside them tell. */
const PLAIN: readonly Outcome[] = ['meets', 'does-not-meet', 'reported']

/** Why, in sentences, where the figures do not tell; null where they do. */
export function reasonToTell(
  row: TableRow,
  facts: Pick<CertificateFacts, 'mortars' | 'departures'>,
): string | null {
  const told = reasonOf(row, facts)
  const note = row.clause?.note
  // The reason of a clause holds its note already.
  if (note === undefined || told?.includes(note) === true) return told
  return [...(told === null ? [] : [told]), fullSentence(note)].join(' ')
}

function reasonOf(row: TableRow, facts: Pick<CertificateFacts, 'mortars' | 'departures'>): string | null {
  const { clause, result, kind } = row
  const reasons = result === null ? [] : toldOf(result, kind, facts)
  if (reasons.length > 0) return reasons.map(fullSentence).join(' ')
  if (clause === null || PLAIN.includes(clause.outcome) || result === null) return null
  return kind === 'deviation' && clause.against === undefined ? null : fullSentence(clause.reason)
}

/**
 * Specimens left out or dropped stand with the mortars, unless the result is not valid; what is said of an interval
 * stands in the working, where the interval is.
 */
function toldOf(
  { valid, reasons, interval }: NonNullable<TableRow['result']>,
  kind: TableRow['kind'],
  facts: Pick<CertificateFacts, 'mortars' | 'departures'>,
): readonly string[] {
  if (kind === 'value' && !valid && reasons.length > 0) return reasons
  const listed = exclusions(facts)
  for (const { reason } of facts.departures ?? []) listed.add(reason)
  if (interval !== undefined) listed.add(ofInterval(interval))
  return reasons.filter((reason) => !listed.has(reason))
}

function ofInterval({ level }: Pick<Interval, 'level'>): string {
  return resultReasonWords({ code: 'interval-too-narrow', params: { levelPercent: 100 * level } })
}

/** Each specimen left out of a mortar's readings, as a result's reasons name it. */
function exclusions({ mortars }: Pick<CertificateFacts, 'mortars'>): Set<string> {
  const specimens = mortars.flatMap(({ readings }) => readings.flatMap((reading) => reading.specimens))
  return new Set(
    specimens.flatMap(({ mark, excluded }) =>
      excluded === undefined
        ? []
        : [resultReasonWords({ code: 'specimen-excluded', params: { mark, why: excluded } })],
    ),
  )
}
