import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { studyData } from '../../../src/edition/writers/study-data.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { loadStudies, STUDY } from './study-folder.ts'

/** The study whose ash has these lines under reference; `more` stands beside it. */
function withReference(reference: string, more = ''): string {
  return STUDY.replace(
    'A1: { title: ash, class: reactive, shown-by: heat }',
    `A1: { title: ash, class: reactive, shown-by: heat, ${more}reference: { ${reference} } }`,
  )
}

const HEAT = 'age: 3 d, start: 1 h, share: 10 %, sample: 8 g'
/** 5 mW falling to 1 mW at 10 h, level to 90 h; 0.5 mW of it baseline. */
const POWERS = 'baseline: ["0 h, 0.5 mW"], readings: ["0 h, 5 mW", "10 h, 1 mW", "90 h, 1 mW"]'

function loaded(study: string, files: Readonly<Record<string, string>> = {}) {
  const { records, diagnostics } = loadStudies({ 'S-1.yaml': study, ...files })
  const faults = diagnostics.filter(({ severity }) => severity === 'error')
  expect(faults.map(({ message }) => message)).toEqual([])
  return computeEdition(records, { program: 'test' })
}

interface Row {
  readonly property: string
  readonly material: string
  readonly statistic: string
  readonly value: number | null
  readonly from: string
  readonly reason?: string
}

function rows(study: string, files: Readonly<Record<string, string>> = {}): Row[] {
  const { results } = studyData(loaded(study, files).study('S-1')) as { results: Row[] }
  return results.filter(({ property }) => property === 'reference-reactivity')
}

describe('reference tests of a study', () => {
  // By hand: at 1 h 4.6 mW; 9 × 2.8 + 62 × 1 = 87.2 mW h, less 0.5 × 71 = 35.5: 51.7 × 3.6 J over 0.8 g.
  const wanted = (51.7 * 3.6) / 0.8
  it.each([
    ['rows of their own', withReference(`heat: { ${HEAT}, ${POWERS} }`), {}],
    [
      'other units',
      withReference(`heat: { ${HEAT}, ${POWERS.replace('"0 h, 5 mW"', '"0 d, 5000 uW"')} }`),
      {},
    ],
    [
      'power per gram of paste',
      withReference(
        'heat: { age: 3 d, start: 1 h, share: 10 %, baseline: ["0 h, 0.0625 mW/g"], readings: ["0 h, 0.625 mW/g", "10 h, 0.125 mW/g", "90 h, 0.125 mW/g"] }',
      ),
      {},
    ],
    [
      'a table of several materials',
      withReference(`heat: { ${HEAT}, baseline: ["0 h, 0.5 mW", "90 h, 0.5 mW"], file: S-1-heat.csv }`),
      { 'S-1-heat.csv': 'material,time (h),power (mW)\nQ1,0,9\nA1,0,5\nA1,10,1\nQ1,90,9\nA1,90,1\n' },
    ],
    [
      'a table of one material',
      withReference(`heat: { ${HEAT}, baseline: ["0 h, 0.5 mW"], file: S-1-heat.csv }`),
      { 'S-1-heat.csv': 'time (d),power (mW),note\n0,5,lid shut\n0.41666666666667,1,\n3.75,1,\n' },
    ],
  ])('read heat from %s alike', (_, study, files) => {
    expect(rows(study, files)).toEqual([
      expect.objectContaining({ material: 'A1', statistic: 'heat', from: 'readings' }),
    ])
    expect(rows(study, files)[0]?.value).toBeCloseTo(wanted, 9)
  })
  it('compute a stated figure again where it agrees to its last digit, and refuse it where it does not', () => {
    const heat = `heat: { ${HEAT}, ${POWERS} }`
    expect(wanted).toBeCloseTo(232.65, 9)
    expect(rows(withReference(heat, 'heat: 232.6 J/g, '))).toMatchObject([
      { value: wanted, from: 'readings' },
    ])
    const { diagnostics, records } = loadStudies({ 'S-1.yaml': withReference(heat, 'heat: 232.5 J/g, ') })
    expect(diagnostics).toMatchObject([{ code: 'figure-off-readings', line: 8 }])
    expect(records.studies.has('S-1')).toBe(false)
  })
  // By hand: 3 mg of water in 50 mg are 24.6771 g/100 g; of 80 g of paste 19.7417 g are left of 30 g.
  it('give the content of hydroxide beside what was consumed of it', () => {
    const study = withReference(
      'calcium-hydroxide: { basis: initial, mix: { calcium-hydroxide: 30 g, material: 10 g, water: 40 g }, water: { from: 400 degC, to: 500 degC }, readings: ["40 degC, 50 mg", "400 degC, 44 mg", "500 degC, 0.041 g"] }',
    )
    expect(rows(study).map(({ statistic, value }) => [statistic, value?.toFixed(3)])).toEqual([
      ['calcium-hydroxide-consumed', '102.583'],
      ['calcium-hydroxide-content', '24.677'],
    ])
  })
  it('leave a figure that is only stated as reported, and a bound without a value', () => {
    const study = STUDY.replace(
      'class: reactive, shown-by: heat }',
      'class: reactive, shown-by: heat, heat: 240 J/g, calcium-hydroxide: < 5 % }',
    )
    expect(rows(study)).toMatchObject([
      { statistic: 'heat', value: 240, from: 'reported' },
      { statistic: 'calcium-hydroxide-consumed', value: null, reason: 'known only as < 5 %' },
    ])
  })
  it('leave out what was read after the as-of day', () => {
    const on = (day: string) =>
      withReference(
        `bound-water: { tested: ${day}, crucibles: [{ crucible: 20 g, dried: 30 g, ignited: 29 g }] }`,
      )
    const asOf = loadStudies({}).records.site['as-of']
    expect(asOf).toBeDefined()
    expect(rows(on('2020-01-01'))).toMatchObject([{ value: 10 }])
    expect(rows(on('2100-01-01'))).toEqual([])
  })
  it('refuse a table that another study’s form does not fit, with a diagnostic for each fault', () => {
    const cases: readonly (readonly [string, string, string])[] = [
      ['temperature (degC),mass (mg)\n40,50\n', 'the column "temperature" is not known', 'key-unknown'],
      ['material,power (mW)\nA1,5\n', 'no column of time', 'key-missing'],
      ['', 'the table is empty', 'yaml-empty'],
      ['time (h),power (mW)\n0\n', 'this row has 1 cells', 'schema'],
      ['time (h),power\n0,5\n', 'found "5" without a unit', 'quantity-unit'],
    ]
    for (const [text, message, code] of cases) {
      const { diagnostics, records } = loadStudies({
        'S-1.yaml': withReference(`heat: { ${HEAT}, baseline: ["0 h, 0 mW"], file: S-1-heat.csv }`),
        'S-1-heat.csv': text,
      })
      expect(diagnostics.find((one) => one.file === 'studies/S-1-heat.csv')).toMatchObject({ code })
      expect(diagnostics.map((one) => one.message).join()).toContain(message)
      expect(records.studies.has('S-1')).toBe(false)
    }
  })
  it.each([
    ['bound-water: { crucibles: [{ crucible: 0 g, dried: 30 g, ignited: 29 g }] }', 'quantity-range'],
    [`heat: { ${HEAT.replace('10 %', '110 %')}, ${POWERS} }`, 'quantity-range'],
    [`heat: { ${HEAT}, ${POWERS}, file: S-1-heat.csv }`, 'reading-twice'],
    [`heat: { ${HEAT}, baseline: ["0 h, 0 mW"] }`, 'key-missing'],
    [`heat: { ${HEAT}, baseline: ["0 h, 0 mW"], readings: ["0 h, 5 J", "90 h, 9 J"] }`, 'key-unknown'],
    [
      `heat: { ${HEAT}, ${POWERS.replace('"0 h, 0.5 mW"', '"0 h, 1 mW", "1 h, 1 mW", "2 h, 1 mW"')} }`,
      'schema',
    ],
    [`heat: { ${HEAT}, ${POWERS.replace('0.5 mW', '0.5 J')} }`, 'quantity-unit'],
    [`heat: { ${HEAT}, ${POWERS.replace('"0 h, 5 mW"', '"0 h, < 5 mW"')} }`, 'quantity-bound'],
    ['lime-strength: { cube: 50 mm, area: 2500 mm2, loads: [20 kN] }', 'reading-twice'],
    [
      'calcium-hydroxide: { basis: initial, mix: { calcium-hydroxide: 30 g, material: 10 g }, water: { from: 400 degC, to: 500 degC }, readings: ["40 degC, 50 mg", "900 degC, 40 mg"] }',
      'key-missing',
    ],
    [
      'calcium-hydroxide: { basis: ignited, mix: { calcium-hydroxide: 30 g }, water: { from: 400 degC, to: 500 degC }, readings: ["40 degC, 50 mg", "900 degC, 40 mg"] }',
      'key-missing',
    ],
  ] as const)('refuse %s', (reference, code) => {
    const { diagnostics, records } = loadStudies({ 'S-1.yaml': withReference(reference) })
    expect(diagnostics.map((one) => one.code)).toContain(code)
    expect(records.studies.has('S-1')).toBe(false)
  })
  it('refuse a region that ends where it begins', () => {
    const { diagnostics } = loadStudies({
      'S-1.yaml': `${STUDY}regions: { source: us, list: [{ name: inert, heat: { from: 60 J/g, below: 60 J/g } }] }\n`,
    })
    expect(diagnostics).toMatchObject([{ code: 'reading-order' }])
  })
})

describe('the page of a study with reference tests', () => {
  const study = withReference(
    [
      `heat: { method: in a calorimeter, ${HEAT}, ${POWERS} }`,
      'bound-water: { age: 7 d, tested: 2026-01-15, dried-at: 105 degC, ignited-at: 350 degC, crucibles: [{ crucible: 20 g, dried: 30 g, ignited: 29.4 g }] }',
      'pozzolanicity: { aliquot: 50 mL, acid: { concentration: 0.1 mol/L, volume: 25 mL }, complex: { concentration: 30 mmol/L, volume: 10 mL }, volume-error: 0.05 mL }',
    ].join(', '),
    'calcium-hydroxide: 45 g/100 g, ',
  ).replace(
    'Q1: { title: quartz, class: inert, shown-by: heat }',
    'Q1: { title: quartz, class: inert, heat: 8 J/g }',
  )
  const regions =
    'regions: { source: us., list: [{ name: inert, heat: { below: 60 J/g } }, { name: reactive, heat: { from: 60 J/g } }, { name: hydraulic, calcium-hydroxide: { below: 10 g/100 g } }] }\n'
  it('says of each figure where it comes from, and how those from readings came about', () => {
    const page = studyPage(loaded(study), 'S-1').referenceTests
    expect(page?.tests).toEqual(['Heat', 'Calcium hydroxide consumed', 'Bound water', 'Pozzolanicity test'])
    expect(page?.materials.map(({ code, cells }) => [code, cells])).toEqual([
      [
        'Q1',
        [
          { text: '8 J/g', from: 'as reported' },
          { text: '–', from: '' },
          { text: '–', from: '' },
          { text: '–', from: '' },
        ],
      ],
      [
        'A1',
        [
          { text: '233 J/g', from: 'from readings' },
          { text: '45 g/100 g', from: 'as reported' },
          { text: '6.00 g/100 g', from: 'from readings' },
          { text: 'below the curve', from: 'from readings' },
        ],
      ],
    ])
    expect(page?.workings.map(({ title, facts }) => [title, facts.replaceAll('\u00a0', ' ')])).toEqual([
      ['A1: Heat, 3 d', 'in a calorimeter'],
      ['A1: Bound water, 7 d', 'dried at 105 °C; ignited at 350 °C; read 15 January 2026'],
      ['A1: Pozzolanicity test', ''],
    ])
    const lines = page?.workings
      .flatMap((one) => one.lines)
      .join('\n')
      .replaceAll(/[\u00a0\u202f]/g, ' ')
    // 51.7 mW h are 186.12 J, the baseline 35.5 mW h or 127.8 J; 10 at saturation, as by hand above.
    expect(lines).toContain('less a constant baseline (127.80 J): 186.12 J')
    expect(lines).toContain('Over 0.8 g of material: 232.6 J/g')
    expect(lines).toContain('350 / (hydroxide − 15): 10.00 mmol/L')
    expect(lines).toContain('EN 196-5, from memory')
  })
  it('draws no boundary that the study does not state', () => {
    const map = studyPage(loaded(study), 'S-1').referenceTests?.map
    expect(map?.chart.edges).toEqual([])
    expect(map?.sentences[0]).toBe('The study states no regions, so none are drawn.')
  })
  it('names the materials of each region, by their two figures', () => {
    const map = studyPage(loaded(study + regions), 'S-1').referenceTests?.map
    expect(map?.sentences.slice(0, 4)).toEqual([
      'inert: none.',
      'reactive: A1.',
      'hydraulic: none.',
      'Boundaries: us. A material on a boundary belongs to the higher side.',
    ])
    expect(map?.table.rows.map(({ cells }) => cells)).toEqual([
      ['A1', 'reactive', '233 J/g', '45 g/100 g', 'reactive'],
    ])
  })
  it('has no such section without a reference test', () => {
    expect(studyPage(loaded(STUDY), 'S-1').referenceTests).toBeNull()
  })
})
