/** The small drawings beside the statements of a source. */
import { acrossOfPlace } from '../../charts/panel-axis.ts'
import { panelModel, type PanelModel } from '../../charts/panel.ts'
import type { JudgedSeries } from './source-strip.ts'
import type { MonthLine, SourceMonths } from './source-months.ts'

/** Results drawn; the charts below have all. */
const NEWEST = 60
const HEIGHT = 46

/** The values of one clause with its limits; null where none is known. */
export function valuesFigure({ values }: JudgedSeries, height = HEIGHT): PanelModel | null {
  const newest = values.slice(-NEWEST)
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
    limits: (newest.at(-1)?.judged.ends ?? []).map((value) => ({ value, label: '' })),
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
