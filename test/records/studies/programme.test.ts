import { describe, expect, it } from 'vitest'
import { laidOut } from '../../../src/records/studies/programme-of.ts'
import { loadStudies } from './study-folder.ts'
import { planned } from './programme-fixture.ts'

function load(study: string, more: Readonly<Record<string, string>> = {}) {
  const { records, diagnostics } = loadStudies({ 'P.yaml': study, ...more })
  const record = records.studies.get('P')?.record
  return {
    told: diagnostics.map(({ severity, code, message }) => `${severity} ${code}: ${message}`),
    at: diagnostics.map(({ line, column }) => `${line}:${column}`),
    record,
    laid: record === undefined ? null : laidOut(record, records.conditions),
  }
}
const FLOW = `title: 20 %, constant flow
designation: trial
standing: modified
replacement: { amount: 20 %, by: mass }
batch: { cementitious: 500 g, sand: 1375 g }
water: { flow-within: 5 percentage points, control-water: 242 g }
curing: { medium: saturated-lime-water, temperature: 23 degC, within: 2 degC }
ages:
  - { age: 28 d, within: 12 h }
strength:
  specimen: { shape: cube, side: 50 mm }
`
const told = (changes: Parameters<typeof planned>[0]) => load(planned(changes)).told

describe('a programme', () => {
  it('is read with its crossed conditions, which readings may name', () => {
    const { told: faults, record, laid } = load(planned())
    expect(faults).toEqual([])
    expect(Object.keys(record?.conditions ?? {})).toEqual([
      'R30-23-A',
      'R30-23-B',
      'R30-50-A',
      'R30-50-B',
      'R50-23-A',
      'R50-23-B',
      'R50-50-A',
      'R50-50-B',
    ])
    expect(record?.conditions?.['R50-23-B']).toMatchObject({
      replacement: { value: 50 },
      temperature: { value: 23 },
      ...{ cement: 'C2', 'w/cm': 0.485, curing: 'saturated-lime-water' },
    })
    expect(laid?.totals).toMatchObject({ testMortars: 32, controlMortars: 16 })
    const readings =
      '\nreadings:\n  - { material: A1, condition: R50-23-B, age: 28 d, strength-activity-index: [80 %] }\n'
    expect(load(`${planned()}${readings}`).told).toEqual([
      'warning plan-digest: the study has readings, and its plan carries no digest',
      'warning reading-missing: Q1 has no reading in the study',
    ])
  })
  it('casts the fraction that its generators choose', () => {
    const fraction = '{ generators: { cement: [replacement, temperature] } }'
    const { told: faults, record } = load(planned({ fraction }))
    expect(faults).toEqual([])
    // Low times low is high: 30 % at 23 °C goes with the second cement.
    expect(Object.keys(record?.conditions ?? {})).toEqual(['R30-23-B', 'R30-50-A', 'R50-23-A', 'R50-50-B'])
  })
  it('takes replacement, water, batch and tolerances from the record of a condition', () => {
    const study = planned({
      crossed: undefined,
      every: undefined,
      batch: undefined,
      ages: '[{ age: 28 d, strength: 3 }]',
    })
    const conditions = 'conditions:\n  W: { record: flow, cement: C1 }\n  V: { record: volume, cement: C2 }\n'
    const { laid, told: faults } = load(`${study}${conditions}`, {
      '../conditions/flow.yaml': FLOW,
      '../conditions/volume.yaml': FLOW.replace('by: mass', 'by: volume'),
    })
    expect(faults).toEqual([])
    const [condition, byVolume] = laid?.programme.conditions ?? []
    expect(condition).toMatchObject({
      ...{ flow: 'constant-flow', replacementPercent: 20, controlWaterG: 242, waterRatio: null },
      ...{ cementitiousG: 500, sandG: 1375 },
    })
    expect(condition?.ages[0]?.withinHours).toBe(12)
    // What is replaced by volume has no mass without a density.
    expect(byVolume?.replacementPercent).toBeNull()
  })
  it('casts the runs of a ruggedness study with what holds for all of them', () => {
    const study = `title: Runs
kind: ruggedness
question: Which?
by: laboratory
cements: { C1: {}, C2: {} }
plan: { fixed: 2026-03-01, batches: 1 }
materials: { A1: { title: ash } }
factors:
  - { title: bath, low: 48 degC, high: 52 degC }
  - { title: age, low: 27 d, high: 29 d }
  - { title: cement, low: C1, high: C2 }
runs: { a: +++, b: +--, c: -+-, d: --+ }
programme:
  every: { replacement: 30 %, w/cm: 0.485 }
  casting: { first: 2026-04-07, mortars-a-day: 4 }
  ages: [{ age: 28 d, within: 12 h, resistivity: 3 }]
  batch: { cementitious: 500 g, sand: 1375 g }
`
    const { laid } = load(study)
    expect(laid?.totals).toMatchObject({ testMortars: 4, controlMortars: 4, castingDays: 2 })
    expect([...(laid?.totals.materialG ?? [])]).toEqual([['A1', 600]])
  })
})

describe('a programme is refused where', () => {
  it.each<[string, Parameters<typeof planned>[0], string]>([
    [
      'a material is not listed',
      { materials: '[Q1, Z9]' },
      'error reference-unknown: the study lists no material "Z9"',
    ],
    [
      'a condition is not listed',
      { conditions: '[R30-23-A, R30-60-A]' },
      'error reference-unknown: the study lists no condition "R30-60-A"',
    ],
    [
      'a laboratory is not listed',
      { laboratories: "['7']" },
      'error reference-unknown: the study lists no laboratory "7"',
    ],
    [
      'a cement is not listed',
      { crossed: '{ cement: { A: C1, B: C9 } }' },
      'error reference-unknown: the study lists no cement "C9"',
    ],
    [
      'the cement of all is not listed',
      { crossed: undefined, every: '{ cement: C9 }', conditions: undefined },
      'error reference-unknown: the study lists no cement "C9"',
    ],
    [
      'what is left out is not listed',
      { 'left-out': '[{ materials: [A1], conditions: [R9] }]' },
      'error reference-unknown: the study lists no condition "R9"',
    ],
    [
      'it casts before the plan was fixed',
      { casting: '{ first: 2026-02-24, mortars-a-day: 6 }' },
      'error dates-backwards: cast before the plan was fixed: 2026-02-24 is before 2026-03-01',
    ],
    [
      'a date of a batch is before the plan',
      { casting: "{ dates: { '1': 2026-02-24, '2': 2026-04-07 } }" },
      'error dates-backwards: cast before the plan was fixed: 2026-02-24 is before 2026-03-01',
    ],
    [
      'a batch has no date',
      { casting: "{ dates: { '1': 2026-04-07 } }" },
      'error key-missing: batch 2 has no day of casting, and the plan has 2',
    ],
    [
      'it does not say when',
      { casting: '{ on: [monday] }' },
      'error key-missing: the programme does not say when mortar is cast',
    ],
    [
      'the first day is not one of casting',
      { casting: '{ first: 2026-04-09, on: [tuesday], mortars-a-day: 6 }' },
      'error programme: 2026-04-09 is a Thursday, on which nobody casts',
    ],
    [
      'a day is in no calendar',
      { casting: '{ first: 2026-02-30, mortars-a-day: 6 }' },
      'error date: 2026-02-30 is not a date of the calendar',
    ],
    [
      'the fraction cannot tell apart what is asked',
      {
        fraction:
          '{ generators: { cement: [replacement, temperature] }, asked: [[cement], [temperature, replacement]] }',
      },
      'error programme: the fraction cannot tell cement from temperature × replacement',
    ],
    [
      'the fraction mixes up two factors',
      { fraction: '{ generators: { cement: [replacement] } }' },
      'error programme: the fraction cannot tell replacement from cement',
    ],
    [
      'a generator needs more levels',
      {
        crossed: '{ replacement: { a: 20 %, b: 30 %, c: 40 % }, cement: { A: C1, B: C2 } }',
        fraction: '{ generators: { cement: [replacement] } }',
      },
      'error programme: replacement has 3 levels, and a generator needs factors of two',
    ],
    [
      'a generator names what is not crossed',
      { fraction: '{ generators: { curing: [replacement] } }' },
      'error programme: the fraction names curing, which is not crossed',
    ],
    [
      'generators repeat each other',
      { fraction: '{ generators: { cement: [replacement], replacement: [cement] } }' },
      'error programme: the generators repeat each other or a factor, so that they do not say which conditions are cast',
    ],
    [
      'a generator names its own factor',
      { fraction: '{ generators: { cement: [cement] } }' },
      'error programme: the generators repeat each other or a factor, so that they do not say which conditions are cast',
    ],
    [
      'a factor is crossed and the same in all',
      { every: '{ temperature: 23 degC }' },
      'error programme: temperature is crossed and is said to be the same in every condition',
    ],
    [
      'two levels make one code',
      {
        crossed: '{ replacement: { a: 30 %, a-b: 50 % }, cement: { b-c: C1, c: C2 } }',
        every: '{ w/cm: 0.485 }',
      },
      'error duplicate-id: two conditions would have the code a-b-c',
    ],
    [
      'codes are too long',
      { crossed: '{ replacement: { abcdefgh: 30 %, b: 50 % }, cement: { abcdefgh: C1, c: C2 } }' },
      'error programme: the code abcdefgh-abcdefgh that the levels make has more than 16 signs',
    ],
    [
      'no specimen is tested',
      { ages: '[{ age: 28 d, within: 12 h, strength: 0 }]' },
      'error programme: no specimen is tested at any age',
    ],
    [
      'an age has no tolerance',
      { ages: '[{ age: 28 d, strength: 3 }]' },
      'error key-missing: the age 28 d has no tolerance, and the condition R30-23-A names no record that could state one',
    ],
    [
      'a window opens before casting',
      { ages: '[{ age: 1 d, within: 24 h, strength: 3 }]' },
      'error quantity-range: a tolerance of 24 h leaves no window about 1 d',
    ],
    [
      'windows overlap',
      { ages: '[{ age: 7 d, within: 3 d, strength: 3 }, { age: 10 d, within: 12 h, strength: 3 }]' },
      'error programme: the windows of 7 d and 10 d overlap',
    ],
    [
      'an age stands twice',
      { ages: '[{ age: 7 d, within: 3 h, strength: 3 }, { age: 168 h, within: 3 h, strength: 3 }]' },
      'error duplicate-id: the age 168 h stands here twice',
    ],
    [
      'an age is nought',
      { ages: '[{ age: 0 d, within: 3 h, strength: 3 }]' },
      'error age-unknown: "0 d" is not an age at test',
    ],
    [
      'a year is a slip',
      { casting: '{ first: 2062-04-07, mortars-a-day: 6 }' },
      'error programme: 2062-04-07 is more than ten years after the plan was fixed',
    ],
    ['a mass is a bound', { batch: '{ cementitious: < 500 g, sand: 1375 g }' }, 'error quantity-bound: '],
    [
      'nothing is replaced',
      { crossed: '{ replacement: { a: 0 %, b: 30 % } }' },
      'error quantity-range: 0 % is out of range here',
    ],
    [
      'all is replaced',
      { every: '{ replacement: 100 % }', crossed: '{ cement: { A: C1, B: C2 } }' },
      'error quantity-range: 100 % is out of range here',
    ],
    [
      'a difference must be seen for certain',
      { assumed: '{ from: trial, strength-activity-index: 2 %, power: 100 % }' },
      'error quantity-range: 100 % is out of range here',
    ],
    [
      'a difference may be missed nearly always',
      { assumed: '{ from: trial, strength-activity-index: 2 %, power: 3 % }' },
      'error quantity-range: 3 % is out of range here',
    ],
    [
      'no scatter is assumed',
      { assumed: '{ from: trial, resistivity-index: 0 % }' },
      'error quantity-range: 0 % is out of range here',
    ],
    [
      'specimens stay in their moulds for ever',
      { 'in-mould': '9000 h' },
      'error quantity-range: 9000 h is out of range here',
    ],
    [
      'every cell is left out',
      {
        materials: '[A1]',
        crossed: '{ cement: { A: C1, B: C2 } }',
        'left-out': '[{ materials: [A1], conditions: [A, B] }]',
      },
      'error programme: the programme leaves every cell out',
    ],
    [
      'a material is left out of every condition',
      { crossed: '{ cement: { A: C1, B: C2 } }', 'left-out': '[{ materials: [A1], conditions: [A, B] }]' },
      'error programme: the material A1 is left out of every condition',
    ],
  ])('%s', (_, changes, expected) => {
    expect(told(changes).join('\n')).toContain(expected)
  })
  it('too many conditions are crossed, without making them', () => {
    const levels = (start: number) =>
      Array.from({ length: 12 }, (_, place) => `l${place}: 0.${start + place}`).join(', ')
    const shares = levels(20).replaceAll(/0\.(\d+)/g, '$1 %')
    const degrees = levels(20).replaceAll(/0\.(\d+)/g, '$1 degC')
    expect(
      told({
        crossed: `{ replacement: { ${shares} }, temperature: { ${degrees} }, w/cm: { ${levels(30)} } }`,
        every: undefined,
      }),
    ).toContain('error programme: the factors make 1728 conditions, and a study has 400 at most')
  })
  it('too much is cast, without laying it out', () => {
    const study = planned()
      .replace('batches: 2', 'batches: 60')
      .replace(
        'programme:',
        `laboratories:\n${Array.from({ length: 400 }, (_, code) => `  '${code + 1}': {}\n`).join('')}programme:`,
      )
    expect(load(study).told).toEqual([
      'error programme: the programme has 384000 test mortars, and 3000 at most are laid out',
    ])
  })
  it('a condition is written out under a code that is crossed', () => {
    expect(load(`${planned()}conditions:\n  R30-23-A: { replacement: 20 % }\n`).told).toEqual([
      'error duplicate-id: the programme makes a condition of the code R30-23-A too',
    ])
  })
  it('the study is of runs, which state the levels themselves', () => {
    expect(load(planned().replace('kind: screening', 'kind: ruggedness')).told).toContain(
      'error key-unknown: crossed has no place in a study of the kind ruggedness, whose runs state the levels',
    )
  })
})

describe('a programme is warned of where', () => {
  it('it has one cement, or names none', () => {
    expect(told({ crossed: '{ cement: { A: C1 } }' })).toEqual([
      'warning programme-design: the programme has the one cement C1, and an index depends on the cement',
    ])
    expect(told({ crossed: '{ replacement: { a: 30 %, b: 50 % } }' })).toEqual([
      'warning programme-design: the programme names no cement',
    ])
  })
})
