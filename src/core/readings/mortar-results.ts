/** A test mortar against its control: strength, resistivity, their indices, water requirement. */
import { activityIndex } from '../strength/activity-index.ts'
import { countedOhmMetre } from '../resistivity/bulk-resistivity.ts'
import { countedStrengthsMPa } from '../strength/compressive-strength.ts'
import { controlFaults } from '../mortar/control-faults.ts'
import { controlReadings } from './control-readings.ts'
import {
  type ReadResistivity,
  type ReadStrength,
  readResistivities,
  readStrengths,
  resistivityResult,
  strengthResult,
  taken,
  unmade,
} from './control-results.ts'
import { flowApart } from '../mortar/flow-apart.ts'
import {
  type ControlMortar,
  kindOfSample,
  type LotEvidence,
  type MortarCondition,
  type TestMortar,
} from '../mortar/mortar.ts'
import { dateOf } from '../measure/moment.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import {
  type Interval,
  intervalWords,
  resistivityInterval,
  strengthInterval,
} from '../statistics/ratio-interval.ts'
import { celsius } from '../resistivity/reading-faults.ts'
import { resistivityIndex } from '../resistivity/resistivity-index.ts'
import { resultKey } from '../result/result-key.ts'
import { isMade, type Result, type UnmadeResult, type WorkingLine } from '../result/result.ts'
import { waterRequirement } from '../mortar/water-requirement.ts'
import { correctedLine, resistivityLines, strengthLines } from '../../words/working-lines.ts'

interface Pair {
  readonly test: TestMortar
  readonly control: ControlMortar
  readonly condition: MortarCondition
  readonly lot: LotEvidence
  readonly common: Common
}
type Common = Pick<Result, 'condition' | 'laboratory' | 'sample' | 'sampleKind' | 'role' | 'begun'>

/**
 * All results of one test mortar, and tests of it that gave no value; none where its condition or control is
 * not on record.
 */
export function mortarResults(test: TestMortar, lot: LotEvidence): (Result | UnmadeResult)[] {
  const condition = lot.conditions.get(test.condition)
  const control = lot.controls.get(test.control)
  if (condition === undefined || control === undefined || lot.asOf < dateOf(test.cast)) return []
  const common = {
    condition: test.condition,
    laboratory: test.laboratory,
    sample: test.sample,
    sampleKind: kindOfSample(test.sample, lot),
    role: 'producer' as const,
    begun: test.cast,
  }
  const pair = { test, control, condition, lot, common }
  return [...strengthResults(pair), ...resistivityResults(pair), ...waterResults(pair)]
}

function strengthResults(pair: Pair): (Result | UnmadeResult)[] {
  const { test, control, condition, lot, common } = pair
  const own = readStrengths(taken(test.strength, lot.asOf), test.cast, condition)
  const against = controlReadings(control, condition, lot.asOf).strengths
  return own.flatMap((read) => {
    const method = lot.methodOf(test.laboratory, 'compressive-strength', read.reading.tested ?? test.cast)
    const beside = preferred(ofAge(against, read.reading.age))
    return [
      withControl(strengthResult(read, { ...common, method }), beside?.batch.meanMPa),
      ...strengthIndex(pair, read, beside),
    ]
  })
}

/** The control's mean beside the test's own, for clauses on their difference. */
function withControl(
  result: Result | UnmadeResult,
  controlValue: number | null | undefined,
): Result | UnmadeResult {
  return controlValue === null || controlValue === undefined || !isMade(result)
    ? result
    : { ...result, controlValue }
}

function ofAge<T extends { readonly reading: { readonly age: string } }>(
  read: readonly T[],
  age: string,
): T[] {
  return read.filter(({ reading }) => reading.age === age)
}

interface Mean {
  readonly mean: number | null
  readonly reasons: readonly string[]
}

/** Why no ratio follows from two means; empty where one does. */
function noRatio(test: Mean, control: Mean & { readonly id: string }): string[] {
  if (test.mean === null) return [...test.reasons]
  if (control.mean === null) return control.reasons.map((reason) => `control ${control.id}: ${reason}`)
  return 0 < control.mean
    ? []
    : [`control ${control.id}: its mean is not above zero, so no index can be taken against it`]
}

/** The control reading to divide by: a valid one before one that is not, the last of several. */
function preferred<T extends { readonly valid: boolean }>(readings: readonly T[]): T | undefined {
  return readings.findLast((reading) => reading.valid) ?? readings.at(-1)
}

function strengthIndex(
  pair: Pair,
  own: ReadStrength,
  against: ReadStrength | undefined,
): (Result | UnmadeResult)[] {
  if (against === undefined) return []
  const [meanMPa, controlMPa] = [own.batch.meanMPa, against.batch.meanMPa]
  const faults = noRatio(
    { mean: meanMPa, reasons: own.reasons },
    { mean: controlMPa, reasons: against.reasons, id: pair.test.control },
  )
  if (meanMPa === null || controlMPa === null || faults.length > 0) {
    return [unmade('strength-activity-index', own.reading, pair.common, faults)]
  }
  const value = activityIndex(meanMPa, controlMPa)
  const interval = strengthInterval(countedStrengthsMPa(own.batch), countedStrengthsMPa(against.batch))
  return [
    indexResult('strength-activity-index', value, pair, { own, against, n: own.batch.n, interval }, () => [
      ...strengthLines('test', own.batch),
      ...strengthLines('control', against.batch),
      {
        label: 'index',
        expression: `100 × ${meanMPa.toFixed(2)} / ${controlMPa.toFixed(2)}`,
        value,
        unit: '%',
        decimals: 1,
        source: 'ASTM C311, index = 100 A/B (from memory)',
      },
      driftLine(value, 2),
      ...intervalLine(interval, 1),
    ]),
  ]
}

function resistivityResults(pair: Pair): (Result | UnmadeResult)[] {
  const { test, control, condition, lot, common } = pair
  const own = readResistivities(taken(test.resistivity, lot.asOf), test.cast, condition)
  const against = controlReadings(control, condition, lot.asOf).resistivities
  return own.flatMap((read) => {
    const method = lot.methodOf(test.laboratory, 'bulk-resistivity', read.reading.tested ?? test.cast)
    const beside = preferred(ofAge(against, read.reading.age))
    return [
      withControl(resistivityResult(read, { ...common, method }), beside?.batch.meanOhmMetre),
      ...resistivityRatio(pair, read, beside),
    ]
  })
}

function resistivityRatio(
  pair: Pair,
  own: ReadResistivity,
  against: ReadResistivity | undefined,
): (Result | UnmadeResult)[] {
  if (against === undefined) return []
  const [meanOhmMetre, controlOhmMetre] = [own.batch.meanOhmMetre, against.batch.meanOhmMetre]
  const faults = noRatio(
    { mean: meanOhmMetre, reasons: own.reasons },
    { mean: controlOhmMetre, reasons: against.reasons, id: pair.test.control },
  )
  if (meanOhmMetre === null || controlOhmMetre === null || faults.length > 0) {
    return [unmade('resistivity-index', own.reading, pair.common, faults)]
  }
  const value = resistivityIndex(meanOhmMetre, controlOhmMetre)
  const interval = resistivityInterval(countedOhmMetre(own.batch), countedOhmMetre(against.batch))
  const apart = temperaturesApart(own, against, pair)
  return [
    indexResult(
      'resistivity-index',
      value,
      pair,
      { own, against, n: own.batch.n, faults: apart, interval },
      () => [
        ...resistivityLines('test', own.batch),
        ...correctedLine(own.reading, own.batch, pair.condition),
        ...resistivityLines('control', against.batch),
        ...correctedLine(against.reading, against.batch, pair.condition),
        {
          label: 'index',
          expression: `100 × ${meanOhmMetre.toFixed(2)} / ${controlOhmMetre.toFixed(2)}`,
          value,
          unit: '%',
          decimals: 0,
          source: 'ratio of the means, same condition and age',
        },
        driftLine(value, 1),
        ...intervalLine(interval, 0),
      ],
    ),
  ]
}

/**
 * Conduction moves by about 2 % a degree, so test and control must be read at nearly one temperature (own
 * default where the condition sets none).
 */
function temperaturesApart(
  own: ReadResistivity,
  against: ReadResistivity,
  { condition, lot }: Pair,
): string[] {
  const [test, control] = [own.reading.temperature?.value, against.reading.temperature?.value]
  if (test === undefined || control === undefined) return []
  const allowed = condition.resistivity?.reading['control-and-test-within']?.value ?? lot.readWithin
  return Math.abs(test - control) <= allowed + 1e-9
    ? []
    : [
        `test read at ${celsius(test)} and control at ${celsius(control)}, more than ${celsius(allowed)} apart`,
      ]
}

function indexResult(
  key: PropertyKey,
  value: number,
  { test, control, condition, lot, common }: Pair,
  {
    own,
    against,
    n,
    interval,
    faults = [],
  }: {
    own: ReadStrength | ReadResistivity
    against: ReadStrength | ReadResistivity
    n: number
    interval: Interval | null
    faults?: readonly string[]
  },
  working: () => WorkingLine[],
): Result {
  const flow = flowApart(test, control, condition)
  const conditions =
    test.condition === control.condition ? [] : [`the control ${test.control} was made at another condition`]
  const made = controlFaults(
    test,
    control,
    condition,
    (asked) =>
      preferred(
        ofAge(controlReadings(control, condition, lot.asOf).strengths, asked).filter((read) => read.valid),
      )?.batch.meanMPa ?? undefined,
  )
  const blocking = [...faults, ...flow.faults, ...conditions, ...made.faults]
  const tested = [own.reading.tested ?? '', against.reading.tested ?? ''].sort().at(-1) ?? ''
  const method = lot.methodOf(test.laboratory, key, tested)
  const age = own.reading.age
  return {
    ...common,
    key: resultKey({ ...common, property: key, age, ...(method === undefined ? {} : { method }) }),
    property: key,
    age,
    ...(method === undefined ? {} : { method }),
    value,
    unit: '%',
    decimals: property(key).decimals,
    ...(interval === null ? {} : { interval }),
    n,
    tested,
    control: test.control,
    ...(own.batch.summaryOnly || against.batch.summaryOnly ? { summaryOnly: true as const } : {}),
    valid: own.valid && against.valid && blocking.length === 0,
    reasons: [
      ...own.reasons,
      ...against.reasons.map((reason) => `control ${test.control}: ${reason}`),
      ...blocking,
      ...flow.notes,
      ...made.notes,
    ],
    working,
  }
}

/** An index falls as its control rises: d(100 A/B) = −100 A/B · dB/B. */
function driftLine(index: number, decimals: number): WorkingLine {
  return {
    label: 'control drift',
    expression: `a control 1 % higher would lower the index by ${(index / 100).toFixed(decimals)} points`,
  }
}

function intervalLine(interval: Interval | null, decimals: number): WorkingLine[] {
  if (interval === null)
    return [
      {
        label: 'interval',
        expression: 'none: a single specimen, or a mean without its specimens, shows no scatter',
      },
    ]
  return [
    {
      label: 'interval',
      expression: `${100 * interval.level} %: ${intervalWords(interval, decimals)}, within this batch only`,
      source: interval.method.replace(/, within this batch only$/, ''),
    },
  ]
}

function waterResults({ test, control, condition, lot, common }: Pair): Result[] {
  if (condition.water['flow-within'] === undefined || test.water === undefined || control.water === undefined)
    return []
  const [testGram, controlGram] = [test.water.value, control.water.value]
  const value = waterRequirement(testGram, controlGram)
  const method = lot.methodOf(test.laboratory, 'water-requirement', test.cast)
  const flow = flowApart(test, control, condition)
  // At a standard's condition it is the property that laboratories also report without one; at any other it
  // stays with its condition.
  const own = { ...common, condition: condition.standing === 'standard' ? undefined : common.condition }
  return [
    {
      ...own,
      key: resultKey({ ...own, property: 'water-requirement', ...(method === undefined ? {} : { method }) }),
      property: 'water-requirement',
      ...(method === undefined ? {} : { method }),
      value,
      unit: '%',
      decimals: property('water-requirement').decimals,
      n: 1,
      tested: test.cast,
      control: test.control,
      valid: flow.faults.length === 0,
      reasons: [...flow.faults, ...flow.notes],
      working: () => [
        {
          label: 'water requirement',
          expression: `100 × ${test.water?.written} / ${control.water?.written}`,
          value,
          unit: '%',
          decimals: 1,
          source: 'ASTM C311 (from memory)',
        },
      ],
    },
  ]
}
