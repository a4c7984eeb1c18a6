/**
 * Values known only within bounds, from the "<" that a user writes to the outcome: undecided only where the limit
 * lies between the bounds. Each row says what the ends are.
 */
import { describe, expect, it } from 'vitest'
import { judgeThroughTheFrontDoor, reportOn, type Row } from './front-door.ts'

const SUM = 'property: oxide-sum'
const OXIDES = 'SiO2: 52.1 %, Al2O3: 44.5 %, Fe2O3: < 0.5 %'

judgeThroughTheFrontDoor('a sum of oxides of which one is below its bound', [
  {
    title: 'between 96.6 and 97.1, both over 70',
    clause: `${SUM}, at-least: 70 %`,
    lots: [OXIDES],
    outcome: 'meets',
  },
  { title: '96.6 is the very limit', clause: `${SUM}, at-least: 96.6 %`, lots: [OXIDES], outcome: 'meets' },
  {
    title: '97.0 lies between 96.6 and 97.1',
    clause: `${SUM}, at-least: 97.0 %`,
    lots: [OXIDES],
    outcome: 'not-reported',
  },
  // 97.09 is among what it may be, and is compared as 97.1: ASTM E29, rounding method, as for a known value.
  {
    title: 'less than 97.1 may round to 97.1',
    clause: `${SUM}, at-least: 97.1 %`,
    lots: [OXIDES],
    outcome: 'not-reported',
  },
  {
    title: 'less than 97.1 does not round to 97.2',
    clause: `${SUM}, at-least: 97.2 %`,
    lots: [OXIDES],
    outcome: 'does-not-meet',
  },
  {
    title: 'less than 97.1 is never 97.1 where nothing is rounded',
    clause: `${SUM}, at-least: 97.1 %, resolution: none`,
    lots: [OXIDES],
    outcome: 'does-not-meet',
  },
  {
    title: 'less than 97.1 is at most 97.1',
    clause: `${SUM}, at-most: 97.1 %`,
    lots: [OXIDES],
    outcome: 'meets',
  },
  {
    title: 'less than 97.1 may round to 97.1, which is not below it',
    clause: `${SUM}, below: 97.1 %`,
    lots: [OXIDES],
    outcome: 'not-reported',
  },
  {
    title: '96.6 is not above 96.6 but may be',
    clause: `${SUM}, above: 96.6 %`,
    lots: [OXIDES],
    outcome: 'not-reported',
  },
  {
    title: 'rounded to whole per cents both ends are 97',
    clause: `${SUM}, at-least: 97 %`,
    lots: [OXIDES],
    outcome: 'meets',
  },
  // 97.5 itself would round to the even 98; nothing less does.
  {
    title: 'less than 97.5 rounds to 97 at most',
    clause: `${SUM}, at-most: 97 %`,
    lots: ['SiO2: 52.1 %, Al2O3: 44.9 %, Fe2O3: < 0.5 %'],
    outcome: 'meets',
  },
  {
    title: 'between 96.6 and 97.1 within 95 and 98',
    clause: `${SUM}, between: [95 %, 98 %]`,
    lots: [OXIDES],
    outcome: 'meets',
  },
  {
    title: 'the upper end of 97.0 lies between the bounds',
    clause: `${SUM}, between: [95.0 %, 97.0 %]`,
    lots: [OXIDES],
    outcome: 'not-reported',
  },
])

judgeThroughTheFrontDoor('passing beside residue', [
  {
    title: 'a residue of 50 % is 50 % passing, whatever another laboratory states as passing',
    clause: 'property: passing-45um, at-least: 66 %',
    lots: [
      {
        analyses: [{ results: 'residue-45um: 50 %' }, { results: 'passing-45um: 90 %', laboratory: 'dock' }],
      },
    ],
    outcome: 'does-not-meet',
  },
  {
    title: 'an excluded passing does not hide the residue of 10 %',
    clause: 'property: passing-45um, at-least: 66 %',
    lots: ['residue-45um: 10 %, passing-45um: { value: 20 %, excluded: sieve clogged }'],
    outcome: 'meets',
  },
  {
    title: 'an analysis that states both is judged on the passing that it states',
    clause: 'property: passing-45um, at-least: 66.0 %',
    lots: ['residue-45um: 34.1 %, passing-45um: 66.0 %'],
    outcome: 'meets',
  },
])

judgeThroughTheFrontDoor('what follows from a bound', [
  // 0.70 + 0.658 × 0.10 = 0.7658 at most.
  {
    title: 'alkalis between 0.70 and 0.77',
    clause: 'property: alkali-equivalent, at-most: 0.80 %',
    lots: ['Na2O: 0.70 %, K2O: < 0.10 %'],
    outcome: 'meets',
  },
  {
    title: 'alkalis between 0.70 and 0.77',
    clause: 'property: alkali-equivalent, at-most: 0.72 %',
    lots: ['Na2O: 0.70 %, K2O: < 0.10 %'],
    outcome: 'not-reported',
  },
  {
    title: 'less than 1 % retained is more than 99 % passing',
    clause: 'property: passing-45um, at-least: 75 %',
    lots: ['residue-45um: < 1 %'],
    outcome: 'meets',
  },
  {
    title: 'less than 30 % retained is more than 70 % passing, 75 between it and 100',
    clause: 'property: passing-45um, at-least: 75 %',
    lots: ['residue-45um: < 30 %'],
    outcome: 'not-reported',
  },
  {
    title: 'less than 34 % retained may be 66.2 % passing, which rounds to 66 and is not above it',
    clause: 'property: passing-45um, above: 66 %',
    lots: ['residue-45um: < 34 %'],
    outcome: 'not-reported',
  },
  {
    title: 'less than 20 % passing is more than 80 % retained',
    clause: 'property: residue-45um, at-most: 34 %',
    lots: ['passing-45um: < 20 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'less than 0.5 % times 20 % is less than 10',
    clause: "property: multiple-factor, at-most: '255'",
    lots: ['loss-on-ignition: < 0.5 %, residue-45um: 20 %'],
    outcome: 'meets',
  },
  {
    title: 'a factor of an excluded loss does not count',
    clause: "property: multiple-factor, at-most: '255'",
    lots: ['loss-on-ignition: { value: 0.5 %, excluded: crucible broke }, residue-45um: 20 %'],
    outcome: 'not-valid',
  },
  {
    title: 'an expansion of less than 0.01 % either way is 0.8 % at most in magnitude',
    clause: 'property: autoclave-expansion, magnitude-at-most: 0.80 %',
    lots: ['autoclave-expansion: < 0.01 %'],
    outcome: 'meets',
  },
])

const POINTS =
  'property: residue-45um, deviation-from: { preceding: 10 }, magnitude-at-most: 5 percentage points'
const DECLARED =
  'property: residue-45um, deviation-from: { declared: yes }, magnitude-at-most: 5 percentage points'

judgeThroughTheFrontDoor('a deviation of a value within bounds', [
  // From 0.98, which is among what the lot before may have had, 2.0 is 1.02 away and 1.0 as compared.
  {
    title: 'between 1 and 2 points away, of which what lies just above 1 rounds to 1.0',
    clause:
      'property: residue-45um, deviation-from: { preceding: 10 }, magnitude-at-most: 1.0 percentage points',
    lots: ['residue-45um: < 1 %', 'residue-45um: 2.0 %'],
    outcome: 'not-reported',
  },
  {
    title: 'less than 3 % is within 5 points of 4 %: −4 to −1',
    clause: POINTS,
    lots: ['residue-45um: 4.0 %', 'residue-45um: < 3 %'],
    outcome: 'meets',
  },
  {
    title: 'less than 3 % may be 8 points or 5 points below 8 %',
    clause: POINTS,
    lots: ['residue-45um: 8.0 %', 'residue-45um: < 3.5 %'],
    outcome: 'not-reported',
  },
  {
    title: 'less than 3 % is more than 17 points below 20 %',
    clause: POINTS,
    lots: ['residue-45um: 20.0 %', 'residue-45um: < 3 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'a mean of 4 % and less than 2 % lies between 2 and 3 %: 6 % is 3 to 4 points above it',
    clause: POINTS,
    lots: ['residue-45um: 4.0 %', 'residue-45um: < 2.0 %', 'residue-45um: 6.0 %'],
    outcome: 'meets',
  },
  {
    title: 'a mean between 0 and 4 %: 8 % is 4 to 8 points above it',
    clause: POINTS,
    lots: ['residue-45um: < 4.0 %', 'residue-45um: 8.0 %'],
    outcome: 'not-reported',
  },
  {
    title: 'a declared value of less than 4 %: 4 % is 0 to 4 points above it',
    clause: DECLARED,
    source: 'declared: { residue-45um: < 4 % }',
    lots: ['residue-45um: 4.0 %'],
    outcome: 'meets',
  },
  {
    title: 'less than 3 % retained is 97 to 100 % passing, 0 to 3 points from 100 %; the control passed 85 %',
    clause:
      'property: passing-45um, deviation-from: { control: yes }, magnitude-at-most: 15 percentage points',
    lots: [{ analyses: [{ results: 'residue-45um: < 3 %', control: 'residue-45um: 15 %' }] }],
    outcome: 'meets',
  },
  {
    title: 'relative: less than 3 % of a declared 4 % is 25 to 100 % below it',
    clause:
      'property: residue-45um, deviation-from: { declared: yes }, relative: yes, magnitude-at-most: 20 %',
    source: 'declared: { residue-45um: 4 % }',
    lots: ['residue-45um: < 3 %'],
    outcome: 'does-not-meet',
  },
])

judgeThroughTheFrontDoor('a statistic over results of which one is within bounds', [
  {
    title: 'is no number',
    clause: 'property: residue-45um, statistic: { rolling-mean: 2 }, at-most: 34 %',
    lots: ['residue-45um: < 1 %', 'residue-45um: 8.0 %'],
    outcome: 'not-reported',
  },
])

describe('the report on a value within bounds', () => {
  const on = (row: Pick<Row, 'clause' | 'lots'>) => {
    const lot = reportOn(row)
    const clause = lot.verdicts.find(({ criterion }) => criterion === 'alone')?.clauses[0]
    return { lot, clause: clause as unknown as Record<string, unknown> }
  }
  it('gives both ends, the value from the written figures, and says so', () => {
    const { lot, clause } = on({ clause: `${SUM}, at-least: 70 %`, lots: [OXIDES] })
    const results = (lot as unknown as { results: Record<string, unknown>[] }).results
    const sum = results.find(({ property }) => property === 'oxide-sum')
    expect(sum).toMatchObject({ censored: 'below', bounds: { low: 96.6, high: 97.1 } })
    expect(sum?.['value']).toBeCloseTo(97.1, 12)
    expect(results.find(({ property }) => property === 'SiO2')?.['bounds']).toBeNull()
    expect(clause).toMatchObject({
      bounds: { low: 96.6, high: 97.1 },
      reason: 'known only to be between 96.6 and 97.1 %, which meets the limit, at least 70 %',
    })
  })
  it('says that the limit lies between them', () => {
    expect(on({ clause: `${SUM}, at-least: 97.0 %`, lots: [OXIDES] }).clause['reason']).toBe(
      'known only to be between 96.6 and 97.1 %, which leaves open whether it meets the limit, at least 97.0 %',
    )
  })
  it('says of a deviation what it may be, and of its reference', () => {
    const lots = ['residue-45um: < 4.0 %', 'residue-45um: 8.0 %']
    expect(on({ clause: POINTS, lots }).clause['reason']).toBe(
      'deviation known only to be between 4 and 8 points, which leaves open whether it meets the limit, at most 5 percentage points in magnitude; mean of 1 preceding result between 0.00 and 4.00 %',
    )
  })
})
