/** Tables of readings of the invented studies. */
import { csvFormatRows } from 'd3'

export interface TableRow {
  readonly material: string
  readonly condition: string
  readonly laboratory: string
  readonly batch: string
  readonly ageDays: number
  readonly tested: string
  /** MPa of each specimen; 0 where it was not crushed. */
  readonly strengths: readonly number[]
  /** Ohm m of each specimen; none where it was not read. */
  readonly resistivities: readonly number[]
}

const HEADINGS = [
  'material',
  'condition',
  'laboratory',
  'batch',
  'age',
  'tested',
  'specimen',
  'strength (MPa)',
  'resistivity (ohm m)',
]

/** The CSV of rows, a line for each specimen; above `ceilingOhmMetre` the meter shows only that. */
export function studyTable(rows: Iterable<TableRow>, ceilingOhmMetre = Number.POSITIVE_INFINITY): string {
  const lines = [...rows].flatMap((row) =>
    row.strengths.map((strength, specimen) => [
      row.material,
      row.condition,
      row.laboratory,
      row.batch,
      `${row.ageDays} d`,
      row.tested,
      String(specimen + 1),
      strength === 0 ? '' : strength.toFixed(1),
      resistivityText(row.resistivities[specimen], ceilingOhmMetre),
    ]),
  )
  return `${csvFormatRows([HEADINGS, ...lines])}\n`
}

function resistivityText(value: number | undefined, ceiling: number): string {
  if (value === undefined) return ''
  return ceiling < value ? `> ${ceiling}` : value.toPrecision(3).replace(/e\+?\d+$/, '')
}
