import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { bestClass, judge } from '../../../src/core/judging/verdict.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { clauseOf, evidenceOf, history, result } from '../../core/judging/fixture.ts'
import { limitsOf, outcomeOf, readClauses } from './shipped-limits.ts'
import { shippedSet } from './shipped-sets.ts'

// ASTM C989-18: extract of tables 1 to 3 (scribd.com/document/601758973). EN 15167-1:2006: glass content read
// in an extract
// (m.dybbs8.com/word/203314.html), all else from memory. The five-sample cases are own arithmetic on the
// limits.
const c989 = shippedSet('c989-18')
const en15167 = shippedSet('en15167-1-2006')

const slagIndex = (value: number, age = '28 d'): Result =>
  result('strength-activity-index', value, { condition: 'c989', age: readAge(age) })
const SLAG = { kind: 'slag' } as const

/** Outcomes of the mean and of the single floor for grade 100, the last of five samples being the lot's. */
function lastFive(values: readonly number[], set: Criterion = c989): string[] {
  const evidence = evidenceOf([slagIndex(values.at(-1) ?? 0)], {
    ...SLAG,
    class: '100',
    preceding: history('strength-activity-index', values.slice(0, -1)),
  })
  const verdict = judge(set, evidence)
  return ['activity-mean', 'activity-single', 'activity'].map((id) => clauseOf(verdict, id).outcome)
}

describe('ASTM C989-18 as shipped', () => {
  it('holds the limits of table 1 by grade and the sulfide of table 2', () => {
    expect(limitsOf(c989)).toEqual({
      'activity-mean': 'at-least 80 75 %, 100 95 %, 120 115 %',
      'activity-single': 'at-least 80 70 %, 100 90 %, 120 110 %',
      'activity-7d': 'report',
      sulfide: 'at-most 2.5 %',
    })
    expect(readClauses(c989)).toEqual(Object.keys(limitsOf(c989)))
  })

  it('meets grade 100 with 96, 94, 95, 97, 93: mean 95.0, lowest 93', () => {
    expect(lastFive([96, 94, 95, 97, 93])).toEqual(['meets', 'meets', 'meets'])
  })

  it('misses grade 100 on the single floor with 99, 99, 99, 99, 89: mean 97.0', () => {
    expect(lastFive([99, 99, 99, 99, 89])).toEqual(['meets', 'does-not-meet', 'does-not-meet'])
  })

  it('misses grade 100 on the mean with 92, 94, 95, 96, 97: 94.8 is not rounded to 95 unless the clause says so', () => {
    expect(lastFive([92, 94, 95, 96, 97])).toEqual(['does-not-meet', 'meets', 'does-not-meet'])
    const whole: Criterion = {
      ...c989,
      clauses: c989.clauses.map((clause) =>
        clause.form === 'group'
          ? { ...clause, members: clause.members.map((member) => ({ ...member, resolution: 1 })) }
          : clause,
      ),
    }
    expect(lastFive([92, 94, 95, 96, 97], whole)).toEqual(['meets', 'meets', 'meets'])
  })

  it('waits for history with four samples, and judges the floor all the same', () => {
    expect(lastFive([96, 96, 96, 96])).toEqual(['insufficient-history', 'meets', 'insufficient-history'])
    expect(lastFive([96, 96, 96, 89])).toEqual(['insufficient-history', 'does-not-meet', 'does-not-meet'])
  })

  it('asks for the 7 d index of grades 100 and 120 without a limit', () => {
    expect(
      ['120', '100', '80'].map((grade) =>
        outcomeOf(c989, 'activity-7d', [slagIndex(20, '7 d')], { ...SLAG, class: grade }),
      ),
    ).toEqual(['reported', 'reported', 'not-applicable'])
    expect(outcomeOf(c989, 'activity-7d', [], { ...SLAG, class: '120' })).toBe('not-reported')
  })

  it('finds the best grade met', () => {
    const evidence = (mean: number) =>
      evidenceOf([slagIndex(mean), slagIndex(70, '7 d'), result('sulfide', 2.5)], {
        ...SLAG,
        preceding: history('strength-activity-index', [mean, mean, mean, mean]),
      })
    expect([115, 114.9, 95, 94.9, 75, 74.9].map((mean) => bestClass(c989, evidence(mean))?.best)).toEqual([
      '120',
      '100',
      '100',
      '80',
      '80',
      null,
    ])
  })
})

describe('EN 15167-1:2006 as shipped', () => {
  it('holds the limits of the reference file, of which glass alone was read', () => {
    expect(limitsOf(en15167)).toEqual({
      'glass-content': 'at-least 66.7 %',
      'magnesium-oxide': 'at-most 18 %',
      sulfide: 'at-most 2.0 %',
      'sulfur-trioxide': 'at-most 2.5 %',
      'loss-on-ignition': 'at-most 3.0 %',
      chloride: 'at-most 0.10 %',
      moisture: 'at-most 1.0 %',
      'specific-surface': 'at-least 275 m2/kg',
      'activity-7d': 'at-least 45 %',
      'activity-28d': 'at-least 70 %',
      'initial-setting': 'at-most 200 %',
    })
    expect(readClauses(en15167)).toEqual(['glass-content'])
  })

  it('asks for both ages of the activity index, in its own mortar alone', () => {
    const activity = (seven: number, later: number, condition = 'en15167-50') =>
      outcomeOf(
        en15167,
        'activity',
        [['7 d', seven] as const, ['28 d', later] as const].map(([age, value]) =>
          result('strength-activity-index', value, { condition, age: readAge(age) }),
        ),
        SLAG,
      )
    expect([activity(45, 70), activity(44, 90), activity(60, 69)]).toEqual([
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
    expect(activity(90, 99, 'c989')).toBe('not-reported')
  })

  it('takes no loss on ignition that is not corrected', () => {
    const loss = (method: string) =>
      outcomeOf(en15167, 'loss-on-ignition', [result('loss-on-ignition', 2, { method })], SLAG)
    expect([loss('EN 196-2 corrected for sulfide'), loss('EN 196-2')]).toEqual(['meets', 'not-reported'])
  })
})
