/** Supplements: what each of the nine operations makes of the clauses of a base, and which are refused. */
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { Clause, Criterion } from '../../../src/core/criteria/criterion.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import { compileCriteria, compileCriterion } from '../../../src/records/criteria/compile.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { demandWords } from '../../../src/words/clause-demands.ts'
import {
  clauseOf,
  evidenceOf,
  index,
  judgeInWords,
  knownOf,
  result,
  setOf,
} from '../../core/judging/fixture.ts'

function quantity(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}

const base = setOf(
  [
    {
      clause: 'loi',
      property: 'loss-on-ignition',
      'at-most': '6.0 %',
      approval: { 'at-most': '12.0 %', classes: ['F'], evidence: 'performance records' },
      basis: { read: 'table 1' },
    },
    { clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %', C: '50.0 %' } },
    { clause: 'alkali', property: 'available-alkalis', 'at-most': '1.5 %', optional: 'yes' },
    { clause: 'so3', property: 'SO3', 'at-most': '5.0 %', information: 'yes' },
    { clause: 'residue', property: 'residue-45um', 'at-most': '34 %', method: 'ASTM C430' },
    { clause: 'cao', property: 'CaO', report: 'yes' },
    {
      clause: 'activity',
      'any-of': [
        {
          clause: 'sai-7',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('7 d'),
          'at-least': '75 %',
        },
        {
          clause: 'sai-28',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('28 d'),
          'at-least': '75 %',
        },
      ],
    },
    { clause: 'sampling', sampling: { properties: ['density'], every: quantity('3200 t', 'lot-mass') } },
  ],
  { id: 'base', classes: ['F', 'C'] },
)

function over(
  below: Criterion,
  id: string,
  clauses: readonly WrittenClause[],
  more: Partial<WrittenCriterion> = {},
): Criterion {
  return setOf(clauses, { id, extends: { set: below.id }, bases: { [below.id]: below }, ...more })
}

/** Codes and places of the faults that a supplement to the base has. */
function faults(clauses: readonly WrittenClause[], below = base): string[] {
  const told: string[] = []
  const set = compileCriterion(
    'agency',
    { title: 'Agency', edition: '1', kinds: ['coal-fly-ash'], extends: { set: below.id }, clauses },
    (pointer, { code }) => told.push(`${pointer} ${code}`),
    knownOf({ [below.id]: below }),
  )
  expect(set === undefined).toBe(told.length > 0)
  return told
}

const of = (set: Criterion, id: string) => set.clauses.find((clause) => clause.id === id)
/** A change or removal with its former demand in words. */
const inWords = <T extends { readonly former: Clause }>({ former, ...change }: T) => ({
  ...change,
  was: demandWords(former),
})
const changesOf = (set: Criterion, id: string) => of(set, id)?.changes?.map(inWords)
const outcome = (set: Criterion, id: string, value: number, lotClass = 'F') => {
  const clause = of(set, id)
  if (clause?.form !== 'comparison') throw new Error(`${id} is no comparison`)
  return clauseOf(
    judge(
      set,
      evidenceOf(
        [result(clause.property, value, clause.method === undefined ? {} : { method: clause.method })],
        { class: lotClass },
      ),
    ),
    id,
  ).outcome
}

describe('setOf with a base, the nine operations', () => {
  it('setOf takes all clauses of the base over where nothing is changed', () => {
    const set = over(base, 'agency', [])
    expect(set.clauses).toEqual(base.clauses)
    expect(set).toMatchObject({
      classes: ['F', 'C'],
      removed: [],
      layers: [{ id: 'base' }, { id: 'agency' }],
    })
  })

  it('tighten replaces the limit and records what stood before', () => {
    const set = over(base, 'agency', [{ clause: 'residue', change: 'tighten', 'at-most': '30 %' }])
    expect([outcome(set, 'residue', 30), outcome(set, 'residue', 31), outcome(base, 'residue', 31)]).toEqual([
      'meets',
      'does-not-meet',
      'meets',
    ])
    expect(of(set, 'residue')).toMatchObject({ layer: 'agency', method: 'ASTM C430' })
    expect(changesOf(set, 'residue')).toEqual([
      { layer: 'agency', change: 'tighten', was: 'at most 34 %, by ASTM C430' },
    ])
    expect(of(set, 'sum')).toMatchObject({ layer: 'base' })
  })

  it('tighten gives a clause that was to be reported a limit, and adds a second side', () => {
    const set = over(base, 'agency', [
      { clause: 'cao', change: 'tighten', 'at-most': '18.0 %' },
      { clause: 'residue', change: 'tighten', 'at-least': '5 %' },
    ])
    expect([outcome(set, 'cao', 18), outcome(set, 'cao', 19)]).toEqual(['meets', 'does-not-meet'])
    expect([
      outcome(set, 'residue', 4),
      outcome(set, 'residue', 5),
      outcome(set, 'residue', 34),
      outcome(set, 'residue', 35),
    ]).toEqual(['does-not-meet', 'meets', 'meets', 'does-not-meet'])
  })

  it('tighten may make a bound strict at the same number', () => {
    const set = over(base, 'agency', [{ clause: 'residue', change: 'tighten', below: '34 %' }])
    expect([outcome(set, 'residue', 33), outcome(set, 'residue', 34)]).toEqual(['meets', 'does-not-meet'])
  })

  it('relax is flagged in the verdict with what stood before', () => {
    const set = over(base, 'agency', [{ clause: 'sum', change: 'relax', 'at-least': { F: '66.0 %' } }])
    expect([outcome(set, 'sum', 66), outcome(set, 'sum', 65.9), outcome(set, 'sum', 50, 'C')]).toEqual([
      'meets',
      'does-not-meet',
      'meets',
    ])
    expect(
      clauseOf(judgeInWords(set, evidenceOf([result('oxide-sum', 68)], { class: 'F' })), 'sum'),
    ).toMatchObject({
      relaxed: { by: 'agency', was: 'at least 70.0 % for class F, at least 50.0 % for class C' },
      limit: { layer: 'agency' },
    })
  })

  it('add puts a clause last, or behind the one that it names', () => {
    const set = over(base, 'agency', [
      { clause: 'last', property: 'moisture', 'at-most': '3.0 %' },
      { clause: 'second', change: 'add', after: 'loi', property: 'MgO', 'at-most': '5.0 %' },
    ])
    expect(set.clauses.map(({ id }) => id)).toEqual([
      'loi',
      'second',
      'sum',
      'alkali',
      'so3',
      'residue',
      'cao',
      'activity',
      'sampling',
      'last',
    ])
    expect(of(set, 'second')).toMatchObject({ layer: 'agency' })
    expect([outcome(set, 'second', 5), outcome(set, 'second', 5.1)]).toEqual(['meets', 'does-not-meet'])
  })

  it('remove takes a clause out and remembers it', () => {
    const set = over(base, 'agency', [{ clause: 'residue', change: 'remove' }])
    expect(of(set, 'residue')).toBeUndefined()
    expect(set.removed.map(inWords)).toEqual([
      { id: 'residue', layer: 'base', by: 'agency', was: 'at most 34 %, by ASTM C430' },
    ])
  })

  it('remove and tighten reach a member of a group', () => {
    const set = over(base, 'agency', [
      { clause: 'sai-7', change: 'remove' },
      { clause: 'sai-28', change: 'tighten', 'at-least': '85 %' },
    ])
    const verdict = (late: number) =>
      clauseOf(judge(set, evidenceOf([index('7 d', 99), index('28 d', late)], { class: 'F' })), 'activity')
    expect([verdict(85).outcome, verdict(84).outcome]).toEqual(['meets', 'does-not-meet'])
    expect(verdict(85).clauses?.map(({ id }) => id)).toEqual(['sai-28'])
    expect(set.removed.map(({ id }) => id)).toEqual(['sai-7'])
  })

  it.each([
    ['alkali', 1.5, 1.6],
    ['so3', 5, 5.1],
  ] as const)('promote makes %s mandatory', (id, met, missed) => {
    const set = over(base, 'agency', [{ clause: id, change: 'promote' }])
    expect([outcome(set, id, met), outcome(set, id, missed)]).toEqual(['meets', 'does-not-meet'])
    expect(of(set, id)).toMatchObject({
      optional: false,
      information: false,
      changes: [{ change: 'promote', layer: 'agency' }],
    })
    expect(judge(set, evidenceOf([], { class: 'F' })).decidedBy).toContain(id)
  })

  it('restrict allows some classes, and tells a lot of another class why', () => {
    const set = over(base, 'agency', [{ change: 'restrict', classes: ['F'] }])
    const clause = (lotClass: string | null) =>
      clauseOf(judgeInWords(set, evidenceOf([], { class: lotClass })), 'allowed-classes')
    expect(['F', 'C', null].map((lotClass) => clause(lotClass).outcome)).toEqual([
      'meets',
      'does-not-meet',
      'not-reported',
    ])
    expect(clause('C').reason).toBe('class C is not allowed, only F')
  })

  it('replace-method lets only results by the new method count', () => {
    const set = over(base, 'agency', [{ clause: 'residue', change: 'replace-method', method: 'EN 451-2' }])
    const found = (value: number, method: string) =>
      clauseOf(judge(set, evidenceOf([result('residue-45um', value, { method })], { class: 'F' })), 'residue')
        .outcome
    expect([found(34, 'EN 451-2'), found(35, 'EN 451-2'), found(20, 'ASTM C430')]).toEqual([
      'meets',
      'does-not-meet',
      'not-reported',
    ])
    expect(of(set, 'residue')).toMatchObject({ layer: 'base' })
    expect(changesOf(set, 'residue')).toEqual([
      { layer: 'agency', change: 'replace-method', was: 'at most 34 %, by ASTM C430' },
    ])
  })

  it('set-frequency replaces the frequency of sampling', () => {
    const set = over(base, 'agency', [
      {
        clause: 'sampling',
        change: 'set-frequency',
        sampling: { properties: ['density'], every: quantity('400 t', 'lot-mass') },
      },
    ])
    const found = (tonnes: number) =>
      clauseOf(
        judge(set, evidenceOf([], { class: 'F', coverage: () => ({ hours: 24, tonnes, tests: 1 }) })),
        'sampling',
      ).outcome
    expect([found(400), found(401)]).toEqual(['meets', 'does-not-meet'])
    expect(of(set, 'sampling')).toMatchObject({ layer: 'agency' })
    expect(changesOf(set, 'sampling')).toMatchObject([
      { change: 'set-frequency', was: expect.stringContaining('3200 t') },
    ])
  })

  it('add-document asks for a document', () => {
    const set = over(base, 'agency', [
      {
        clause: 'letter',
        change: 'add-document',
        document: 'certification',
        'void-on': ['equipment-change'],
      },
    ])
    const found = (documents: readonly { kind: string; title: string }[]) =>
      clauseOf(judge(set, evidenceOf([], { class: 'F', documents })), 'letter').outcome
    expect([found([{ kind: 'certification', title: 'Letter' }]), found([])]).toEqual([
      'meets',
      'not-reported',
    ])
    expect(of(set, 'letter')).toMatchObject({ layer: 'agency' })
  })
})

describe('setOf with a base, limits by class, approvals and bases', () => {
  it('setOf gives one class another limit where the base has one for all', () => {
    const set = over(base, 'agency', [{ clause: 'loi', change: 'tighten', 'at-most': { C: '5.0 %' } }])
    expect([
      outcome(set, 'loi', 6, 'F'),
      outcome(set, 'loi', 6, 'C'),
      outcome(set, 'loi', 5, 'C'),
      outcome(set, 'loi', 6.1, 'F'),
    ]).toEqual(['meets', 'does-not-meet', 'meets', 'does-not-meet'])
  })

  it('setOf gives one class a strict limit and leaves the other its own', () => {
    const set = over(base, 'agency', [{ clause: 'residue', change: 'tighten', below: { C: '30 %' } }])
    expect([
      outcome(set, 'residue', 30, 'C'),
      outcome(set, 'residue', 29, 'C'),
      outcome(set, 'residue', 34, 'F'),
      outcome(set, 'residue', 35, 'F'),
    ]).toEqual(['does-not-meet', 'meets', 'meets', 'does-not-meet'])
  })

  const granted = (set: string) => ({
    approvals: [
      {
        from: readMoment('2026-01-01'),
        by: 'State Materials Office',
        scope: 'loss on ignition',
        set,
        clause: 'loi',
      },
    ],
  })
  const approved = (set: Criterion, by: string) =>
    clauseOf(judge(set, evidenceOf([result('loss-on-ignition', 9)], { class: 'F', ...granted(by) })), 'loi')
      .outcome

  it('tighten drops the approval of the base unless it states its own; relax keeps it', () => {
    const tightened = over(base, 'agency', [{ clause: 'loi', change: 'tighten', 'at-most': '5.0 %' }])
    const own = over(base, 'agency', [
      {
        clause: 'loi',
        change: 'tighten',
        'at-most': '5.0 %',
        approval: { 'at-most': '10.0 %', evidence: 'trial batches' },
      },
    ])
    const relaxed = over(base, 'agency', [{ clause: 'loi', change: 'relax', 'at-most': '7.0 %' }])
    expect([
      approved(base, 'base'),
      approved(tightened, 'agency'),
      approved(own, 'agency'),
      approved(relaxed, 'agency'),
    ]).toEqual(['meets-by-approval', 'does-not-meet', 'meets-by-approval', 'meets-by-approval'])
  })

  it('an approval or a request under the base holds under the supplement, and not the other way round', () => {
    const set = over(base, 'agency', [])
    expect([approved(set, 'base'), approved(base, 'agency')]).toEqual(['meets-by-approval', 'does-not-meet'])
    const asked = (named: string) =>
      clauseOf(judge(set, evidenceOf([], { class: 'F', requested: { [named]: ['alkali'] } })), 'alkali')
        .outcome
    expect([asked('base'), asked('agency'), asked('other')]).toEqual([
      'not-reported',
      'not-reported',
      'not-invoked',
    ])
  })

  it('setOf drops the basis of a changed limit, which says nothing on the new one', () => {
    expect(of(base, 'loi')).toHaveProperty('basis')
    expect(
      of(over(base, 'agency', [{ clause: 'loi', change: 'tighten', 'at-most': '5.0 %' }]), 'loi'),
    ).not.toHaveProperty('basis')
  })

  it('setOf takes only the classes over that the supplement names', () => {
    const set = setOf([], { id: 'agency', extends: { set: 'base', classes: ['F'] }, bases: { base } })
    expect(set.classes).toEqual(['F'])
    expect(clauseOf(judge(set, evidenceOf([result('oxide-sum', 90)], { class: 'C' })), 'sum').outcome).toBe(
      'not-reported',
    )
  })
})

describe('setOf, three layers deep', () => {
  const agency = over(base, 'agency', [
    { clause: 'loi', change: 'tighten', 'at-most': '5.0 %' },
    { clause: 'so3', change: 'remove' },
    { clause: 'moist', property: 'moisture', 'at-most': '3.0 %' },
  ])
  const project = over(agency, 'project', [
    { clause: 'loi', change: 'relax', 'at-most': '5.5 %' },
    { clause: 'moist', change: 'tighten', 'at-most': '1.0 %' },
    { clause: 'cao', change: 'remove' },
  ])

  it('setOf lets the later layer win', () => {
    expect([agency, project].map((set) => [outcome(set, 'loi', 5.2), outcome(set, 'moist', 2)])).toEqual([
      ['does-not-meet', 'meets'],
      ['meets', 'does-not-meet'],
    ])
  })

  it('setOf names the layer of every limit and keeps all changes in their order', () => {
    expect(project.layers.map(({ id }) => id)).toEqual(['base', 'agency', 'project'])
    expect(project.clauses.map(({ id, layer }) => [id, layer])).toEqual([
      ['loi', 'project'],
      ['sum', 'base'],
      ['alkali', 'base'],
      ['residue', 'base'],
      ['activity', 'base'],
      ['sampling', 'base'],
      ['moist', 'project'],
    ])
    expect(changesOf(project, 'loi')).toEqual([
      { layer: 'agency', change: 'tighten', was: 'at most 6.0 %' },
      { layer: 'project', change: 'relax', was: 'at most 5.0 %' },
    ])
    expect(project.removed).toMatchObject([
      { id: 'so3', layer: 'base', by: 'agency' },
      { id: 'cao', layer: 'base', by: 'project' },
    ])
  })

  it('setOf leaves the layers below as they were', () => {
    expect([outcome(base, 'loi', 6), base.clauses.length, agency.removed.length]).toEqual(['meets', 8, 1])
  })
})

describe('compileCriterion, changes that are refused', () => {
  it.each<[string, WrittenClause, string]>([
    [
      'tighten that loosens',
      { clause: 'residue', change: 'tighten', 'at-most': '40 %' },
      '/clauses/0/at-most criterion-change-direction',
    ],
    [
      'tighten that lowers a lower limit',
      { clause: 'sum', change: 'tighten', 'at-least': { F: '66.0 %' } },
      '/clauses/0/at-least criterion-change-direction',
    ],
    [
      'relax that tightens',
      { clause: 'residue', change: 'relax', 'at-most': '30 %' },
      '/clauses/0/at-most criterion-change-direction',
    ],
    [
      'relax of a side without a limit',
      { clause: 'residue', change: 'relax', 'at-least': '5 %' },
      '/clauses/0/at-least criterion-change-direction',
    ],
    [
      'one limit for all that loosens it for one class',
      { clause: 'sum', change: 'tighten', 'at-least': '60.0 %' },
      '/clauses/0/at-least criterion-change-direction',
    ],
    [
      'an unknown clause',
      { clause: 'chloride', change: 'tighten', 'at-most': '0.1 %' },
      '/clauses/0/clause criterion-change-clause',
    ],
    ['no clause at all', { change: 'remove' }, '/clauses/0/change criterion-change-clause'],
    [
      'a place behind an unknown clause',
      { clause: 'new', property: 'MgO', 'at-most': '5.0 %', after: 'chloride' },
      '/clauses/0/after criterion-change-clause',
    ],
    [
      'a change without a limit',
      { clause: 'residue', change: 'tighten' },
      '/clauses/0 criterion-no-operator',
    ],
    [
      'tighten of a group',
      { clause: 'activity', change: 'tighten', 'at-least': '85 %' },
      '/clauses/0/change criterion-change-form',
    ],
    [
      'promote of a mandatory clause',
      { clause: 'residue', change: 'promote' },
      '/clauses/0/change criterion-change-form',
    ],
    [
      'replace-method without a method',
      { clause: 'residue', change: 'replace-method' },
      '/clauses/0/change criterion-change-form',
    ],
    [
      'set-frequency of a limit',
      { clause: 'residue', change: 'set-frequency' },
      '/clauses/0/change criterion-change-form',
    ],
    [
      'add-document without a document',
      { clause: 'letter', change: 'add-document' },
      '/clauses/0 criterion-change-form',
    ],
    ['restrict without classes', { change: 'restrict' }, '/clauses/0 criterion-change-form'],
    [
      'restrict to a class that the set lacks',
      { change: 'restrict', classes: ['N'] },
      '/clauses/0/classes/0 criterion-class-unknown',
    ],
    [
      'a limit in another unit',
      { clause: 'residue', change: 'tighten', 'at-most': '30 mm' },
      '/clauses/0/at-most criterion-unit',
    ],
    [
      'limits that contradict each other',
      { clause: 'residue', change: 'tighten', 'at-least': '40 %' },
      '/clauses/0 criterion-limits-contradict',
    ],
  ])('compileCriterion refuses %s', (_, clause, fault) => {
    expect(faults([clause])).toEqual([fault])
  })

  it('compileCriterion refuses to tighten one side of a range while it widens the other', () => {
    const ranged = setOf([{ clause: 'surface', property: 'SO3', between: ['2.0 %', '7.0 %'] }], {
      id: 'base',
    })
    expect(faults([{ clause: 'surface', change: 'tighten', between: ['3.0 %', '8.0 %'] }], ranged)).toEqual([
      '/clauses/0/between criterion-change-direction',
    ])
    expect(faults([{ clause: 'surface', change: 'tighten', between: ['3.0 %', '6.0 %'] }], ranged)).toEqual(
      [],
    )
    expect(faults([{ clause: 'surface', change: 'relax', between: ['1.0 %', '7.0 %'] }], ranged)).toEqual([])
  })

  it('compileCriterion refuses a limit on a clause that classifies, since bands come before it', () => {
    const banded = setOf(
      [{ clause: 'heat', property: 'r3-heat', band: [{ title: 'low', below: '100 J/g' }] }],
      { id: 'base' },
    )
    expect(faults([{ clause: 'heat', change: 'tighten', 'at-least': '160 J/g' }], banded)).toHaveLength(1)
    expect(() =>
      setOf([
        {
          clause: 'heat',
          property: 'r3-heat',
          'at-least': '160 J/g',
          band: [{ title: 'low', below: '100 J/g' }],
        },
      ]),
    ).toThrow()
  })

  it('compileCriterion tells a duplicate id once, at the clause that came later, without regard to case', () => {
    expect(faults([{ clause: 'LOI', property: 'MgO', 'at-most': '5.0 %' }])).toEqual([
      '/clauses/0 criterion-clause-duplicate',
    ])
    expect(
      faults([
        { clause: 'twin', property: 'MgO', 'at-most': '5.0 %' },
        { clause: 'twin', property: 'moisture', 'at-most': '3.0 %' },
      ]),
    ).toEqual(['/clauses/1 criterion-clause-duplicate'])
    expect(
      faults([
        { clause: 'residue', change: 'remove' },
        { clause: 'residue', property: 'residue-45um', 'at-most': '20 %' },
      ]),
    ).toEqual([])
  })

  it('compileCriterion refuses a change where nothing is extended, and a base that does not exist', () => {
    const told: string[] = []
    const record: WrittenCriterion = {
      title: 'Agency',
      edition: '1',
      kinds: ['coal-fly-ash'],
      clauses: [{ clause: 'residue', change: 'tighten', 'at-most': '30 %' }],
    }
    compileCriterion('agency', record, (pointer, { code }) => told.push(`${pointer} ${code}`), knownOf())
    compileCriterion(
      'agency',
      { ...record, extends: { set: 'none' } },
      (pointer, { code }) => told.push(`${pointer} ${code}`),
      knownOf(),
    )
    expect(told).toEqual([
      '/clauses/0/change criterion-change-without-base',
      '/extends/set criterion-base-unknown',
    ])
  })
})

describe('compileCriteria', () => {
  const plain = (limit: string, more: Partial<WrittenCriterion> = {}): WrittenCriterion => ({
    title: 'Set',
    edition: '1',
    kinds: ['coal-fly-ash'],
    clauses: [{ clause: 'loi', property: 'loss-on-ignition', 'at-most': limit }],
    ...more,
  })
  const resting = (
    set: string,
    more: Partial<NonNullable<WrittenCriterion['extends']>> = {},
  ): WrittenCriterion => ({
    title: 'Supplement',
    edition: '1',
    kinds: ['coal-fly-ash'],
    clauses: [],
    extends: { set, ...more },
  })

  function compiled(records: Readonly<Record<string, WrittenCriterion>>) {
    const told: string[] = []
    const sources = new Map(
      Object.entries(records).map(([id, record]) => [
        id,
        {
          record,
          report: (pointer: string, { code }: { code: string }) => {
            told.push(`${id}${pointer} ${code}`)
          },
        },
      ]),
    )
    return {
      sets: compileCriteria(sources, { conditions: new Set(), criteria: new Set(Object.keys(records)) }),
      told,
    }
  }

  it('compileCriteria compiles a base before what extends it, whatever the order of the records', () => {
    const { sets, told } = compiled({
      project: resting('agency'),
      agency: resting('base'),
      base: plain('6.0 %'),
    })
    expect(told).toEqual([])
    expect([...sets.keys()]).toEqual(['project', 'agency', 'base'])
    expect(sets.get('project')?.layers.map(({ id }) => id)).toEqual(['base', 'agency', 'project'])
  })

  it('compileCriteria tells a circle once and leaves its sets out', () => {
    const { sets, told } = compiled({
      a: resting('b'),
      b: resting('c'),
      c: resting('a'),
      base: plain('6.0 %'),
    })
    expect(told).toEqual(['c/extends/set criterion-base-cycle'])
    expect([...sets.keys()]).toEqual(['base'])
    expect(compiled({ a: resting('a') }).told).toEqual(['a/extends/set criterion-base-cycle'])
  })

  it('compileCriteria gives a superseded set the name of the later one, and none where that has a fault', () => {
    const { sets } = compiled({
      old: plain('6.0 %', { 'superseded-by': 'newer' }),
      newer: plain('5.0 %', { designation: 'X 1', edition: '2', 'superseded-by': 'spoiled' }),
      spoiled: plain('5.0 mm'),
    })
    expect([sets.get('old')?.laterName, sets.get('newer')?.laterName]).toEqual(['X 1, edition 2', undefined])
  })

  it('compileCriteria leaves what rests on a faulty set out without telling its faults again', () => {
    const { sets, told } = compiled({ base: plain('6.0 mm'), agency: resting('base') })
    expect(told).toEqual(['base/clauses/0/at-most criterion-unit'])
    expect(sets.size).toBe(0)
  })

  it('compileCriteria rests on the edition named, or on the current one where the supplement says so', () => {
    const editions = {
      old: plain('6.0 %', { 'superseded-by': 'newer' }),
      newer: plain('5.0 %', { 'superseded-by': 'newest' }),
      newest: plain('4.0 %'),
    }
    const { sets, told } = compiled({
      ...editions,
      pinned: resting('old'),
      moving: resting('old', { edition: 'current' }),
    })
    expect(told).toEqual([])
    expect(['pinned', 'moving'].map((id) => sets.get(id)?.layers[0]?.id)).toEqual(['old', 'newest'])
    expect(
      [...sets].map(([id, set]) => [id, judge(set, evidenceOf([result('loss-on-ignition', 4.5)])).outcome]),
    ).toMatchObject([['old', 'meets'], {}, {}, ['pinned', 'meets'], ['moving', 'does-not-meet']])
  })

  it('compileCriteria tells a circle where the current edition is the supplement itself', () => {
    const { told } = compiled({
      old: plain('6.0 %', { 'superseded-by': 'agency' }),
      agency: resting('old', { edition: 'current' }),
    })
    expect(told).toEqual(['agency/extends/set criterion-base-cycle'])
  })

  it('compileCriterion comes to an end where editions supersede each other in a circle', () => {
    const one = setOf([], { id: 'c618-12a', 'superseded-by': 'c618-19' })
    const two = setOf([], { id: 'c618-19', 'superseded-by': 'c618-12a' })
    const [asked, told]: [string[], string[]] = [[], []]
    const known = {
      ...knownOf(),
      base: (id: string) => {
        if (100 < asked.push(id)) throw new Error('compileCriterion follows superseded editions without end')
        return id === 'c618-19' ? two : one
      },
    }
    compileCriterion(
      'agency',
      resting('c618-12a', { edition: 'current' }),
      (pointer, { code }) => told.push(`${pointer} ${code}`),
      known,
    )
    expect(told).toEqual(['/extends/set criterion-base-cycle'])
  })
})
