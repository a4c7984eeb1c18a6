/** What the next cubes of a batch must carry so that the index meets the limit, and that the batch keeps its range. */
import { type Comparison, type Criterion, everyClause } from '../../core/criteria/criterion.ts'
import { type ClassLimit, limitsForClass, statedLimit } from '../../core/criteria/limits-for-class.ts'
import { effectiveEnds } from '../../core/judging/effective-ends.ts'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { type RangeRule, rangeRule } from '../../core/mortar/batch-range.ts'
import { crossSectionMm2 } from '../../core/mortar/cross-section.ts'
import { exclusionOn } from '../../core/mortar/known-when.ts'
import { isQuantity, type MortarCondition, type StrengthReading } from '../../core/mortar/mortar.ts'
import { assumedCube, withMould } from '../../core/mortar/moulds.ts'
import { controlOf } from '../../core/mortar/stated-control.ts'
import { controlReadings } from '../../core/readings/control-readings.ts'
import { readingAt } from '../../core/readings/judged-readings.ts'
import { COMPRESSIVE_STRENGTH, specimenStrength } from '../../core/strength/compressive-strength.ts'
import { neededOfRest } from '../../core/strength/needed-of-rest.ts'
import { mouldInForce } from '../../edition/passes/lot-results.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { NextSpecimens } from '../../words/next-specimens.ts'

type Test = NonNullable<Lot['tests']>[number]

/** Of which batch, with what is said of it. */
export interface NextOfBatch extends NextSpecimens {
  readonly condition: string
}

interface Asked {
  readonly records: Records
  readonly lotClass: string | null
  readonly asOf: Moment
}

/** One for each batch of which some specimens were tested, and not all. */
export function nextSpecimens(lot: Lot, criterion: Criterion | undefined, asked: Asked): NextOfBatch[] {
  return (lot.tests ?? []).flatMap((test) =>
    (test.strength ?? []).flatMap((reading) => ofReading(test, reading, criterion, asked) ?? []),
  )
}

function ofReading(
  test: Test,
  reading: StrengthReading,
  criterion: Criterion | undefined,
  asked: Asked,
): NextOfBatch | undefined {
  const { records, asOf } = asked
  const described = records.conditions.get(test.condition)
  if (described === undefined || reading.specimens === undefined) return undefined
  const mould = test.mould ?? mouldInForce(records, test.laboratory, test.cast)
  const condition = withMould(described, mould)
  const counting = Object.values(reading.specimens).filter(
    (specimen) => isQuantity(specimen) || exclusionOn(specimen, asOf) === undefined,
  )
  const values = counting.map((specimen) => specimenStrength(specimen, condition.strength?.specimen).value)
  const read = values.filter((value) => value !== null)
  const rules = (COMPRESSIVE_STRENGTH.rangeRulesOf?.(condition) ?? []).map(rangeRule)
  const planned = plannedNumber(condition, rules)
  const limit = read.length < values.length ? undefined : limitOn(test, reading.age, criterion, asked)
  const mean = limit === undefined ? undefined : (limit.from * limit.controlMPa) / 100
  const needed = neededOfRest(read, planned, mean, rules)
  if (needed === undefined) return undefined
  const load = loadOf(counting[0])
  return {
    condition: test.condition,
    age: reading.age,
    ...{ read: read.length, planned, needed },
    areaMm2: load === undefined ? null : areaOf(condition, load.unit),
    ...(load === undefined ? {} : { load }),
    ...(limit === undefined ? {} : { limit }),
  }
}

function plannedNumber(condition: MortarCondition, rules: readonly RangeRule[]): number {
  return condition.strength?.specimens?.planned ?? Math.max(0, ...rules.map(({ of }) => of))
}

type Specimen = NonNullable<StrengthReading['specimens']>[string]

function loadOf(specimen: Specimen | undefined): NextOfBatch['load'] {
  if (specimen === undefined) return undefined
  const read = isQuantity(specimen) ? specimen : (specimen.load ?? specimen.strength)
  return read?.kind === 'force' ? { unit: read.unit, decimals: read.decimals } : undefined
}

function areaOf({ strength }: MortarCondition, unit: string): number | null {
  return crossSectionMm2(assumedCube({ unit }, strength?.specimen) ?? strength?.specimen)
}

/** The limit from below that the set puts on the index at this condition and age, with the control's strength. */
function limitOn(
  test: Test,
  age: Age,
  criterion: Criterion | undefined,
  { records, lotClass, asOf }: Asked,
): NextOfBatch['limit'] {
  const clause = criterion === undefined ? undefined : clauseOn(criterion, test.condition, age, lotClass)
  const control = controlOf(test, records)
  if (clause === undefined || control === undefined) return undefined
  const described = records.conditions.get(control.condition) ?? records.conditions.get(test.condition)
  if (described === undefined) return undefined
  const condition = withMould(
    described,
    control.mould ?? mouldInForce(records, control.laboratory, control.cast),
  )
  const against = readingAt(controlReadings(COMPRESSIVE_STRENGTH, control, condition, asOf), age)
  const controlMPa = against?.specimens.mean ?? null
  const { low } = effectiveEnds(clause.limit, clause.resolution)
  if (controlMPa === null || low === undefined) return undefined
  return { ...statedLimit(clause.limit), from: low.at, controlMPa }
}

function clauseOn(
  criterion: Criterion,
  condition: string,
  age: Age,
  lotClass: string | null,
): { readonly limit: ClassLimit; readonly resolution: Comparison['resolution'] } | undefined {
  for (const clause of everyClause(criterion.clauses)) {
    if (clause.form !== 'comparison' || clause.property !== COMPRESSIVE_STRENGTH.index) continue
    if (clause.condition !== condition || !isSameAge(age, clause.age) || clause.deviation !== undefined)
      continue
    const limit = limitsForClass(clause.limits, lotClass).find(
      ({ operator }) => operator === 'at-least' || operator === 'above',
    )
    if (limit !== undefined) return { limit, resolution: clause.resolution }
  }
  return undefined
}
