import { describe, expect, it } from 'vitest'
import type { BenchCondition } from '../../../src/core/resistivity/bench-condition.ts'
import { type BenchDetail, benchDay } from '../../../src/core/resistivity/bench-day.ts'
import { q } from '../readings/fixture.ts'

const reading = { temperature: q('23 degC', 'temperature'), within: q('2 degC', 'temperature-difference') }
const cured = (temperature: string, medium = 'saturated-lime-water'): BenchCondition => ({
  curing: { medium, temperature: q(temperature, 'temperature') },
  resistivity: { reading },
})
const details = (condition: BenchCondition) => benchDay(condition).map(({ detail }) => detail)
const missing = (condition: BenchCondition) =>
  benchDay(condition).flatMap(({ detail, recorded }) => (recorded ? [] : [detail]))

/** What matters only where specimens come out of the curing too warm to be read. */
const COOLED = ['entry', 'core-log', 'cooled-in', 'cooled-for', 'cooled-to', 'core-when-read', 'cooled-alike']

describe('benchDay', () => {
  it('lists the day of a hot-cured test in its order: mould, entry, bath, cooling, meter, cement', () => {
    const day = details(cured('50 degC'))
    expect(day).toHaveLength(35)
    const marks: BenchDetail[] = [
      'mould',
      'entry',
      'bath-temperature',
      'evaporation',
      'cooled-for',
      'surface',
      'ceiling',
    ]
    const places = marks.map((detail) => day.indexOf(detail))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(day.at(-1)).toBe('cement-alkalis')
    expect(new Set(day).size).toBe(day.length)
  })
  it('asks nothing on cooling where specimens are cured at the temperature that they are read at', () => {
    expect(details(cured('50 degC')).filter((detail) => !details(cured('23 degC')).includes(detail))).toEqual(
      COOLED,
    )
  })
  it('takes a bath within the tolerance of the reading as cool, one just beyond it as hot', () => {
    expect(details(cured('25 degC'))).not.toContain('cooled-for')
    expect(details(cured('25.1 degC'))).toContain('cooled-for')
  })
  it('asks nothing on a liquid of specimens that are in none', () => {
    const wet = ['liquid-to-specimens', 'solid-lime', 'renewal', 'out-of-liquid']
    expect(
      details(cured('50 degC')).filter((detail) => !details(cured('50 degC', 'sealed')).includes(detail)),
    ).toEqual(wet)
  })
  it('counts a temperature as recorded only with its tolerance', () => {
    const bath = { medium: 'fog', temperature: q('50 degC', 'temperature') }
    const within = q('2 degC', 'temperature-difference')
    expect(missing({ curing: bath, resistivity: { reading } })).toContain('bath-temperature')
    expect(missing({ curing: { ...bath, within }, resistivity: { reading } })).not.toContain(
      'bath-temperature',
    )
  })
  it('finds each detail where the record has it', () => {
    const most = q('5 %', 'fraction')
    const some: BenchCondition = {
      curing: {
        medium: 'saturated-lime-water',
        temperature: q('50 degC', 'temperature'),
        bath: { vessel: 'box', renewal: { at: 'never' } },
      },
      resistivity: {
        reading: { ...reading, 'end-contact-at-most': most },
        measured: { sides: 'no' },
        handling: { 'after-reading': 'read-once' },
      },
    }
    expect(
      benchDay(some).flatMap(({ stage, detail, recorded }) => (recorded ? [`${stage}: ${detail}`] : [])),
    ).toEqual([
      'bath: vessel',
      'bath: renewal',
      'specimens: sides',
      'meter: contact-resistance',
      'after-reading: after-reading',
    ])
  })
  it('has nothing to list without a resistivity test', () => {
    const { curing } = cured('50 degC')
    expect(benchDay({ curing })).toEqual([])
  })
})
