/** Small builders for readings: a condition, a mortar beside its control, and results with their reasons in words. */
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type {
  ControlMortar,
  LotEvidence,
  MortarCondition,
  ResistivityReading,
  StrengthReading,
  TestMortar,
} from '../../../src/core/mortar/mortar.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import type { Result, UnmadeResult } from '../../../src/core/result/result.ts'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'
import { workingLines } from '../../../src/words/working-lines.ts'

export function q(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text} is no ${kind}`)
  return read
}

export const WARM: MortarCondition = {
  title: 'warm',
  standing: 'modified',
  water: {},
  curing: { medium: 'saturated-lime-water' },
  ages: [
    { age: readAge('7 d'), within: q('3 h', 'duration') },
    { age: readAge('28 d'), within: q('12 h', 'duration') },
  ],
  strength: {
    specimen: { shape: 'cube', side: q('50 mm', 'length') },
    // One load is enough for most of these tests.
    specimens: { planned: 1 },
    'batch-range': [
      { of: 3, 'at-most': q('8.7 %', 'fraction') },
      { of: 2, 'at-most': q('7.6 %', 'fraction') },
    ],
  },
  resistivity: {
    specimen: { shape: 'cube', side: q('50 mm', 'length') },
    conditioning: 'saturated-lime-water',
    reading: { temperature: q('23 degC', 'temperature'), within: q('2 degC', 'temperature-difference') },
  },
}
export const FLOW: MortarCondition = {
  ...WARM,
  standing: 'standard',
  water: { 'flow-within': q('5 percentage points', 'points') },
}

export function strength(loads: readonly string[], more: Partial<StrengthReading> = {}): StrengthReading {
  return {
    age: readAge('28 d'),
    tested: readMoment('2026-04-08T09:40'),
    specimens: Object.fromEntries(
      loads.map((load, index) => [
        `s${index}`,
        q(load, load.endsWith('lbf') || load.endsWith('N') ? 'force' : 'stress'),
      ]),
    ),
    ...more,
  }
}

export function resistance(
  readings: readonly string[],
  more: Partial<ResistivityReading> = {},
): ResistivityReading {
  return {
    age: readAge('28 d'),
    tested: readMoment('2026-04-08T08:50'),
    temperature: q('23.1 degC', 'temperature'),
    'end-contact': q('4.1 ohm', 'resistance'),
    specimens: Object.fromEntries(readings.map((text, index) => [`s${index}`, q(text, 'resistance')])),
    ...more,
  }
}

export function evidence({
  test = {},
  control = {},
  condition = WARM,
  more = {},
}: {
  test?: Partial<TestMortar>
  control?: Partial<ControlMortar>
  condition?: MortarCondition
  more?: Partial<LotEvidence>
}): LotEvidence {
  return {
    samples: [{ id: 'C', kind: 'composite' }],
    analyses: [],
    verification: [],
    kind: 'raw-natural-pozzolan',
    asOf: readMoment('2026-05-01'),
    graceHours: 168,
    readWithin: 1,
    methodOf: () => undefined,
    tests: [
      {
        sample: 'C',
        condition: 'warm',
        control: 'K',
        laboratory: 'quay',
        cast: readMoment('2026-03-11T09:20'),
        ...test,
      },
    ],
    conditions: new Map([['warm', condition]]),
    controls: new Map([
      [
        'K',
        {
          condition: 'warm',
          laboratory: 'quay',
          cast: readMoment('2026-03-11T09:00'),
          cement: { lot: 'PC' },
          ...control,
        },
      ],
    ]),
    ...more,
  }
}

/** A result, or a test without one, with its reasons as sentences. */
export function worded<Outcome extends Pick<UnmadeResult, 'reasons'>>(
  outcome: Outcome,
): Omit<Outcome, 'reasons'> & { reasons: string[] } {
  return { ...outcome, reasons: outcome.reasons.map(resultReasonWords) }
}

/** A result with its working as lines of print too. */
export function printed(result: Result) {
  return { ...worded(result), working: () => workingLines(result.working()) }
}
