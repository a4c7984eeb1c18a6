import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { studyData } from '../../../src/edition/writers/study-data.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'

const SCHEMA = resolve(import.meta.dirname, '../../../schemas/check.json')
const ROUND = STUDY.replace('screening', 'interlaboratory')
  .replace(/, class: \w+/g, '')
  .replace(/, threshold: .*\} \}/, ' }')
const LABORATORIES = (n: number) =>
  `laboratories: { ${Array.from({ length: n }, (_, place) => `L${place + 1}: {}`).join(', ')} }\n`
const RUNS =
  ROUND.replace('interlaboratory', 'ruggedness').replace(/conditions:\n.*\n/, '') +
  'factors: [{ title: bath, low: a, high: b }, { title: age, low: a, high: b }]\nruns: { a: ++, b: +-, c: -+, d: -- }\n'
const HEAD = 'material,condition,laboratory,batch,age,resistivity (ohm m)\n'

/** What careless writers leave: study, and table where it has one. */
const CASES: Readonly<Record<string, readonly [study: string, rows?: readonly string[]]>> = {
  'a screening study without readings': [STUDY],
  'a round robin without readings': [ROUND],
  'ruggedness runs without readings': [RUNS],
  'no reactive material': [
    STUDY.replace('reactive', 'inert'),
    ['control,,,1,28 d,50', 'A1,,,1,28 d,45', 'Q1,,,1,28 d,40'],
  ],
  'no inert material': [
    STUDY.replace('inert', 'weak'),
    ['control,,,1,28 d,50', 'A1,,,1,28 d,45', 'Q1,,,1,28 d,40'],
  ],
  'readings of one class alone': [STUDY, ['control,,,1,28 d,50', 'A1,,,1,28 d,45']],
  'one batch of each material': [STUDY, ['control,,,1,28 d,50', 'A1,,,1,28 d,45', 'Q1,,,1,28 d,40']],
  'all indices alike': [
    STUDY,
    ['control,,,1,28 d,50', 'A1,,,1,28 d,50', 'A1,,,2,28 d,50', 'Q1,,,1,28 d,50', 'Q1,,,2,28 d,50'],
  ],
  'everything above the ceiling': [STUDY, ['control,,,1,28 d,50', 'A1,,,1,28 d,> 900', 'Q1,,,1,28 d,> 900']],
  'several laboratories, one of which read one class alone': [
    STUDY + LABORATORIES(3),
    ['1', '2', '3'].flatMap((l) => [
      `control,,L${l},1,28 d,50`,
      `A1,,L${l},1,28 d,6${l}`,
      ...(l === '3' ? [] : [`Q1,,L${l},1,28 d,4${l}`]),
    ]),
  ],
  'no control': [STUDY, ['A1,,,1,28 d,45', 'Q1,,,1,28 d,40']],
  'a control above the ceiling': [STUDY, ['control,,,1,28 d,> 900', 'A1,,,1,28 d,45', 'Q1,,,1,28 d,40']],
  'one laboratory': [ROUND, ['control,,,1,28 d,50', 'A1,,,1,28 d,45', 'A1,,,2,28 d,46']],
  'a laboratory with one result': [
    ROUND + LABORATORIES(3),
    ['1', '2', '3'].flatMap((l) => [
      `control,,L${l},1,28 d,50`,
      `A1,,L${l},1,28 d,4${l}`,
      ...(l === '3' ? [] : [`A1,,L${l},2,28 d,45`]),
    ]),
  ],
  'cells all equal': [
    ROUND + LABORATORIES(6),
    ['1', '2', '3', '4', '5', '6'].flatMap((l) => [
      `control,,L${l},1,28 d,50`,
      `A1,,L${l},1,28 d,45`,
      `A1,,L${l},2,28 d,45`,
    ]),
  ],
  'replicates that agree wholly': [
    ROUND + LABORATORIES(6),
    ['1', '2', '3', '4', '5', '6'].flatMap((l) => [
      `control,,L${l},1,28 d,50`,
      `A1,,L${l},1,28 d,4${l}`,
      `A1,,L${l},2,28 d,4${l}`,
    ]),
  ],
  'a round robin above the ceiling': [
    ROUND + LABORATORIES(3),
    ['1', '2', '3'].flatMap((l) => [`control,,L${l},1,28 d,50`, `A1,,L${l},1,28 d,> 900`]),
  ],
  'a run without a result': [RUNS, ['control,a,,1,28 d,50', 'A1,a,,1,28 d,45', 'control,b,,1,28 d,50']],
  'runs all alike': [
    RUNS,
    ['a', 'b', 'c', 'd'].flatMap((run) => [`control,${run},,1,28 d,50`, `A1,${run},,1,28 d,45`]),
  ],
  'runs above the ceiling': [
    RUNS,
    ['a', 'b', 'c', 'd'].flatMap((run) => [`control,${run},,1,28 d,50`, `A1,${run},,1,28 d,> 900`]),
  ],
  'reference tests of every kind': [
    STUDY.replace(
      'class: reactive, shown-by: heat }',
      `class: reactive, shown-by: heat, calcium-hydroxide: < 5 %, reference: {
      heat: { age: 3 d, start: 0 h, share: 10 %, sample: 8 g, baseline: ["0 h, 9 mW"], readings: ["0 h, 5 mW", "90 h, 0 mW"] },
      bound-water: { crucibles: [{ crucible: 20 g, dried: 30 g, ignited: 30 g }] },
      calcium-hydroxide-fixed: { material: 1 g, lime: 2 g, acid: 0.1 mol/L, sample-volume: 0 mL, blank-volume: 28 mL, aliquot: 25 mL, total: 250 mL },
      pozzolanicity: { aliquot: 50 mL, acid: { concentration: 0.1 mol/L, volume: 7.5 mL }, complex: { concentration: 30 mmol/L, volume: 10 mL }, volume-error: 0 mL },
      lime-strength: { area: 2500 mm2, loads: [20 kN] } } }`,
    ),
  ],
  'three materials that read alike in a reference test': [
    STUDY.replace('inert, shown-by: heat }', 'inert, shown-by: heat, heat: 0 J/g }').replace(
      'reactive, shown-by: heat }',
      'reactive, shown-by: heat, heat: 0 J/g }\n  A2: { title: ash, class: reactive, shown-by: heat, heat: 0 J/g }',
    ),
    ['control,,,1,28 d,50', 'A1,,,1,28 d,45', 'A2,,,1,28 d,45', 'Q1,,,1,28 d,40'],
  ],
}

function edition([study, rows]: readonly [string, (readonly string[])?]) {
  const { records, diagnostics } = loadStudies({
    'S.yaml': rows === undefined ? study : `${study}table: { file: S.csv }\n`,
    ...(rows !== undefined && { 'S.csv': `${HEAD}${rows.join('\n')}\n` }),
  })
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
  return computeEdition(records, { program: 'test' })
}

/** Numbers that JSON would turn into null without a word, by their path; texts that print one. */
function* broken(value: unknown, path = ''): Generator<string> {
  if (typeof value === 'number' && !Number.isFinite(value)) yield `${path} ${value}`
  if (typeof value === 'string' && /NaN|Infinity|undefined|∞/.test(value)) yield `${path} "${value}"`
  if (typeof value === 'object' && value !== null)
    for (const [key, member] of Object.entries(value)) yield* broken(member, `${path}/${key}`)
}

describe('studyData', () => {
  const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true, strict: false }).compile(
    JSON.parse(readFileSync(SCHEMA, 'utf8')) as object,
  )
  it.each(Object.keys(CASES))('holds no number that JSON cannot, and is as its schema says: %s', (name) => {
    const whole = edition(CASES[name] ?? [''])
    expect([...broken(studyData(whole.study('S')))]).toEqual([])
    expect(validate(JSON.parse([...checkReport(whole, [])].join(''))), JSON.stringify(validate.errors)).toBe(
      true,
    )
  })
  it.each(Object.keys(CASES))('leaves no such number to the page: %s', (name) => {
    const whole = edition(CASES[name] ?? [''])
    expect([...broken(studyPage(whole, 'S'))]).toEqual([])
  })
  it('is refused by the schema where a row loses its value or a figure its n', () => {
    const report = JSON.parse(
      [...checkReport(edition(CASES['one batch of each material'] ?? ['']), [])].join(''),
    )
    expect(report.studies[0].results.length).toBeGreaterThan(5)
    delete report.studies[0].results[0].value
    expect(validate(report)).toBe(false)
  })
  // Indices 90 and 80: the threshold √7200 = 84.9, rounded to 50, is 100, which the reactive material fails; one of one allows all,
  // none of one 95 %.
  it('gives the errors at thresholds, the set one among them', () => {
    const { results } = studyData(edition(CASES['one batch of each material'] ?? ['']).study('S')) as {
      results: {
        statistic: string
        threshold?: number
        value: number | null
        interval: { high: number } | null
      }[]
    }
    const at = (statistic: string) => results.filter((row) => row.statistic === statistic)
    expect(at('reactive-failing-at').map(({ threshold, value }) => [threshold, value])).toEqual([[100, 1]])
    expect(at('inert-passing-at').map(({ value }) => value)).toEqual([0])
    expect(at('inert-passing-at')[0]?.interval?.high).toBeCloseTo(0.95, 12)
    // Without the only material of a class nothing is chosen, so nobody is judged.
    expect(at('left-out-material-judged-rightly')).toEqual([])
  })
  // Means 82, 84, ..., 92 % of six laboratories: robust mean 87; the outermost is 5 off.
  it('rates each laboratory of a round robin', () => {
    const { results } = studyData(edition(CASES['replicates that agree wholly'] ?? ['']).study('S')) as {
      results: { statistic: string; laboratory?: string; value: number | null }[]
    }
    const of = (statistic: string) =>
      results.filter((row) => row.statistic === statistic).map(({ value }) => value)
    expect(of('robust-mean')[0]).toBeCloseTo(87, 9)
    expect(of('cell-rating')).toEqual([-4, -5, -5, 5, 5, 4])
  })
  // Indices by hand: 45/50 and 40/50.
  it('gives the means in %, and why a batch has none', () => {
    const { results } = studyData(edition(CASES['one batch of each material'] ?? ['']).study('S')) as {
      results: { statistic: string; material?: string; value: number | null }[]
    }
    expect(
      results
        .filter(({ statistic }) => statistic === 'mean')
        .map(({ material, value }) => [material, Math.round((value ?? 0) * 1e9) / 1e9]),
    ).toEqual([
      ['Q1', 80],
      ['A1', 90],
    ])
    expect(studyData(edition(CASES['no control'] ?? ['']).study('S'))).toMatchObject({
      results: [],
      unmade: [
        { material: 'A1', why: 'no-control' },
        { material: 'Q1', why: 'no-control' },
      ],
    })
  })
})
