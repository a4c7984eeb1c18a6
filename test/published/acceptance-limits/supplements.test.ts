import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { KnownApproval } from '../../../src/core/evidence/evidence.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { clauseOf, evidenceOf, index, result, statedUncertainty } from '../../core/judging/fixture.ts'
import { clauseIn, limitsOf, outcomeOf } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// AASHTO M 295-11 (2015): shop entry (aoektech.com) for what it goes with, note of 19 February 2019
// (adaa.asn.au) for its loss on
// ignition and options. The other three are invented; the cases of class C are own arithmetic on a clause of
// that form.
const m295 = shippedSet('m295-2015')
const roads = shippedSet('varrow-roads')
const county = shippedSet('fell-county-works')
const viaduct = shippedSet('high-fell-viaduct')

const approval = (set: string, clause: string): KnownApproval => ({
  from: readMoment('2025-01-01'),
  by: 'the purchaser',
  scope: 'this source',
  set,
  clause,
  evidence: 'records of 2024',
})

describe('AASHTO M 295-11 (2015) as shipped', () => {
  it('is ASTM C618-12a but for loss on ignition 5.0 % and an options on available alkalis and alkali-silica reaction', () => {
    const base = limitsOf(shippedSet('c618-12a'))
    expect(limitsOf(m295)).toEqual({
      ...base,
      'loss-on-ignition': 'at-most N 5.0 %, F 5.0 %, C 5.0 %',
      'available-alkalis': 'at-most 1.5 %',
      'expansion-alkali-silica': 'at-most 100 %',
    })
    expect(m295.layers.map(({ id }) => id)).toEqual(['c618-12a', 'm295-2015'])
    expect(clauseIn(m295, 'loss-on-ignition').changes).toEqual([
      expect.objectContaining({ layer: 'm295-2015', change: 'tighten' }),
    ])
  })

  it('fails 5.1 % where C618 passes 6.0 %, without the extension to 12.0 %', () => {
    const loss = (value: number) =>
      outcomeOf(m295, 'loss-on-ignition', [result('loss-on-ignition', value)], {
        class: 'F',
        approvals: [approval('c618-12a', 'loss-on-ignition')],
      })
    expect([5, 5.1, 6].map(loss)).toEqual(['meets', 'does-not-meet', 'does-not-meet'])
  })

  it('asks for available alkalis on demand', () => {
    const alkalis = (requested: Record<string, string[]>) =>
      outcomeOf(m295, 'available-alkalis', [result('available-alkalis', 1.6)], { class: 'F', requested })
    expect([alkalis({}), alkalis({ 'm295-2015': ['available-alkalis'] })]).toEqual([
      'not-invoked',
      'does-not-meet',
    ])
  })
})

describe('the invented supplement for roads', () => {
  const classC = (early: number, calcium: number, late: number) =>
    outcomeOf(roads, 'class-c', [index('7 d', early), result('CaO', calcium), index('28 d', late)], {
      class: 'C',
    })

  it('takes class C by 7 d index or calcium oxide, and 28 d index: 80, 20, 90 meets', () => {
    expect(classC(80, 20, 90)).toBe('meets')
  })

  it('fails 89, 19, 95 on both early routes, and 92, 15, 89 on 28 d', () => {
    expect([classC(89, 19, 95), classC(92, 15, 89)]).toEqual(['does-not-meet', 'does-not-meet'])
    expect(outcomeOf(roads, 'class-c', [], { class: 'F' })).toBe('not-applicable')
  })

  it('tightens loss on ignition to 3.0 %, up to 4.0 % by approval', () => {
    const loss = (value: number, ...approvals: KnownApproval[]) =>
      outcomeOf(roads, 'loss-on-ignition', [result('loss-on-ignition', value)], { class: 'F', approvals })
    const granted = approval('varrow-roads', 'loss-on-ignition')
    expect([
      loss(3),
      loss(3.1),
      loss(4, granted),
      loss(4.1, granted),
      loss(3.1, { ...granted, to: readMoment('2025-12-31') }),
    ]).toEqual(['meets', 'does-not-meet', 'meets-by-approval', 'does-not-meet', 'does-not-meet'])
  })

  it('relaxes the oxide sum of F to 60.0 %, keeps that of C, and says so', () => {
    expect(
      [
        ['F', 60],
        ['F', 59.9],
        ['C', 50],
        ['C', 49.9],
      ].map(([lotClass, value]) =>
        outcomeOf(roads, 'oxide-sum', [result('oxide-sum', Number(value))], { class: String(lotClass) }),
      ),
    ).toEqual(['meets', 'does-not-meet', 'meets', 'does-not-meet'])
    expect(clauseIn(roads, 'oxide-sum')).toMatchObject({
      layer: 'varrow-roads',
      changes: [{ change: 'relax' }],
    })
  })

  it('judges drying shrinkage unasked, silicon dioxide from 30.0 %, and wants the other two oxides reported', () => {
    expect(
      outcomeOf(roads, 'drying-shrinkage', [result('drying-shrinkage-increase', 0.04)], { class: 'F' }),
    ).toBe('does-not-meet')
    expect(
      [30, 29.9].map((value) => outcomeOf(roads, 'silicon-dioxide', [result('SiO2', value)], { class: 'F' })),
    ).toEqual(['meets', 'does-not-meet'])
    const oxides = ['aluminium-oxide-reported', 'iron-oxide-reported']
    expect(oxides.map((id) => outcomeOf(roads, id, [result('Al2O3', 20)], { class: 'F' }))).toEqual([
      'reported',
      'not-reported',
    ])
    expect(outcomeOf(roads, 'silicon-dioxide', [result('Al2O3', 20)], { class: 'F' })).toBe('not-reported')
  })

  it('wants a statement, no incinerator ash, and an approval that a change of fuel or equipment ends', () => {
    const granted: KnownApproval = { from: readMoment('2025-06-01'), by: 'the authority', scope: 'class F' }
    const known = (kind: string, date: string) => ({
      class: 'F',
      facts: { 'incinerator-ash': 'no' },
      documents: [{ kind: 'certification-statement', title: 'statement of March' }],
      approvals: [granted],
      events: [{ kind, date: readMoment(date), title: 'an event' }],
    })
    const outcomes = (kind: string, date: string) =>
      ['no-incinerator-ash', 'certification-statement', 'source-approval'].map((id) =>
        outcomeOf(roads, id, [], known(kind, date)),
      )
    expect(outcomes('fuel-change', '2025-05-31')).toEqual(['meets', 'meets', 'meets'])
    expect(outcomes('fuel-change', '2025-07-01')).toEqual(['meets', 'meets', 'does-not-meet'])
    expect(outcomes('equipment-change', '2025-07-01')[2]).toBe('does-not-meet')
    expect(outcomes('outage', '2025-07-01')[2]).toBe('meets')
    expect(
      ['no-incinerator-ash', 'certification-statement', 'source-approval'].map((id) =>
        outcomeOf(roads, id, []),
      ),
    ).toEqual(['not-reported', 'not-reported', 'not-reported'])
  })
})

describe('the invented supplement for county works', () => {
  it('stands on M 295, which stands on C618-12a', () => {
    expect(county.layers.map(({ id }) => id)).toEqual(['c618-12a', 'm295-2015', 'fell-county-works'])
  })

  it('accepts class C as F from an oxide sum of 60.0 % and silicon dioxide of 30.0 %', () => {
    const allowed = (lotClass: string, sum: number, silicon: number) =>
      clauseOf(
        judge(county, evidenceOf([result('oxide-sum', sum), result('SiO2', silicon)], { class: lotClass })),
        'classes-allowed',
      )
    expect(allowed('C', 60, 30)).toMatchObject({ outcome: 'meets', acceptedAs: 'F' })
    expect(
      [allowed('C', 59.9, 40), allowed('C', 70, 29.9), allowed('N', 80, 60), allowed('F', 50, 30)].map(
        ({ outcome }) => outcome,
      ),
    ).toEqual(['does-not-meet', 'does-not-meet', 'does-not-meet', 'meets'])
  })

  it('asks for available alkalis of 1.00 %, up to 2.00 % by approval, unasked', () => {
    const alkalis = (value: number, ...approvals: KnownApproval[]) =>
      outcomeOf(county, 'available-alkalis', [result('available-alkalis', value)], { class: 'F', approvals })
    const granted = approval('fell-county-works', 'available-alkalis')
    expect([alkalis(1), alkalis(1.01), alkalis(2, granted), alkalis(2.01, granted)]).toEqual([
      'meets',
      'does-not-meet',
      'meets-by-approval',
      'does-not-meet',
    ])
  })

  it('takes a residue by one method alone', () => {
    const residue = (method: string) =>
      outcomeOf(county, 'residue', [result('residue-45um', 20, { method })], { class: 'F' })
    expect([residue('ASTM C430-17'), residue('air jet')]).toEqual(['meets', 'not-reported'])
  })

  it('judges a composite every 2000 t or 20 d', () => {
    const sampling = (tonnes: number, days: number) =>
      outcomeOf(county, 'sampling-composite', [], {
        class: 'F',
        coverage: () => ({ hours: 24 * days, tonnes, tests: 1 }),
        recordDays: 900,
      })
    expect([sampling(2000, 20), sampling(2001, 20), sampling(2000, 21)]).toEqual([
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
  })
})

describe('the invented project on the supplement for roads', () => {
  it('names what it removed and changed, layer by layer', () => {
    expect(viaduct.layers.map(({ id }) => id)).toEqual(['c618-12a', 'varrow-roads', 'high-fell-viaduct'])
    expect(viaduct.removed).toEqual([
      expect.objectContaining({ id: 'activity-1', layer: 'c618-12a', by: 'high-fell-viaduct' }),
    ])
    expect(limitsOf(viaduct)).toMatchObject({
      'activity-2': 'at-least 80 %',
      'oxide-sum': 'at-least C 50.0 %, F 60.0 %',
    })
    expect(clauseIn(viaduct, 'sampling-composite')).toMatchObject({
      every: { tonnes: 2000, hours: 720 },
      changes: [{ layer: 'high-fell-viaduct', change: 'set-frequency' }],
    })
  })

  const activity = (value: number, u?: number) =>
    outcomeOf(viaduct, 'activity', [index('7 d', 99), index('28 d', value)], {
      class: 'F',
      ...(u === undefined ? {} : { uncertaintyOf: () => statedUncertainty(u) }),
    })

  it('asks 80 % at 28 d alone, cleared by 1.645 standard uncertainties: 83.3 for u 2.0', () => {
    expect([activity(83.3, 2), activity(83.2, 2), activity(76.6, 2)]).toEqual([
      'meets',
      'inconclusive',
      'does-not-meet',
    ])
    expect(activity(99)).toBe('inconclusive')
  })

  it('allows class F alone', () => {
    expect(
      ['F', 'C'].map((lotClass) => outcomeOf(viaduct, 'classes-allowed', [], { class: lotClass })),
    ).toEqual(['meets', 'does-not-meet'])
  })
})
