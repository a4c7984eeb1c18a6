import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { ControlMortar } from '../../../src/core/mortar/mortar.ts'
import { controlResults } from '../../../src/core/readings/control-results.ts'
import { printed, q, resistance, strength, WARM } from './fixture.ts'

const control: ControlMortar = {
  condition: 'warm',
  laboratory: 'quay',
  cast: readMoment('2026-03-11T09:00'),
  cement: { lot: 'PC' },
  resistivity: [resistance(['874 ohm'])],
  strength: [
    strength(['100 kN', '102 kN']),
    strength(['80 kN'], { age: readAge('7 d'), tested: readMoment('2026-03-18T09:00') }),
    strength([], {
      age: readAge('7 d'),
      tested: readMoment('2026-03-18T10:00'),
      specimens: { a: { excluded: 'lost' } },
    }),
  ],
}
const results = (asOf = '2026-05-01') =>
  controlResults({ id: 'K', control, condition: WARM, asOf: readMoment(asOf) }).map(printed)

describe('controlResults', () => {
  it('gives the mean of each reading that has one, strengths first, in the order of the record', () => {
    expect(results().map(({ property, age, value, n }) => [property, age?.text, value, n])).toEqual([
      ['compressive-strength', '28 d', 40.4, 2],
      ['compressive-strength', '7 d', 32, 1],
      ['bulk-resistivity', '28 d', expect.closeTo(43.495, 10), 1],
    ])
  })
  it('names the batch as its sample, in the stored unit of each property', () => {
    const [first, , last] = results()
    expect(first).toMatchObject({
      key: 'compressive-strength|warm|28 d||quay|K',
      condition: 'warm',
      laboratory: 'quay',
      sample: 'K',
      sampleKind: 'control',
      role: 'control',
      unit: 'MPa',
      tested: readMoment('2026-04-08T09:40'),
      valid: true,
      reasons: [],
    })
    expect(last).toMatchObject({ key: 'bulk-resistivity|warm|28 d||quay|K', unit: 'ohm m' })
    expect(first).not.toHaveProperty('summaryOnly')
    expect(first).not.toHaveProperty('begun')
  })
  it('shows its working as a control’s', () => {
    expect(
      results()[0]
        ?.working()
        .map(({ label }) => label),
    ).toEqual(['control s0', 'control s1', 'range', 'control mean'])
  })
  it('leaves out what was read after the date', () => {
    expect(results('2026-03-18').map(({ age }) => age?.text)).toEqual(['7 d'])
  })
  it('marks a mean without its specimens', () => {
    const mean = {
      age: readAge('28 d'),
      tested: readMoment('2026-04-08T09:40'),
      mean: q('41 MPa', 'stress'),
      of: 3,
    }
    const batch = { ...control, strength: [mean], resistivity: [] }
    expect(
      controlResults({ id: 'K', control: batch, condition: WARM, asOf: readMoment('2026-05-01') }),
    ).toMatchObject([{ value: 41, n: 3, summaryOnly: true }])
  })
})
