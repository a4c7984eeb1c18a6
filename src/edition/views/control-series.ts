/** A laboratory's control mortar over casting dates: strength and resistivity by condition and age. */
import { type Moment, compareMoments } from '../../core/measure/moment.ts'
import { property } from '../../core/measure/properties.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import type { ControlEntry } from '../shape/edition.ts'

export interface ControlSeries {
  readonly title: string
  readonly unit: string
  readonly decimals: number
  readonly points: readonly {
    readonly lot: string
    readonly at: Moment
    readonly value: number
    readonly status: 'valid' | 'not-valid'
    readonly note?: string
  }[]
}

/** Batches of one laboratory in order of casting, then by id. */
export function batchesOf(controls: ReadonlyMap<string, ControlEntry>, laboratory: string): ControlEntry[] {
  return [...controls.values()]
    .filter((entry) => entry.record.laboratory === laboratory)
    .sort((a, b) => compareMoments(a.record.cast, b.record.cast) || (a.id < b.id ? -1 : 1))
}

export function controlSeries(
  batches: readonly ControlEntry[],
  conditionTitle: (id: string) => string,
  units: UnitSystem,
): ControlSeries[] {
  const series = new Map<
    string,
    { title: string; unit: string; decimals: number; points: ControlSeries['points'][number][] }
  >()
  for (const batch of batches) {
    for (const result of batch.results) {
      const key = [result.property, result.condition, String(result.age?.hours ?? '').padStart(8, '0')].join(
        '|',
      )
      const own = series.get(key) ?? {
        title: `${property(result.property).title}, ${conditionTitle(result.condition ?? '')}, ${result.age?.text}`,
        unit: result.unit,
        decimals: result.decimals,
        points: [],
      }
      series.set(key, own)
      own.points.push({
        lot: batch.id,
        at: batch.record.cast,
        value: result.value,
        status: result.valid ? 'valid' : 'not-valid',
        ...(result.reasons[0] === undefined ? {} : { note: resultReasonIn(result.reasons[0], units) }),
      })
    }
  }
  return [...series].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, own]) => own)
}

/** The first batch of each cement lot but the first, as events for the charts. */
export function cementChanges(batches: readonly ControlEntry[]): { from: Moment; title: string }[] {
  const seen = new Set<string>()
  return batches.flatMap((batch) => {
    const { lot } = batch.record.cement
    if (seen.has(lot)) return []
    seen.add(lot)
    return seen.size === 1 ? [] : [{ from: batch.record.cast, title: `cement ${lot}` }]
  })
}
