/** Rows of two quantities, of a study's own file or of a table beside it, read alike with every fault of theirs. */
import { isFault, KINDS, type QuantityKind, readQuantity } from '../../../core/measure/units.ts'
import type { TablePoint } from '../../../core/studies/reference/reading-table.ts'
import { BOUNDS, rangeWords, within } from '../../checks/physical.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import { quantityFault } from '../../schema/quantity-faults.ts'
import { shortened } from '../../schema/schema-words.ts'
import type { Tell } from '../study-readings.ts'

/** What a table holds: its first quantity, and the kinds that its second may be of. */
export interface RowKinds {
  readonly x: 'duration' | 'temperature'
  readonly y: readonly QuantityKind[]
}

export const HEAT_ROWS: RowKinds = { x: 'duration', y: ['power', 'specific-power', 'energy', 'heat'] }
export const MASS_ROWS: RowKinds = { x: 'temperature', y: ['sample-mass'] }

/** A row as written, and where its faults are told. */
export interface WrittenRow {
  readonly x: string
  readonly y: string
  readonly tell: Tell
}

export interface ReadRows {
  /** In stored units. */
  readonly points: readonly TablePoint[]
  readonly kind: QuantityKind
  /** Of a row, from 0. */
  readonly tell: (row: number) => Tell
}

/** Faulty rows after which a table is read no further: a wrong unit spoils every row alike. */
const MOST_FAULTS = 20

/** @returns the rows; null where one is at fault, which is told */
export function readRows(rows: readonly WrittenRow[], { x, y }: RowKinds): ReadRows | null {
  const read: { row: WrittenRow; first: Value; second: Value }[] = []
  let faulty = 0
  for (const row of rows) {
    const [first, second] = [valueIn(row.x, [x], row.tell), valueIn(row.y, y, row.tell)]
    if (first !== null && second !== null) read.push({ row, first, second })
    else if (MOST_FAULTS <= ++faulty) break
  }
  const kind = read[0]?.second.kind
  if (kind === undefined || read.length < rows.length) return null
  const other = read.find(({ second }) => second.kind !== kind)
  if (other !== undefined) {
    other.row.tell(
      'quantity-unit',
      `this row gives ${KINDS[other.second.kind].title}, and the first gives ${KINDS[kind].title}`,
      `write all rows in one unit, such as ${KINDS[kind].stored}`,
    )
    return null
  }
  return {
    points: read.map(({ first, second }) => ({ x: first.value, y: second.value })),
    kind,
    tell: (row) => read[row]?.row.tell ?? UNTOLD,
  }
}

/** Rows of the study's own file: "1.5 h, 6.31 mW". */
export function ownRows(texts: readonly string[], pointer: string, report: FileReport): WrittenRow[] | null {
  const rows = texts.flatMap((text, place): WrittenRow[] => {
    const at = `${pointer}/${place}`
    const [x, y, ...more] = text.split(',')
    if (x !== undefined && y !== undefined && more.length === 0)
      return [{ x: x.trim(), y: y.trim(), tell: (code, message, mend) => report.at(at, code, message, mend) }]
    report.at(
      at,
      'schema',
      `found "${shortened(text)}"; two quantities with one comma between them were expected`,
      'write decimals with a point and one comma between the two: 1.5 h, 6.31 mW',
    )
    return []
  })
  return rows.length < texts.length ? null : rows
}

/** Rows that exist have a teller; this one stands for those that do not. */
const UNTOLD: Tell = () => undefined

interface Value {
  readonly value: number
  readonly kind: QuantityKind
}

function valueIn(text: string, kinds: readonly QuantityKind[], tell: Tell): Value | null {
  const all = kinds.map((kind) => readQuantity(text, kind))
  const found = all.find((one) => !isFault(one))
  if (found === undefined || isFault(found)) {
    const [fault] = all
    if (fault !== undefined && isFault(fault)) {
      const { code, message, mend } = quantityFault(fault, kinds)
      tell(code, message, mend)
    }
    return null
  }
  const bounds = found.kind === 'temperature' ? undefined : BOUNDS[found.kind]
  if (bounds !== undefined && !within(found.value, bounds)) {
    tell('quantity-range', ...rangeWords(`"${shortened(text)}"`, found.kind, bounds))
    return null
  }
  if (found.censored === undefined) return found
  tell('quantity-bound', `"${text}" is a bound, and the table is computed with`, 'write the reading itself')
  return null
}
