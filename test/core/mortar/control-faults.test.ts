import { readAge, type Age } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { controlFaults as found } from '../../../src/core/mortar/control-faults.ts'
import type { ControlMortar, MortarCondition, TestMortar } from '../../../src/core/mortar/mortar.ts'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'
import { q as quantity } from '../readings/fixture.ts'

/** Faults and notes as sentences, so that codes, figures and nesting are held at once. */
function controlFaults(...asked: Parameters<typeof found>): { faults: string[]; notes: string[] } {
  const { faults, notes } = found(...asked)
  return { faults: faults.map(resultReasonWords), notes: notes.map(resultReasonWords) }
}

const test: TestMortar = {
  condition: 'c311',
  laboratory: 'north',
  cast: readMoment('2026-03-11T09:30'),
  sample: 'C',
  control: 'K',
}
const control: ControlMortar = {
  condition: 'c311',
  laboratory: 'north',
  cast: readMoment('2026-03-11T09:00'),
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
  strength: { age: readAge('28 d'), 'at-least': quantity('35 MPa', 'stress') },
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
      cast: readMoment('2026-02-25T09:00'),
      cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.81 %', 'fraction') },
    }
    expect(controlFaults(test, stale, strict, () => 34.96).faults).toEqual([
      'control K: cast 14 d before the test mortar; both must be cast on the same day',
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
    const found = controlFaults(test, { ...control, cast: readMoment('2026-03-12T09:00') }, lenient, strong)
    expect(found.faults).toEqual([])
    expect(found.notes).toEqual([
      'control K: cast 1 d after the test mortar; both must be cast on the same day',
    ])
  })

  it('notes a foreign control whatever the condition, and alkalis that are not on record', () => {
    expect(controlFaults(test, { ...control, laboratory: 'south' }, base, strong)).toEqual({
      faults: [],
      notes: ['the control was made by another laboratory, south'],
    })
    expect(controlFaults(test, { ...control, cement: { lot: 'PC-1' } }, strict, strong)).toEqual({
      faults: [],
      notes: ['the alkalis of the control cement are not on record'],
    })
  })

  it('notes a control of another day where the condition says nothing of it, and not where it allows it', () => {
    const stale = { ...control, cast: readMoment('2026-02-25T09:00') }
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

  it('takes the least alkalis and the least strength on the very limit, and not a hair below', () => {
    const least = { ...control, cement: { lot: 'PC-1', 'Na2O-equivalent': quantity('0.50 %', 'fraction') } }
    expect(controlFaults(test, least, strict, () => 35)).toEqual({ faults: [], notes: [] })
    expect(controlFaults(test, control, strict, () => 34.999).faults).toHaveLength(1)
  })

  it('asks of alkalis only what the condition limits, one end or the other', () => {
    const only = (end: 'at-least' | 'at-most', alkalis: string) =>
      controlFaults(
        test,
        { ...control, cement: { lot: 'PC-1', 'Na2O-equivalent': quantity(alkalis, 'fraction') } },
        { ...base, control: { 'cement-alkalis': { [end]: quantity('0.60 %', 'fraction') } } },
        strong,
      ).faults
    expect(only('at-least', '1.20 %')).toEqual([])
    expect(only('at-most', '0.10 %')).toEqual([])
    expect(only('at-least', '0.59 %')).toEqual(['control K: its cement has 0.59 % alkalis, less than 0.60 %'])
    expect(only('at-most', '0.61 %')).toEqual(['control K: its cement has 0.61 % alkalis, more than 0.60 %'])
  })

  it('asks for the strength at the age that the condition names, and of none where it names none', () => {
    const asked: string[] = []
    const at = (age: Age) => {
      asked.push(age.text)
      return 10
    }
    expect(controlFaults(test, control, strict, at).faults).toEqual([
      'control K: its strength at 28 d is 10.0 MPa, less than 35 MPa',
    ])
    expect(controlFaults(test, control, base, at).faults).toEqual([])
    expect(asked).toEqual(['28 d'])
  })

  it('takes clock times of one day for one day, and each side of midnight for two', () => {
    const cast = (moment: string) => ({ ...control, cast: readMoment(moment) })
    expect(controlFaults(test, cast('2026-03-11T23:59'), strict, strong)).toEqual({ faults: [], notes: [] })
    expect(controlFaults(test, cast('2026-03-12T00:00'), strict, strong).faults).toEqual([
      'control K: cast 1 d after the test mortar; both must be cast on the same day',
    ])
  })

  it('gives the figures as data, the control’s own faults within a reason that names it', () => {
    expect(found(test, { ...control, cast: readMoment('2026-02-25T09:00') }, strict, strong)).toEqual({
      faults: [
        {
          code: 'control-fault',
          params: { control: 'K', reason: { code: 'not-cast-together', params: { daysBefore: 14 } } },
        },
      ],
      notes: [],
    })
    expect(found(test, { ...control, cast: readMoment('2026-03-13T09:00') }, base, strong).notes).toEqual([
      { code: 'control-cast-apart', params: { daysBefore: -2 } },
    ])
  })
})
