import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { ControlMortar } from '../../../src/core/mortar/mortar.ts'
import { controlReadings } from '../../../src/core/readings/control-readings.ts'
import type { TestedSpecimens } from '../../../src/core/readings/tested-specimens.ts'
import { BULK_RESISTIVITY } from '../../../src/core/resistivity/resistivity-measurement.ts'
import { COMPRESSIVE_STRENGTH } from '../../../src/core/strength/compressive-strength.ts'
import { resistance, strength, WARM } from './fixture.ts'

const control = (): ControlMortar => ({
  condition: 'warm',
  laboratory: 'quay',
  cast: readMoment('2026-03-11T09:00'),
  cement: { lot: 'PC' },
  strength: [strength(['100 kN'])],
  resistivity: [resistance(['874 ohm'])],
})

/** The specimens themselves are made when asked for. */
const withLater = ({ specimens: _made, ...others }: TestedSpecimens) => ({
  ...others,
  specimens: expect.any(Function) as unknown,
})

describe('controlReadings', () => {
  it('judges a batch once: the same question has the same answer, for each measurement its own', () => {
    const batch = control()
    const strengths = controlReadings(COMPRESSIVE_STRENGTH, batch, WARM, readMoment('2026-05-01'))
    const resistivities = controlReadings(BULK_RESISTIVITY, batch, WARM, readMoment('2026-05-01'))
    expect(controlReadings(COMPRESSIVE_STRENGTH, batch, WARM, readMoment('2026-05-01'))).toBe(strengths)
    expect(controlReadings(BULK_RESISTIVITY, batch, WARM, readMoment('2026-05-01'))).toBe(resistivities)
    expect(strengths[0]?.specimens.mean).toBe(40)
    // (874 − 4.1) Ω × 2500 mm² / 50 mm.
    expect(resistivities[0]?.specimens.mean).toBeCloseTo(43.495, 10)
  })
  it('judges anew at another date, at another condition, and for another batch', () => {
    const batch = control()
    const before = controlReadings(COMPRESSIVE_STRENGTH, batch, WARM, readMoment('2026-05-01'))
    expect(controlReadings(COMPRESSIVE_STRENGTH, batch, WARM, readMoment('2026-04-07'))).toEqual([])
    const strict = { ...WARM, ages: WARM.ages.map((entry) => ({ ...entry, age: readAge('90 d') })) }
    const late = {
      ...batch,
      strength: [strength(['100 kN'], { tested: readMoment('2026-04-10T09:40') })],
    }
    expect(controlReadings(COMPRESSIVE_STRENGTH, late, WARM, readMoment('2026-05-01'))[0]?.valid).toBe(false)
    expect(controlReadings(COMPRESSIVE_STRENGTH, late, strict, readMoment('2026-05-01'))[0]?.valid).toBe(true)
    const again = controlReadings(COMPRESSIVE_STRENGTH, batch, WARM, readMoment('2026-05-01'))
    expect(again).not.toBe(before)
    expect(again).toEqual(before.map((reading) => ({ ...reading, specimens: withLater(reading.specimens) })))
  })
})
