/** The size of a mould, and one control for two replacement levels: from the records that a user writes. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import type { LotEntry } from '../../src/edition/shape/edition.ts'
import { loadRecords } from '../../src/records/load.ts'
import { resultReasonWords } from '../../src/words/result-reasons.ts'
import { workingLines } from '../../src/words/working-lines.ts'

interface Trial {
  /** Further lines of the laboratory, of the control and of the mortar. */
  readonly laboratory?: string
  readonly control?: string
  readonly test?: string
  /** Specimens of the control and of the test. */
  readonly controlLoad?: string
  readonly testLoad?: string
  /** Condition of the control. */
  readonly madeAt?: 'twenty' | 'fifty' | 'hot'
}

const condition = (replacement: number, celsius = 23) => `title: ${replacement} %, ${celsius} °C
standing: modified
replacement: { amount: ${replacement} %, by: mass }
water: { w/cm: 0.485 }
curing: { medium: saturated-lime-water, temperature: ${celsius} degC }
ages: [{ age: 28 d, within: 12 h }]
strength: { specimen: { shape: cube, side: 50 mm } }
`

function load(trial: Trial): ReturnType<typeof loadRecords> {
  const { laboratory = '', control = '', test = '', madeAt = 'twenty' } = trial
  const { controlLoad = '20300 lbf', testLoad = '16240 lbf' } = trial
  const files: readonly [string, string][] = [
    ['site.yaml', 'title: Trial\nunits: US\nas-of: 2026-03-10\ncriteria: [plain]\ngrace: 7 d\ndrafts: yes\n'],
    ['producers/hill.yaml', 'name: Hill\naddress: [1 Mill Lane]\n'],
    ['laboratories/quay.yaml', `name: Quay\naddress: [2 Quay]\nstanding: in-house\n${laboratory}\n`],
    ['conditions/twenty.yaml', condition(20)],
    ['conditions/fifty.yaml', condition(50)],
    ['conditions/hot.yaml', condition(20, 50)],
    [
      'controls/K1.yaml',
      `condition: ${madeAt}\nlaboratory: quay\ncement: { lot: PC-1 }\ncast: 2026-01-05T09:00\n${control}\nstrength: [{ age: 28 d, tested: 2026-02-02T09:00, specimens: { a: ${controlLoad}, b: ${controlLoad} } }]\n`,
    ],
    [
      'criteria/plain.yaml',
      'title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, property: strength-activity-index, condition: twenty, age: 28 d, at-least: 75 % }\n',
    ],
    ['sources/tuff.yaml', 'name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n'],
    [
      'lots/tuff/L1.yaml',
      `produced: { from: 2025-12-28, to: 2026-01-02 }
quantity: 500 t
samples: [{ id: C, kind: composite, taken: { from: 2025-12-28, to: 2026-01-02 } }]
tests:
  - sample: C
    condition: twenty
    control: K1
    laboratory: quay
    cast: 2026-01-05T09:00
    ${test}
    strength: [{ age: 28 d, tested: 2026-02-02T09:00, specimens: { a: ${testLoad}, b: ${testLoad} } }]
`,
    ],
  ]
  const folder = mkdtempSync(join(tmpdir(), 'moulds-'))
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const content = loadRecords(folder)
  rmSync(folder, { recursive: true })
  return content
}

function lotOf(trial: Trial): LotEntry {
  const { records, diagnostics } = load(trial)
  expect(diagnostics).toEqual([])
  return computeEdition(records, { program: 'test' }).lot('tuff/L1')
}

function found(trial: Trial) {
  const lot = lotOf(trial)
  const [strength, index] = ['compressive-strength', 'strength-activity-index'].map((key) =>
    lot.results.find(({ property }) => property === key),
  )
  return {
    // Pounds-force over square inches: 4.4482216152605 N over 645.16 mm².
    psi: ((strength?.value ?? 0) * 645.16) / 4.4482216152605,
    index: index?.value,
    outcome: lot.verdicts[0]?.clauses[0]?.outcome,
    reasons: index?.reasons.map(resultReasonWords),
    lines: workingLines(index?.working() ?? []).map(({ expression }) => expression),
  }
}

const ASSUMED =
  'loads are in lbf and the size of the mould is not on record, so cubes of 2 in (4.00 in²) are assumed'

describe('16,240 lbf and a control of 20,300 lbf', () => {
  it('are 4060 psi and 80 %, on cubes of 2 in that are assumed, which result and working say', () => {
    const { psi, index, outcome, reasons, lines } = found({})
    expect(psi).toBeCloseTo(4060, 8)
    expect(index).toBeCloseTo(80, 9)
    expect(outcome).toBe('meets')
    expect(reasons).toEqual([ASSUMED, `control K1: ${ASSUMED}`])
    expect(lines).toContain('16240 lbf / 4.00 in² (2580.64 mm²; a cube of 2 in is assumed)')
  })
  it.each([
    ['the laboratory', { laboratory: 'moulds: [{ side: 2 in, from: 2025-01-01 }]' }],
    ['test and control', { control: 'mould: 2 in', test: 'mould: 2 in' }],
  ])('are the same without an assumption where %s says so', (_, trial) => {
    const { psi, reasons, lines } = found(trial)
    expect(psi).toBeCloseTo(4060, 8)
    expect(reasons).toEqual([])
    expect(lines).toContain('16240 lbf / 2580.64 mm²')
  })
  it('are 4191 psi where the laboratory has moulds of 50 mm: 16240 × 645.16 / 2500', () => {
    expect(found({ laboratory: 'moulds: [{ side: 50 mm, from: 2025-01-01 }]' }).psi).toBeCloseTo(
      4190.95936,
      8,
    )
  })
  it('take the laboratory’s mould of the day of casting', () => {
    const moulds =
      'moulds: [{ side: 50 mm, from: 2020-01-01, to: 2026-01-04 }, { side: 2 in, from: 2026-01-05 }]'
    expect(found({ laboratory: moulds }).psi).toBeCloseTo(4060, 8)
  })
})

describe('an index of two mortars', () => {
  it('of different sizes is not valid', () => {
    const { outcome, reasons } = found({ controlLoad: '90.0 kN' })
    expect(outcome).toBe('not-valid')
    expect(reasons).toContain(
      'the specimens differ in size: 2581 mm² loaded for the test mortar, 2500 mm² for the control',
    )
  })
  it('of which one is stated and one computed says so, and counts', () => {
    const { outcome, reasons } = found({ controlLoad: '5000 psi' })
    // 4060 over 5000 psi: 81.2 %.
    expect(outcome).toBe('meets')
    expect(reasons).toEqual([
      ASSUMED,
      'the strength of the control is stated by the laboratory, but that of the test mortar is computed from loads',
    ])
  })
})

describe('one control batch', () => {
  it('serves another replacement level that is made alike', () => {
    const { index, outcome } = found({ madeAt: 'fifty', control: 'mould: 2 in', test: 'mould: 2 in' })
    expect(index).toBeCloseTo(80, 9)
    expect(outcome).toBe('meets')
  })
  it('does not serve a mortar cured at another temperature, which the diagnostic names', () => {
    expect(load({ madeAt: 'hot' }).diagnostics.map(({ code, message }) => [code, message])).toEqual([
      [
        'reference-mismatch',
        'the control K1 was made under the condition hot, which differs from twenty in curing.temperature',
      ],
    ])
  })
})
