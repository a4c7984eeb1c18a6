/** Reference tests of a study's materials: their readings in stored units, with every fault that keeps a figure from them. */
import { KINDS, type Quantity, type QuantityKind } from '../../../core/measure/units.ts'
import {
  type ReferenceFound,
  referenceFound,
  type ReferenceTest,
} from '../../../core/studies/reference/reference-tests.ts'
import { isReferenceFault } from '../../../core/studies/reference/reference-fault.ts'
import { plainNumber } from '../../../words/numbers.ts'
import { checkDate } from '../../checks/dates.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import type { MaterialReference, Study } from '../../schema/loaded-records.ts'
import { below } from '../../yaml/pointer.ts'
import { tellFault } from './fault-words.ts'
import { checkQuantities } from './possible-quantities.ts'
import { consumptionOf } from './consumption-readings.ts'
import type { PlacedReadings, TestPlace } from './placed-readings.ts'
import { fixationOf, heatOf, limeStrengthOf, pozzolanicityOf, waterOf } from './test-readings.ts'
import type { ReferenceTables } from './reference-tables.ts'

/**
 * Reference tests of all materials of a study.
 * @param report takes the faults of the study; those of its tables are told by their own lines
 * @returns those without a fault
 */
export function referenceTests(study: Study, tables: ReferenceTables, report: FileReport): ReferenceTest[] {
  checkRegions(study, report)
  return Object.entries(study.materials).flatMap(([material, { reference }]) =>
    reference === undefined
      ? []
      : testsOf(reference, {
          ...{ material, tables, report },
          pointer: `${below('/materials', material)}/reference`,
        }).filter((test) => agreesWithStated(study, test, report)),
  )
}

function testsOf(reference: MaterialReference, at: TestPlace): ReferenceTest[] {
  return (Object.keys(READERS) as (keyof MaterialReference)[]).flatMap((key): ReferenceTest[] => {
    const entry = reference[key]
    if (entry === undefined) return []
    const place = { ...at, pointer: `${at.pointer}/${key}` }
    const before = at.report.count()
    checkQuantities(entry, place.pointer, at.report)
    checkDate(entry.tested, `${place.pointer}/tested`, at.report)
    if (key === 'bound-water') checkIgnition(reference, place)
    const read = READERS[key](reference, place)
    // With an impossible quantity nothing is computed; its rows have been read for the faults of their own.
    if (before < at.report.count() || read === null || !givesFigure(read, place)) return []
    const { method = '', age = null, tested = null } = entry
    return [{ ...read.of, material: at.material, method, age, tested }]
  })
}

/** A paste that is dried hotter than it is ignited loses nothing more. */
function checkIgnition({ 'bound-water': entry }: MaterialReference, { pointer, report }: TestPlace): void {
  const { 'dried-at': dried, 'ignited-at': ignited } = entry ?? {}
  if (dried === undefined || ignited === undefined || dried.value < ignited.value) return
  report.at(
    `${pointer}/dried-at`,
    'reading-order',
    `the paste is dried at ${dried.written} and ignited at ${ignited.written}, which is no hotter`,
    'check both temperatures',
  )
}

type Reader = (reference: MaterialReference, at: TestPlace) => PlacedReadings | null

const READERS: Readonly<Record<keyof MaterialReference, Reader>> = {
  heat: ({ heat }, at) => (heat === undefined ? null : heatOf(heat, at)),
  'calcium-hydroxide': ({ 'calcium-hydroxide': entry }, at) =>
    entry === undefined ? null : consumptionOf(entry, at),
  'bound-water': ({ 'bound-water': entry }) => (entry === undefined ? null : waterOf(entry)),
  'calcium-hydroxide-fixed': ({ 'calcium-hydroxide-fixed': entry }) =>
    entry === undefined ? null : fixationOf(entry),
  'lime-strength': ({ 'lime-strength': entry }, at) =>
    entry === undefined ? null : limeStrengthOf(entry, at),
  pozzolanicity: ({ pozzolanicity: entry }) => (entry === undefined ? null : pozzolanicityOf(entry)),
}

/** Whether readings give a figure; where they do not, it is told at the row or the test that is at fault. */
function givesFigure({ of, rows }: PlacedReadings, { pointer, report }: TestPlace): boolean {
  const found = referenceFound(of)
  if (!isReferenceFault(found)) return true
  tellFault(found, { pointer, report, rows })
  return false
}

/** A figure that the material states beside readings of the same must be theirs, to its last digit. */
function agreesWithStated(study: Study, test: ReferenceTest, report: FileReport): boolean {
  const key =
    test.test === 'heat' ? 'heat' : test.test === 'calcium-hydroxide-consumed' ? 'calcium-hydroxide' : null
  const stated = key === null ? undefined : study.materials[test.material]?.[key]
  const found = referenceFound(test)
  if (key === null || stated === undefined || isReferenceFault(found)) return true
  const value = figureOf(found)
  if (value === null || Math.abs(value - stated.value) <= halfDigit(stated)) return true
  const unit = key === 'heat' ? 'J/g' : 'g/100 g'
  report.at(
    `${below('/materials', test.material)}/${key}`,
    'figure-off-readings',
    `the material states ${stated.written}, and its readings give ${plainNumber(value, stated.decimals + 1)} ${unit}`,
    'correct the readings, or leave the figure out, since it is computed from them',
  )
  return false
}

function figureOf(found: ReferenceFound): number | null {
  return found.test === 'pozzolanicity' ? null : found.found.value
}

/** Half a unit of the last digit as written, in the stored unit. */
function halfDigit({ kind, unit, decimals }: Quantity): number {
  const { factor = 1 } = unitsOf(kind).find(({ symbol }) => symbol === unit) ?? {}
  return 0.5 * 10 ** -decimals * factor * (1 + 1e-9)
}

function unitsOf(kind: QuantityKind) {
  return KINDS[kind].units
}

function checkRegions({ regions }: Study, report: FileReport): void {
  for (const [place, region] of (regions?.list ?? []).entries()) {
    checkQuantitiesOf(region, `/regions/list/${place}`, report)
    for (const axis of ['heat', 'calcium-hydroxide'] as const) {
      const { from, below: end } = region[axis] ?? {}
      if (from !== undefined && end !== undefined && end.value <= from.value)
        report.at(
          `/regions/list/${place}/${axis}`,
          'reading-order',
          `the region "${region.name}" begins at ${from.written} and ends below ${end.written}`,
          'write the smaller of the two under from',
        )
    }
  }
}

/** Bounds have no place on the edge of a region; nothing and less may be its edge. */
function checkQuantitiesOf(
  region: NonNullable<Study['regions']>['list'][number],
  pointer: string,
  report: FileReport,
): void {
  for (const axis of ['heat', 'calcium-hydroxide'] as const)
    for (const [end, quantity] of Object.entries(region[axis] ?? {}))
      if (quantity.censored !== undefined)
        report.at(
          `${pointer}/${axis}/${end}`,
          'quantity-bound',
          `"${quantity.written}" is a bound, and a boundary is one figure`,
          'write the figure alone',
        )
}
