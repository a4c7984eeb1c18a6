/** Totals of the demo's programme are those of `test/core/studies/programme/oracle.py`, which counts its YAML mortar by mortar. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { benchSheets } from '../../../src/edition/views/studies/bench-sheets-view.ts'
import { plannedStudies } from '../../../src/edition/views/studies/planned-studies.ts'
import { programmeCalendar } from '../../../src/edition/views/studies/programme-calendar-view.ts'
import { studyList } from '../../../src/edition/views/studies/study-list.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { programmeCalendarFile } from '../../../src/edition/writers/programme-calendar.ts'
import { studyData } from '../../../src/edition/writers/study-data.ts'
import { laidOut } from '../../../src/records/studies/programme-of.ts'
import { loadStudies } from '../../records/studies/study-folder.ts'
import { planned } from '../../records/studies/programme-fixture.ts'

const DEMO = readFileSync(resolve(import.meta.dirname, '../../../content/studies/P-01.yaml'), 'utf8')

function edition(study: string, asOf = '2026-04-10') {
  const { records, diagnostics } = loadStudies({ 'P-01.yaml': study })
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
  return computeEdition(records, {
    program: 'test',
    asOf: readMoment(asOf),
    address: 'https://example.org/a/',
  })
}
const demo = edition(DEMO)
const study = demo.study('P-01')
const laid = laidOut(study.record, demo.conditions)

describe('the programme of the demo', () => {
  it('has the totals that are counted elsewhere', () => {
    const { cementG, materialG, moulds, tests, firstCast, lastCast, lastTest, ...counts } = laid?.totals ?? {}
    expect(counts).toEqual({
      ...{
        testMortars: 176,
        controlMortars: 24,
        specimens: 2000,
        strengthTests: 1800,
        resistivityReadings: 1800,
      },
      ...{ castingDays: 24, sandG: 407_000, weekendTests: 0 },
    })
    expect([firstCast, lastCast, lastTest].map((day) => momentOfDay(day ?? 0).text)).toEqual([
      '2026-04-07',
      '2026-06-02',
      '2026-09-01',
    ])
    expect(Object.fromEntries(cementG ?? [])).toEqual({ C1: 47_952, C2: 47_952 })
    const kilograms = { Q1: 7104, L2: 7104, F1: 4736, W2: 7104, A2: 7104, A3: 4736, H2: 7104, P1: 7104 }
    expect(Object.fromEntries(materialG ?? [])).toEqual(kilograms)
    expect([moulds?.count, momentOfDay(moulds?.day ?? 0).text]).toEqual([90, '2026-04-07'])
    expect([tests?.count, momentOfDay(tests?.day ?? 0).text]).toEqual([108, '2026-05-06'])
  })
  it('resolves what scipy says it does', () => {
    // exp(3.366894897 × 0.019998) = 1.0697; exp(0.8113077 × 0.019998) = 1.0164; 1 − 0.05^(1/4) = 0.527.
    const said = studyPage(demo, 'P-01').programme?.resolution.join(' ')
    expect(said).toContain('a true difference of 7.0 % between the means of two materials')
    expect(said).toContain('comes within 1.6 % (24 batches, 88 degrees of freedom)')
    expect(said).toContain('4 reactive materials without an error would still allow that 53 % of new ones')
  })
  it('says what its fraction mixes up', () => {
    expect(studyPage(demo, 'P-01').programme?.fraction?.mixed.slice(0, 3)).toEqual([
      ['replacement', 'cement × curing'],
      ['temperature', 'replacement × temperature × cement × curing'],
      ['cement', 'replacement × curing'],
    ])
  })
})

describe('a study without a reading', () => {
  it('has no picture and no result, and says that it is planned', () => {
    const { screening, roundRobin, ruggedness, referenceTests, head, digest } = studyPage(demo, 'P-01')
    expect([screening, roundRobin, ruggedness]).toEqual([null, null, null])
    // No picture before the map of the reference tests has drawn the dots that it needs.
    expect(referenceTests?.hasDots).toBe(false)
    expect(head.facts).toContainEqual(['Readings', 'planned: no reading yet'])
    expect(studyList(demo).find(({ id }) => id === 'P-01')?.facts).toContain('planned: no reading yet')
    expect(studyData(study)).toMatchObject({
      id: 'P-01',
      kind: 'screening',
      readings: 0,
      unmade: [],
    })
    expect(studyData(study)['results']).toSatisfy((rows: { from?: string }[]) =>
      rows.every(({ from }) => from === 'reported'),
    )
    expect(digest.standing).toMatch(/^sha256-[0-9a-f]{64} agrees with the plan as written today$/)
  })
  it('is there from the day on which its plan was fixed', () => {
    expect(plannedStudies(edition(DEMO, '2026-03-19'))).toEqual([])
    expect(plannedStudies(edition(DEMO, '2026-03-20'))).toEqual(['P-01'])
  })
  it('says where the digest is not that of the plan, and where there is none', () => {
    const digestOf = (text: string) => studyPage(edition(text), 'P-01').digest
    expect(digestOf(DEMO.replace('batches: 2', 'batches: 3')).standing).toContain('differs')
    expect(digestOf(DEMO.replace(/^ {2}digest: .*\n/m, '')).standing).toBe('none')
    expect(digestOf(DEMO).note).toContain('does not show when the plan was written')
  })
})

describe('benchSheets', () => {
  const sheets = benchSheets(demo, study)
  it('has a sheet for each day of casting and each mortar on one of them, with its own mark', () => {
    expect(sheets).toHaveLength(24)
    const marks = sheets.flatMap(({ groups }) =>
      groups.flatMap(({ mortars }) => mortars.map(({ mark }) => mark)),
    )
    expect(marks).toHaveLength(200)
    expect(new Set(marks).size).toBe(200)
  })
  it('weighs in 30 % of 740 g, at w/cm 0.485', () => {
    // 740 × 0.3 = 222; 740 − 222 = 518; 740 × 0.485 = 358.9.
    const [control, first] = sheets[0]?.groups[0]?.mortars ?? []
    expect(control).toMatchObject({ cement: '740.0', material: '–', water: '358.9', sand: '2035.0' })
    expect(first).toEqual({
      ...{ mark: 'Q1.R30-23-A-F.1', title: 'quartz flour' },
      ...{ cement: '518.0', material: '222.0', water: '358.9', sand: '2035.0' },
    })
  })
  it('plans the window of each age and names the specimens', () => {
    expect(sheets[0]?.heading).toBe('Sheet 1: Tuesday 7\u00a0April 2026')
    const [, second] = sheets[0]?.groups[0]?.ages ?? []
    expect(second?.caption.replaceAll('\u00a0', ' ')).toBe(
      '28 d ± 12 h: 4 May 2026, 22:00 to 5 May 2026, 22:00',
    )
    expect([second?.read, second?.crushed]).toEqual([
      [4, 5, 6],
      [4, 5, 6],
    ])
  })
})

describe('programmeCalendar', () => {
  const calendar = programmeCalendar(demo, study)
  it('adds up to the totals', () => {
    const sum = (of: 'mortars' | 'crushed' | 'read') =>
      calendar?.days.reduce((total, day) => total + Number(day[of] || 0), 0)
    expect([sum('mortars'), sum('crushed'), sum('read')]).toEqual([200, 1800, 1800])
  })
  it('says what lies behind: three days of casting by 10 April, no test', () => {
    expect(calendar?.lead.replaceAll('\u00a0', ' ')).toBe(
      'By 10 April 2026 the plan has 3 of 24 casting days and 0 test days behind it. No reading is on record yet.',
    )
    expect(calendar?.days.filter(({ isPast }) => isPast)).toHaveLength(3)
  })
})

describe('programmeCalendarFile', () => {
  const file = programmeCalendarFile(demo, 'P-01') ?? ''
  it('has an event for each casting and each test of a control batch, with uids of their own', () => {
    // 24 control batches, each cast once and tested at three ages.
    expect(file.match(/^BEGIN:VEVENT\r$/gm)).toHaveLength(96)
    const uids = file.replaceAll('\r\n ', '').match(/^UID:.*$/gm) ?? []
    expect(new Set(uids).size).toBe(96)
    expect(uids[1]).toBe('UID:P-01/1/R30-23-A-F/1/7-d@example.org\r'.trim())
    expect(file).toContain(
      'DTSTART;VALUE=DATE:20260505\r\nSUMMARY:P-01: 28 d test of R30-23-A-F\\, batch 1\r\n',
    )
  })
  it('is the same to the byte when it is made again, and keeps its uids when the days move', () => {
    expect(programmeCalendarFile(edition(DEMO), 'P-01')).toBe(file)
    const uids = (text: string) => text.match(/^UID:.*$/gm)
    const moved =
      programmeCalendarFile(edition(DEMO.replace('first: 2026-04-07', 'first: 2026-04-14')), 'P-01') ?? ''
    expect(moved).not.toBe(file)
    expect(uids(moved)).toEqual(uids(file))
  })
  it('is not there without a programme', () => {
    expect(programmeCalendarFile(demo, 'heat')).toBeNull()
  })
})

const RUNS = `title: Runs
kind: ruggedness
question: Which?
by: laboratory
plan: { fixed: 2026-03-01, batches: 1 }
materials: { A1: { title: ash } }
factors:
  - { title: bath, low: 48 degC, high: 52 degC }
  - { title: age, low: 27 d, high: 29 d }
runs: { a: ++, b: +-, c: -+, d: -- }
programme:
  casting: { first: 2026-04-07, mortars-a-day: 4 }
  ages: [{ age: 28 d, within: 12 h, resistivity: 3 }]
`
const ROUND_ROBIN = `title: Round robin
kind: interlaboratory
question: How far?
by: laboratory
laboratories: { a: {}, b: {}, c: {}, d: {}, e: {}, f: {} }
plan: { fixed: 2026-03-01, batches: 2 }
materials: { A1: { title: ash }, Q1: { title: quartz } }
conditions: { R30: { replacement: 30 %, flow: constant-flow } }
programme:
  casting: { dates: { '1': 2026-04-07, '2': 2026-04-08 } }
  ages: [{ age: 28 d, within: 2 d, strength: 3 }]
  control: each
`

describe('any programme', () => {
  it.each([
    ['of runs without masses, one batch of each', RUNS],
    ['of six laboratories at constant flow, with dates by batch', ROUND_ROBIN],
    ['without an assumed scatter', planned()],
    ['with one batch', planned().replace('batches: 2', 'batches: 1')],
    [
      'whose specimens are kept',
      planned({
        'resistivity-on': 'kept',
        spare: '2',
        assumed: '{ from: trial, strength-activity-index: 2 % }',
      }),
    ],
    [
      'whose power is all but certain',
      planned({ assumed: '{ from: trial, strength-activity-index: 0.01 %, power: 99.9 % }' }),
    ],
  ])('%s says what it holds and nothing that is no number', (_, text) => {
    const own = edition(text)
    const all = JSON.stringify([
      studyPage(own, 'P-01'),
      benchSheets(own, own.study('P-01')),
      programmeCalendar(own, own.study('P-01')),
      programmeCalendarFile(own, 'P-01'),
    ])
    expect(all).not.toMatch(/NaN|Infinity|undefined|\[object/)
    expect(benchSheets(own, own.study('P-01')).length).toBeGreaterThan(0)
  })
  it('of six laboratories says how far five degrees of freedom reach', () => {
    expect(studyPage(edition(ROUND_ROBIN), 'P-01').programme?.resolution.at(-1)).toContain(
      '6 laboratories leave 5 degrees of freedom between them: where nearly all the scatter lies there, the 95 % interval of s_R reaches from 0.62 to 2.45 times the value found.',
    )
  })
  it('leaves water to be filled in at constant flow', () => {
    const own = edition(ROUND_ROBIN)
    const waters = benchSheets(own, own.study('P-01')).flatMap(({ groups }) =>
      groups.flatMap(({ mortars }) => mortars.map(({ water }) => water)),
    )
    expect(new Set(waters)).toEqual(new Set(['']))
  })
})
