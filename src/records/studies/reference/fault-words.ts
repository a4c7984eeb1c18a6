/** What is said of readings that give no figure. */
import type { ReferenceFault, TablePlace } from '../../../core/studies/reference/reference-fault.ts'
import { plural, shortNumber } from '../../../words/numbers.ts'
import type { Code } from '../../diagnostics/codes.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import type { ReadRows } from './reading-rows.ts'

const PLACES: Readonly<Record<TablePlace, string>> = {
  start: 'the start',
  at: 'the age',
  table: 'the table',
  water: 'the step of the water',
  carbonate: 'the step of the carbon dioxide',
  before: 'the tangent before the step',
  after: 'the tangent after the step',
}

/** Where a fault is told: at the row of its table, or at the part of the test that is at fault. */
export interface FaultPlace {
  /** Of the test. */
  readonly pointer: string
  readonly report: FileReport
  /** null for a test without a table. */
  readonly rows: ReadRows | null
}

export function tellFault(found: ReferenceFault, { pointer, report, rows }: FaultPlace): void {
  const told = faultWords(found)
  if (found.fault === 'not-increasing' && rows !== null) rows.tell(found.row)(...told)
  else report.at(`${pointer}${placeOf(found)}`, ...told)
}

function placeOf(found: ReferenceFault): string {
  switch (found.fault) {
    case 'crucible-order':
      return `/crucibles/${found.place}`
    case 'blank-below-sample':
      return '/blank-volume'
    case 'aliquot-above-total':
      return '/aliquot'
    case 'outside-blanks':
    case 'blanks-alike':
      return '/baseline'
    case 'ends-before-start':
      return '/start'
    case 'not-increasing':
      return ''
    default:
      return PARTS[found.what]
  }
}

const PARTS: Readonly<Record<TablePlace, string>> = {
  start: '/start',
  at: '/age',
  table: '',
  water: '/water',
  carbonate: '/carbonate',
  before: '/tangents/before',
  after: '/tangents/after',
}

/** Code, message and mend. */
function faultWords(found: ReferenceFault): readonly [Code, string, string] {
  switch (found.fault) {
    case 'not-increasing':
      return [
        'reading-order',
        `the ${found.of} of this row is not beyond that of the row before it`,
        `write the rows in order of ${found.of}, each ${found.of} once`,
      ]
    case 'outside-table':
      return [
        'reading-outside',
        `${PLACES[found.what]} asks for ${figure(found.asked)}, and the readings run from ${figure(found.first)} to ${figure(found.last)} ${unitOf(found.what)}; nothing is read beyond them`,
        'add the readings, or ask within them',
      ]
    case 'few-rows':
      return [
        'reading-outside',
        `${PLACES[found.what]} has ${plural(found.rows, 'reading', 'readings')} and needs ${found.least}`,
        'add readings, or widen the range',
      ]
    case 'ends-before-start':
      return [
        'reading-order',
        `the age of ${figure(found.at)} h is not beyond the start of ${figure(found.start)} h`,
        'correct one of the two',
      ]
    case 'range-backwards':
      return [
        'reading-order',
        `${PLACES[found.what]} runs from ${figure(found.from)} to ${figure(found.to)} °C`,
        'write the lower temperature first, and the tangent before the step below the one after it',
      ]
    case 'outside-blanks':
      return [
        'reading-outside',
        `the baseline is asked for at ${figure(found.asked)} h, and its blank readings run from ${figure(found.first)} to ${figure(found.last)} h; a drift is not carried beyond them`,
        'add a blank reading before the start and after the age, or give one alone, which holds throughout',
      ]
    case 'blanks-alike':
      return [
        'reading-order',
        'the second blank reading is not later than the first',
        'write the blank readings in order of time',
      ]
    case 'crucible-order':
      return [
        'reading-order',
        found.wrong === 'crucible'
          ? 'the crucible with the ignited paste is not heavier than the empty one'
          : 'the crucible weighs more after ignition than with the dried paste',
        'check the three masses: empty, then ignited, then dried, from the lightest to the heaviest',
      ]
    case 'negative-loss':
      return [
        'quantity-range',
        `${PLACES[found.what]} gains ${shortNumber(-found.lossMg, 3)} mg where mass should be lost`,
        'check the masses and the temperatures of the step',
      ]
    case 'blank-below-sample':
      return [
        'reading-order',
        `the blank took ${shortNumber(found.blankMl, 2)} mL of acid and the sample ${shortNumber(found.sampleMl, 2)} mL, which would be lime given off`,
        'check which volume is the blank’s, and the lime of both',
      ]
    case 'aliquot-above-total':
      return [
        'reading-order',
        `the aliquot of ${figure(found.aliquotMl)} mL is larger than the suspension of ${figure(found.totalMl)} mL`,
        'check the two volumes',
      ]
  }
}

function unitOf(what: TablePlace): string {
  return what === 'start' || what === 'at' ? 'h' : '°C'
}

function figure(value: number): string {
  return shortNumber(value, 2)
}
