/** The site's table of precision: each row in units of its property, and one scatter each. */
import { scatterKind } from '../../core/agency/precision.ts'
import { property } from '../../core/measure/properties.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../core/measure/units.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { reportQuantity } from '../schema/quantity-faults.ts'
import type { Site } from '../schema/loaded-records.ts'
import { type AllRecords, checkReference } from './references.ts'
import { checkScatterBound } from './scatter-bound.ts'

export function checkPrecision({ precision = [] }: Site, all: AllRecords, report: FileReport): void {
  for (const [index, row] of precision.entries()) {
    const at = `/precision/${index}`
    checkReference('condition', row.condition, `${at}/condition`, all, report)
    checkScatter(row, at, report)
    checkRange(row, at, report)
  }
}

type Row = NonNullable<Site['precision']>[number]

function checkScatter(row: Row, at: string, report: FileReport): void {
  const { 'standard-deviation': deviation, 'coefficient-of-variation': variation } = row
  if (deviation === undefined && variation === undefined)
    report.atKey(
      at,
      'key-missing',
      'the row states neither a standard deviation nor a coefficient of variation',
      'add standard-deviation, in the unit of the property, or coefficient-of-variation, in per cent',
    )
  if (deviation !== undefined && variation !== undefined)
    report.at(
      `${at}/coefficient-of-variation`,
      'schema',
      'the row states a standard deviation and a coefficient of variation, and only one of them can hold',
      'keep the one that the method states for this range',
    )
  const read = quantityAt(`${at}/standard-deviation`, deviation, scatterKind(row.property), report)
  if (read !== undefined) checkScatterBound(row.property, read, `${at}/standard-deviation`, report)
  for (const [value, key] of [
    [read?.value, 'standard-deviation'],
    [variation?.value, 'coefficient-of-variation'],
  ] as const)
    if (value !== undefined && value <= 0)
      report.at(
        `${at}/${key}`,
        'quantity-range',
        'two laboratories never agree without any scatter',
        'write a value above zero',
      )
}

function checkRange(row: Row, at: string, report: FileReport): void {
  const { kind } = property(row.property)
  const from = quantityAt(`${at}/from`, row.from, kind, report)
  const to = quantityAt(`${at}/to`, row.to, kind, report)
  if (from !== undefined && to !== undefined && to.value < from.value)
    report.at(
      `${at}/to`,
      'quantity-range',
      `the range ends at ${row.to}, below its beginning at ${row.from}`,
      'write the smaller value under from and the larger under to',
    )
}

/** Which unit is meant the schema cannot say, for it depends on the property. */
function quantityAt(
  pointer: string,
  text: string | undefined,
  kind: QuantityKind,
  report: FileReport,
): Quantity | undefined {
  if (text === undefined) return undefined
  const read = readQuantity(text, kind)
  if (!isFault(read)) return read
  reportQuantity(pointer, read, [kind], report)
  return undefined
}
