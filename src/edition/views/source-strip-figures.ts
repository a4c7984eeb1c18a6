/** The small drawings beside the statements of a source. */
import type { StripFigure } from './source-strip.ts'
import { acrossOfPlace } from '../../charts/panel-axis.ts'
import { panelModel, type PanelModel } from '../../charts/panel.ts'
import { number } from '../../words/numbers.ts'
import type { JudgedValue } from './source-lots.ts'
import type { JudgedSeries } from './judged-series.ts'
import type { MonthLine, SourceMonths } from './source-months.ts'

/** Results drawn; the charts below have all. */
const NEWEST = 60
const HEIGHT = 56

/** The values of one clause with its limits; null where none is known. */
export function valuesFigure({ values }: JudgedSeries, height = HEIGHT): PanelModel | null {
  const newest = values.slice(-NEWEST)
  const text = ({ number: value, decimals }: Pick<JudgedValue, 'number' | 'decimals'>) =>
    number(value, decimals)
  const last = newest.at(-1)?.judged
  const sorted = newest.map(({ judged }) => judged).sort((a, b) => a.number - b.number)
  return panelModel({
    points: newest.map(({ judged, lot }, place) => ({
      x: acrossOfPlace(place, newest.length),
      value: judged.number,
      status: 'valid',
      outside: judged.outcome === 'does-not-meet',
      alone: !lot.missed.includes(judged),
      shape: 0,
      breaks: false,
    })),
    limits: (newest.at(-1)?.judged.ends ?? []).map((value) => ({
      value,
      label: last === undefined ? '' : text({ ...last, number: value }),
    })),
    extremes: [sorted[0], sorted.at(-1)].flatMap((end) =>
      end === undefined ? [] : [{ value: end.number, label: text(end) }],
    ),
    last: null,
    height,
    joined: true,
  })
}

/** A month of the last twelve: how many lots it has against its plan. */
export interface MonthCell {
  readonly x: number
  readonly letter: string
  readonly state: 'as-planned' | 'fewer' | 'none'
}

const LETTERS = 'JFMAMJJASOND'

export function monthCells({ lines }: SourceMonths): MonthCell[] {
  return lines.map((line, place) => ({
    x: acrossOfPlace(place + 0.5, lines.length + 1),
    letter: LETTERS[Number(line.month.slice(5)) - 1] ?? '',
    state: cellState(line),
  }))
}

function cellState({ lots, planned }: MonthLine): MonthCell['state'] {
  if (planned !== null && lots < planned) return 'fewer'
  return lots === 0 ? 'none' : 'as-planned'
}

/** The values of one clause as a small panel; null without a value to draw. */
export function panelFigure(series: JudgedSeries): StripFigure | null {
  const model = valuesFigure(series)
  return model === null ? null : { kind: 'panel', model, label: series.title }
}
