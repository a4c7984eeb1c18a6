import { describe, expect, it } from 'vitest'
import type { Clause } from '../../../src/core/criteria/criterion.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { claimedClass, judgingOf, outOfScope } from '../../../src/core/judging/scope.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, result, setOf } from './fixture.ts'

const loi: WrittenClause = { clause: 'c', property: 'loss-on-ignition', 'at-most': '6.0 %' }

function scope(
  clause: WrittenClause,
  evidence: Partial<Evidence> = {},
  more: Partial<WrittenCriterion> = {},
) {
  const set = setOf([clause], { classes: ['F', 'C'], ...more })
  return outOfScope(set.clauses[0] as Clause, judgingOf(set, evidenceOf([], evidence)))
}

describe('outOfScope', () => {
  it('outOfScope judges a clause that stands under no demand', () => {
    expect(scope(loi, { class: 'F' })).toBeUndefined()
    expect(scope(loi)).toBeUndefined()
  })

  it('outOfScope leaves out a clause for other kinds of material', () => {
    const clause: WrittenClause = { ...loi, kinds: ['raw-natural-pozzolan'] }
    expect(scope(clause, { class: 'F' })).toEqual({
      outcome: 'not-applicable',
      reasons: [{ code: 'other-material', params: {} }],
    })
    expect(scope(clause, { class: 'F', kind: 'raw-natural-pozzolan' })).toBeUndefined()
  })

  it('outOfScope leaves out a clause for other classes, named by the clause or by its limits', () => {
    const otherClass = {
      outcome: 'not-applicable',
      reasons: [{ code: 'other-class', params: { class: 'C' } }],
    }
    expect(scope({ ...loi, classes: ['F'] }, { class: 'C' })).toEqual(otherClass)
    expect(scope({ ...loi, 'at-most': { F: '6.0 %' } }, { class: 'C' })).toEqual(otherClass)
    expect(scope({ clause: 'c', property: 'CaO', report: 'yes' }, { class: 'C' })).toBeUndefined()
  })

  it('outOfScope leaves an optional clause out until it is asked for under the set', () => {
    const optional: WrittenClause = { ...loi, optional: 'yes' }
    const invoked = (requested?: Record<string, readonly string[]>) =>
      scope(optional, { class: 'F', ...(requested === undefined ? {} : { requested }) })
    expect(invoked()).toEqual({
      outcome: 'not-invoked',
      reasons: [{ code: 'not-requested', params: {} }],
    })
    expect([invoked({ trial: ['d'] })?.outcome, invoked({ other: ['c'] })?.outcome]).toEqual([
      'not-invoked',
      'not-invoked',
    ])
    expect(invoked({ trial: ['c'] })).toBeUndefined()
  })

  it('outOfScope knows a demand made under a layer below the set', () => {
    const base = setOf([{ ...loi, optional: 'yes' }], { id: 'base' })
    const set = setOf([], { bases: { base }, extends: { set: 'base' } })
    const invoked = (requested: Record<string, readonly string[]>) =>
      outOfScope(set.clauses[0] as Clause, judgingOf(set, evidenceOf([], { requested })))?.outcome
    expect([invoked({ base: ['c'] }), invoked({ trial: ['c'] }), invoked({ other: ['c'] })]).toEqual([
      undefined,
      undefined,
      'not-invoked',
    ])
  })

  it('outOfScope takes a clause for every class that one of its limits speaks of, and a classification for all', () => {
    const apart: WrittenClause = { ...loi, 'at-most': { F: '6.0 %' }, 'at-least': { C: '0.5 %' } }
    const bands: WrittenClause = {
      clause: 'c',
      property: 'CaO',
      band: [{ title: 'low', 'at-most': '10.0 %' }],
    }
    expect([
      scope(apart, { class: 'F' }),
      scope(apart, { class: 'C' }),
      scope(bands, { class: 'F' }),
    ]).toEqual([undefined, undefined, undefined])
  })

  it('outOfScope does not report a clause whose limit depends on a class that is not known', () => {
    const byClass: WrittenClause = { ...loi, 'at-most': { F: '6.0 %', C: '6.0 %' } }
    const noClass = { code: 'no-class-claimed', params: { classes: ['F', 'C'] } }
    expect(scope(byClass)).toEqual({ outcome: 'not-reported', reasons: [noClass] })
    expect(scope({ ...loi, classes: ['F'] })).toEqual({ outcome: 'not-reported', reasons: [noClass] })
    expect(scope(byClass, { class: 'S' })).toMatchObject({
      reasons: [{ code: 'class-of-another-set', params: { class: 'S', classes: ['F', 'C'] } }],
    })
  })

  it('outOfScope asks for the premises last: false does not apply, open is not reported', () => {
    const when: WrittenClause = { ...loi, when: [{ fact: 'use', is: ['marine'] }] }
    expect(scope(when, { facts: { use: 'marine' } })).toBeUndefined()
    expect(scope(when, { facts: { use: 'road' } })).toEqual({
      outcome: 'not-applicable',
      reasons: [
        {
          code: 'premise-not-met',
          params: { because: { code: 'fact-otherwise', params: { fact: 'use', is: ['marine'] } } },
        },
      ],
    })
    expect(scope(when)).toEqual({
      outcome: 'not-reported',
      reasons: [
        {
          code: 'premise-not-determined',
          params: { because: { code: 'fact-not-stated', params: { fact: 'use' } } },
        },
      ],
    })
  })
})

describe('judgingOf', () => {
  const set = setOf([loi], {
    classes: ['F', 'C'],
    'class-from': [
      { class: 'C', when: [{ property: 'CaO', above: '18.0 %' }] },
      { class: 'F', when: [{ property: 'CaO', 'at-most': '18.0 %' }] },
    ],
  })
  const derived = (...values: Parameters<typeof result>[]) =>
    judgingOf(
      set,
      evidenceOf(
        values.map((one) => result(...one)),
        { class: 'F' },
      ),
    )

  it('judgingOf judges under the class asked for, whatever is claimed', () => {
    expect(judgingOf(setOf([loi], { classes: ['F'] }), evidenceOf([]), 'X').lotClass).toBe('X')
  })

  it('judgingOf takes the first class whose premises hold, not the claimed one', () => {
    expect([derived(['CaO', 18.1]).lotClass, derived(['CaO', 18]).lotClass]).toEqual(['C', 'F'])
  })

  it('judgingOf leaves the class open where a premise is', () => {
    expect(derived()).toMatchObject({ lotClass: null, noClass: { code: 'class-not-determined' } })
  })

  it('judgingOf says that no class fits where every premise fails', () => {
    const narrow = setOf([loi], {
      classes: ['C'],
      'class-from': [{ class: 'C', when: [{ property: 'CaO', above: '18.0 %' }] }],
    })
    expect(judgingOf(narrow, evidenceOf([result('CaO', 2)]))).toMatchObject({
      lotClass: null,
      noClass: { code: 'class-none-fits', params: {} },
    })
  })
})

describe('claimedClass', () => {
  it('claimedClass prefers the class claimed under the set over the general one', () => {
    const of = (evidence: Partial<Evidence>) => claimedClass(setOf([loi]), evidenceOf([], evidence))
    expect([
      of({ class: 'F', classUnder: { trial: 'N' } }),
      of({ class: 'F', classUnder: { other: 'N' } }),
      of({ class: 'F' }),
      of({}),
    ]).toEqual(['N', 'F', 'F', null])
  })

  it('claimedClass under a layer below goes before the general one, under the set before that of a layer', () => {
    const base = setOf([loi], { id: 'base' })
    const set = setOf([], { bases: { base }, extends: { set: 'base' } })
    const of = (classUnder: Record<string, string>) =>
      claimedClass(set, evidenceOf([], { class: 'F', classUnder }))
    expect([of({ base: 'N' }), of({ base: 'N', trial: 'C' })]).toEqual(['N', 'C'])
  })
})
