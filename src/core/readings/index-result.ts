/** A test mortar's mean over its control's as a result. */
import { defined } from '../measure/defined.ts'
import { laterOf } from '../measure/moment.ts'
import { property, storedUnit } from '../measure/properties.ts'
import type { Age } from '../measure/age.ts'
import { controlFaults, statedControlFaults } from '../mortar/control-faults.ts'
import { STATED_CONTROL } from '../mortar/stated-control.ts'
import { flowApart } from '../mortar/flow-apart.ts'
import { knownFrom } from '../mortar/known-when.ts'
import { fieldsUnlike } from '../mortar/made-alike.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { ControlMortar, LotEvidence, MortarCondition, TestMortar } from '../mortar/mortar.ts'
import type { ResultReason } from '../result/reason.ts'
import type { Bounds } from '../result/bounds.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result, UnmadeResult } from '../result/result.ts'
import { COMPRESSIVE_STRENGTH } from '../strength/compressive-strength.ts'
import { controlReadings } from './control-readings.ts'
import { type JudgedReading, validReadingAt } from './judged-readings.ts'
import { lateKnown, type OfMortar, unmadeResult } from './mean-result.ts'
import { type Ratio, ratioSteps } from './mortar-working.ts'

/** A test mortar with the control and the condition that it names. */
export interface MortarPair {
  readonly test: TestMortar
  readonly control: ControlMortar
  readonly condition: MortarCondition
  /** That of the control, which may hold another replacement. */
  readonly controlCondition: MortarCondition
  readonly lot: LotEvidence
  readonly ofTest: OfMortar
}

/**
 * A test mortar's mean over its control's.
 * @param own reading of the test mortar
 * @param against reading of the control at the same age
 * @returns the index, or a test without one and why no ratio follows from the two means
 */
export function indexResult(
  measurement: MortarMeasurement,
  pair: MortarPair,
  own: JudgedReading,
  against: JudgedReading,
): Result | UnmadeResult {
  const [testMean, controlMean] = [own.specimens.mean, against.specimens.mean]
  const unmade = (reasons: readonly ResultReason[]) =>
    unmadeResult(measurement.index, own.reading, pair.ofTest, reasons)
  if (testMean === null) return unmade(own.reasons)
  const control = pair.test.control ?? STATED_CONTROL
  if (controlMean === null) return unmade(ofControl(control, against.reasons))
  if (!(0 < controlMean)) return unmade(ofControl(control, [NOT_ABOVE_ZERO]))
  const value = measurement.ratioOf(testMean, controlMean)
  const bounds = boundsOfRatio(value, own, against)
  const interval =
    bounds === undefined ? measurement.intervalOf(countedValues(own), countedValues(against)) : null
  return ratioResult(measurement, pair, { own, against, testMean, controlMean, value, bounds, interval })
}

/**
 * What an index may be where a mean is only known to lie above a value.
 * @returns undefined where both means are known
 * Source: interval arithmetic.
 */
function boundsOfRatio(value: number, own: JudgedReading, against: JudgedReading): Bounds | undefined {
  const [test, control] = [own.specimens.above === true, against.specimens.above === true]
  if (!test && !control) return undefined
  return { low: control ? 0 : value, high: test ? null : value, open: test ? 'low' : 'both' }
}

const NOT_ABOVE_ZERO: ResultReason = { code: 'mean-not-above-zero', params: {} }

function ofControl(control: string, reasons: readonly ResultReason[]): ResultReason[] {
  return reasons.map((reason) => ({ code: 'control-fault', params: { control, reason } }))
}

function countedValues({ specimens }: JudgedReading): number[] {
  return specimens.counted.map(({ value }) => value)
}

function ratioResult(measurement: MortarMeasurement, pair: MortarPair, ratio: Ratio): Result {
  const { index: key } = measurement
  const { test, lot, ofTest, condition } = pair
  const { own, against, value, bounds, interval } = ratio
  const { age } = own.reading
  const tested = laterOf(own.reading.tested, against.reading.tested)
  const method = lot.methodOf(test.laboratory, key, tested)
  const { faults, notes } = pairReasons(measurement, pair, own, against)
  const summaryOnly = own.specimens.meanOnly || against.specimens.meanOnly ? (true as const) : undefined
  // Members that may be missing apart: an object filled key by key takes four times the memory.
  return {
    ...ofTest,
    ...defined({ method, bounds, interval: interval ?? undefined, summaryOnly, control: test.control }),
    key: resultKey({ ...ofTest, ...defined({ method }), property: key, age }),
    property: key,
    age,
    value,
    unit: storedUnit(key),
    decimals: property(key).decimals,
    n: own.specimens.n,
    tested,
    ...lateKnown(tested, laterOf(knownFrom(own.reading), knownFrom(against.reading))),
    valid: own.valid && against.valid && faults.length === 0,
    reasons: [
      ...own.reasons,
      ...(test.control === undefined ? byStatement(against) : ofControl(test.control, against.reasons)),
      ...narrow(ratio),
      ...faults,
      ...notes,
    ],
    working: () => ratioSteps(measurement, ratio, condition),
  }
}

/** Of such a control there is nothing else to say, and its mean has no scatter. */
function byStatement({ reading }: JudgedReading): ResultReason[] {
  return [{ code: 'control-stated', params: { written: reading.mean?.written ?? '' } }]
}

/** Dropping what lies farthest out leaves a scatter that is too small for the level of the interval. */
function narrow({ own, against, interval }: Pick<Ratio, 'own' | 'against' | 'interval'>): ResultReason[] {
  const dropped = [own, against].some(({ reasons }) =>
    reasons.some(({ code }) => code === 'specimen-dropped'),
  )
  return dropped && interval !== null
    ? [{ code: 'interval-too-narrow', params: { levelPercent: 100 * interval.level } }]
    : []
}

/** What makes the two mortars unfit to be divided, and what is worth a note. */
function pairReasons(
  measurement: MortarMeasurement,
  { test, control, condition, controlCondition, lot }: MortarPair,
  own: JudgedReading,
  against: JudgedReading,
): { faults: ResultReason[]; notes: ResultReason[] } {
  const strengthAt = (age: Age) => {
    const strengths = controlReadings(COMPRESSIVE_STRENGTH, control, controlCondition, lot.asOf)
    return validReadingAt(strengths, age)?.specimens.mean ?? undefined
  }
  if (test.control === undefined) return statedControlFaults(condition, strengthAt)
  const flow = flowApart(test, control, condition)
  const made = controlFaults(test, control, condition, strengthAt)
  const readings = { test: own.reading, control: against.reading }
  return {
    faults: [
      ...(measurement.pairFaults?.(readings, condition, lot.readWithin) ?? []),
      ...flow.faults,
      ...anotherCondition(test.control, test, control, lot),
      ...sizesDiffer(own, against),
      ...made.faults,
    ],
    notes: [
      ...(measurement.pairNotes?.(readings, condition) ?? []),
      ...flow.notes,
      ...made.notes,
      ...statedWithComputed(own, against),
    ],
  }
}

/** The control may have been made for another replacement, since it holds none; all else must agree. */
function anotherCondition(
  id: string,
  test: TestMortar,
  control: ControlMortar,
  { conditions }: Pick<LotEvidence, 'conditions'>,
): ResultReason[] {
  if (test.condition === control.condition) return []
  const [asked, made] = [conditions.get(test.condition), conditions.get(control.condition)]
  if (asked === undefined || made === undefined)
    return [{ code: 'control-of-another-condition', params: { control: id } }]
  const fields = fieldsUnlike(made, asked)
  return fields.length === 0
    ? []
    : [{ code: 'control-of-another-condition', params: { control: id, fields } }]
}

/**
 * Share by which mean areas of one size may differ. Own choice: cubes of 2 in have 3.2 % more than those of 50 mm,
 * and a mould that is worn by half a millimetre 2 %.
 */
const SAME_SIZE = 0.025

function sizesDiffer(own: JudgedReading, against: JudgedReading): ResultReason[] {
  const [testMm2, controlMm2] = [own.specimens.areaMm2, against.specimens.areaMm2]
  if (testMm2 === null || controlMm2 === null) return []
  return Math.abs(testMm2 - controlMm2) <= SAME_SIZE * controlMm2
    ? []
    : [{ code: 'specimen-sizes-differ', params: { testMm2, controlMm2 } }]
}

function statedWithComputed(
  { specimens: own }: JudgedReading,
  { specimens: against }: JudgedReading,
): ResultReason[] {
  if (own.stated && against.areaMm2 !== null && !against.stated)
    return [{ code: 'stated-with-computed', params: { stated: 'test' } }]
  return against.stated && own.areaMm2 !== null && !own.stated
    ? [{ code: 'stated-with-computed', params: { stated: 'control' } }]
    : []
}
