/** The strength or resistivity of the control mortar behind a source's governing index: a point for each batch. */
import { compareMoments } from '../../core/measure/moment.ts'
import { isSameAge } from '../../core/measure/age.ts'
import { property, storedUnit } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { acrossOf } from '../../charts/panel-axis.ts'
import { panelModel, type PanelPoint } from '../../charts/panel.ts'
import { number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import type { ControlEntry, Series } from '../shape/edition.ts'
import { type PanelContext, type PanelView, tickLabels } from './source-panels.ts'

/** null where no batch of the source's laboratories has a value in the period. */
export function controlPanel(context: PanelContext, series: Series, height: number): PanelView | null {
  const { edition } = context
  const key = RATIO_OF[series.property]
  if (key === undefined) return null
  const points = batchesOf(context, series).flatMap((batch) => batchPoint(context, series, batch))
  const printed = printedUnit(storedUnit(key), property(key).decimals, edition.site.units)
  const inUnit = points.map((point) => ({
    ...point,
    value: point.value === null ? null : printed.of(point.value),
  }))
  const newest = inUnit.findLast(({ status, pale }) => status === 'valid' && pale !== true)?.value ?? null
  const last = newest === null ? null : `${number(newest, printed.decimals, edition.site.units)} last`
  const model = panelModel({ points: inUnit, limits: [], last, height, joined: false })
  if (model === null) return null
  return {
    id: 'chart-control',
    title: unbroken(`Control: ${property(key).title.toLowerCase()}, ${series.age?.text ?? ''}`),
    note: 'A point is a batch; strong where a lot of this source rests on it, pale where not.',
    description: `${points.length} control batches`,
    model,
    tickLabels: tickLabels(model, printed.unit),
    newest: [],
  }
}

/** Batches of the source's laboratories under the condition of the series, within the axis. */
function batchesOf({ edition, laboratories, axis }: PanelContext, { condition }: Series): ControlEntry[] {
  return [...edition.controls.values()]
    .filter(
      ({ record }) =>
        record.condition === condition &&
        laboratories.includes(record.laboratory) &&
        axis.from <= record.cast.day &&
        record.cast.day <= axis.to,
    )
    .sort((a, b) => compareMoments(a.record.cast, b.record.cast))
}

const used = new WeakMap<PanelContext['lots'], ReadonlySet<string>>()

/** Batches that a lot of the source rests on; found once for its lots. */
function usedBy(lots: PanelContext['lots']): ReadonlySet<string> {
  const known = used.get(lots)
  if (known !== undefined) return known
  const found = new Set(
    lots.flatMap(({ origins }) => [...origins.values()].flatMap(({ control }) => control ?? [])),
  )
  used.set(lots, found)
  return found
}

function batchPoint(
  { axis, laboratories, lots }: PanelContext,
  { property: key, age }: Series,
  { id, record, results }: ControlEntry,
): PanelPoint[] {
  const result = results.find(
    (candidate) => candidate.property === RATIO_OF[key] && isSameAge(candidate.age, age),
  )
  if (result === undefined) return []
  return [
    {
      x: acrossOf(axis, record.cast.day),
      value: result.value,
      status: result.valid ? 'valid' : 'not-valid',
      outside: false,
      breaks: false,
      shape: Math.max(0, laboratories.indexOf(record.laboratory)),
      ...(usedBy(lots).has(id) ? {} : { pale: true }),
    },
  ]
}
