import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import {
  atAskedTemperature,
  BULK_RESISTIVITY,
} from '../../../src/core/resistivity/resistivity-measurement.ts'
import type { MortarCondition } from '../../../src/core/mortar/mortar.ts'
import { q, WARM } from '../readings/fixture.ts'

const read = (text: string) => ({ temperature: q(text, 'temperature') })

describe('atAskedTemperature', () => {
  // Arrhenius with the usual 20 kJ/mol: 20 000/8.314462618 = 2405.447 K; 1/296.15 − 1/323.15 = 2.82132 × 10⁻⁴;
  // exp(0.678653) = 1.97122.
  it('says what the mean would be at the temperature asked for', () => {
    const [step] = atAskedTemperature(40, read('50 degC'), WARM)
    expect(step).toMatchObject({
      step: 'at-another-temperature',
      readCelsius: 50,
      askedCelsius: 23,
      activationEnergyKJ: 20,
      result: { unit: 'ohm m', decimals: 1 },
    })
    expect(step?.step === 'at-another-temperature' ? step.result.value : null).toBeCloseTo(40 * 1.97122, 3)
  })
  it('takes the activation energy that the condition states: half of it is the root of the factor', () => {
    const stated = { resistivity: { ...WARM.resistivity, 'activation-energy': 10 } } as MortarCondition
    const [step] = atAskedTemperature(40, read('50 degC'), stated)
    expect(step?.step === 'at-another-temperature' ? step.result.value : null).toBeCloseTo(
      40 * Math.sqrt(1.97122),
      3,
    )
    expect(step).toMatchObject({ activationEnergyKJ: 10 })
  })
  it('says nothing within half a tenth of a degree, warmer or colder, and something from there on', () => {
    expect(atAskedTemperature(40, read('23.04 degC'), WARM)).toEqual([])
    expect(atAskedTemperature(40, read('22.96 degC'), WARM)).toEqual([])
    expect(atAskedTemperature(40, read('23.06 degC'), WARM)).toHaveLength(1)
    expect(atAskedTemperature(40, read('22.94 degC'), WARM)).toHaveLength(1)
  })
  it('takes half a tenth of a degree itself for another temperature: 0.05 °C asked for 0 °C', () => {
    const resistivity = {
      specimen: { shape: 'cube' as const },
      reading: { temperature: q('0 degC', 'temperature'), within: q('2 degC', 'temperature-difference') },
    }
    expect(atAskedTemperature(40, read('0.05 degC'), { resistivity })).toMatchObject([{ readCelsius: 0.05 }])
    expect(atAskedTemperature(40, read('0.0499 degC'), { resistivity })).toEqual([])
  })
  it('says nothing where either temperature is not known', () => {
    expect(atAskedTemperature(40, {}, WARM)).toEqual([])
    expect(atAskedTemperature(40, read('50 degC'), {})).toEqual([])
  })
})

describe('BULK_RESISTIVITY', () => {
  it('reads the resistivities of a mortar, and takes the reading’s own contacts off', () => {
    const readings = [{ age: readAge('7 d') }]
    const mortar = {
      condition: 'warm',
      laboratory: 'quay',
      cast: readMoment('2026-03-11'),
      resistivity: readings,
    }
    expect(BULK_RESISTIVITY.readingsOf(mortar)).toBe(readings)
    const resistance = q('804 ohm', 'resistance')
    const contact = { 'end-contact': q('4 ohm', 'resistance') }
    expect(BULK_RESISTIVITY.specimenOf(resistance, { age: readAge('7 d'), ...contact }, WARM).value).toBe(40)
    expect(BULK_RESISTIVITY.specimenOf(resistance, { age: readAge('7 d') }, WARM).value).toBeCloseTo(40.2, 12)
  })
  it('knows no geometry at a condition that describes no reading', () => {
    const { resistivity: _none, ...silent } = WARM
    expect(
      BULK_RESISTIVITY.specimenOf(q('804 ohm', 'resistance'), { age: readAge('7 d') }, silent).value,
    ).toBeNull()
  })
  it('gives no value where the contacts leave nothing of the reading, and says why', () => {
    const value = (text: string) =>
      BULK_RESISTIVITY.specimenOf(
        q(text, 'resistance'),
        { age: readAge('7 d'), 'end-contact': q('800 ohm', 'resistance') },
        WARM,
      )
    const fault = { code: 'end-contacts-exceed-reading', params: {} }
    expect(value('800 ohm')).toMatchObject({ value: null, written: '800 ohm', fault })
    expect(value('799 ohm')).toMatchObject({ value: null, fault })
    // 0.1 ohm over 20 mm (2500 mm² / 50 mm = 0.05 m): 0.005 ohm m.
    expect(value('800.1 ohm').value).toBeCloseTo(0.005, 9)
  })
  it('divides means as the resistivity index does, with an interval on the log scale, and drops no specimen', () => {
    expect(BULK_RESISTIVITY.ratioOf(175, 35)).toBe(500)
    expect(BULK_RESISTIVITY.intervalOf([175, 175], [35])).toMatchObject({ method: 'log-scale', df: 1 })
    expect(BULK_RESISTIVITY.rangeRulesOf).toBeUndefined()
  })
})
