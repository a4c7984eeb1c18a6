import { describe, expect, it } from 'vitest'
import { controlFaults } from '../../../src/core/mortar/control-faults.ts'
import type {
  ControlMortar,
  MortarCondition,
  ResistivityReading,
  TestMortar,
} from '../../../src/core/mortar/mortar.ts'
import { readingFaults, readingNotes } from '../../../src/core/resistivity/reading-faults.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'

function quantity(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(text)
  return read
}

const test: TestMortar = {
  condition: 'c311',
  laboratory: 'north',
  cast: '2026-03-11T09:30',
  sample: 'C',
  control: 'K',
}
const control: ControlMortar = {
  condition: 'c311',
  laboratory: 'north',
  cast: '2026-03-11T09:00',
  cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.65 %', 'fraction') },
}
const base: MortarCondition = {
  title: 'c311',
  standing: 'standard',
  water: {},
  curing: { medium: 'saturated-lime-water' },
  ages: [],
}
// The figures that ASTM C311 is remembered by: 0.50 to 0.80 % alkalis, 35 MPa at 28 d (from memory).
const demands = {
  'cast-with-test': 'yes' as const,
  'cement-alkalis': { 'at-least': quantity('0.50 %', 'fraction'), 'at-most': quantity('0.80 %', 'fraction') },
  strength: { age: '28 d', 'at-least': quantity('35 MPa', 'stress') },
}
const strict: MortarCondition = { ...base, control: demands }
const lenient: MortarCondition = { ...base, control: { ...demands, broken: 'flag' } }
const strong = () => 40

describe('controlFaults', () => {
  it('finds nothing in a control as the condition asks for it, the very limits included', () => {
    expect(controlFaults(test, control, strict, strong)).toEqual({ faults: [], notes: [] })
    const onLimit = { ...control, cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.80 %', 'fraction') } }
    expect(controlFaults(test, onLimit, strict, () => 35)).toEqual({ faults: [], notes: [] })
  })

  it('names a control of another day, a cement out of its limits and a control too weak', () => {
    const stale = {
      ...control,
      cast: '2026-02-25T09:00',
      cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.81 %', 'fraction') },
    }
    expect(controlFaults(test, stale, strict, () => 34.96).faults).toEqual([
      'control K: cast 14 d before the test mortar, where both are to be cast on one day',
      'control K: its cement has 0.81 % alkalis, more than 0.80 %',
      'control K: its strength at 28 d is 35.0 MPa, less than 35 MPa',
    ])
    expect(
      controlFaults(
        test,
        { ...control, cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.49 %', 'fraction') } },
        strict,
        strong,
      ).faults,
    ).toEqual(['control K: its cement has 0.49 % alkalis, less than 0.50 %'])
  })

  it('flags instead of blocking where the condition says so', () => {
    const found = controlFaults(test, { ...control, cast: '2026-03-12T09:00' }, lenient, strong)
    expect(found.faults).toEqual([])
    expect(found.notes).toEqual([
      'control K: cast 1 d after the test mortar, where both are to be cast on one day',
    ])
  })

  it('notes a foreign control whatever the condition, and alkalis that are not on record', () => {
    expect(controlFaults(test, { ...control, laboratory: 'south' }, base, strong)).toEqual({
      faults: [],
      notes: ['the control was made by another laboratory, south'],
    })
    expect(controlFaults(test, { ...control, cement: { lot: 'PC-1' } }, strict, strong)).toEqual({
      faults: [],
      notes: ['the alkalis of the control’s cement are not on record'],
    })
  })

  it('notes a control of another day where the condition says nothing of it, and not where it allows it', () => {
    const stale = { ...control, cast: '2026-02-25T09:00' }
    expect(controlFaults(test, stale, base, strong)).toEqual({
      faults: [],
      notes: ['the control was cast 14 d before the test mortar'],
    })
    const { 'cast-with-test': _, ...silent } = demands
    expect(controlFaults(test, stale, { ...base, control: silent }, strong)).toEqual({
      faults: [],
      notes: ['the control was cast 14 d before the test mortar'],
    })
    expect(
      controlFaults(test, stale, { ...base, control: { ...demands, 'cast-with-test': 'no' } }, strong),
    ).toEqual({ faults: [], notes: [] })
  })

  it('says nothing on a strength that is not there yet', () => {
    expect(controlFaults(test, control, strict, () => undefined).faults).toEqual([])
  })
})

describe('readingFaults', () => {
  const asked: MortarCondition = {
    ...base,
    resistivity: {
      specimen: { shape: 'cube' },
      conditioning: 'saturated-lime-water',
      saturation: 'stated',
      reading: {
        temperature: quantity('23 degC', 'temperature'),
        within: quantity('2 degC', 'temperature-difference'),
        'end-contact-at-most': quantity('5 %', 'fraction'),
        'verification-within': quantity('1 %', 'fraction'),
      },
    },
  }
  const reading: ResistivityReading = {
    age: '28 d',
    temperature: quantity('23 degC', 'temperature'),
    'end-contact': quantity('10 ohm', 'resistance'),
    saturation: 'saturated',
    verification: { known: quantity('1000 ohm', 'resistance'), read: quantity('1010 ohm', 'resistance') },
    specimens: { a: quantity('200 ohm', 'resistance'), b: quantity('400 ohm', 'resistance') },
  }

  it('takes contacts of 5 % and a meter off by 1 % on the very limit', () => {
    expect(readingFaults(reading, asked)).toEqual([])
    expect(readingNotes(reading, asked)).toEqual([])
  })

  it('names contacts that are a larger share of the smallest reading, leaving excluded specimens out', () => {
    // 10 / 199 = 5.03 %.
    expect(readingFaults({ ...reading, specimens: { a: quantity('199 ohm', 'resistance') } }, asked)).toEqual(
      ['the end contacts are 5.0 % of a reading, more than 5 %'],
    )
    expect(
      readingFaults(
        {
          ...reading,
          specimens: {
            a: { resistance: quantity('100 ohm', 'resistance'), excluded: 'cracked' },
            b: quantity('400 ohm', 'resistance'),
          },
        },
        asked,
      ),
    ).toEqual([])
  })

  it('names a meter that is off, or that nobody verified', () => {
    expect(
      readingFaults(
        {
          ...reading,
          verification: {
            known: quantity('1000 ohm', 'resistance'),
            read: quantity('1011 ohm', 'resistance'),
          },
        },
        asked,
      ),
    ).toEqual(['the meter read 1011 ohm on a resistor of 1000 ohm, off by more than 1 %'])
    const { verification: _none, ...unverified } = reading
    expect(readingFaults(unverified, asked)).toEqual(['no reading on a known resistor is on record'])
  })

  it('notes a saturation that is not stated', () => {
    const { saturation: _none, ...unstated } = reading
    expect(readingNotes(unstated, asked)).toEqual([
      'how saturated the specimens were when read is not stated',
    ])
  })
})
