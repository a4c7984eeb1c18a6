import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { MortarMeasurement } from '../../../src/core/mortar/mortar-measurement.ts'
import {
  isQuantity,
  type MeasuredSpecimen,
  type Mortar,
  type MortarReading,
} from '../../../src/core/mortar/mortar.ts'
import { controlResults } from '../../../src/core/readings/control-results.ts'
import { MORTAR_MEASUREMENTS } from '../../../src/core/readings/mortar-measurements.ts'
import { mortarResults } from '../../../src/core/readings/mortar-results.ts'
import { plannedTests } from '../../../src/core/readings/planned-tests.ts'
import { isMade } from '../../../src/core/result/result.ts'
import { strengthInterval } from '../../../src/core/statistics/ratio-interval.ts'
import type { Quantity } from '../../../src/core/measure/units.ts'
import { evidence, printed, q, strength, WARM, worded } from './fixture.ts'

/** Bending of prisms between two rollers: an invented third test, kept under two properties of the list that are free. */
interface BentSpecimen extends MeasuredSpecimen {
  readonly load?: Quantity
}
type BendingReading = MortarReading<Quantity | BentSpecimen>
interface BentMortar extends Mortar {
  readonly bending?: readonly BendingReading[]
}

const SPAN_MM = 100

const BENDING: MortarMeasurement<BendingReading> = {
  property: 'chloride',
  index: 'SO3',
  workingDecimals: 1,
  readingsOf: (mortar: BentMortar) => mortar.bending,
  specimenOf: (specimen, _reading, { strength: asked }) => {
    const bent = isQuantity(specimen) ? { load: specimen } : specimen
    const sideMm = (bent.side ?? asked?.specimen.side)?.value
    if (bent.load === undefined || sideMm === undefined)
      return { value: null, written: bent.load?.written ?? null, terms: [] }
    return {
      value: (1500 * bent.load.value * SPAN_MM) / sideMm ** 3,
      written: bent.load.written,
      terms: [
        { does: 'times', value: 1.5 * SPAN_MM, unit: 'mm' },
        { does: 'divided-by', value: sideMm ** 3, unit: '' },
      ],
    }
  },
  valueUnknown: { code: 'geometry-unknown', params: {} },
  ratioOf: (test, control) => (100 * test) / control,
  ratioSource: 'this test',
  intervalOf: strengthInterval,
}

const bending = (loads: readonly string[], more: Partial<BendingReading> = {}): BendingReading => ({
  age: readAge('28 d'),
  tested: readMoment('2026-04-08T10:00'),
  specimens: Object.fromEntries(loads.map((load, place) => [`p${place}`, q(load, 'force')])),
  ...more,
})
const lotOf = (test: Partial<BentMortar>, control: Partial<BentMortar>) => evidence({ test, control })
const all = [...MORTAR_MEASUREMENTS, BENDING]

describe('a third measurement on mortar', () => {
  const lot = lotOf(
    { bending: [bending(['5 kN', '6 kN'])], strength: [strength(['100 kN'])] },
    { bending: [bending(['8 kN'])], strength: [strength(['100 kN'])] },
  )

  // 1.5 × F × 100 mm / (50 mm)³: 5 kN are 6 MPa, 6 kN are 7.2 MPa, 8 kN are 9.6 MPa; 100 × 6.6/9.6 = 68.75 %.
  it('gives its mean, its index and the control’s mean from its description alone', () => {
    const made = lot.tests.flatMap((test) => mortarResults(test, lot, all)).filter(isMade)
    expect(made.map(({ property, value, n }) => [property, value, n])).toEqual([
      ['compressive-strength', 40, 1],
      ['strength-activity-index', 100, 1],
      ['chloride', expect.closeTo(6.6, 12), 2],
      ['SO3', expect.closeTo(68.75, 12), 2],
    ])
    expect(made[2]?.controlValue).toBeCloseTo(9.6, 12)
    const [control] = lot.controls.values()
    if (control === undefined) throw new Error('no control')
    const batch = controlResults({ id: 'K', control, condition: WARM, asOf: lot.asOf }, all)
    expect(batch.map(({ property }) => property)).toEqual(['compressive-strength', 'chloride'])
    expect(batch[1]?.value).toBeCloseTo(9.6, 12)
  })

  it('has its working printed without words of its own', () => {
    const index = lot.tests
      .flatMap((test) => mortarResults(test, lot, [BENDING]))
      .filter(isMade)
      .find(({ property }) => property === 'SO3')
    if (index === undefined) throw new Error('no index')
    expect(
      printed(index)
        .working()
        .map(({ label, expression }) => `${label}: ${expression}`),
    ).toEqual([
      'test p0: 5 kN × 150 mm / 125000',
      'test p1: 6 kN × 150 mm / 125000',
      'test mean: mean of 2',
      'control p0: 8 kN × 150 mm / 125000',
      'control mean: mean of 1',
      'index: 100 × 6.6 / 9.6',
      'control drift: a control 1 % higher would lower the index by 0.688 points',
      'interval: none: a single specimen, or a mean without its specimens, shows no scatter',
    ])
  })

  it('is planned, goes by its retests and ages, and says why it has no value', () => {
    const waiting = lotOf({ bending: [{ age: readAge('28 d') }] }, {})
    expect(
      waiting.tests.flatMap((test) => plannedTests(test, waiting, all)).map(({ property }) => property),
    ).toEqual(['chloride', 'SO3'])
    const late = lotOf({ bending: [bending(['5 kN'], { tested: readMoment('2026-04-10T09:40') })] }, {})
    expect(late.tests.flatMap((test) => mortarResults(test, late, [BENDING])).map(worded)).toMatchObject([
      { property: 'chloride', valid: false, reasons: ['tested at 30 d 20 min, outside 28 d ± 12 h'] },
    ])
    const lost = lotOf({ bending: [bending([], { specimens: { a: { excluded: 'dropped' } } })] }, {})
    expect(lost.tests.flatMap((test) => mortarResults(test, lost, [BENDING])).map(worded)).toMatchObject([
      { property: 'chloride', reasons: ['specimen a excluded: dropped', 'no specimen counts'] },
    ])
  })

  it('is not computed while it is not in the list', () => {
    expect(lot.tests.flatMap((test) => mortarResults(test, lot)).map(({ property }) => property)).toEqual([
      'compressive-strength',
      'strength-activity-index',
    ])
  })
})
