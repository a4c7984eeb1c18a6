/** Audit check: means before and after an event, or a change of laboratory or control cement, that differ. */
import type { SourceHistory, SourceSeries, Step } from '../history/source-history.ts'
import { dateOf } from '../measure/moment.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import { governedSeries, ofSeries, placeOf } from './governed-series.ts'
import type { EventOrChange } from './history-findings.ts'

/**
 * One look and at most one finding for each event that has enough results on either side, in each series.
 * @param source id
 * @param history of the source
 */
export function stepsAtEvents(source: string, { series }: SourceHistory): Checked {
  const looks = governedSeries(series).flatMap((one) =>
    one.steps.flatMap((step, at) =>
      step.figures.shown ? [{ one, step, figures: step.figures, mark: markOf(one.steps, at) }] : [],
    ),
  )
  const findings = looks
    .filter(({ figures }) => figures.clear)
    .map(({ one, step, figures, mark }) => {
      const { before, after, difference, interval, alsoChanged } = figures
      const beside = figures.beside.map((event) => namedBy(event, one))
      const params = {
        ...ofSeries(source, one, before.n + after.n),
        ...namedBy(step.event, one),
        beside,
        ...{ before, after, difference, low: interval.low, high: interval.high, alsoChanged },
      }
      return found(source, { code: 'step-at-event', params }, ...placeOf(one), ...mark)
    })
  return { check: 'step-at-event', looked: looks.length, findings }
}

/** An event by kind and day, a change by its number: the day of a change is that of a lot, which may not be shown. */
function markOf(steps: readonly Step[], at: number): string[] {
  const event = steps[at]?.event
  if (event === undefined) return []
  const markOfEvent = (one: Step['event']) =>
    one.by === 'event' ? `${one.kind}-${one.date.text}` : `${one.by}-change`
  const mark = markOfEvent(event)
  const same = steps.slice(0, at).filter((one) => markOfEvent(one.event) === mark).length
  return same === 0 ? [mark] : [mark, String(same + 1)]
}

function namedBy(event: Step['event'], { points }: SourceSeries): EventOrChange {
  if (event.by === 'event') return { event: { title: event.title, date: event.date.text }, change: null }
  const { by, from, to, date } = event
  const first = points.find(({ named }) => named !== null && named.sampled.text === date?.text)?.named
  const change = first && { by, from, to, lot: first.lot, day: dateOf(first.sampled).text }
  return { event: null, change: change ?? null }
}
