/** Decision rules that take doubt into account. */
import { judgeThroughTheFrontDoor } from './front-door.ts'

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
