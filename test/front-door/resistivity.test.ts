/** Resistivity from the readings that a user writes to the index, its explanation and the diagnostics. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import type { Edition, LotEntry } from '../../src/edition/shape/edition.ts'
import { explainedResistivities } from '../../src/edition/views/resistivity-of-lot.ts'
import { loadRecords } from '../../src/records/load.ts'
import { resultReasonWords } from '../../src/words/result-reasons.ts'

interface Trial {
  readonly ratio?: string
  readonly water?: string
  readonly readings: readonly string[]
}

const CONTROL =
  '{ age: 28 d, tested: 2026-02-02T09:00, temperature: 23 degC, specimens: { a: 800 ohm, b: 800 ohm } }'

function files({ ratio = 'w/cm: 0.485', water = '', readings }: Trial): readonly [string, string][] {
  return [
    ['site.yaml', 'title: Trial\nunits: SI\nas-of: 2026-03-10\ncriteria: [plain]\ngrace: 7 d\ndrafts: yes\n'],
    ['producers/hill.yaml', 'name: Hill\naddress: [1 Mill Lane]\n'],
    ['laboratories/quay.yaml', 'name: Quay\naddress: [2 Quay]\nstanding: in-house\n'],
    [
      'conditions/cool.yaml',
      `title: 20 %, 23 °C
standing: modified
replacement: { amount: 20 %, by: mass }
batch: { cementitious: 500 g, sand: 1375 g }
water: { ${ratio} }
curing: { medium: saturated-lime-water, temperature: 23 degC }
ages: [{ age: 28 d, within: 12 h }]
resistivity:
  specimen: { shape: cube, side: 50 mm }
  conditioning: saturated-lime-water
  reading: { temperature: 23 degC, within: 2 degC }
`,
    ],
    [
      'controls/K1.yaml',
      `condition: cool
laboratory: quay
cement: { lot: PC-1, Na2O-equivalent: 0.60 % }
cast: 2026-01-05T09:00
${water}
resistivity: [${CONTROL}]
`,
    ],
    [
      'criteria/plain.yaml',
      'title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, property: resistivity-index, condition: cool, age: 28 d, at-least: 75 % }\n',
    ],
    ['sources/tuff.yaml', 'name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n'],
    [
      'lots/tuff/L1.yaml',
      `produced: { from: 2025-12-28, to: 2026-01-02 }
quantity: 500 t
samples: [{ id: C, kind: composite, taken: { from: 2025-12-28, to: 2026-01-02 } }]
analyses: [{ laboratory: quay, sample: C, tested: 2026-01-04, results: { Na2O: 1.0 %, K2O: 1.0 % } }]
tests:
  - sample: C
    condition: cool
    control: K1
    laboratory: quay
    cast: 2026-01-05T09:00
    ${water}
    resistivity: [${readings.join(', ')}]
`,
    ],
  ]
}

function load(trial: Trial): ReturnType<typeof loadRecords> {
  const folder = mkdtempSync(join(tmpdir(), 'resistivity-'))
  for (const [path, text] of files(trial)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const content = loadRecords(folder)
  rmSync(folder, { recursive: true })
  return content
}

function computed(trial: Trial): { edition: Edition; lot: LotEntry } {
  const { records, diagnostics } = load(trial)
  expect(diagnostics).toEqual([])
  const edition = computeEdition(records, { program: 'test' })
  return { edition, lot: edition.lot('tuff/L1') }
}

const reading = (members: string, day = '2026-02-02') =>
  `{ age: 28 d, tested: ${day}T09:00, temperature: 23 degC, ${members} }`

describe('end contacts as large as the reading', () => {
  it.each(['800 ohm', '900 ohm'])(
    'of 800 ohm, at %s, leave no value and a test that is not valid',
    (contact) => {
      const { lot } = computed({
        readings: [reading(`end-contact: ${contact}, specimens: { a: 800 ohm, b: 1000 ohm }`)],
      })
      expect(lot.results.filter(({ property }) => /resistivity/.test(property))).toEqual([])
      expect(lot.unmade.map(({ property }) => property)).toEqual(['bulk-resistivity', 'resistivity-index'])
      expect(lot.unmade[1]?.reasons.map(resultReasonWords)).toEqual([
        'the end contacts are as large as a reading, or larger, so no resistivity follows from it',
      ])
      expect(lot.verdicts[0]?.clauses[0]?.outcome).toBe('not-valid')
    },
  )
})

describe('the explanation of an index', () => {
  it('takes the reading that counts after a retest: 2400 over 800 ohm, not the 720 that it replaced', () => {
    const { edition, lot } = computed({
      readings: [
        reading('specimens: { a: 720 ohm, b: 720 ohm }'),
        reading('retest-of: 2026-02-02T09:00, specimens: { a: 2400 ohm, b: 2400 ohm }', '2026-02-02').replace(
          'T09:00, temp',
          'T11:00, temp',
        ),
      ],
    })
    const [only, ...others] = explainedResistivities(edition, lot)
    expect(others).toEqual([])
    // 800 and 2400 ohm × 2500 mm² / 50 mm: 40 and 120 ohm m.
    expect(only?.explained?.pair).toMatchObject({ testOhmMetre: 120, controlOhmMetre: 40 })
    expect(only?.explained?.sentence).toContain('3.00')
  })
  it('says that the reaction would take all the water at a w/cm of 0.2', () => {
    const { edition, lot } = computed({
      ratio: 'w/cm: 0.2',
      readings: [reading('specimens: { a: 720 ohm, b: 720 ohm }')],
    })
    expect(explainedResistivities(edition, lot).map(({ summary }) => summary)).toEqual([
      expect.stringContaining('not explained: the reaction would take all the water'),
    ])
  })
})

describe('mixing water', () => {
  it('that no mortar could be made with is told for the lot and for its control', () => {
    const { diagnostics } = load({
      ratio: 'flow-within: 5 percentage points',
      water: 'water: 24.2 g',
      readings: [reading('specimens: { a: 720 ohm, b: 720 ohm }')],
    })
    expect(diagnostics.map(({ file, code, message }) => [file, code, message])).toEqual(
      ['controls/K1.yaml', 'lots/tuff/L1.yaml'].map((file) => [
        file,
        'quantity-range',
        '24.2 g of water on 500 g of cementitious material is a w/cm of 0.0484',
      ]),
    )
  })
  it.each(['50 g', '1000 g'])('of %s on 500 g is at the very end of what is accepted', (mass) => {
    const { diagnostics } = load({
      ratio: 'flow-within: 5 percentage points',
      water: `water: ${mass}`,
      readings: [reading('specimens: { a: 720 ohm, b: 720 ohm }')],
    })
    expect(diagnostics).toEqual([])
  })
})
