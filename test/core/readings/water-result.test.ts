import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Moment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { MortarCondition } from '../../../src/core/mortar/mortar.ts'
import { lotResults } from '../../../src/core/readings/lot-results.ts'
import { evidence, FLOW, printed, q } from './fixture.ts'

const g = (text: string) => ({ water: q(text, 'batch-mass') })

function water(
  condition: MortarCondition = FLOW,
  test: object = { ...g('230 g'), flow: q('110 %', 'fraction') },
  control: object = { ...g('250 g'), flow: q('108 %', 'fraction') },
  asOf = '2026-05-01',
) {
  const methodOf = (laboratory: string, property: string, date: Moment) => `${laboratory} ${property} ${date}`
  return lotResults(
    evidence({ condition, test, control, more: { methodOf, asOf: readMoment(asOf) } }),
  ).results.map(printed)
}

describe('waterResults', () => {
  // 100 × 230/250 = 92 %.
  it('is made of both waters, by the method of the day of casting, without a condition at a standard’s', () => {
    const [result] = water()
    expect(result).toMatchObject({
      key: 'water-requirement|||quay water-requirement 2026-03-11T09:20|quay|C',
      value: 92,
      unit: '%',
      decimals: 0,
      n: 1,
      tested: readMoment('2026-03-11T09:20'),
      begun: readMoment('2026-03-11T09:20'),
      control: 'K',
      role: 'producer',
      valid: true,
      reasons: [],
    })
    expect(result).not.toHaveProperty('condition')
    expect(result?.working()).toEqual([
      {
        label: 'water requirement',
        expression: '100 × 230 g / 250 g',
        value: 92,
        unit: '%',
        decimals: 1,
        source: 'ASTM C311 (from memory)',
      },
    ])
  })
  it('keeps its condition where that is not a standard’s', () => {
    expect(water({ ...FLOW, standing: 'modified' })[0]?.key).toBe(
      'water-requirement|warm||quay water-requirement 2026-03-11T09:20|quay|C',
    )
  })
  it('is not valid where the flows are apart, and valid with a note where one is not on record', () => {
    expect(water(FLOW, { ...g('230 g'), flow: q('114 %', 'fraction') })).toMatchObject([
      {
        valid: false,
        reasons: ['flow 114 % against the control’s 108 %, more than 5 percentage points apart'],
      },
    ])
    expect(water(FLOW, g('230 g'))).toMatchObject([
      {
        valid: true,
        reasons: [
          'the flow of the test mortar is not on record, so it cannot be verified that the flows agree within 5 percentage points',
        ],
      },
    ])
  })
  it('is known from the day of casting on, though nothing is crushed or read yet', () => {
    expect(water(FLOW, undefined, undefined, '2026-03-10')).toEqual([])
    expect(water(FLOW, undefined, undefined, '2026-03-11')).toMatchObject([{ value: 92 }])
  })
  it('is not made without either water, nor where the condition fixes it', () => {
    expect(water(FLOW, {})).toEqual([])
    expect(water(FLOW, g('230 g'), {})).toEqual([])
    expect(water({ ...FLOW, water: {} })).toEqual([])
  })
})
