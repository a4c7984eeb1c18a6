import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import {
  type Clause,
  type Criterion,
  everyClause,
  isUnconfirmed,
} from '../../../src/core/criteria/criterion.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { Outcome } from '../../../src/core/criteria/outcome.ts'
import { clauseOf, evidenceOf, history, index, plannedIndex, result } from '../../core/judging/fixture.ts'
import { limitsOf, outcomeOf, readClauses } from './shipped-limits.ts'
import { SHIPPED, shippedSet } from './shipped-sets.ts'

// Limits: ASTM C618-12a, abstracts with tables (sustandard.com/product/astm-c618-12a; document-center.com,
// edition 2012A); either
// age: ASTM C618-17, abstract with table footnotes (nen.nl); edition 19: note of 19 February 2019
// (adaa.asn.au). The numbers of
// single cases are own arithmetic on these limits.
const twelve = shippedSet('c618-12a')
const nineteen = shippedSet('c618-19')

describe('ASTM C618-12a as shipped', () => {
  it('holds the limits printed in the abstracts, by class N, F, C', () => {
    const limits = Object.fromEntries(
      [...everyClause(twelve.clauses)].flatMap((clause) =>
        clause.form !== 'comparison'
          ? []
          : [
              [
                clause.id,
                ['N', 'F', 'C'].map(
                  (name) => (clause.limits[0]?.byClass[name] ?? clause.limits[0]?.byClass['*'])?.[0]?.written,
                ),
              ],
            ],
      ),
    )
    expect(limits).toEqual({
      'oxide-sum': ['70.0 %', '70.0 %', '50.0 %'],
      'sulfur-trioxide': ['4.0 %', '5.0 %', '5.0 %'],
      moisture: ['3.0 %', '3.0 %', '3.0 %'],
      'loss-on-ignition': ['10.0 %', '6.0 %', '6.0 %'],
      residue: ['34 %', '34 %', '34 %'],
      'activity-1': ['75 %', '75 %', '75 %'],
      'activity-2': ['75 %', '75 %', '75 %'],
      'water-requirement': ['115 %', '105 %', '105 %'],
      soundness: ['0.8 %', '0.8 %', '0.8 %'],
      'density-uniformity': ['5 %', '5 %', '5 %'],
      'residue-uniformity': ['5 percentage points', '5 percentage points', '5 percentage points'],
      'drying-shrinkage': ['0.03 percentage points', '0.03 percentage points', '0.03 percentage points'],
      'air-entraining-uniformity': ['20 %', '20 %', '20 %'],
    })
  })

  const clause = (id: string, lotClass: string, ...results: Parameters<typeof evidenceOf>[0]) =>
    clauseOf(judge(twelve, evidenceOf(results, { class: lotClass })), id).outcome

  it('judges each limit met on it and not met beyond its last digit', () => {
    const cases: [string, string, Parameters<typeof result>[0], number, number][] = [
      ['oxide-sum', 'F', 'oxide-sum', 70, 69.9],
      ['oxide-sum', 'C', 'oxide-sum', 50, 49.9],
      ['sulfur-trioxide', 'N', 'SO3', 4, 4.1],
      ['sulfur-trioxide', 'C', 'SO3', 5, 5.1],
      ['moisture', 'F', 'moisture', 3, 3.1],
      ['loss-on-ignition', 'N', 'loss-on-ignition', 10, 10.1],
      ['loss-on-ignition', 'F', 'loss-on-ignition', 6, 6.1],
      ['residue', 'F', 'residue-45um', 34, 35],
      ['water-requirement', 'N', 'water-requirement', 115, 116],
      ['water-requirement', 'F', 'water-requirement', 105, 106],
      ['soundness', 'F', 'autoclave-expansion', 0.8, 0.9],
      ['soundness', 'F', 'autoclave-expansion', -0.8, -0.9],
    ]
    for (const [id, lotClass, key, on, beyond] of cases) {
      expect([
        id,
        clause(id, lotClass, result(key, on)),
        clause(id, lotClass, result(key, beyond)),
        clause(id, lotClass),
      ]).toEqual([id, 'meets', 'does-not-meet', 'not-reported'])
    }
  })

  it('leaves optional clauses aside until they are asked for', () => {
    expect(clause('drying-shrinkage', 'F', result('drying-shrinkage-increase', 0.05))).toBe('not-invoked')
    const asked = evidenceOf([result('drying-shrinkage-increase', 0.04)], {
      class: 'F',
      requested: { 'c618-12a': ['drying-shrinkage'] },
    })
    expect(clauseOf(judge(twelve, asked), 'drying-shrinkage').outcome).toBe('does-not-meet')
  })

  it('takes either age: 7 d 72 waits for 28 d, 28 d decides, and 75 at 7 d is enough by itself', () => {
    const activity = (
      results: Parameters<typeof evidenceOf>[0],
      planned: ReturnType<typeof plannedIndex>[] = [],
    ): Outcome => clauseOf(judge(twelve, evidenceOf(results, { class: 'F', planned })), 'activity').outcome
    expect(activity([index('7 d', 72)], [plannedIndex('28 d')])).toBe('pending')
    expect(activity([index('7 d', 72), index('28 d', 76)])).toBe('meets')
    expect(activity([index('7 d', 72), index('28 d', 74)])).toBe('does-not-meet')
    expect(activity([index('7 d', 75)])).toBe('meets')
  })

  const density = (value: number, earlier: readonly number[]) =>
    clauseOf(
      judge(
        twelve,
        evidenceOf([result('density', value)], { class: 'F', preceding: history('density', earlier) }),
      ),
      'density-uniformity',
    )

  it('allows density 2.28 to 2.52 after 2.30, 2.40, 2.50, and shows 5.4 % for 2.53', () => {
    expect([2.28, 2.52].map((value) => density(value, [2.3, 2.4, 2.5]).outcome)).toEqual(['meets', 'meets'])
    expect(density(2.53, [2.3, 2.4, 2.5])).toMatchObject({
      outcome: 'does-not-meet',
      compared: 5.4,
      against: { n: 3 },
    })
    expect(density(2.27, [2.3, 2.4, 2.5]).outcome).toBe('does-not-meet')
  })

  it('lets the oldest drop out with an eleventh preceding density', () => {
    const ten = Array.from({ length: 10 }, () => 2.4)
    expect(density(2.5, [9.9, ...ten]).against).toMatchObject({
      n: 10,
      lots: Array.from({ length: 10 }, (_, place) => `s/L${place + 2}`),
    })
    expect(density(2.5, [9.9, ...ten]).against?.mean).toBeCloseTo(2.4, 12)
  })

  it('allows residue 15.0 to 25.0 around 20.0: points, not per cent', () => {
    const residue = (value: number) =>
      clauseOf(
        judge(
          twelve,
          evidenceOf([result('residue-45um', value)], {
            class: 'F',
            preceding: history('residue-45um', [20]),
          }),
        ),
        'residue-uniformity',
      ).outcome
    expect([15, 19, 21, 25].map(residue)).toEqual(['meets', 'meets', 'meets', 'meets'])
    expect([14.9, 25.1].map(residue)).toEqual(['does-not-meet', 'does-not-meet'])
  })
})

describe('ASTM C618-19 as shipped', () => {
  const divider = (lotClass: string, value: number) =>
    clauseOf(judge(nineteen, evidenceOf([result('CaO', value)], { class: lotClass })), 'calcium-oxide')
      .outcome

  it('puts CaO of 18.0 % with F and 18.1 % with C, and 18.04 % with F once rounded to the digit of the limit', () => {
    expect([18, 18.1, 18.04].map((value) => divider('F', value))).toEqual(['meets', 'does-not-meet', 'meets'])
    expect([18, 18.1, 18.04].map((value) => divider('C', value))).toEqual([
      'does-not-meet',
      'meets',
      'does-not-meet',
    ])
    expect(divider('N', 30)).toBe('not-applicable')
  })

  it('puts CaO of 18.04 % with C where a set compares unrounded', () => {
    const unrounded: Criterion = {
      ...nineteen,
      clauses: nineteen.clauses.map((clause) =>
        clause.id === 'calcium-oxide' ? ({ ...clause, resolution: 'none' } as Clause) : clause,
      ),
    }
    expect(
      ['F', 'C'].map((lotClass) =>
        outcomeOf(unrounded, 'calcium-oxide', [result('CaO', 18.04)], { class: lotClass }),
      ),
    ).toEqual(['does-not-meet', 'meets'])
  })

  it('asks 50 % of F and C and 70.0 % of N', () => {
    const sums = (lotClass: string, value: number) =>
      judge(nineteen, evidenceOf([result('oxide-sum', value)], { class: lotClass }))
        .clauses.filter((clause) => clause.property === 'oxide-sum')
        .map((clause) => clause.outcome)
    expect(sums('F', 60)).toEqual(['meets', 'not-applicable'])
    expect(sums('C', 49.9)).toEqual(['does-not-meet', 'not-applicable'])
    expect(sums('N', 69.9)).toEqual(['not-applicable', 'does-not-meet'])
  })
})

describe('the options of ASTM C618 that are recalled', () => {
  const RECALLED = {
    'sulfate-moderate': 'at-most 0.10 %',
    'sulfate-high': 'at-most 0.05 %',
    'sulfate-relative': 'at-most 100 %',
  }
  const options = shippedSet('c618-12a-options')

  it('stand in a set of their own beside edition 12a, none of them read', () => {
    expect(limitsOf(options)).toEqual({
      ...limitsOf(twelve),
      'expansion-alkali-silica': 'at-most 100 %',
      ...RECALLED,
    })
    expect(isUnconfirmed(options)).toBe(true)
    expect(isUnconfirmed(twelve)).toBe(false)
  })

  it('are part of editions 19 and 23e1 without the one on alkali-silica reaction, dropped before them', () => {
    for (const set of [nineteen, shippedSet('c618-23e1')]) {
      expect(limitsOf(set)).toMatchObject(RECALLED)
      expect(Object.keys(limitsOf(set))).not.toContain('expansion-alkali-silica')
    }
  })

  it('judge a limit met on it and not met beyond it, and only where the purchaser asks', () => {
    const asked = { class: 'F', requested: { 'c618-12a-options': Object.keys(limitsOf(options)) } }
    const cases: [string, Parameters<typeof result>[0], number, number][] = [
      ['expansion-alkali-silica', 'expansion-alkali-silica-relative', 100, 101],
      ['sulfate-moderate', 'expansion-sulfate', 0.1, 0.11],
      ['sulfate-high', 'expansion-sulfate', 0.05, 0.06],
      ['sulfate-relative', 'expansion-sulfate-relative', 100, 101],
    ]
    for (const [id, key, on, beyond] of cases)
      expect([
        id,
        outcomeOf(options, id, [result(key, on)], asked),
        outcomeOf(options, id, [result(key, beyond)], asked),
        outcomeOf(options, id, [result(key, beyond)], { class: 'F' }),
      ]).toEqual([id, 'meets', 'does-not-meet', 'not-invoked'])
  })
})

describe('ASTM C618-23e1 as shipped', () => {
  const latest = shippedSet('c618-23e1')

  it('carries the limits of edition 19 over from memory, none of them read', () => {
    expect(limitsOf(latest)).toEqual({ ...limitsOf(nineteen), 'calcium-oxide-reported': 'report' })
    expect(readClauses(latest)).toEqual([])
    expect(nineteen.supersededBy).toBe('c618-23e1')
  })

  it('wants calcium oxide of class N on record', () => {
    const reported = (lotClass: string, ...results: Parameters<typeof evidenceOf>[0]) =>
      outcomeOf(latest, 'calcium-oxide-reported', results, { class: lotClass })
    expect([reported('N'), reported('N', result('CaO', 3)), reported('F')]).toEqual([
      'not-reported',
      'reported',
      'not-applicable',
    ])
  })
})

describe('the sets as shipped', () => {
  const OWN = ['modified-strength', 'resistivity-option', 'source-variability', 'strength-or-resistivity']

  it('rest on limits that were read in ASTM C618-12a, C989-18 and C1697-16 and the user’s own, and elsewhere partly on memory', () => {
    const recalled = SHIPPED.filter((id) =>
      [...everyClause(shippedSet(id).clauses)].some(
        ({ basis, information }) => basis !== undefined && 'memory' in basis && !information,
      ),
    )
    expect(SHIPPED.filter((id) => !recalled.includes(id)).sort()).toEqual(
      [
        'c1697-2016',
        'c618-12a',
        'c989-18',
        'modified-r3',
        ...OWN,
        'resistivity-by-study',
        't358-bands',
        'varrow-roads',
        'high-fell-viaduct',
      ].sort(),
    )
    expect(recalled.filter((id) => !isUnconfirmed(shippedSet(id)))).toEqual([])
  })

  it('name a source or who set it for every limit', () => {
    // A group of which a supplement changed a member rests on its members' own.
    for (const id of SHIPPED)
      for (const { id: clause, form, basis, setBy } of everyClause(shippedSet(id).clauses))
        expect([id, clause, basis !== undefined || setBy !== undefined || form === 'group']).toEqual([
          id,
          clause,
          true,
        ])
  })

  it('call a set that sets limits of its own an invented example', () => {
    const invented = SHIPPED.filter(
      (id) => !OWN.includes(id) && shippedSet(id).clauses.some(({ setBy }) => setBy !== undefined),
    )
    expect(invented.sort()).toEqual([
      'fell-county-works',
      'high-fell-viaduct',
      'resistivity-by-study',
      'varrow-roads',
    ])
    for (const id of invented) expect(shippedSet(id).title).toContain('invented example')
  })

  it('judge fillers under the user’s own thresholds and under no published one', () => {
    expect(SHIPPED.filter((id) => shippedSet(id).kinds.includes('limestone-filler')).sort()).toEqual(
      ['modified-r3', 'resistivity-by-study', ...OWN].filter((id) => id !== 'source-variability').sort(),
    )
  })

  it('take strength or resistivity at the same condition', () => {
    const modified = { condition: 'modified-50c', age: readAge('28 d') }
    const outcome = (strength: number, resistivity: number) =>
      judge(
        shippedSet('strength-or-resistivity'),
        evidenceOf(
          [
            result('strength-activity-index', strength, modified),
            result('resistivity-index', resistivity, modified),
          ],
          { kind: 'limestone-filler' },
        ),
      )
    expect(outcome(60, 250)).toMatchObject({ outcome: 'meets', decidedBy: ['reactivity-2'] })
    expect(outcome(70, 100)).toMatchObject({ outcome: 'meets', decidedBy: ['reactivity-1'] })
    expect(outcome(45, 100)).toMatchObject({
      outcome: 'does-not-meet',
      decidedBy: ['reactivity-1', 'reactivity-2'],
    })
  })
})

describe('ASTM C311 frequencies as shipped', () => {
  // From memory: 360 t or daily, a new source 90 t or daily; 2900 t or monthly, a new source 1800 t; new is
  // less than six months.
  const outcome = (id: string, tonnes: number, hours: number, recordDays: number) =>
    outcomeOf(shippedSet('c311-sampling'), id, [], {
      class: 'F',
      recordDays,
      coverage: () => ({ tonnes, hours, tests: 1 }),
    })

  it('ask a regular sample every 360 t or day, 90 t of a new source', () => {
    expect([
      outcome('sampling-regular', 360, 24, 900),
      outcome('sampling-regular', 361, 24, 900),
      outcome('sampling-regular', 360, 25, 900),
    ]).toEqual(['meets', 'does-not-meet', 'does-not-meet'])
    expect([outcome('sampling-regular', 90, 24, 100), outcome('sampling-regular', 91, 24, 100)]).toEqual([
      'meets',
      'does-not-meet',
    ])
  })

  it('ask a composite every 2900 t or month, 1800 t of a new source', () => {
    expect([
      outcome('sampling-composite', 2900, 744, 183),
      outcome('sampling-composite', 2901, 744, 183),
      outcome('sampling-composite', 1801, 744, 182),
    ]).toEqual(['meets', 'does-not-meet', 'does-not-meet'])
  })
})
