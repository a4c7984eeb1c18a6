/** data/lots/SOURCE/LOT.json and the records that lots refer to, so that another site can take them in and recompute. */
import { writtenForm } from '../records/written.ts'
import type { Result } from '../core/result.ts'
import { fullAddress, paths } from './addresses.ts'
import type { Edition, LotEntry } from './edition.ts'

/** A result without its working, as all data files and the check report give it. */
export function resultData(result: Result): Record<string, unknown> {
  return {
    key: result.key, property: result.property, condition: result.condition ?? null, age: result.age ?? null, laboratory: result.laboratory, sample: result.sample, role: result.role,
    value: result.value, unit: result.unit, censored: result.censored ?? null, written: result.written ?? null, interval: null, n: result.n, tested: result.tested, valid: result.valid, reasons: result.reasons,
  }
}

export function lotData(edition: Edition, lot: LotEntry): unknown {
  return {
    format: 1, site: edition.address.origin === null ? null : `${edition.address.origin}${edition.address.base}`, notice: edition.site.notice ?? null, asOf: edition.asOf,
    id: lot.id, certificate: fullAddress(edition, paths.certificate(lot.id)), state: lot.state, revisions: lot.revisions,
    record: writtenForm(lot.record), results: lot.results.map(resultData), planned: lot.planned, verdicts: lot.verdicts,
  }
}

export function conditionData(edition: Edition): unknown {
  return { format: 1, conditions: Object.fromEntries([...edition.conditions].map(([id, record]) => [id, writtenForm(record)])) }
}

export function controlData(edition: Edition): unknown {
  return { format: 1, controls: Object.fromEntries([...edition.controls].map(([id, entry]) => [id, writtenForm(entry.record)])) }
}

export function criterionData(edition: Edition): unknown {
  return { format: 1, criteria: Object.fromEntries(edition.criteria) }
}
