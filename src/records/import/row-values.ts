/** What a row says of a field. */
import type { Plain } from '../edit/write-yaml.ts'
import type { Stated } from './draft.ts'
import type { Reads } from './fields.ts'
import type { ImportFault } from './import-fault.ts'
import type { FieldValue, Scope } from './cell-values.ts'
import type { ReadRow } from './table-rows.ts'

/**
 * The value of a field: that of a column for the age or the readings asked for, else one that holds for the whole row.
 */
export function fieldValue(
  { values }: ReadRow,
  name: string,
  scope: Pick<Scope, 'age' | 'for' | 'condition'> = {},
): FieldValue | undefined {
  const asked = Object.entries(scope)
  const named = values.filter((value) => value.name === name)
  return (
    named.find(
      (value) =>
        0 < asked.length &&
        asked.some(([key]) => value.scope[key as keyof Scope] !== undefined) &&
        fits(value, asked),
    ) ??
    named.find(
      (value) => value.scope.age === undefined && value.scope.for === undefined && fits(value, asked),
    )
  )
}

/** A column without a word on something serves all that there is of it. */
function fits({ scope }: FieldValue, asked: readonly (readonly [string, unknown])[]): boolean {
  return asked.every(([key, wanted]) => {
    const own = scope[key as keyof Scope]
    return own === undefined || own === wanted
  })
}

/** A value as a draft takes it. */
export function statedOf({ written, place, field }: FieldValue): Stated {
  return { written: inRecord(written, field.reads), place, reads: field.reads }
}

/** Counts are numbers in a record, and a list is one. */
function inRecord(written: string, { as }: Reads): Plain {
  switch (as) {
    case 'count':
      return Number(written)
    case 'list':
      return written
        .split(';')
        .map((part) => part.trim())
        .filter((part) => part !== '')
    default:
      return written
  }
}

/** A row that does not say what it must. @param field the field that would say it */
export function rowFault(row: ReadRow, what: string, field: string): ImportFault {
  return {
    code: 'import-row',
    severity: 'error',
    place: row.place,
    message: `the row does not say ${what}`,
    mend: `give "${field}" in a column or under every in the map; in a merged or repeated cell say fill: down; leave rows of means and totals out under except`,
  }
}

/** A date with the time of day that another column gives. */
export function momentOf(
  row: ReadRow,
  name: string,
  timeName: string,
  scope: Pick<Scope, 'age' | 'for'> = {},
): Stated | undefined {
  const date = fieldValue(row, name, scope)
  if (date === undefined) return undefined
  const time = fieldValue(row, timeName, scope)
  const stated = statedOf(date)
  return time === undefined || date.written.includes('T')
    ? stated
    : { ...stated, written: `${date.written}T${time.written}` }
}
