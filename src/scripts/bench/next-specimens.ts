/**
 * What the specimens of a batch that are still to be tested must give so that mean or index meets the limit, and that the
 * batch keeps its range: cubes to crush, and specimens to read between plates.
 */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { Age } from '../../core/measure/age.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { type RangeRule, rangeRule } from '../../core/mortar/batch-range.ts'
import { crossSectionMm2, electrodeDistanceMm } from '../../core/mortar/cross-section.ts'
import { exclusionOn } from '../../core/mortar/known-when.ts'
import type { MortarMeasurement } from '../../core/mortar/mortar-measurement.ts'
import {
  isQuantity,
  type MortarCondition,
  type ResistivityReading,
  type StrengthReading,
} from '../../core/mortar/mortar.ts'
import { assumedCube, withMould } from '../../core/mortar/moulds.ts'
import { neededOfRest } from '../../core/mortar/needed-of-rest.ts'
import { controlOf } from '../../core/mortar/stated-control.ts'
import { controlReadings } from '../../core/readings/control-readings.ts'
import { type JudgedReading, readingAt } from '../../core/readings/judged-readings.ts'
import { BULK_RESISTIVITY } from '../../core/resistivity/resistivity-measurement.ts'
import { COMPRESSIVE_STRENGTH } from '../../core/strength/compressive-strength.ts'
import { mouldInForce } from '../../edition/passes/lot-results.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { NextSpecimens } from '../../words/next-specimens.ts'
import { lowerLimitOn } from './lower-limit.ts'

type Test = NonNullable<Lot['tests']>[number]
type Reading = StrengthReading | ResistivityReading

/** Of which batch, with what is said of it. */
export interface NextOfBatch extends NextSpecimens {
  readonly condition: string
}

interface Asked {
  readonly records: Records
  readonly lotClass: string | null
  readonly asOf: Moment
}

/** One test at one age, with what its specimens are computed by. */
interface Batch {
  readonly of: NextSpecimens['of']
  readonly measurement: MortarMeasurement
  readonly test: Test
  readonly reading: Reading
  readonly condition: MortarCondition
}

/**
 * One for each batch of which not all specimens were tested; of one without any, where the set asks for a mean or the
 * control has one. First those crushed.
 */
export function nextSpecimens(lot: Lot, criterion: Criterion | undefined, asked: Asked): NextOfBatch[] {
  return (lot.tests ?? []).flatMap((test) => {
    const condition = conditionOf(test, test.condition, asked.records)
    if (condition === undefined) return []
    return [
      ...(test.strength ?? []).map(
        (reading): Batch => ({ of: 'strength', measurement: COMPRESSIVE_STRENGTH, test, reading, condition }),
      ),
      ...(test.resistivity ?? []).map(
        (reading): Batch => ({ of: 'resistivity', measurement: BULK_RESISTIVITY, test, reading, condition }),
      ),
    ].flatMap((batch) => ofBatch(batch, criterion, asked) ?? [])
  })
}

type MadeMortar = Pick<Test, 'laboratory' | 'cast' | 'mould'>

function conditionOf(mortar: MadeMortar, id: string, records: Records): MortarCondition | undefined {
  const described = records.conditions.get(id)
  return (
    described && withMould(described, mortar.mould ?? mouldInForce(records, mortar.laboratory, mortar.cast))
  )
}

function ofBatch(batch: Batch, criterion: Criterion | undefined, asked: Asked): NextOfBatch | undefined {
  const { of, measurement, test, reading, condition } = batch
  if (reading.mean !== undefined) return undefined
  const counting = Object.values(reading.specimens ?? {}).filter(
    (specimen) => isQuantity(specimen) || exclusionOn(specimen, asked.asOf) === undefined,
  )
  const values = counting.map((specimen) => measurement.specimenOf(specimen, reading, condition))
  // Beyond the meter nothing is known that could be averaged.
  if (values.some(({ above }) => above === true)) return undefined
  const read = values.flatMap(({ value }) => value ?? [])
  const rules = (measurement.rangeRulesOf?.(condition) ?? []).map(rangeRule)
  const control = controlAt(batch, asked)
  const planned = plannedNumber(batch, rules)
  const number = planned ?? control?.reading.specimens
  const isWhole = read.length === values.length
  const limit = isWhole ? limitOf(batch, criterion, { control, lotClass: asked.lotClass }) : undefined
  const needed = neededOfRest(read, numberOf(number), limit?.meanFrom, rules)
  if (needed === undefined) return undefined
  const asRead = readAs(batch, counting[0] ?? otherSpecimen(batch, control))
  return {
    condition: test.condition,
    ...{ of, age: reading.age, read: read.length, planned: numberOf(number), needed },
    ...(planned === undefined ? { asControl: true as const } : {}),
    ...(asRead === undefined ? {} : { asRead }),
    ...(limit === undefined ? {} : { limit: limit.stated }),
  }
}

function numberOf(planned: number | Readonly<Record<string, unknown>> | undefined): number {
  return typeof planned === 'object' ? Object.keys(planned).length : (planned ?? 0)
}

/** Specimens that the condition asks for; undefined where it does not say. */
function plannedNumber({ measurement, condition }: Batch, rules: readonly RangeRule[]): number | undefined {
  const asked = measurement.specimenCountOf?.(condition)
  const largest = Math.max(0, ...rules.map(({ of }) => of))
  return asked?.planned ?? (0 < largest ? largest : asked?.['at-least'])
}

function controlAt(
  { measurement, test, reading }: Batch,
  { records, asOf }: Asked,
): JudgedReading | undefined {
  const control = controlOf(test, records)
  if (control === undefined) return undefined
  const condition =
    conditionOf(control, control.condition, records) ?? conditionOf(control, test.condition, records)
  return condition && readingAt(controlReadings(measurement, control, condition, asOf), reading.age)
}

interface Against {
  readonly control: JudgedReading | undefined
  readonly lotClass: string | null
}

/** The limit on the index, else on the mean itself, with the mean that meets it. */
function limitOf(
  { measurement, test, reading }: Batch,
  criterion: Criterion | undefined,
  { control, lotClass }: Against,
): { readonly stated: NonNullable<NextSpecimens['limit']>; readonly meanFrom: number } | undefined {
  if (criterion === undefined) return undefined
  const at = (property: typeof measurement.index, age: Age) =>
    lowerLimitOn(criterion, { property, condition: test.condition, age, lotClass })
  const onIndex = at(measurement.index, reading.age)
  const mean = control?.specimens.mean ?? null
  if (onIndex !== undefined && mean !== null)
    return {
      stated: { ...onIndex, onIndex: true, control: mean },
      meanFrom: (onIndex.from * mean) / 100,
    }
  const onMean = at(measurement.property, reading.age)
  return onMean && { stated: { ...onMean, onIndex: false }, meanFrom: onMean.from }
}

/** One of another age, or of the control: it was read in the unit that the next one will be. */
function otherSpecimen({ measurement, test }: Batch, control: JudgedReading | undefined) {
  const others = [
    ...(measurement.readingsOf(test) ?? []),
    ...(control === undefined ? [] : [control.reading]),
  ]
  return others.flatMap(({ specimens }) => Object.values(specimens ?? {}))[0]
}

/** How the value of a specimen reads on the machine or the meter; undefined where values themselves are on record. */
function readAs(
  { of, reading, condition }: Batch,
  specimen: NonNullable<Reading['specimens']>[string] | undefined,
): NextSpecimens['asRead'] {
  if (specimen === undefined) return undefined
  const read: Quantity | undefined = isQuantity(specimen)
    ? specimen
    : 'load' in specimen
      ? specimen.load
      : 'resistance' in specimen
        ? specimen.resistance
        : undefined
  if (read === undefined) return undefined
  const { unit, decimals } = read
  if (of === 'strength' && read.kind === 'force') {
    const shape = condition.strength?.specimen
    const areaMm2 = crossSectionMm2(assumedCube({ unit }, shape) ?? shape)
    return areaMm2 === null ? undefined : { kind: 'force', unit, decimals, factor: areaMm2 / 1000, plus: 0 }
  }
  const shape = condition.resistivity?.specimen
  const [areaMm2, lengthMm] = [crossSectionMm2(shape), electrodeDistanceMm(shape)]
  if (read.kind !== 'resistance' || areaMm2 === null || lengthMm === null) return undefined
  const contacts = 'end-contact' in reading ? (reading['end-contact']?.value ?? 0) : 0
  return { kind: 'resistance', unit, decimals, factor: (1000 * lengthMm) / areaMm2, plus: contacts }
}
