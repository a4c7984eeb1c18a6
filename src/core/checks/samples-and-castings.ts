/** Audit checks: samples outside the production window, and mortars that were not cast beside their controls. */
import type { AuditedLot, Period } from './audited.ts'
import { type Checked, lookedOnce } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** Lots named: own choice. */
const SHOWN = 5

/**
 * A warning for each composite sample whose increments were not taken while the lot was produced.
 * Note: by days; a grab may be taken as the material leaves, and is asked only not to come before it was made.
 */
export function sampledOutside({ id: lot, record: { samples, produced } }: AuditedLot): Checked {
  const findings = samples.flatMap((sample): Finding[] => {
    const { id, kind, on, taken = on === undefined ? undefined : { from: on, to: on } } = sample
    if (taken === undefined || !isOutside(taken, produced, kind)) return []
    const texts = ({ from, to }: Period) => ({ from: from.text, to: to.text })
    const params = { lot, sample: id, sampled: texts(taken), produced: texts(produced) }
    return [found(lot, { code: 'sampled-outside-production', params }, id)]
  })
  return lookedOnce('sampled-outside-production', findings)
}

function isOutside(taken: Period, produced: Period, kind: string): boolean {
  if (taken.from.day < produced.from.day) return true
  return kind === 'composite' && produced.to.day < taken.to.day
}

/**
 * One warning for a source on mortars cast on another day than their controls.
 * @param source id
 * @param lots in order of sampling
 */
export function castApart(source: string, lots: readonly AuditedLot[]): Checked {
  const tested = lots.map((lot) => ({ lot: lot.id, apart: farthest(lot), isTested: hasMortar(lot) }))
  const of = tested.filter(({ isTested }) => isTested).length
  const listed = tested
    .flatMap(({ lot, apart }) => (apart === null ? [] : [{ lot, ...apart }]))
    .sort((a, b) => Math.abs(b.days) - Math.abs(a.days) || (a.lot < b.lot ? -1 : 1))
  const params = { source, lots: listed.length, of, listed: listed.slice(0, SHOWN) }
  const findings = listed.length === 0 ? [] : [found(source, { code: 'mortars-cast-apart', params })]
  return { check: 'mortars-cast-apart', looked: of, findings }
}

function hasMortar({ results }: AuditedLot): boolean {
  return results.some(({ control }) => control !== undefined)
}

/** Days that a control was cast before its test mortar, the farthest of the lot; null where all were cast together. */
function farthest({ results }: AuditedLot): { control: string; days: number } | null {
  let found: { control: string; days: number } | null = null
  for (const { control, reasons } of results)
    for (const reason of reasons) {
      if (reason.code !== 'control-cast-apart' && reason.code !== 'not-cast-together') continue
      const days = reason.params.daysBefore
      if (control !== undefined && Math.abs(found?.days ?? 0) < Math.abs(days)) found = { control, days }
    }
  return found
}
