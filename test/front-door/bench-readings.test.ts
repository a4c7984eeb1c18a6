/** What a bench writes of a resistivity test, from the record to the index, the clause and the diagnostics. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { loadRecords } from '../../src/records/load.ts'
import { resultReasonWords } from '../../src/words/result-reasons.ts'
import { resultText } from '../../src/words/units.ts'
import { workingLines } from '../../src/words/working-lines.ts'

interface Trial {
  /** Members of the condition beside the plain ones. */
  readonly condition?: string
  readonly resistivity?: string
  readonly test: readonly string[]
  readonly control?: readonly string[]
  readonly limit?: string
  /** Finished resistivity index that the laboratory reports beside its readings. */
  readonly finished?: string
}

const at = (members: string, age = '28 d', tested = '2026-02-02T09:00') =>
  `{ age: ${age}, tested: ${tested}, temperature: 23 degC, ${members} }`
/** 800 Ω over a cube of 50 mm: 40 Ω·m. */
const CONTROL = at('specimens: { a: 800 ohm, b: 800 ohm }')

function files({
  condition = '',
  resistivity = '',
  test,
  control = [CONTROL],
  limit = '75 %',
  finished,
}: Trial): readonly [string, string][] {
  return [
    ['site.yaml', 'title: Trial\nunits: SI\nas-of: 2026-03-10\ncriteria: [plain]\ngrace: 7 d\ndrafts: yes\n'],
    ['producers/hill.yaml', 'name: Hill\naddress: [1 Mill Lane]\n'],
    ['laboratories/quay.yaml', 'name: Quay\naddress: [2 Quay]\nstanding: in-house\n'],
    [
      'conditions/hot.yaml',
      `title: 50 %, 50 °C
standing: modified
replacement: { amount: 50 %, by: mass }
water: { w/cm: 0.485 }
curing: { medium: saturated-lime-water, temperature: 50 degC }
${condition}
ages: [{ age: 7 d, within: 3 h }, { age: 28 d, within: 12 h }]
resistivity:
  specimen: { shape: cube, side: 50 mm }
  conditioning: saturated-lime-water
  reading: { temperature: 23 degC, within: 2 degC, control-and-test-within: 1 degC }
${resistivity}
`,
    ],
    [
      'controls/K1.yaml',
      `condition: hot\nlaboratory: quay\ncement: { lot: PC-1 }\ncast: 2026-01-05T09:00\nresistivity: [${control.join(', ')}]\n`,
    ],
    [
      'criteria/plain.yaml',
      `title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, property: resistivity-index, condition: hot, age: 28 d, at-least: ${limit} }\n`,
    ],
    ['sources/tuff.yaml', 'name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n'],
    [
      'lots/tuff/L1.yaml',
      `produced: { from: 2025-12-28, to: 2026-01-02 }
quantity: 500 t
samples: [{ id: C, kind: composite, taken: { from: 2025-12-28, to: 2026-01-02 } }]
${finished === undefined ? '' : `analyses: [{ laboratory: quay, sample: C, tested: 2026-02-02, results: { resistivity-index: { value: ${finished}, condition: hot, age: 28 d } } }]`}
tests:
  - { sample: C, condition: hot, control: K1, laboratory: quay, cast: 2026-01-05T09:00, resistivity: [${test.join(', ')}] }
`,
    ],
  ]
}

function load(trial: Trial): ReturnType<typeof loadRecords> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  for (const [path, text] of files(trial)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const content = loadRecords(folder)
  rmSync(folder, { recursive: true })
  return content
}

function computed(trial: Trial) {
  const { records, diagnostics } = load(trial)
  expect(diagnostics).toEqual([])
  const edition = computeEdition(records, { program: 'test' })
  const lot = edition.lot('tuff/L1')
  const of = (property: string, age = '28 d') =>
    lot.results.find((result) => result.property === property && result.age?.text === age)
  const index = of('resistivity-index')
  return {
    of,
    lot,
    index,
    reasons: index?.reasons.map(resultReasonWords),
    outcome: lot.verdicts[0]?.clauses[0]?.outcome,
  }
}

describe('several directions of one cube', () => {
  const directions = computed({
    test: [at('specimens: { a: { directions: { x: 1500 ohm, y: 1600 ohm, z: 1700 ohm } }, b: 2000 ohm }')],
  })
  const averaged = computed({ test: [at('specimens: { a: 1600 ohm, b: 2000 ohm }')] })
  it('give one value of the cube: (80 + 100)/2 over 40 Ω·m is 225 %, where four replicates would give 212.5 %', () => {
    expect(directions.of('bulk-resistivity')).toMatchObject({ value: 90, n: 2 })
    expect(directions.index).toMatchObject({ value: 225, n: 2, valid: true })
  })
  it('add nothing to what the specimens are known to scatter', () => {
    expect(directions.index?.interval).toEqual(averaged.index?.interval)
    expect(directions.index?.interval).toBeDefined()
  })
  it('stand in the working as they were read', () => {
    const [first] = workingLines(directions.index?.working() ?? [])
    expect(first?.expression).toBe('(1500 Ω + 1600 Ω + 1700 Ω)/3 × 2500 mm² / 50 mm')
  })
  it('are noted where the condition asks for another number', () => {
    const { reasons } = computed({
      resistivity: '  directions: 3',
      test: [at('specimens: { a: { directions: { x: 1500 ohm, y: 1600 ohm } }, b: 2000 ohm }')],
      control: [at('specimens: { a: { directions: { x: 800 ohm, y: 800 ohm, z: 800 ohm } } }')],
    })
    expect(reasons).toEqual(['specimens were read in 2 and 1 directions; the condition requires 3'])
  })
})

describe('a reading above the meter’s ceiling', () => {
  const ceiling = '  meter: { ceiling: 2000 ohm }'
  const test = [at('specimens: { a: "> 2000 ohm", b: 1600 ohm }')]
  it('bounds mean and index from below: (100 + 80)/2 = 90 Ω·m and 225 %, without an interval', () => {
    const { of, index, reasons } = computed({ resistivity: ceiling, test })
    expect(of('bulk-resistivity')).toMatchObject({ value: 90, bounds: { low: 90, high: null, open: 'low' } })
    expect(index).toMatchObject({ value: 225, bounds: { low: 225, high: null, open: 'low' }, valid: true })
    expect(index?.interval).toBeUndefined()
    expect(index && resultText(index)).toBe('at least 225\u00a0%')
    expect(reasons).toEqual([
      'a specimen read > 2000 Ω, beyond the meter, so the mean is known only from below',
    ])
    expect(workingLines(index?.working() ?? []).at(-1)?.label).toBe('bounds')
  })
  it.each([
    ['225 %', 'meets'],
    ['226 %', 'not-reported'],
  ])('answers a lower limit of %s with %s', (limit, outcome) => {
    expect(computed({ resistivity: ceiling, test, limit }).outcome).toBe(outcome)
  })
  it('of a control bounds the index from above: 36 over more than 40 Ω·m is less than 90 %', () => {
    const trial = {
      test: [at('specimens: { a: 720 ohm }')],
      control: [at('specimens: { a: "> 800 ohm", b: 800 ohm }')],
    }
    expect(computed(trial).index).toMatchObject({ value: 90, bounds: { low: 0, high: 90, open: 'both' } })
    expect(computed({ ...trial, limit: '91 %' }).outcome).toBe('does-not-meet')
    expect(computed({ ...trial, limit: '80 %' }).outcome).toBe('not-reported')
  })
  it('of both mortars leaves nothing known of the index', () => {
    const { index } = computed({
      test: [at('specimens: { a: "> 800 ohm" }')],
      control: [at('specimens: { a: "> 800 ohm" }')],
    })
    expect(index?.bounds).toEqual({ low: 0, high: null, open: 'low' })
  })
  it('counts for a cube where one direction reached the ceiling', () => {
    const { of } = computed({
      resistivity: ceiling,
      test: [at('specimens: { a: { directions: { x: above 2000 ohm, y: 1800 ohm } } }')],
    })
    // (2000 + 1800)/2 × 0.05 m.
    expect(of('bulk-resistivity')).toMatchObject({ value: 95, bounds: { low: 95, high: null, open: 'low' } })
  })
  it('is an error as a plain number, in test and control, at the ceiling too', () => {
    const { diagnostics } = load({
      resistivity: ceiling,
      test: [at('specimens: { a: 2000 ohm, b: { directions: { x: 2.1 kohm, y: 1999 ohm } } }')],
      control: [at('specimens: { a: { resistance: 2400 ohm } }')],
    })
    expect(diagnostics.map(({ file, message, mend }) => [file, message, mend])).toEqual(
      [
        ['controls/K1.yaml', '2400 ohm'],
        ['lots/tuff/L1.yaml', '2000 ohm'],
        ['lots/tuff/L1.yaml', '2.1 kohm'],
      ].map(([file, read]) => [
        file,
        `${read} is at or above the meter’s ceiling of 2000 ohm`,
        'write "> 2000 ohm", in quotes',
      ]),
    )
  })
})

describe('a finished index beside readings above the ceiling', () => {
  // The readings say at least 225 %.
  it.each([
    ['300 %', 'information'],
    ['225 %', 'information'],
    ['220 %', 'warning'],
  ])('of %s is a finding for %s', (finished, severity) => {
    const { lot } = computed({ test: [at('specimens: { a: "> 2000 ohm", b: 1600 ohm }')], finished })
    const told = lot.findings.find(({ reason }) => reason.code === 'finished-beside-readings')
    expect(told?.severity).toBe(severity)
    const figure = lot.results.find((result) => result.finished === true)
    expect(figure?.reasons.map(resultReasonWords)).toEqual([
      'the readings of this test are on record, so the value recomputed from them counts instead: at least 225 %',
    ])
  })
})

describe('the age of a hot-cured specimen', () => {
  // Cast 5 January 09:00: 28 d and 12 h end on 2 February at 21:00.
  it('ends at the reading, not when the specimen left the bath', () => {
    const read = (tested: string) =>
      computed({
        test: [at('left-bath: 2026-02-02T09:00, specimens: { a: 1600 ohm, b: 1600 ohm }', '28 d', tested)],
      })
    expect(read('2026-02-02T21:00').index?.valid).toBe(true)
    expect(read('2026-02-02T21:01').index?.valid).toBe(false)
    expect(read('2026-02-02T21:01').reasons).toEqual(['tested at 28 d 12 h 1 min, outside 28 d ± 12 h'])
  })
  it('cannot be read before it left the bath', () => {
    const { diagnostics } = load({
      test: [at('left-bath: 2026-02-02T09:30, specimens: { a: 1600 ohm }')],
    })
    expect(diagnostics.map(({ code }) => code)).toEqual(['dates-backwards'])
  })
})

describe('a reading outside what its condition sets', () => {
  const handling = '  handling: { out-of-liquid-at-most: 5 min, control-and-test-within: 2 min }'
  const cooled = 'before-test: { to: 23 degC, for: 3 h, control-and-test-within: 30 min }'
  it.each([
    ['core: 25 degC', true],
    ['core: 25.1 degC', false],
    ['out-of-liquid: 5 min', true],
    ['out-of-liquid: 301 min', false],
  ])('is not valid, as with the temperature: %s', (said, valid) => {
    const { index } = computed({
      resistivity: handling,
      test: [at(`${said}, specimens: { a: 1600 ohm }`)],
    })
    expect(index?.valid).toBe(valid)
  })
  it('compares the cores where both are on record: 1.5 °C apart under equal surfaces', () => {
    const { index, reasons } = computed({
      test: [at('core: 24.5 degC, specimens: { a: 1600 ohm }')],
      control: [at('core: 23 degC, specimens: { a: 800 ohm }')],
    })
    expect(index?.valid).toBe(false)
    expect(reasons).toEqual(['test read at 24.5 °C and control at 23 °C, more than 1 °C apart'])
  })
  it('tells control and test that were handled differently, and counts them', () => {
    const { index, reasons } = computed({
      condition: cooled,
      resistivity: handling,
      test: [at('left-bath: 2026-02-02T05:30, out-of-liquid: 5 min, specimens: { a: 1600 ohm }')],
      control: [at('left-bath: 2026-02-02T06:15, out-of-liquid: 2 min, specimens: { a: 800 ohm }')],
    })
    expect(index?.valid).toBe(true)
    expect(reasons).toEqual([
      'control K1: read 2 h 45 min after leaving the bath, sooner than 3 h',
      'test read 3 h 30 min after leaving the bath and control 2 h 45 min after it, more than 30 min apart',
      'test out of the liquid for 5 min and control for 2 min, more than 2 min apart',
    ])
  })
  it('says nothing of what is alike or not on record', () => {
    const { reasons } = computed({
      condition: cooled,
      resistivity: handling,
      test: [at('left-bath: 2026-02-02T05:30, out-of-liquid: 4 min, specimens: { a: 1600 ohm }')],
      control: [at('left-bath: 2026-02-02T06:00, specimens: { a: 800 ohm }')],
    })
    expect(reasons).toEqual([])
  })
})

describe('specimens at two ages', () => {
  const early = at('specimens: { a: 1000 ohm, b: 1000 ohm }', '7 d', '2026-01-12T09:00')
  const later = (marks: string) => at(`specimens: { ${marks} }`)
  const rule = (name: string) => `  handling: { after-reading: ${name} }`
  it('are told where the condition has each read once', () => {
    const again = computed({
      resistivity: rule('read-once'),
      test: [early, later('a: 1600 ohm, c: 1600 ohm')],
    })
    expect(again.index?.valid).toBe(true)
    expect(again.reasons).toEqual([
      'specimen a was already read at 7 d; the condition requires specimens to be read once, since one that returns to the bath has another history',
    ])
    const fresh = computed({ resistivity: rule('read-once'), test: [early, later('c: 1600 ohm')] })
    expect(fresh.reasons).toEqual([])
  })
  it('are told where the condition returns them and others were read', () => {
    const fresh = computed({
      resistivity: rule('returned'),
      test: [early, later('a: 1600 ohm, c: 1600 ohm')],
    })
    expect(fresh.reasons).toEqual([
      'specimen c was not read at 7 d; the condition requires specimens to be returned to the bath and read again, and one read for the first time has another history',
    ])
    const again = computed({
      resistivity: rule('returned'),
      test: [early, later('a: 1600 ohm, b: 1600 ohm')],
    })
    expect(again.reasons).toEqual([])
  })
  it('say nothing where the condition does not, nor at the first age', () => {
    expect(computed({ test: [early, later('a: 1600 ohm')] }).reasons).toEqual([])
    const first = computed({ resistivity: rule('returned'), test: [early] })
    expect(first.of('bulk-resistivity', '7 d')?.reasons).toEqual([])
  })
  it('take no retest at one age for a reading at a later age', () => {
    const { reasons } = computed({
      resistivity: rule('read-once'),
      test: [
        later('a: 1600 ohm'),
        at('retest-of: 2026-02-02T09:00, specimens: { a: 1700 ohm }', '28 d', '2026-02-02T11:00'),
      ],
    })
    expect(reasons).not.toContainEqual(expect.stringContaining('already read'))
  })
})

describe('check resistors', () => {
  it.each([
    ['100 ohm', []],
    ['1 kohm', []],
    ['99 ohm', ['a reading of 99 Ω lies beyond the check resistors, 100 Ω to 1 kΩ']],
    ['1001 ohm', ['a reading of 1001 Ω lies beyond the check resistors, 100 Ω to 1 kΩ']],
  ])('span a reading of %s or it is noted', (read, said) => {
    const { index, reasons } = computed({
      resistivity: '  meter: { check-resistors: [1 kohm, 100 ohm] }',
      test: [at(`specimens: { a: ${read} }`)],
    })
    expect(index?.valid).toBe(true)
    expect(reasons).toEqual(said)
  })
})
