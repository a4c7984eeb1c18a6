/**
 * data/lots/SOURCE/LOT.json and the records that lots refer to, so that another site can take them in and
 * recompute.
 */
import { writtenForm } from '../../records/schema/written.ts'
import type { Result } from '../../core/result/result.ts'
import { intervalScopeWords } from '../../words/interval-words.ts'
import { resultReasonWords } from '../../words/result-reasons.ts'
import { packSource, type SourceEvidence } from '../../core/evidence/source-evidence.ts'
import { dayBeside } from '../shape/due.ts'
import { withTexts } from '../../core/measure/texts-of-times.ts'
import { evidenceLot } from '../shape/evidence-lot.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { standingData } from '../shape/standing.ts'
import { lotVerdictData } from './verdict-data.ts'
import { partOfSource } from '../shape/part-of-source.ts'

/** A result without its working, as all data files and the check report give it. */
export function resultData(result: Result): Record<string, unknown> {
  return {
    key: result.key,
    property: result.property,
    condition: result.condition ?? null,
    age: result.age?.text ?? null,
    laboratory: result.laboratory,
    sample: result.sample,
    role: result.role,
    value: result.value,
    unit: result.unit,
    censored: result.censored ?? null,
    bounds: boundsData(result.bounds),
    written: result.written ?? null,
    finished: result.finished === true,
    standardUncertainty: result.statedU ?? null,
    interval: intervalData(result.interval),
    n: result.n,
    tested: result.tested.text,
    valid: result.valid,
    reasons: result.reasons.map(resultReasonWords),
    reasonCodes: result.reasons,
  }
}

function boundsData(bounds: Result['bounds']): Record<string, number | null> | null {
  return bounds === undefined ? null : { low: bounds.low, high: bounds.high }
}

/** The method, in words, names the degrees of freedom. */
function intervalData(interval: Result['interval']): Record<string, unknown> | null {
  return interval === undefined
    ? null
    : {
        level: interval.level,
        method: intervalScopeWords(interval),
        shape: interval.shape,
        low: interval.low,
        high: interval.high,
      }
}

export function lotData(edition: Edition, lot: LotEntry): object {
  return {
    format: 1,
    site: edition.address.origin === null ? null : `${edition.address.origin}${edition.address.base}`,
    notice: edition.site.notice ?? null,
    asOf: dayBeside(edition, listedLot(lot)),
    id: lot.id,
    certificate: fullAddress(edition, paths.certificate(lot.id)),
    ...standingData(edition, listedLot(lot)),
    revisions: lot.revisions,
    record: writtenForm(lot.record),
    results: lot.results.map(resultData),
    planned: lot.planned,
    verdicts: lot.verdicts.map((verdict) => lotVerdictData(edition, lot, verdict)),
  }
}

/** Everything that judging a source's published lots needs, for the reader's browser. */
export function sourceEvidenceData(edition: Edition, id: string): SourceEvidence {
  const evidence = ownEvidence(edition, id)
  // Of a lot that is written on the bench all that is known by today counts.
  const pooled = withTexts(edition.scatterFor(id))
  return { ...evidence, background: { ...evidence.background, pooled } }
}

const ownEvidence = partOfSource('evidence', (edition: Edition, id): SourceEvidence => {
  const { background, restarts, unpublished } = edition.source(id)
  const conditions = Object.fromEntries(
    [...edition.conditions, ...edition.announcedConditions].map(([key, { title }]) => [key, title]),
  )
  return packSource(
    { source: id, asOf: edition.asOf, background, restarts, unpublished, conditions },
    edition.lotsOf(id).map((lot) => evidenceLot(edition.lot(lot.id))),
  )
})

export function conditionData(edition: Edition): object {
  return {
    format: 1,
    conditions: Object.fromEntries(
      [...edition.conditions, ...edition.announcedConditions].map(([id, record]) => [
        id,
        writtenForm(record),
      ]),
    ),
  }
}

export function controlData(edition: Edition): object {
  return {
    format: 1,
    controls: Object.fromEntries([...edition.controls].map(([id, entry]) => [id, writtenForm(entry.record)])),
  }
}
