import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { everyClause } from '../../../src/core/criteria/criterion.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { loadYaml } from '../../../src/records/yaml/load-yaml.ts'
import { compileCriterion } from '../../../src/records/criteria/compile.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { knownOf, setOf } from '../../core/judging/fixture.ts'

const loi: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }

/** Code and pointer of every fault of a record, and whether a set came of it. */
function faultsOf(clauses: readonly WrittenClause[], more: Partial<WrittenCriterion> = {}): string[] {
  const faults: string[] = []
  const set = compileCriterion(
    'trial',
    { title: 'Trial', edition: '1', kinds: ['coal-fly-ash'], clauses, ...more },
    (pointer, fault) => {
      expect(fault.message).not.toBe('')
      expect(fault.mend).not.toBe('')
      faults.push(`${fault.code} ${pointer}`)
    },
    knownOf(),
  )
  expect(set === undefined).toBe(faults.length > 0)
  return faults
}

describe('compileCriterion', () => {
  it('compileCriterion turns limits into quantities by class, with the layer that set them', () => {
    const [clause] = setOf(
      [{ clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %', C: '50.0 %' } }],
      { classes: ['F', 'C'] },
    ).clauses
    expect(clause).toMatchObject({
      form: 'comparison',
      id: 'sum',
      layer: 'trial',
      optional: false,
      information: false,
      several: 'worst',
      limits: [
        {
          operator: 'at-least',
          byClass: { F: [{ value: 70, decimals: 1, written: '70.0 %' }], C: [{ value: 50 }] },
        },
      ],
    })
  })

  it('compileCriterion numbers members without an id by their place, and hands the group’s basis and rule down', () => {
    const set = setOf([
      {
        clause: 'g',
        basis: { read: 'S1' },
        'decision-rule': { guarded: 2, 'agreed-in': 'x' },
        'any-of': [loi, { property: 'SO3', 'at-most': '5.0 %', basis: { memory: 'recalled' } }],
      },
    ])
    expect(
      [...everyClause(set.clauses)].map(({ id, basis, decisionRule }) => [id, basis, decisionRule?.rule]),
    ).toEqual([
      ['g', { read: 'S1' }, 'guarded'],
      ['loi', { read: 'S1' }, 'guarded'],
      ['g-2', { memory: 'recalled' }, 'guarded'],
    ])
  })

  it('compileCriterion reads the deviation of a percentage in points and a relative one in per cent', () => {
    const base: WrittenClause = { clause: 'u', property: 'residue-45um', 'deviation-from': { preceding: 10 } }
    expect(faultsOf([{ ...base, 'magnitude-at-most': '5 percentage points' }])).toEqual([])
    expect(faultsOf([{ ...base, relative: 'yes', 'magnitude-at-most': '5 %' }])).toEqual([])
    expect(faultsOf([{ ...base, 'magnitude-at-most': '5 %' }])).toEqual([
      'criterion-unit /clauses/0/magnitude-at-most',
    ])
    expect(faultsOf([{ ...base, relative: 'yes', 'magnitude-at-most': '5 percentage points' }])).toEqual([
      'criterion-unit /clauses/0/magnitude-at-most',
    ])
  })

  it('compileCriterion refuses limits that are no plain quantity of the property', () => {
    for (const text of ['6', '6 MPa', '6,0 %', '< 6 %', 'six'])
      expect(faultsOf([{ ...loi, 'at-most': text }])).toEqual(['criterion-unit /clauses/0/at-most'])
    expect(faultsOf([{ clause: 'r', property: 'loss-on-ignition', between: ['2.0 %', '7'] }])).toEqual([
      'criterion-unit /clauses/0/between/1',
    ])
  })

  it('compileCriterion refuses classes that the set does not have, wherever they stand', () => {
    expect(faultsOf([{ ...loi, 'at-most': { F: '6.0 %' } }])).toEqual([
      'criterion-class-unknown /clauses/0/at-most/F',
    ])
    expect(faultsOf([{ ...loi, classes: ['F', 'X'] }], { classes: ['F'] })).toEqual([
      'criterion-class-unknown /clauses/0/classes/1',
    ])
    expect(
      faultsOf([{ ...loi, approval: { 'at-most': '12.0 %', classes: ['X'], evidence: 'records' } }]),
    ).toEqual(['criterion-class-unknown /clauses/0/approval/classes/0'])
    expect(faultsOf([loi], { 'class-titles': { 'a/b': 'none' } })).toEqual([
      'criterion-class-unknown /class-titles/a~1b',
    ])
  })

  it('compileCriterion refuses a clause id that is missing or stands twice, in a group too', () => {
    expect(faultsOf([{ property: 'SO3', 'at-most': '5.0 %' }])).toEqual([
      'criterion-clause-without-id /clauses/0',
    ])
    expect(faultsOf([loi, { clause: 'g', 'any-of': [{ ...loi, clause: 'LOI' }] }])).toEqual([
      'criterion-clause-duplicate /clauses/1',
    ])
  })

  it('compileCriterion refuses an index without condition or age, and a condition that does not exist', () => {
    const sai: WrittenClause = { clause: 's', property: 'strength-activity-index', 'at-least': '75 %' }
    expect(faultsOf([{ ...sai, age: readAge('7 d') }])).toEqual([
      'criterion-condition-missing /clauses/0/property',
    ])
    expect(faultsOf([{ ...sai, condition: 'c311' }])).toEqual([
      'criterion-condition-missing /clauses/0/property',
    ])
    expect(faultsOf([{ ...sai, condition: 'c312', age: readAge('7 d') }])).toEqual([
      'criterion-condition-unknown /clauses/0/condition',
    ])
    expect(faultsOf([{ clause: 'w', property: 'water-requirement', 'at-most': '105 %' }])).toEqual([])
  })

  it('compileCriterion refuses a clause that is group and comparison at once, or neither', () => {
    expect(faultsOf([{ clause: 'g', 'any-of': [loi], 'at-most': '6.0 %' }])).toEqual([
      'criterion-group-mixed /clauses/0/at-most',
    ])
    expect(faultsOf([{ clause: 'g', 'any-of': [loi], 'all-of': [loi] }])).toContain(
      'criterion-group-mixed /clauses/0/all-of',
    )
    expect(faultsOf([{ clause: 'n', 'at-most': '6.0 %' }])).toEqual(['criterion-property-missing /clauses/0'])
  })

  it('compileCriterion refuses a clause without an operator', () => {
    expect(faultsOf([{ clause: 'n', property: 'SO3' }])).toEqual(['criterion-no-operator /clauses/0'])
    expect(faultsOf([{ clause: 'n', property: 'SO3', report: 'no' }])).toEqual([
      'criterion-no-operator /clauses/0',
    ])
    expect(faultsOf([{ clause: 'n', property: 'SO3', report: 'yes' }])).toEqual([])
    expect(faultsOf([{ ...loi, when: [{ property: 'SO3' }] }])).toEqual([
      'criterion-no-operator /clauses/0/when/0',
    ])
  })

  it('compileCriterion refuses limits that no value can meet together, and lets a single point stand', () => {
    const range = (more: Partial<WrittenClause>) =>
      faultsOf([{ clause: 'r', property: 'loss-on-ignition', ...more }], { classes: ['F', 'C'] })
    expect(range({ between: ['7.0 %', '2.0 %'] })).toEqual(['criterion-limits-contradict /clauses/0'])
    expect(range({ 'at-least': '7.0 %', 'at-most': '6.0 %' })).toEqual([
      'criterion-limits-contradict /clauses/0',
    ])
    expect(range({ above: '6.0 %', 'at-most': '6.0 %' })).toEqual(['criterion-limits-contradict /clauses/0'])
    expect(range({ 'at-least': '6.0 %', 'at-most': '6.0 %' })).toEqual([])
    expect(range({ above: { C: '18.0 %' }, 'at-most': { F: '18.0 %' } })).toEqual([])
    expect(range({ 'at-least': '5.0 %', 'at-most': { F: '4.0 %', C: '6.0 %' } })).toEqual([
      'criterion-limits-contradict /clauses/0',
    ])
  })

  it('compileCriterion refuses an outer limit on a side where the clause has no plain one', () => {
    expect(faultsOf([{ ...loi, approval: { 'at-least': '12.0 %', evidence: 'records' } }])).toEqual([
      'criterion-limits-contradict /clauses/0/approval/at-least',
    ])
    expect(faultsOf([{ ...loi, approval: { evidence: 'records' } }])).toEqual([
      'criterion-no-operator /clauses/0/approval',
    ])
  })

  it('compileCriterion refuses a rounding step that is not above zero', () => {
    expect(faultsOf([{ ...loi, resolution: 0 }])).toEqual(['criterion-resolution /clauses/0/resolution'])
  })

  it('compileCriterion refuses relative without a reference, and references that are not supported', () => {
    expect(faultsOf([{ ...loi, relative: 'yes' }])).toEqual([
      'criterion-relative-without-deviation /clauses/0/relative',
    ])
    expect(
      faultsOf([{ ...loi, 'deviation-from': { control: 'yes' }, 'at-most': '6 percentage points' }]),
    ).toEqual([])
    expect(faultsOf([{ ...loi, 'deviation-from': { declared: 'no' } }])).toEqual([
      'criterion-deviation /clauses/0/deviation-from',
    ])
    expect(faultsOf([{ ...loi, 'deviation-from': { preceding: 2.5 } }])).toEqual([
      'criterion-deviation /clauses/0/deviation-from',
    ])
  })

  it('compileCriterion refuses a condition on a property that needs a mortar', () => {
    expect(faultsOf([{ ...loi, when: [{ property: 'resistivity-index', above: '100 %' }] }])).toEqual([
      'criterion-condition-missing /clauses/0/when/0/property',
    ])
  })

  it('compileCriterion refuses a decision rule that names none or two', () => {
    expect(faultsOf([loi], { 'decision-rule': { 'agreed-in': 'x' } })).toEqual([
      'criterion-decision-rule /decision-rule',
    ])
    expect(faultsOf([{ ...loi, 'decision-rule': { guarded: 1, probability: 0.9 } }])).toEqual([
      'criterion-decision-rule /clauses/0/decision-rule',
    ])
  })

  it('compileCriterion refuses a release on a clause that the set does not have', () => {
    expect(faultsOf([loi], { release: [{ clause: 'activity' }] })).toEqual([
      'criterion-release-clause /release/0/clause',
    ])
    expect(faultsOf([loi], { release: [{ clause: 'loi', with: { 'at-most': '8 MPa' } }] })).toEqual([
      'criterion-unit /release/0/with/at-most',
    ])
  })

  it('compileCriterion refuses a later edition that does not exist', () => {
    expect(faultsOf([loi], { 'superseded-by': 'c618-30' })).toEqual([
      'criterion-superseded-by-unknown /superseded-by',
    ])
  })

  it('compileCriterion refuses a base that does not exist, and a change without a base', () => {
    expect(
      faultsOf([{ change: 'tighten', clause: 'loi', 'at-most': '5.0 %' }], { extends: { set: 'c617' } }),
    ).toEqual(['criterion-base-unknown /extends/set'])
    expect(faultsOf([{ change: 'tighten', clause: 'loi', 'at-most': '5.0 %' }])).toEqual([
      'criterion-change-without-base /clauses/0/change',
    ])
  })

  it('compileCriterion takes validated records only: the schema refuses a property that is not on the list', () => {
    const diagnostics: Diagnostic[] = []
    const text = [
      'title: Trial',
      'edition: 1st',
      'kinds: [coal-fly-ash]',
      'clauses:',
      '  - { clause: n, property: loi, at-most: 6.0 % }',
      '  - { clause: m, property: loss-on-ignition, at-most: 6.0 %, when: [{ property: lime, above: 1.5 % }] }',
    ].join('\n')
    expect(loadYaml('criterion', text, fileReport('trial.yaml', text, diagnostics))).toBeUndefined()
    expect(diagnostics.map(({ code, line }) => [code, line])).toEqual([
      ['schema', 5],
      ['schema', 6],
    ])
  })

  it('compileCriterion reports every fault of a record in one run', () => {
    expect(
      faultsOf([
        { ...loi, 'at-most': '6' },
        { clause: 'x', property: 'SO3' },
        { clause: 'LOI', property: 'CaO', report: 'yes' },
      ]).length,
    ).toBe(3)
  })
})

describe('compileCriterion, the edges of what a clause may ask for', () => {
  const faults = (clause: Partial<WrittenClause>) => faultsOf([{ ...loi, ...clause }])
  const percent = (value: number) => ({
    kind: 'fraction' as const,
    value,
    unit: '%',
    written: `${value} %`,
    decimals: 0,
  })
  const year = { kind: 'duration' as const, value: 8760, unit: 'd', written: '365 d', decimals: 0 }

  it('compileCriterion refuses a share or confidence that no tolerance factor is computed for', () => {
    const variables = (share: number, confidence: number) =>
      faults({
        statistic: {
          variables: { period: year, 'at-least': 20, share: percent(share), confidence: percent(confidence) },
        },
      })
    expect(variables(90, 0.0001)).toEqual(['criterion-statistic /clauses/0/statistic/variables/confidence'])
    expect(variables(90, 99.99999)).toEqual(['criterion-statistic /clauses/0/statistic/variables/confidence'])
    expect(variables(99.99999, 95)).toEqual(['criterion-statistic /clauses/0/statistic/variables/share'])
    expect([...variables(1, 99.9), ...variables(99.9, 1)]).toEqual([])
  })

  it('compileCriterion refuses a limit for no class, and "no" in place of a limit', () => {
    expect(faults({ 'at-most': {} })).toEqual(['criterion-no-operator /clauses/0/at-most'])
    expect(faults({ 'at-most': 'no' })).toEqual(['criterion-unit /clauses/0/at-most'])
  })

  it('compileCriterion refuses an approval with two outer limits', () => {
    const approval = { 'at-least': '1.0 %', 'at-most': '12.0 %', evidence: 'service record' }
    expect(faults({ 'at-least': '2.0 %', approval })).toEqual([
      'criterion-limits-contradict /clauses/0/approval/at-most',
    ])
  })

  it('compileCriterion refuses a frequency of nothing', () => {
    const none = { kind: 'duration' as const, value: 0, unit: 'd', written: '0 d', decimals: 0 }
    const sampling = { clause: 's', sampling: { properties: ['density' as const], 'or-every': none } }
    expect(faultsOf([sampling])).toEqual(['criterion-sampling /clauses/0/sampling/or-every'])
  })
})
