import { readMoment, type Moment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { analysisResults } from '../../../src/core/composition/analysis-results.ts'
import type { Analysis, LotEvidence, ReportedValue } from '../../../src/core/mortar/mortar.ts'
import { evidence, printed, q } from '../readings/fixture.ts'

const p = (text: string) => q(text, 'fraction')

function results(
  values: Readonly<Record<string, ReportedValue | undefined>>,
  more: Partial<Analysis> = {},
  lot: Partial<LotEvidence> = {},
) {
  const analysis = {
    laboratory: 'quay',
    sample: 'C',
    tested: readMoment('2026-03-10'),
    results: values,
    ...more,
  }
  return analysisResults(analysis, 'producer', evidence({ more: lot })).map(printed)
}
const one = (key: string, ...asked: Parameters<typeof results>) =>
  results(...asked).find(({ property }) => property === key)

describe('analysisResults, as reported', () => {
  it('states what the record says, and no member that it does not know', () => {
    const [result] = results({ CaO: p('12.30 %') })
    const { working, ...stated } = result ?? { working: () => [] }
    expect(stated).toEqual({
      key: 'CaO||||quay|C',
      property: 'CaO',
      basis: 'dry',
      laboratory: 'quay',
      sample: 'C',
      sampleKind: 'composite',
      role: 'producer',
      value: 12.3,
      unit: '%',
      decimals: 2,
      written: '12.30 %',
      n: 1,
      tested: readMoment('2026-03-10'),
      valid: true,
      reasons: [],
    })
    expect(Object.values(stated)).not.toContain(undefined)
    expect(working()).toEqual([])
  })
  it('takes the analysis’ own method, basis and number before the laboratory’s and the property’s', () => {
    const methodOf = (laboratory: string, property: string, date: Moment) =>
      [laboratory, property, date].join(' ')
    const own = { value: p('12.3 %'), method: 'fusion', basis: 'ignited', of: 4 }
    expect(one('CaO', { CaO: own }, {}, { methodOf })).toMatchObject({
      method: 'fusion',
      key: 'CaO|||fusion|quay|C',
      basis: 'ignited',
      n: 4,
    })
    expect(one('CaO', { CaO: p('12.3 %') }, {}, { methodOf })?.method).toBe('quay CaO 2026-03-10')
  })
  it('has no basis where the property has none', () => {
    expect(one('water-requirement', { 'water-requirement': p('96 %') })).not.toHaveProperty('basis')
  })
  it('prints a value as written in the stored unit, in another with the property’s decimals', () => {
    expect(one('density', { density: q('2.4300 g/cm3', 'density') })?.decimals).toBe(4)
    expect(one('density', { density: q('2430 kg/m3', 'density') })).toMatchObject({
      value: 2.43,
      decimals: 2,
    })
  })
  it('sets the same property of the control beside it where the analysis states it', () => {
    const controls = { 'control-results': { CaO: p('60 %'), MgO: { value: p('2 %') } } }
    const values = { CaO: p('12.3 %'), MgO: p('1.1 %'), SO3: p('0.4 %') }
    expect(results(values, controls).map(({ controlValue }) => controlValue)).toEqual([60, 2, undefined])
  })
  it('keeps an excluded value, not valid, with its reason', () => {
    expect(one('CaO', { CaO: { value: p('12.3 %'), excluded: 'crucible broke' } })).toMatchObject({
      value: 12.3,
      valid: false,
      reasons: ['excluded: crucible broke'],
    })
  })
  it('passes over what is no property, and what is not stated', () => {
    expect(results({ colour: p('1 %'), CaO: undefined })).toEqual([])
  })
  it('keeps a value below a limit of determination at that limit, and says what it may be', () => {
    expect(one('SO3', { SO3: p('< 0.1 %') })).toMatchObject({
      value: 0.1,
      censored: 'below',
      bounds: { low: 0, high: 0.1, open: 'high' },
    })
    for (const member of ['censored', 'bounds'])
      expect(one('SO3', { SO3: p('0.1 %') })).not.toHaveProperty(member)
  })
  it('keeps what the control beside it may be', () => {
    expect(one('SO3', { SO3: p('0.4 %') }, { 'control-results': { SO3: p('< 0.1 %') } })).toMatchObject({
      controlValue: 0.1,
      controlBounds: { low: 0, high: 0.1, open: 'high' },
    })
  })
})

describe('analysisResults, sums of oxides', () => {
  const oxides = { SiO2: p('50.1 %'), Al2O3: p('20.22 %'), Fe2O3: p('5.0 %') }
  const alkalis = { Na2O: p('1.0 %'), K2O: p('2.00 %') }

  // 50.1 + 20.22 + 5.0 = 75.32; 1 + 0.658 × 2 = 2.316.
  it('adds them with the most decimals among them, and shows how', () => {
    const sum = one('oxide-sum', oxides)
    expect(sum).toMatchObject({ key: 'oxide-sum||||quay|C', decimals: 2, basis: 'dry', n: 1, valid: true })
    expect(sum?.value).toBeCloseTo(75.32, 12)
    expect(sum?.working()).toMatchObject([
      { label: 'sum', expression: '50.1 + 20.22 + 5.0 %', unit: '%', decimals: 2 },
    ])
    const equivalent = one('alkali-equivalent', alkalis)
    expect(equivalent?.value).toBeCloseTo(2.316, 12)
    expect(equivalent?.working()).toMatchObject([
      { label: 'equivalent', expression: '1.0 + 0.658 × 2.00 %', decimals: 2 },
    ])
    for (const member of ['censored', 'written', 'method']) expect(sum).not.toHaveProperty(member)
  })
  it('needs each of them, and is valid only where all of them are', () => {
    const properties = (values: Parameters<typeof results>[0]) =>
      results(values).map(({ property }) => property)
    for (const lacking of ['SiO2', 'Al2O3', 'Fe2O3'])
      expect(properties({ ...oxides, [lacking]: undefined })).not.toContain('oxide-sum')
    for (const lacking of ['Na2O', 'K2O'])
      expect(properties({ ...alkalis, [lacking]: undefined })).not.toContain('alkali-equivalent')
    const spilt = { value: p('20 %'), excluded: 'spilt' }
    expect(one('oxide-sum', { ...oxides, Al2O3: spilt })).toMatchObject({
      valid: false,
      reasons: ['excluded: spilt'],
    })
  })
  it('is by their method where they share one, and by none where they differ', () => {
    expect(one('oxide-sum', oxides, {}, { methodOf: () => 'XRF' })).toMatchObject({
      method: 'XRF',
      key: 'oxide-sum|||XRF|quay|C',
    })
    const methodOf = (_: string, property: string) => (property === 'SiO2' ? 'gravimetry' : 'XRF')
    expect(one('oxide-sum', oxides, {}, { methodOf })).not.toHaveProperty('method')
  })
  // 50.1 alone, since both others may be nothing; 50.1 + 0.1 + 0.25 = 50.45 at most.
  it('is known within bounds where a member is one, and names each such member', () => {
    const sum = one('oxide-sum', { ...oxides, Al2O3: p('< 0.1 %'), Fe2O3: p('< 0.25 %') })
    expect(sum).toMatchObject({
      censored: 'below',
      bounds: { low: 50.1, high: 50.45, open: 'high' },
      valid: true,
      decimals: 2,
      reasons: [
        'Al2O3 is reported as < 0.1 %, so the sum is known only within bounds',
        'Fe2O3 is reported as < 0.25 %, so the sum is known only within bounds',
      ],
    })
    expect(sum?.value).toBeCloseTo(50.45, 12)
    expect(sum?.working()).toMatchObject([
      { label: 'sum of the figures', expression: '50.1 + <0.1 + <0.25 %' },
      {
        label: 'bounds',
        expression:
          'a figure with < may be anything from nothing to that figure: between 50.10 and 50.45\u00a0%',
      },
    ])
  })
  // 0.7 + 0.658 × 0 = 0.7 at least; 0.7 + 0.658 × 0.1 = 0.7658 at most.
  it('carries the bounds of either alkali, potash by its factor', () => {
    expect(one('alkali-equivalent', { Na2O: p('0.70 %'), K2O: p('< 0.10 %') })?.bounds).toEqual({
      low: 0.7,
      high: 0.7658,
      open: 'high',
    })
    expect(one('alkali-equivalent', { Na2O: p('< 0.10 %'), K2O: p('1.00 %') })?.bounds).toEqual({
      low: 0.658,
      high: 0.758,
      open: 'high',
    })
  })
  it('tells no class by a bound on calcium oxide above the divider', () => {
    const told = (lime: string) =>
      one('oxide-sum', { ...oxides, CaO: p(lime) }, {}, { kind: 'coal-fly-ash' })?.working()[1]?.expression
    expect(told('< 19 %')).toBeUndefined()
    expect(told('< 1 %')).toBe('CaO <1 %: class F by the divider of 18 %')
  })
  it('is not valid over different bases, and has none of its own', () => {
    const sum = one('oxide-sum', { ...oxides, SiO2: { value: p('50.1 %'), basis: 'ignited' } })
    expect(sum).toMatchObject({
      valid: false,
      reasons: ['the oxides are on different bases: SiO2 ignited, Al2O3 dry, Fe2O3 dry'],
    })
    expect(sum).not.toHaveProperty('basis')
  })
  it('tells the class that calcium oxide alone would give, of coal ash only, 18.0 itself class F', () => {
    const told = (lime: string, kind: LotEvidence['kind']) =>
      one('oxide-sum', { ...oxides, CaO: p(lime) }, {}, { kind })?.working()[1]?.expression
    expect(told('18.0 %', 'coal-fly-ash')).toBe('CaO 18.0 %: class F by the divider of 18 %')
    expect(told('18.1 %', 'coal-fly-ash')).toBe('CaO 18.1 %: class C by the divider of 18 %')
    expect(told('18.1 %', 'raw-natural-pozzolan')).toBeUndefined()
    expect(one('oxide-sum', oxides, {}, { kind: 'coal-fly-ash' })?.working()).toHaveLength(1)
  })
})
