/** What a cell gives by its column: the values of fields, each with its place in the file. */
import { literalPattern } from '../../core/measure/text-pattern.ts'
import { shortened } from '../schema/schema-words.ts'
import { type CellForm, cellForm, readCell, shownText } from './cell-value.ts'
import type { Said } from './column-at.ts'
import { type Field, fieldOf } from './fields.ts'
import type { CellPlace, CellValue } from './grid.ts'
import type { TellFault } from './import-fault.ts'
import { type Column, IN_BRACES, type MappedTable } from './import-map.ts'

/** What a column's values belong to beside the row. */
export type Scope = Pick<
  Column,
  'age' | 'condition' | 'specimen' | 'for' | 'basis' | 'method' | 'standard-uncertainty'
>

export interface FieldValue {
  readonly name: string
  readonly field: Field
  /** As a record writes it. */
  readonly written: string
  /** null for what the map says of all rows. */
  readonly place: CellPlace | null
  readonly scope: Scope
}

interface CellToRead {
  readonly column: Column
  readonly form: CellForm
  readonly table: MappedTable
  readonly place: CellPlace
}

/** What a cell gives; null where it cannot be read, which is told. */
export function cellValues(
  cell: CellValue,
  { column, form, table, place }: CellToRead,
  tell: TellFault,
): FieldValue[] | null {
  const refuse = (said: Said): null => {
    tell({ code: 'import-cell', severity: 'error', place, ...said })
    return null
  }
  const { to, pattern } = column
  const scope = scopeOf(column)
  if (pattern !== undefined && cell.kind !== 'fault' && !form.standsFor.has(shownText(cell))) {
    const text = shownText(cell)
    return (
      patternValues(text, pattern, { table, place, form, scope }) ??
      refuse({
        message: `found "${shortened(text)}"; a text made up as "${pattern}" was expected`,
        mend: 'correct the cell, or the pattern in the map',
      })
    )
  }
  const field = fieldOf(table.holds, to)
  if (field === undefined) return []
  const reading = readCell(cell, field.reads, form)
  if (reading === null) return []
  if ('fault' in reading) return refuse(reading.fault)
  return [{ name: to, field, written: reading.written, place, scope }]
}

const OF_SCOPE = ['age', 'condition', 'specimen', 'for', 'basis', 'method', 'standard-uncertainty'] as const

function scopeOf(column: Column): Scope {
  return Object.fromEntries(
    OF_SCOPE.flatMap((key) => (column[key] === undefined ? [] : [[key, column[key]]])),
  )
}

interface PatternContext {
  readonly table: MappedTable
  readonly place: CellPlace | null
  readonly form?: CellForm
  readonly scope?: Scope
}

/** No name of a lot is longer, and a pattern is tried against each start. */
const LONGEST_NAME = 200

/** The fields that a text made up by a pattern holds; null where it is made up otherwise. */
export function patternValues(text: string, pattern: string, context: PatternContext): FieldValue[] | null {
  if (LONGEST_NAME < text.length) return null
  const names = [...pattern.matchAll(IN_BRACES)].map(([, name = '']) => name)
  const parts = pattern.split(/\{[a-z-]+\}/).map((part) => literalPattern(part).replace(/\s+/g, '\\s+'))
  const found = new RegExp(`^${parts.join('(.+?)')}$`, 'i').exec(text)
  if (found === null) return null
  const form = context.form ?? cellForm([], {})
  const values = names.map((name, index): FieldValue | null => {
    const field = fieldOf(context.table.holds, name)
    const reading = field && readCell({ kind: 'text', text: found[index + 1] ?? '' }, field.reads, form)
    if (field === undefined || reading === null || reading === undefined || 'fault' in reading) return null
    return { name, field, written: reading.written, place: context.place, scope: context.scope ?? {} }
  })
  return values.includes(null) ? null : (values as FieldValue[])
}
