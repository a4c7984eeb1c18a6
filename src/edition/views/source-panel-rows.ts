/** The newest results of a panel as a table: what the drawing shows, in figures. */
import { shortDate } from '../../words/dates.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import { number } from '../../words/numbers.ts'
import { unitSign } from '../../words/unit-signs.ts'
import type { Edition, Series, SeriesPoint } from '../shape/edition.ts'

export interface PanelRow {
  readonly sampled: string
  /** SOURCE/LOT */
  readonly lot: string
  readonly number: string
  /** With its unit; empty where none is known yet. */
  readonly value: string
  readonly state: string
}

const ROWS = 20

const STATES: Readonly<Record<SeriesPoint['status'], string>> = {
  valid: 'valid',
  'not-valid': 'not valid',
  pending: 'awaited',
  withdrawn: 'withdrawn',
}

/** The latest first. */
export function newestRows({ edition }: { readonly edition: Edition }, series: Series): PanelRow[] {
  const unit = printedUnit(series.unit, series.decimals, edition.site.units)
  const figure = (value: number) =>
    `${number(unit.of(value), unit.decimals, edition.site.units)} ${unitSign(unit.unit)}`.trim()
  return series.points
    .slice(-ROWS)
    .reverse()
    .map(({ lot, at, value, status }) => ({
      sampled: shortDate(at),
      lot,
      number: edition.lots.get(lot)?.number ?? lot,
      value: value === null ? '' : figure(value),
      state: STATES[status],
    }))
}
