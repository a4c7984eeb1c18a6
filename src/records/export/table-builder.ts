/** A table that grows row by row: each column is what a map says of it, so that an import reads the table back. */
import type { Moment } from '../../core/measure/moment.ts'
import { type Quantity, writtenNumber } from '../../core/measure/units.ts'
import type { CellValue } from '../import/grid.ts'
import type { Column, MappedTable } from '../import/import-map.ts'

export interface ExportTable {
  readonly name: string
  readonly headings: readonly string[]
  readonly rows: readonly (CellValue | null)[][]
  /** What a map says of it. */
  readonly mapped: MappedTable
}

/** A value with the column that it stands in. */
export interface Entry {
  readonly column: Column
  readonly heading: string
  readonly cell: CellValue
}

/** Text as it stands: a sign at its start makes no formula of it, and noughts stay. */
export function textEntry(to: string, text: string | number | undefined, heading = headingOf(to)): Entry[] {
  if (text === undefined) return []
  const cell: CellValue =
    typeof text === 'number' ? { kind: 'number', text: String(text) } : { kind: 'text', text }
  return [{ column: { to }, heading, cell }]
}

/** Texts in one cell, as an import parts them. */
export function listEntry(to: string, texts: readonly string[] | undefined): Entry[] {
  return textEntry(to, texts?.join('; '))
}

export function momentEntry(to: string, moment: Moment | undefined): Entry[] {
  return moment === undefined
    ? []
    : [{ column: { to }, heading: headingOf(to), cell: { kind: 'date', text: moment.text } }]
}

/** @param more what the column says beside its unit: a basis, a condition and an age */
export function quantityEntry(
  to: string,
  quantity: Quantity | undefined,
  more: Omit<Column, 'to' | 'unit'> = {},
): Entry[] {
  if (quantity === undefined) return []
  const { unit } = quantity
  const number = writtenNumber(quantity)
  const sign = quantity.censored === 'below' ? '< ' : quantity.above === true ? '> ' : ''
  const said = [...Object.values(more)].filter((one) => typeof one === 'string')
  return [
    {
      column: { to, ...(unit === '' ? {} : { unit }), ...more },
      heading: `${[headingOf(to), ...said].join(', ')}${unit === '' ? '' : ` (${unit})`}`,
      cell: sign === '' ? { kind: 'number', text: number } : { kind: 'text', text: `${sign}${number}` },
    },
  ]
}

/** "produced-from" as a person heads a column: "Produced from"; a key with capitals stays as it is. */
function headingOf(to: string): string {
  return /^[a-z][a-z-]*$/.test(to) ? `${to[0]?.toUpperCase()}${to.slice(1).replaceAll('-', ' ')}` : to
}

export class TableBuilder {
  private readonly columns = new Map<string, { readonly column: Column; readonly rank: number }>()
  private readonly lines: Map<string, CellValue>[] = []

  /** Columns stand in the order in which a row first has them, those of one rank together. */
  add(entries: readonly Entry[]): void {
    const line = new Map<string, CellValue>()
    entries.forEach(({ column, heading, cell }, rank) => {
      if (!this.columns.has(heading)) this.columns.set(heading, { column, rank })
      line.set(heading, cell)
    })
    this.lines.push(line)
  }

  get isEmpty(): boolean {
    return this.lines.length === 0
  }

  table(name: string, holds: MappedTable['holds']): ExportTable {
    const columns = [...this.columns].sort(([, a], [, b]) => a.rank - b.rank)
    const headings = columns.map(([heading]) => heading)
    return {
      name,
      headings,
      rows: this.lines.map((line) => headings.map((heading) => line.get(heading) ?? null)),
      mapped: {
        holds,
        sheet: name,
        columns: Object.fromEntries(
          columns.map(([heading, { column }]) => [
            heading,
            Object.keys(column).length === 1 ? column.to : column,
          ]),
        ),
      },
    }
  }
}
