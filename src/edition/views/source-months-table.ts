/** The months of a source as a table prints them: a column a month. */
import { number } from '../../words/numbers.ts'
import { OTHER_LOTS } from '../../words/source-deliveries.ts'
import { signed } from '../../words/units.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import type { BalanceLack } from './source-balance.ts'
import type { MonthLine, SourceMonths } from './source-months.ts'

interface Cell {
  readonly text: string
  readonly alert: boolean
}

export interface MonthTable {
  readonly heads: readonly string[]
  readonly rows: readonly { readonly label: string; readonly cells: readonly Cell[] }[]
}

export const NO_REPORT_PLANNED = 'not planned'

const LACKS: Readonly<Record<BalanceLack, string>> = {
  'no-line': 'no entry',
  'no-stock': 'stock not recorded',
  'lots-not-shown': 'lots not shown',
}

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

export function monthCellsOf({ lines }: Pick<SourceMonths, 'lines'>, units: UnitSystem): MonthTable {
  const { of, unit, decimals } = printedUnit('t', 0, units)
  const mass = (massT: number) => plain(number(of(massT), decimals, units))
  const row = (label: string, cell: (line: MonthLine) => Cell) => ({ label, cells: lines.map(cell) })
  return {
    heads: lines.map(({ month }, place) => headOf(month, place)),
    rows: [
      row('Lots sampled, of composite samples planned', ({ lots, planned }) => ({
        text: planned === null ? String(lots) : `${lots} of ${planned}`,
        alert: planned !== null && lots < planned,
      })),
      row(`Lots with a certificate in force, ${unit}`, ({ certifiedT }) => mass(certifiedT)),
      row(`of them do not meet, ${unit}`, ({ failedT }) => ({ ...mass(failedT), alert: 0 < failedT })),
      row(`Shipped, ${unit}`, ({ shippedT }) => mass(shippedT)),
      ...(lines.some(({ shippedOtherT }) => 0 < shippedOtherT)
        ? [row(`of it, from ${OTHER_LOTS}, ${unit}`, ({ shippedOtherT }) => mass(shippedOtherT))]
        : []),
      row(`Diverted, ${unit}`, ({ divertedT }) =>
        divertedT === null ? plain('not recorded') : mass(divertedT),
      ),
      ...(lines.some(({ balanceT }) => balanceT !== null)
        ? [
            row(`Produced, ${unit}`, ({ producedT }) =>
              producedT === null ? plain('no entry') : mass(producedT),
            ),
            row(`Balance difference, ${unit}`, ({ balanceT }) =>
              typeof balanceT === 'number'
                ? plain(signed(of(balanceT), decimals, ''))
                : plain(LACKS[balanceT ?? 'no-line']),
            ),
          ]
        : []),
      row('Monthly report', reportCell),
    ],
  }
}

function plain(text: string): Cell {
  return { text, alert: false }
}

/** The year stands with its first month of the table. */
function headOf(month: string, place: number): string {
  const [year = '', number = ''] = month.split('-')
  const name = NAMES[Number(number) - 1] ?? ''
  return place === 0 || number === '01' ? `${name} ${year}` : name
}

function reportCell({ report }: MonthLine): Cell {
  switch (report.state) {
    case 'in-time':
      return plain('in time')
    case 'late':
      return { text: `${report.days} d late`, alert: true }
    case 'missing':
      return { text: 'none', alert: true }
    case 'not-due':
      return plain('not due')
    case 'not-planned':
      return plain(NO_REPORT_PLANNED)
  }
}
