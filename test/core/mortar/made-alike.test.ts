import { describe, expect, it } from 'vitest'
import { fieldsUnlike } from '../../../src/core/mortar/made-alike.ts'
import { q } from '../readings/fixture.ts'

const base = {
  title: '20 %, 23 °C',
  replacement: { amount: q('20 %', 'fraction'), by: 'mass' },
  batch: { cementitious: q('500 g', 'batch-mass'), sand: q('1375 g', 'batch-mass'), specimens: 6 },
  water: { 'w/cm': 0.485 },
  curing: { medium: 'saturated-lime-water', temperature: q('23 degC', 'temperature') },
  ages: [{ age: '28 d' }],
  strength: { specimen: { shape: 'cube', side: q('50 mm', 'length') } },
}

describe('fieldsUnlike', () => {
  it('finds nothing between replacement levels, whatever the units: all else is alike', () => {
    const other = {
      ...base,
      title: '50 %, 23 °C',
      replacement: { amount: q('50 %', 'fraction'), by: 'mass' },
      batch: { ...base.batch, cementitious: q('0.5 kg', 'batch-mass'), specimens: 9 },
      ages: [{ age: '7 d' }],
      control: { broken: 'flag' },
    }
    expect(fieldsUnlike(base, other)).toEqual([])
  })
  it('names each field that differs, and one that only either has', () => {
    const other = {
      ...base,
      water: { 'w/cm': 0.5 },
      curing: { ...base.curing, temperature: q('50 degC', 'temperature') },
      'first-day': { temperature: q('23 degC', 'temperature') },
      strength: { specimen: { shape: 'cube', side: q('2 in', 'length') } },
    }
    expect(fieldsUnlike(base, other)).toEqual([
      'water.w/cm',
      'first-day',
      'curing.temperature',
      'strength.specimen.side',
    ])
  })
})
