/** How a mean and an index were computed, step by step: readings to specimens to mean to ratio. */
import { property, storedUnit } from '../measure/properties.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { MortarCondition } from '../mortar/mortar.ts'
import type { Bounds } from '../result/bounds.ts'
import { boundsStep, type Figure, type MortarRole, type WorkingStep } from '../result/working.ts'
import type { Interval } from '../statistics/ratio-interval.ts'
import type { JudgedReading } from './judged-readings.ts'
import type { AveragedSpecimens } from './tested-specimens.ts'

/** The specimens of one mortar, the checks of their range, and their mean. */
export function specimenSteps(
  measurement: MortarMeasurement,
  of: MortarRole,
  { specimens, rangeChecks, counted, mean, n, meanOnly, uncounted }: AveragedSpecimens,
): WorkingStep[] {
  const figure = (value: number): Figure => ({
    value,
    unit: storedUnit(measurement.property),
    decimals: measurement.workingDecimals,
  })
  if (meanOnly) return [{ step: 'reported-mean', of, n: uncounted === true ? null : n, result: figure(mean) }]
  const marks = measurement.rangeRulesOf === undefined ? {} : { marks: counted.map(({ mark }) => mark) }
  return [
    ...specimens().map(
      ({ value, areaMm2: _, fault: __, note: ___, above: ____, ...specimen }): WorkingStep => ({
        step: 'specimen',
        of,
        ...specimen,
        result: value === null ? null : figure(value),
      }),
    ),
    ...rangeChecks.map(
      ({ limit, ...check }): WorkingStep => ({ step: 'range-check', ...check, limitPercent: limit }),
    ),
    { step: 'mean', of, n, ...marks, result: figure(mean) },
  ]
}

/** Two means of one measurement and what follows from them; both are there. */
export interface Ratio {
  readonly own: JudgedReading
  readonly against: JudgedReading
  readonly testMean: number
  readonly controlMean: number
  /** Per cent. */
  readonly value: number
  /** What the ratio may be, where a reading lies beyond the meter. */
  readonly bounds: Bounds | undefined
  readonly interval: Interval | null
}

/** Both mortars, their ratio, what it owes to the control, and how far its specimens let it be known. */
export function ratioSteps(
  measurement: MortarMeasurement,
  { own, against, testMean, controlMean, value, bounds, interval }: Ratio,
  condition: MortarCondition,
): WorkingStep[] {
  const { decimals } = property(measurement.index)
  return [
    ...specimenSteps(measurement, 'test', { ...own.specimens, mean: testMean }),
    ...meanNotes(measurement, own, testMean, condition),
    ...specimenSteps(measurement, 'control', { ...against.specimens, mean: controlMean }),
    ...meanNotes(measurement, against, controlMean, condition),
    {
      step: 'ratio',
      test: testMean,
      control: controlMean,
      unit: storedUnit(measurement.property),
      decimals: measurement.workingDecimals,
      source: measurement.ratioSource,
      result: { value, unit: storedUnit(measurement.index), decimals },
    },
    ...(bounds === undefined
      ? ([
          // An index falls as its control rises: d(100 A/B) = −100 A/B · dB/B (JCGM 100:2008, 5.1.3, equation
          // (11b)).
          { step: 'control-drift', points: value / 100, decimals: decimals + 1 },
          { step: 'interval', interval, decimals },
        ] as const)
      : boundsStep(bounds, { unit: storedUnit(measurement.index), decimals })),
  ]
}

/** A mean that is only known to lie above a value is at no other temperature either. */
function meanNotes(
  measurement: MortarMeasurement,
  { reading, specimens }: JudgedReading,
  mean: number,
  condition: MortarCondition,
): WorkingStep[] {
  return specimens.above === undefined ? (measurement.meanNotes?.(mean, reading, condition) ?? []) : []
}
