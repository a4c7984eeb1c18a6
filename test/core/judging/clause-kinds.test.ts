/**
 * The kinds of clause logic, numbered as in the survey of specifications that the criteria were designed
 * from: kinds 1 to 13, on
 * one value and on the class that its limit depends on. Each has a passing, a failing and a not-determined
 * case, and the very limit.
 */
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { bestClass, judgeEveryClass } from '../../../src/core/judging/verdict.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import type { Result } from '../../../src/core/result/result.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, judgeInWords, result, setOf } from './fixture.ts'

/** One clause judged against the values of the lot; no value where the property is not reported. */
function judged(
  clause: Omit<WrittenClause, 'clause'>,
  values: Partial<Record<PropertyKey, number>>,
  more: Partial<Evidence> = {},
  set: Partial<WrittenCriterion> = {},
) {
  const results = Object.entries(values).map(([key, value]) => result(key as PropertyKey, value))
  return clauseOf(judgeInWords(setOf([{ clause: 'c', ...clause }], set), evidenceOf(results, more)), 'c')
}

describe('judge, comparisons', () => {
  it.each([
    ['1. inclusive upper limit', { 'at-most': '5.0 %' }, 4, 5.1, 5],
    ['1. inclusive lower limit', { 'at-least': '5.0 %' }, 6, 4.9, 5],
    ['3. range, its lower end', { between: ['2.0 %', '7.0 %'] }, 4, 1.9, 2],
    ['3. range, its upper end', { between: ['2.0 %', '7.0 %'] }, 4, 7.1, 7],
  ])('judge, %s: met, not met, and met on the limit', (_, operator, met, missed, on) => {
    const clause = { property: 'SO3', ...operator } as const
    expect([met, missed, on].map((value) => judged(clause, { SO3: value }).outcome)).toEqual([
      'meets',
      'does-not-meet',
      'meets',
    ])
    expect(judged(clause, {}).outcome).toBe('not-reported')
  })

  it.each([
    ['above', { above: '18.0 %' }, 18.1, 18],
    ['below', { below: '18.0 %' }, 17.9, 18],
  ])('judge, 2. strict bound %s: not met on the limit itself', (_, operator, met, on) => {
    const clause = { property: 'CaO', ...operator } as const
    expect([met, on].map((value) => judged(clause, { CaO: value }).outcome)).toEqual([
      'meets',
      'does-not-meet',
    ])
    expect(judged(clause, {}).outcome).toBe('not-reported')
  })

  it('judge, 4. bound on the magnitude: expansion and contraction alike', () => {
    const clause: WrittenClause = { property: 'autoclave-expansion', 'magnitude-at-most': '0.8 %' }
    expect(
      [0.3, -0.3, 0.8, -0.8, 0.9, -0.9].map(
        (value) => judged(clause, { 'autoclave-expansion': value }).outcome,
      ),
    ).toEqual(['meets', 'meets', 'meets', 'meets', 'does-not-meet', 'does-not-meet'])
    expect(judged(clause, {}).outcome).toBe('not-reported')
  })

  const beside = (key: PropertyKey, value: number, controlValue?: number) =>
    evidenceOf([result(key, value, controlValue === undefined ? {} : { controlValue })])

  it('judge, 5. difference from the control, in points', () => {
    const set = setOf([
      {
        clause: 'c',
        property: 'drying-shrinkage',
        'deviation-from': { control: 'yes' },
        'at-most': '0.03 percentage points',
      },
    ])
    const clause = (value: number, control?: number) =>
      clauseOf(judgeInWords(set, beside('drying-shrinkage', value, control)), 'c')
    expect(
      [clause(0.08, 0.06), clause(0.09, 0.06), clause(0.1, 0.06), clause(0.02, 0.06)].map(
        ({ outcome }) => outcome,
      ),
    ).toEqual(['meets', 'meets', 'does-not-meet', 'meets'])
    expect(clause(0.1, 0.06)).toMatchObject({
      compared: 0.04,
      unit: 'percentage points',
      against: { mean: 0.06, n: 1, lots: [] },
    })
    expect(clause(0.08)).toMatchObject({
      outcome: 'not-reported',
      reason: 'no result of the control is on record to compare with',
    })
  })

  it('judge, 5. difference from the control, in per cent of it', () => {
    const set = setOf([
      {
        clause: 'c',
        property: 'air-entraining-demand',
        'deviation-from': { control: 'yes' },
        relative: 'yes',
        'magnitude-at-most': '20 %',
      },
    ])
    const outcome = (value: number, control?: number) =>
      judgeInWords(set, beside('air-entraining-demand', value, control)).outcome
    // 2.00 g of the control: 1.60 to 2.40 g are within 20 %.
    expect([outcome(2.1, 2), outcome(2.4, 2), outcome(1.6, 2), outcome(2.42, 2), outcome(1.5, 2)]).toEqual([
      'meets',
      'meets',
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
    expect([outcome(2), outcome(2, 0)]).toEqual(['not-reported', 'not-reported'])
  })

  it('judge, 6. the same demand in another sense: passing against retained', () => {
    const clause: WrittenClause = { property: 'passing-45um', 'at-least': '75 %' }
    expect([20, 25, 26].map((value) => judged(clause, { 'residue-45um': value }).outcome)).toEqual([
      'meets',
      'meets',
      'does-not-meet',
    ])
    expect(judged({ property: 'residue-45um', 'at-most': '25 %' }, { 'passing-45um': 75 })).toMatchObject({
      outcome: 'meets',
      value: 25,
    })
    expect(judged(clause, {}).outcome).toBe('not-reported')
    const retained = (below: number) =>
      judgeInWords(
        setOf([{ clause: 'c', ...clause }]),
        evidenceOf([result('residue-45um', below, { censored: 'below' })]),
      ).outcome
    expect([retained(1), retained(26)]).toEqual(['meets', 'not-reported'])
  })

  it('judge, 6. the same demand in another unit', () => {
    const surface: WrittenClause = { property: 'specific-surface', between: ['15 m2/g', '35 m2/g'] }
    expect(
      [20000, 15000, 35000, 14400].map((value) => judged(surface, { 'specific-surface': value }).outcome),
    ).toEqual(['meets', 'meets', 'meets', 'does-not-meet'])
    const resistivity = setOf([
      {
        clause: 'c',
        property: 'bulk-resistivity',
        condition: 'c311',
        age: readAge('28 d'),
        'at-least': '2.54 kohm cm',
      },
    ])
    const outcome = (value: number) =>
      judgeInWords(
        resistivity,
        evidenceOf([result('bulk-resistivity', value, { condition: 'c311', age: readAge('28 d') })]),
      ).outcome
    expect([outcome(25.4), outcome(25.3)]).toEqual(['meets', 'does-not-meet'])
  })

  it('judge, 7. several cut points of one distribution together', () => {
    const clause: WrittenClause = {
      'all-of': [
        { property: 'finer-3.5um', 'at-least': '50 %' },
        { property: 'finer-9um', 'at-least': '90 %' },
      ],
    }
    expect(judged(clause, { 'finer-3.5um': 55, 'finer-9um': 95 }).outcome).toBe('meets')
    expect(judged(clause, { 'finer-3.5um': 50, 'finer-9um': 90 }).outcome).toBe('meets')
    expect(judged(clause, { 'finer-3.5um': 55, 'finer-9um': 85 }).outcome).toBe('does-not-meet')
    expect(judged(clause, { 'finer-3.5um': 55 })).toMatchObject({
      outcome: 'not-reported',
      clauses: [{ outcome: 'meets' }, { outcome: 'not-reported' }],
    })
  })
})

describe('judge, the class that a limit depends on', () => {
  it('judge, 8. looks the limit up by class', () => {
    const clause: WrittenClause = { property: 'loss-on-ignition', 'at-most': { N: '10.0 %', F: '6.0 %' } }
    const outcome = (value: number | undefined, lotClass: string | null) =>
      judged(
        clause,
        value === undefined ? {} : { 'loss-on-ignition': value },
        { class: lotClass },
        { classes: ['N', 'F', 'C'] },
      ).outcome
    expect([outcome(8, 'N'), outcome(8, 'F'), outcome(10, 'N'), outcome(6, 'F'), outcome(8, 'C')]).toEqual([
      'meets',
      'does-not-meet',
      'meets',
      'meets',
      'not-applicable',
    ])
    expect([outcome(8, null), outcome(undefined, 'F')]).toEqual(['not-reported', 'not-reported'])
  })

  it('judge, 9. the class follows from the material', () => {
    const set = setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %', C: '50.0 %' } }], {
      classes: ['F', 'C'],
      'class-from': [
        { class: 'F', when: [{ property: 'CaO', 'at-most': '18.0 %' }] },
        { class: 'C', when: [{ property: 'CaO', above: '18.0 %' }] },
      ],
    })
    const verdict = (lime?: number) =>
      judgeInWords(
        set,
        evidenceOf([result('oxide-sum', 60), ...(lime === undefined ? [] : [result('CaO', lime)])]),
      )
    expect(
      [18, 18.1, 18.04].map((lime) => verdict(lime)).map((found) => [found.class, found.outcome]),
    ).toEqual([
      ['F', 'does-not-meet'],
      ['C', 'meets'],
      ['F', 'does-not-meet'],
    ])
    expect(verdict()).toMatchObject({ class: null, outcome: 'not-reported' })
    expect(clauseOf(verdict(), 'sum').reason).toContain(
      'calcium oxide, which cannot be decided: no result is reported',
    )
  })

  it('judge, 9. a material that falls into no class of the set is not judged by class', () => {
    const set = setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %' } }], {
      classes: ['F'],
      'class-from': [{ class: 'F', when: [{ property: 'CaO', 'at-most': '18.0 %' }] }],
    })
    expect(
      judgeInWords(set, evidenceOf([result('CaO', 25), result('oxide-sum', 90)])).clauses[0],
    ).toMatchObject({
      outcome: 'not-reported',
      reason: 'the material falls into no class of this specification',
    })
  })

  const grades = (bestFirst: 'yes' | 'no') =>
    setOf(
      [
        {
          clause: 'index',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('28 d'),
          'at-least': { 120: '115 %', 100: '95 %', 80: '75 %' },
        },
      ],
      { classes: ['120', '100', '80'], 'best-first': bestFirst },
    )

  it('bestClass, 9. finds the best class met and what stands in the way of the next', () => {
    const found = (value: number) => bestClass(grades('yes'), evidenceOf([index('28 d', value)]))
    expect([found(120)?.best, found(115)?.best, found(100)?.best, found(75)?.best, found(60)?.best]).toEqual([
      '120',
      '120',
      '100',
      '80',
      null,
    ])
    expect(found(120)?.next).toBeNull()
    expect(found(100)?.next).toMatchObject({
      class: '120',
      verdict: { outcome: 'does-not-meet', decidedBy: ['index'] },
    })
    expect(found(60)?.next).toMatchObject({ class: '80', verdict: { outcome: 'does-not-meet' } })
    expect(bestClass(grades('yes'), evidenceOf([]))?.best).toBeNull()
    expect(bestClass(grades('no'), evidenceOf([index('28 d', 120)]))).toBeNull()
  })

  it('judge, 10. independent axes multiply, and a limit may be by category', () => {
    const set = setOf(
      [
        { clause: 'loi', property: 'loss-on-ignition', 'at-most': { A: '5.0 %', B: '7.0 %' } },
        { clause: 'fine', property: 'residue-45um', 'at-most': { N: '40 %', S: '12 %' } },
      ],
      {
        axes: [
          ['A', 'B'],
          ['N', 'S'],
        ],
      },
    )
    expect(set.classes).toEqual(['A/N', 'A/S', 'B/N', 'B/S'])
    const evidence = evidenceOf([result('loss-on-ignition', 6), result('residue-45um', 12)])
    expect(judgeEveryClass(set, evidence).map(({ class: name, verdict }) => [name, verdict.outcome])).toEqual(
      [
        ['A/N', 'does-not-meet'],
        ['A/S', 'does-not-meet'],
        ['B/N', 'meets'],
        ['B/S', 'meets'],
      ],
    )
    expect(judgeInWords(set, { ...evidence, class: 'B/S' })).toMatchObject({ class: 'B/S', outcome: 'meets' })
    expect(judgeInWords(set, evidence).outcome).toBe('not-reported')
  })

  it('judge, 10. a clause for one category of an axis', () => {
    const set = setOf(
      [{ clause: 'water', property: 'water-requirement', 'at-most': '95 %', classes: ['S'] }],
      {
        axes: [
          ['A', 'B'],
          ['N', 'S'],
        ],
      },
    )
    const outcome = (lotClass: string, value: number) =>
      judgeInWords(set, evidenceOf([result('water-requirement', value)], { class: lotClass })).clauses[0]
        ?.outcome
    expect([outcome('B/S', 95), outcome('B/S', 96), outcome('B/N', 96)]).toEqual([
      'meets',
      'does-not-meet',
      'not-applicable',
    ])
  })

  const substitution = setOf(
    [
      {
        clause: 'c',
        'allowed-classes': ['F'],
        'accepted-as': [
          {
            class: 'C',
            as: 'F',
            when: [
              { property: 'oxide-sum', 'at-least': '66.0 %' },
              { property: 'SiO2', 'at-least': '38.0 %' },
            ],
          },
        ],
      },
    ],
    { classes: ['F', 'C', 'N'] },
  )

  it('judge, 11. another class is accepted as an allowed one on its composition, and the verdict says so', () => {
    const verdict = (values: readonly Result[]) =>
      judgeInWords(substitution, evidenceOf(values, { class: 'C' }))
    expect(verdict([result('oxide-sum', 66), result('SiO2', 38)])).toMatchObject({
      class: 'C',
      acceptedAs: 'F',
      outcome: 'meets',
    })
    expect(clauseOf(verdict([result('oxide-sum', 66), result('SiO2', 38)]), 'c').reason).toContain(
      'class C accepted as F',
    )
    const refused = verdict([result('oxide-sum', 66), result('SiO2', 37.9)])
    expect(refused.outcome).toBe('does-not-meet')
    expect(refused.acceptedAs).toBeUndefined()
    expect(verdict([result('oxide-sum', 70)])).toMatchObject({ outcome: 'not-reported' })
  })

  it.each([
    ['F', 'meets'],
    ['N', 'does-not-meet'],
    [null, 'not-reported'],
  ] as const)('judge, 12. only allowed classes pass: class %s %s', (lotClass, outcome) => {
    expect(judgeInWords(substitution, evidenceOf([], { class: lotClass })).outcome).toBe(outcome)
  })

  it('judge, 13. another edition is another set, and the verdict names the edition', () => {
    const edition = (name: string, limit: string) =>
      setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': limit }], { edition: name })
    const evidence = evidenceOf([result('oxide-sum', 60)])
    expect(judgeInWords(edition('2012a', '70.0 %'), evidence)).toMatchObject({
      edition: '2012a',
      outcome: 'does-not-meet',
    })
    expect(judgeInWords(edition('2019', '50.0 %'), evidence)).toMatchObject({
      edition: '2019',
      outcome: 'meets',
    })
  })
})
