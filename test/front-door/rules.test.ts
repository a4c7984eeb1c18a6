/** Decision rules that take doubt into account. */
import { describe, expect, it } from 'vitest'
import { judgeThroughTheFrontDoor, reportOn } from './front-door.ts'

/** The laboratory states 0.2 percentage points for SO3 and nothing for MgO. */
const guarded = (limit: string, property = 'SO3') =>
  `property: ${property}, ${limit}, decision-rule: { guarded: 2, agreed-in: contract 7 }`
// Guard band: 2 times 0.2 = 0.4.
judgeThroughTheFrontDoor('a guarded rule', [
  {
    title: '4.6 lies a guard band below 5.0',
    clause: guarded('at-most: 5.0 %'),
    lots: ['SO3: 4.6 %'],
    outcome: 'meets',
  },
  {
    title: '4.7 lies within the guard band',
    clause: guarded('at-most: 5.0 %'),
    lots: ['SO3: 4.7 %'],
    outcome: 'inconclusive',
  },
  {
    title: '5.3 lies within the guard band on the other side',
    clause: guarded('at-most: 5.0 %'),
    lots: ['SO3: 5.3 %'],
    outcome: 'inconclusive',
  },
  {
    title: '5.4 lies a guard band above 5.0',
    clause: guarded('at-most: 5.0 %'),
    lots: ['SO3: 5.4 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '5.4 lies a guard band above at least 5.0',
    clause: guarded('at-least: 5.0 %'),
    lots: ['SO3: 5.4 %'],
    outcome: 'meets',
  },
  {
    title: '5.3 lies within it',
    clause: guarded('at-least: 5.0 %'),
    lots: ['SO3: 5.3 %'],
    outcome: 'inconclusive',
  },
  {
    title: '4.6 lies a guard band below at least 5.0',
    clause: guarded('at-least: 5.0 %'),
    lots: ['SO3: 4.6 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '2.4 lies a guard band inside 2.0 to 5.0',
    clause: guarded('between: [2.0 %, 5.0 %]'),
    lots: ['SO3: 2.4 %'],
    outcome: 'meets',
  },
  {
    title: '4.7 lies in the upper guard band of 2.0 to 5.0',
    clause: guarded('between: [2.0 %, 5.0 %]'),
    lots: ['SO3: 4.7 %'],
    outcome: 'inconclusive',
  },
  {
    title: '1.6 lies a guard band below 2.0 to 5.0',
    clause: guarded('between: [2.0 %, 5.0 %]'),
    lots: ['SO3: 1.6 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'no uncertainty is stated',
    clause: guarded('at-most: 5.0 %', 'MgO'),
    lots: ['MgO: 1.0 %'],
    outcome: 'inconclusive',
  },
  {
    title: 'a rule that nobody agreed to: judged as specified',
    clause: 'property: SO3, at-most: 5.0 %, decision-rule: { guarded: 2 }',
    lots: ['SO3: 5.0 %'],
    outcome: 'meets',
  },
  {
    title: 'the rule of the set holds for its clauses',
    clause: 'property: SO3, at-most: 5.0 %',
    set: 'decision-rule: { guarded: 2, agreed-in: contract 7 }',
    lots: ['SO3: 4.7 %'],
    outcome: 'inconclusive',
  },
  { title: 'no result', clause: guarded('at-most: 5.0 %'), outcome: 'not-reported' },
])

const probable = (more = 'at-most: 5.0 %', property = 'SO3') =>
  `property: ${property}, ${more}, decision-rule: { probability: 0.95, agreed-in: contract 7 }`
// The normal distribution has 95 % below 1.645 standard deviations: 1.645 times 0.2 = 0.329.
// Student's t of four degrees of freedom has 95 % below 2.132: 2.132 times the 0.5 of CaO = 1.066.
judgeThroughTheFrontDoor('a probability rule', [
  { title: '4.67 lies 0.330 below 5.0', clause: probable(), lots: ['SO3: 4.67 %'], outcome: 'meets' },
  { title: '4.68 lies 0.320 below 5.0', clause: probable(), lots: ['SO3: 4.68 %'], outcome: 'inconclusive' },
  { title: '5.32 lies 0.320 above 5.0', clause: probable(), lots: ['SO3: 5.32 %'], outcome: 'inconclusive' },
  { title: '5.33 lies 0.330 above 5.0', clause: probable(), lots: ['SO3: 5.33 %'], outcome: 'does-not-meet' },
  {
    title: 'four degrees of freedom: 16.93 lies 1.07 below 18.0',
    clause: probable('at-most: 18.0 %', 'CaO'),
    lots: ['CaO: 16.93 %'],
    outcome: 'meets',
  },
  {
    title: 'four degrees of freedom: 16.94 lies 1.06 below 18.0',
    clause: probable('at-most: 18.0 %', 'CaO'),
    lots: ['CaO: 16.94 %'],
    outcome: 'inconclusive',
  },
  {
    title: 'no uncertainty is stated',
    clause: probable('at-most: 5.0 %', 'MgO'),
    lots: ['MgO: 1.0 %'],
    outcome: 'inconclusive',
  },
])

describe('the report on a rule that takes doubt into account', () => {
  const reported = (clause: string, lot: string) =>
    reportOn({ clause, lots: [lot] }).verdicts.find(({ criterion }) => criterion === 'alone')?.clauses[0]

  it('carries the uncertainty with its degrees of freedom, and says which guard was used', () => {
    // Student's t of four degrees of freedom at the risk of k 2 (2.275 %) is 2.869: 2.869 times 0.5 = 1.43.
    expect(reported(guarded('at-most: 18.0 %', 'CaO'), 'CaO: 17.0 %')).toMatchObject({
      outcome: 'inconclusive',
      u: 0.5,
      degreesOfFreedom: 4,
      reason:
        '17 % with a standard uncertainty of 0.5 points neither meets nor fails the limit, at most 18.0 %, under the guard band of 2 standard uncertainties agreed in contract 7; guard 1.4 points, 2.869 standard uncertainties with 4 degrees of freedom',
    })
  })

  it('says which probability of conformity was reached', () => {
    // (5.0 − 4.67) / 0.2 = 1.65; the normal distribution has 95.1 % below it.
    expect(reported(probable(), 'SO3: 4.67 %')?.reason).toMatch(/; probability of conformity 0\.951$/)
  })

  it('carries no uncertainty where none is known', () => {
    expect(reported(guarded('at-most: 5.0 %', 'MgO'), 'MgO: 1.0 %')).toMatchObject({
      u: null,
      degreesOfFreedom: null,
    })
  })
})
