import { readAge } from '../../../src/core/measure/age.ts'
import { defined } from '../../../src/core/measure/defined.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type {
  MortarCondition,
  ResistivityReading,
  SpecimenShape,
  StrengthReading,
} from '../../../src/core/mortar/mortar.ts'
import { testedSpecimens } from '../../../src/core/readings/tested-specimens.ts'
import { BULK_RESISTIVITY } from '../../../src/core/resistivity/resistivity-measurement.ts'
import { COMPRESSIVE_STRENGTH } from '../../../src/core/strength/compressive-strength.ts'
import { q, WARM, worded } from './fixture.ts'

const AS_OF = readMoment('2026-04-10')
const CUBE: SpecimenShape = { shape: 'cube', side: q('50 mm', 'length') }
const kN = (load: string) => q(`${load} kN`, 'force')
const ohm = (text: string) => q(`${text} ohm`, 'resistance')

function strengths(
  specimens: NonNullable<StrengthReading['specimens']>,
  specimen: SpecimenShape = CUBE,
  rules = WARM.strength?.['batch-range'],
) {
  const strength = {
    specimen,
    specimens: { planned: 1 },
    ...(rules === undefined ? {} : { 'batch-range': rules }),
  }
  return worded(
    testedSpecimens(COMPRESSIVE_STRENGTH, { age: readAge('28 d'), specimens }, { ...WARM, strength }, AS_OF),
  )
}

function resistivities(
  specimens: NonNullable<ResistivityReading['specimens']>,
  more: Partial<ResistivityReading> = {},
  specimen: SpecimenShape = CUBE,
) {
  const condition = { ...WARM, resistivity: { ...WARM.resistivity, specimen } } as MortarCondition
  return worded(
    testedSpecimens(BULK_RESISTIVITY, { age: readAge('28 d'), specimens, ...more }, condition, AS_OF),
  )
}

describe('testedSpecimens, strength', () => {
  it('notes an assumed mould as long as a specimen with it counts, once for all', () => {
    const lbf = q('16000 lbf', 'force')
    const own = { side: q('50 mm', 'length') }
    const on = (day: string) =>
      strengths({
        a: { load: lbf, excluded: 'corner lost', 'excluded-on': readMoment(day) },
        b: { load: lbf, width: own.side, depth: own.side },
      } as NonNullable<StrengthReading['specimens']>).reasons
    expect(on('2026-04-11').filter((reason) => reason.includes('4.00 in'))).toHaveLength(1)
    expect(on('2026-04-09').filter((reason) => reason.includes('4.00 in'))).toEqual([])
    expect(strengths({ a: lbf, b: lbf }).reasons.filter((reason) => reason.includes('4.00 in'))).toHaveLength(
      1,
    )
  })
  // 100 and 102 kN on 2500 mm² are 40 and 40.8 MPa; their mean is 40.4.
  it('takes the mean of the specimens that count, in the order of the record', () => {
    expect(strengths({ b: kN('100'), a: kN('102') })).toMatchObject({
      mean: 40.4,
      n: 2,
      counted: [
        { mark: 'b', value: 40 },
        { mark: 'a', value: 40.8 },
      ],
      meanOnly: false,
      valid: true,
      reasons: [],
    })
  })
  it('drops the cube farthest from the mean and says so: 100.0, 102.5, 111.25 kN', () => {
    const batch = strengths({ a: kN('100.0'), b: kN('102.5'), c: kN('111.25') })
    expect(batch).toMatchObject({ mean: 40.5, n: 2, valid: true })
    expect(batch.counted.map(({ mark }) => mark)).toEqual(['a', 'b'])
    expect(batch.reasons).toEqual([
      'the range of 3 specimens is 10.8 % of the mean, over 8.7 %; specimen c, farthest from the mean, is dropped',
    ])
    expect(batch.rangeChecks.map(({ of, kept }) => [of, kept])).toEqual([
      [3, false],
      [2, true],
    ])
  })
  it('gives the figures of the range as data: 4.5 MPa of a mean of 125.5/3', () => {
    const condition = WARM
    const { reasons } = testedSpecimens(
      COMPRESSIVE_STRENGTH,
      { age: readAge('28 d'), specimens: { a: kN('100.0'), b: kN('102.5'), c: kN('111.25') } },
      condition,
      AS_OF,
    )
    expect(reasons).toMatchObject([
      { code: 'specimen-dropped', params: { mark: 'c', measure: 'range', of: 3, limitPercent: 8.7 } },
    ])
    const [reason] = reasons
    expect(reason?.code === 'specimen-dropped' ? reason.params.percent : null).toBeCloseTo(
      (100 * 4.5 * 3) / 125.5,
      10,
    )
  })
  it('is not valid where no specimen can be dropped to mend the range: 90 and 110 kN', () => {
    // 44 − 36 = 8 MPa of a mean of 40: 20 %.
    expect(strengths({ a: kN('90'), b: kN('110') })).toMatchObject({
      mean: 40,
      n: 2,
      valid: false,
      reasons: [
        'the range of 2 specimens is 20.0 % of the mean, over 7.6 %, and dropping one specimen does not bring it within the limit: repeat the test',
      ],
    })
  })
  it('holds half prisms against a distance from the mean where the rule is one', () => {
    // 80 and 120 kN: 32 and 48 MPa, each 20 % from 40.
    const within = [{ of: 2, within: q('10 %', 'fraction') }]
    expect(strengths({ a: kN('80'), b: kN('120') }, CUBE, within).reasons).toEqual([
      'the largest distance from the mean of 2 specimens is 20.0 % of the mean, over 10 %, and dropping one specimen does not bring it within the limit: repeat the test',
    ])
  })
  it('checks no range where the condition has no rule for that many', () => {
    expect(strengths({ a: kN('50'), b: kN('150') }, CUBE, [])).toMatchObject({
      mean: 40,
      valid: true,
      reasons: [],
      rangeChecks: [],
    })
  })
  it('leaves out an excluded specimen with its reason, whatever it read, and judges the rest', () => {
    const batch = strengths({ a: kN('100'), b: { load: kN('10'), excluded: 'corner lost' }, c: kN('102') })
    expect(batch).toMatchObject({
      mean: 40.4,
      n: 2,
      valid: true,
      reasons: ['specimen b excluded: corner lost'],
    })
    expect(batch.specimens()).toMatchObject([
      { mark: 'a', value: 40 },
      { mark: 'b', value: 4, excluded: 'corner lost' },
      { mark: 'c', value: 40.8 },
    ])
  })
  it('says of an excluded specimen alone that it is excluded', () => {
    const { specimens } = strengths({
      a: kN('100'),
      b: { load: kN('100'), side: q('50 mm', 'length') },
      c: { load: kN('10'), excluded: 'corner lost' },
    })
    expect(specimens().map((specimen) => 'excluded' in specimen)).toEqual([false, false, true])
  })
  it('has no mean without a size or without a specimen that counts, and says why', () => {
    expect(strengths({ a: kN('100') }, { shape: 'cube' })).toMatchObject({
      mean: null,
      n: 0,
      counted: [],
      valid: false,
      reasons: ['the loaded area is not known'],
    })
    expect(strengths({ a: { load: kN('60'), excluded: 'corner lost' } })).toMatchObject({
      mean: null,
      valid: false,
      reasons: ['specimen a excluded: corner lost', 'no specimen counts'],
    })
    expect(strengths({})).toMatchObject({ mean: null, valid: false, reasons: ['no specimen counts'] })
  })
  it('takes no mean of some where one that counts has no value, and none of an excluded one into account', () => {
    const load = kN('100')
    const sized = { load, area: q('25 cm2', 'area') }
    expect(strengths({ a: sized, b: load }, { shape: 'cube' })).toMatchObject({
      mean: null,
      valid: false,
      reasons: ['the loaded area is not known'],
    })
    expect(strengths({ a: sized, b: { load, excluded: 'broke' } }, { shape: 'cube' })).toMatchObject({
      mean: 40,
      n: 1,
      valid: true,
    })
  })
  it('takes a mean without its specimens as reported, and says where their number is not stated', () => {
    const mean = q('41.5 MPa', 'stress')
    const reported = worded(
      testedSpecimens(COMPRESSIVE_STRENGTH, { age: readAge('28 d'), mean, of: 3 }, WARM, AS_OF),
    )
    expect({ ...reported, specimens: reported.specimens() }).toEqual({
      specimens: [],
      counted: [],
      mean: 41.5,
      n: 3,
      meanOnly: true,
      areaMm2: null,
      stated: true,
      rangeChecks: [],
      valid: true,
      reasons: ['only the mean is on record'],
    })
    expect(
      worded(testedSpecimens(COMPRESSIVE_STRENGTH, { age: readAge('28 d'), mean }, WARM, AS_OF)),
    ).toMatchObject({
      uncounted: true,
      reasons: ['only the mean is on record', 'how many specimens the mean is of is not stated'],
    })
  })
  it('counts nothing of a reading that lists no specimens', () => {
    expect(testedSpecimens(COMPRESSIVE_STRENGTH, { age: readAge('28 d') }, WARM, AS_OF)).toMatchObject({
      mean: null,
      valid: false,
    })
  })
})

const CONTACTS = 'the end contacts are as large as a reading, or larger, so no resistivity follows from it'

describe('testedSpecimens, resistivity', () => {
  it('takes the end contacts off each reading', () => {
    expect(resistivities({ a: ohm('804'), b: ohm('844') }, { 'end-contact': ohm('4') })).toMatchObject({
      mean: 41,
      n: 2,
      valid: true,
      rangeChecks: [],
    })
  })
  it('has no mean where the end contacts are as large as a reading: no resistivity follows from it', () => {
    expect(resistivities({ a: ohm('800') }, { 'end-contact': ohm('800') })).toMatchObject({
      mean: null,
      valid: false,
      reasons: [CONTACTS],
    })
    expect(
      resistivities({ a: ohm('1400'), b: ohm('800'), c: ohm('700') }, { 'end-contact': ohm('800') }),
    ).toMatchObject({ mean: null, valid: false, reasons: [CONTACTS] })
  })
  it('has no mean where the length is not known, and says why', () => {
    expect(
      resistivities({ a: ohm('800') }, {}, { shape: 'prism', side: q('40 mm', 'length') }),
    ).toMatchObject({ mean: null, valid: false, reasons: ['the size of a specimen is not known'] })
  })
  it('names every fault at once: an exclusion, a size that is not known, contacts as large as a reading', () => {
    const specimens = {
      a: { resistance: ohm('4'), side: q('50 mm', 'length') },
      b: ohm('800'),
      c: { resistance: ohm('800'), excluded: 'cracked' },
    }
    expect(resistivities(specimens, { 'end-contact': ohm('4') }, { shape: 'cube' })).toMatchObject({
      mean: null,
      valid: false,
      reasons: ['specimen c excluded: cracked', CONTACTS, 'the size of a specimen is not known'],
    })
  })
  it('never drops a specimen, however far it lies off', () => {
    expect(resistivities({ a: ohm('800'), b: ohm('800'), c: ohm('8000') })).toMatchObject({
      n: 3,
      valid: true,
      reasons: [],
    })
  })
})

describe('testedSpecimens, their number', () => {
  const condition = (specimens: NonNullable<MortarCondition['strength']>['specimens']): MortarCondition => ({
    ...WARM,
    strength: {
      specimen: CUBE,
      'batch-range': WARM.strength?.['batch-range'] ?? [],
      ...defined({ specimens }),
    },
  })
  const made = (
    loads: readonly string[],
    specimens?: NonNullable<MortarCondition['strength']>['specimens'],
    more: Partial<StrengthReading> = {},
  ) => {
    const reading = {
      age: readAge('28 d'),
      specimens: Object.fromEntries(loads.map((load, place) => [`s${place}`, kN(load)])),
      ...more,
    }
    const { valid, reasons } = worded(
      testedSpecimens(COMPRESSIVE_STRENGTH, reading, condition(specimens), AS_OF),
    )
    return { valid, reasons }
  }

  it('says that a range is not checked where there is no rule for the number', () => {
    expect(made(['20', '80', '140', '80'])).toEqual({
      valid: true,
      reasons: ['range not checked: no rule for 4 specimens'],
    })
  })

  it('notes fewer specimens than planned: one of six, and two of the three that the range rules speak of', () => {
    expect(made(['80'], { planned: 6 })).toEqual({ valid: true, reasons: ['1 specimen of 6 planned'] })
    expect(made(['80', '81'])).toEqual({ valid: true, reasons: ['2 specimens of 3 planned'] })
  })

  it('is not valid with fewer than the condition asks for at least', () => {
    expect(made(['80'], { planned: 3, 'at-least': 2 })).toEqual({
      valid: false,
      reasons: ['1 specimen of 3 planned', '1 specimen, fewer than the 2 that the condition requires'],
    })
    expect(made(['80'], { planned: 1, 'at-least': 2, fewer: 'flag' }).valid).toBe(true)
  })

  it('holds a reported mean to it by the number that it states', () => {
    const mean = q('40 MPa', 'stress')
    const { specimens: _none, ...reading } = { age: readAge('28 d'), specimens: undefined, mean, of: 2 }
    const { reasons } = worded(testedSpecimens(COMPRESSIVE_STRENGTH, reading, condition(undefined), AS_OF))
    expect(reasons).toEqual(['only the mean is on record', '2 specimens of 3 planned'])
  })
})
