import { describe, expect, it } from 'vitest'
import { mortarReadings } from '../../../src/edition/views/mortar-readings.ts'
import { certificate, mortar } from './certificate-fixture.ts'

type Reading = ReturnType<typeof mortar>['readings'][number]

const strength: Reading = {
  of: 'test',
  what: 'strength',
  age: '7 d',
  tested: '2026-03-17T09:30',
  specimens: [
    { mark: 'a', reading: '78.4 kN', size: 'side 50.1 mm' },
    { mark: 'b', reading: '61.0 kN', excluded: 'corner lost' },
  ],
}
const readings = (...own: Reading[]) => mortarReadings(mortar({ readings: own }), certificate()).readings

describe('mortarReadings', () => {
  it('gives readings as written, with size, exclusion and the clock', () => {
    expect(readings(strength)).toEqual([
      {
        name: 'test, strength, 7 d',
        tested: '17\u00a0Mar\u00a02026, 09:30',
        specimens: 'a 78.4\u00a0kN (side 50.1\u00a0mm); b 61.0\u00a0kN, excluded: corner lost',
        facts: null,
      },
    ])
  })
  it('says how a resistance was read, and that its temperature is not recorded', () => {
    const resistivity: Reading = { ...strength, what: 'resistivity', tested: '2026-03-17', specimens: [] }
    expect(readings(resistivity)[0]).toMatchObject({
      tested: '17\u00a0Mar\u00a02026',
      facts: 'temperature not recorded',
    })
    const full = {
      ...resistivity,
      temperature: '23.1 degC',
      endContact: '12 ohm',
      frequency: '1 kHz',
      conditioning: 'saturated-lime-water',
      verification: '1001 ohm on a known 1000 ohm',
      saturation: 'saturated',
    }
    expect(readings(full)[0]?.facts).toBe(
      'at 23.1\u00a0°C, end contact 12\u00a0Ω, 1\u00a0kHz, saturated lime water, check resistor 1001\u00a0Ω on a known 1000\u00a0Ω, saturated',
    )
  })
  it('names the condition with its particulars, by id where the document has none', () => {
    expect(mortarReadings(mortar(), certificate())).toMatchObject({ condition: '50 %, 50 °C', sample: 'A' })
    expect(mortarReadings(mortar({ condition: 'gone' }), certificate())).toMatchObject({
      condition: 'gone',
      particulars: [],
    })
  })
})
