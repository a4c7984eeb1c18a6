import { CHECKS } from '../../src/core/checks/catalogue.ts'
import { compareMoments, isBy, isSurelyBefore, readMoment } from '../../src/core/measure/moment.ts'
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { PROGRAM } from '../../src/commands/program.ts'
import { type DemoIssue, scenarioFiles } from '../../src/demo/scenario-files.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import type { IssuedDocument } from '../../src/edition/shape/document.ts'
import type { Edition, LotEntry } from '../../src/edition/shape/edition.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { loadRecords } from '../../src/records/load.ts'
import { clauseSentence } from '../../src/words/clause-sentences.ts'
import { resultReasonWords } from '../../src/words/result-reasons.ts'
import { allShipments } from '../edition/all-shipments.ts'

const CONTENT = resolve(import.meta.dirname, '../../content')
const OXIDES = ['SiO2', 'Al2O3', 'Fe2O3', 'CaO', 'MgO', 'SO3', 'Na2O', 'K2O']

/** Members of the check report that hold sentences; evidence quotes the record as it is written. */
const SENTENCES = ['reason', 'reasons', 'sentence', 'standing', 'release', 'doubt', 'basis', 'was', 'note']

/** A date that is no part of an id, or a unit in plain letters behind a number. */
const RECORD_LETTERS = /(?<![\w-])\d{4}-\d{2}-\d{2}|\d[ \u00a0](?:k?ohm|deg[CF]|[km]?g\/c?m3|[cm]?m[23])\b/

function sentencesIn(data: unknown, member = ''): string[] {
  if (typeof data === 'string') return SENTENCES.includes(member) ? [data] : []
  if (Array.isArray(data)) return data.flatMap((entry) => sentencesIn(entry, member))
  if (typeof data !== 'object' || data === null) return []
  return Object.entries(data).flatMap(([key, value]) =>
    key === 'reasonCodes' ? [] : sentencesIn(value, key),
  )
}

describe('scenarioFiles', () => {
  it('gives the same files for the same seed, and others for another', () => {
    const texts = (seed: number) =>
      [...scenarioFiles({ lots: 20, seed }, () => undefined)]
        .map((file) => `${file.path}\n${file.text}`)
        .join('\n')
    expect(texts(1)).toBe(texts(1))
    expect(texts(1)).not.toBe(texts(2))
  })
  it('gives the readings that are committed; issuing adds revisions alone', () => {
    const lots = [...scenarioFiles({}, () => undefined)].filter((file) =>
      file.path.startsWith('lots/tarn-hollow-tuff/'),
    )
    expect(lots).toHaveLength(34)
    for (const { path, text } of lots)
      expect(readFileSync(join(CONTENT, path), 'utf8').startsWith(text.trimEnd())).toBe(true)
  })
  it('plans issues of one lot in order of date, none after the as-of date', () => {
    const issues: DemoIssue[] = []
    for (const _file of scenarioFiles({}, (issue) => {
      issues.push(issue)
    }));
    for (const [index, issue] of issues.entries()) {
      const earlier = issues.slice(0, index).filter((other) => other.lot === issue.lot)
      expect(earlier.every((other) => compareMoments(other.date, issue.date) <= 0)).toBe(true)
      expect(isBy(issue.date, readMoment('2026-04-10'))).toBe(true)
    }
    expect(issues.length).toBeGreaterThan(300)
  })
})

describe('the committed demo', () => {
  let edition: Edition
  const lot = (id: string): LotEntry => edition.lot(id)
  const all = () => [...edition.lots.keys()].map(edition.lot)
  const index = (entry: LotEntry, property: string, condition: string, age: string) =>
    entry.results.find(
      (result) => result.property === property && result.condition === condition && result.age?.text === age,
    )

  beforeAll(() => {
    const { records, diagnostics } = loadRecords(CONTENT)
    expect(diagnostics).toEqual([])
    edition = computeEdition(records, { program: PROGRAM })
  })

  it('holds 150 lots and 600 shipments or more, of thirteen sources and eleven producers, over more than two years', () => {
    expect([
      edition.lots.size,
      allShipments(edition).length,
      edition.sources.size,
      edition.producers.size,
    ]).toEqual([300, expect.any(Number), 13, 11])
    expect(allShipments(edition).length).toBeGreaterThanOrEqual(600)
    const sampled = all().map((entry) => entry.sampled.day)
    expect(Math.max(...sampled) - Math.min(...sampled)).toBeGreaterThan(2.3 * 365)
  })
  it('has the planted lots: failing, on the limit, mended and unmended batches, late, hot, overdue', () => {
    const failing = all().filter((entry) =>
      entry.results.some((result) => result.property === 'loss-on-ignition' && result.written === '6.42 %'),
    )
    expect(failing.map((entry) => entry.verdicts[0]?.outcome)).toEqual(['does-not-meet'])
    const onLimit = all().filter(
      (entry) =>
        entry.source === 'skarnmere-ash' &&
        entry.results.some(
          (result) =>
            result.property === 'loss-on-ignition' &&
            result.role === 'producer' &&
            result.written === '6.00 %',
        ),
    )
    expect(
      onLimit.map(
        (entry) =>
          entry.verdicts[0]?.clauses.find((clause) => clause.property === 'loss-on-ignition')?.outcome,
      ),
    ).toEqual(['meets'])
    const reasons = all().flatMap((entry) =>
      entry.results
        .filter((result) => result.property === 'strength-activity-index')
        .map((result) => ({ valid: result.valid, text: result.reasons.map(resultReasonWords).join(' ') })),
    )
    expect(reasons.some(({ valid, text }) => valid && text.includes('is dropped'))).toBe(true)
    expect(reasons.some(({ valid, text }) => !valid && text.includes('repeat the test'))).toBe(true)
    expect(reasons.some(({ valid, text }) => !valid && text.includes('tested at 30 d'))).toBe(true)
    expect(
      all().some((entry) =>
        entry.results.some(
          (result) =>
            !result.valid &&
            result.reasons.some((reason) => resultReasonWords(reason).startsWith('read at 49.6 °C')),
        ),
      ),
    ).toBe(true)
    expect(all().some((entry) => entry.planned.some((planned) => planned.overdueSince !== undefined))).toBe(
      true,
    )
  })
  it('copies one oxide row from the lot before it, and no other', () => {
    const copies: string[] = []
    const seen = new Map<string, string>()
    for (const entry of all()) {
      const row = entry.results
        .filter((result) => OXIDES.includes(result.property))
        .map((result) => `${result.property} ${result.written}`)
        .join(', ')
      const earlier = seen.get(row)
      if (earlier !== undefined) copies.push(`${entry.id} = ${earlier}`)
      seen.set(row, entry.id)
    }
    expect(copies).toEqual(['skarnmere-ash/SA-2025-005 = skarnmere-ash/SA-2025-004'])
  })
  it('lets one lot of the class C source fall under 18 % of calcium oxide, where edition 19 divides the classes', () => {
    const low = all().filter(
      (entry) =>
        entry.source === 'quellan-ash' &&
        entry.results.some((result) => result.property === 'CaO' && result.value < 18),
    )
    expect(low.map((entry) => entry.class)).toEqual(['C'])
    expect(
      low.map((entry) => entry.verdicts.find((verdict) => verdict.criterion === 'c618-12a')?.outcome),
    ).toEqual(['meets'])
    expect(
      low.map((entry) => entry.verdicts.find((verdict) => verdict.criterion === 'c618-19')?.outcome),
    ).toEqual(['does-not-meet'])
  })
  it('draws one shipment that is larger than its lot', () => {
    const oversize = all().filter((entry) =>
      entry.shipments.some((shipment) => entry.record.quantity.value < shipment.massT),
    )
    expect(oversize.map((entry) => entry.source)).toEqual(['quellan-ash'])
  })
  it('has splits whose loss on ignition the agency finds higher every time', () => {
    const pairs = all().flatMap((entry) =>
      entry.results
        // Splits of the loss alone; the agency's other samples bear a number.
        .filter((result) => result.role === 'verification' && result.property === 'loss-on-ignition')
        .filter(({ sample }) =>
          entry.record.verification?.some((one) => one.sample === sample && one.number === undefined),
        )
        .map((agency) => {
          const own = entry.results.find(
            (result) => result.role === 'producer' && result.property === 'loss-on-ignition',
          )
          return agency.value - (own?.value ?? Number.NaN)
        }),
    )
    expect(pairs).toHaveLength(11)
    expect(Math.min(...pairs)).toBeGreaterThan(0.3)
  })
  it('gathers the reclaimed ash’s 7-day index just above the limit of 75', () => {
    const values = all()
      .filter((entry) => entry.source === 'skarnmere-reclaimed')
      .map((entry) => index(entry, 'strength-activity-index', 'c311', '7 d')?.value ?? Number.NaN)
    const from = (low: number, high: number) => values.filter((value) => low <= value && value < high).length
    // Counts in one point below and above the limit: of a smooth spread the two would be about alike.
    expect(from(74, 75)).toBe(0)
    expect(from(75, 76)).toBeGreaterThanOrEqual(4)
  })
  it('tests reclaimed ash in a laboratory whose accreditation has lapsed', () => {
    const accredited = (entry: LotEntry) => {
      const text = readFileSync(join(CONTENT, 'issued', entry.id, '0.json'), 'utf8')
      const { data } = JSON.parse(text) as IssuedDocument
      return data.results
        .filter(({ condition, results = [] }) => condition === 'c311' && results.some(isActivity))
        .map((group) => group.accredited ?? false)
    }
    const isActivity = (result: { readonly property: string }) =>
      result.property === 'strength-activity-index'
    const after = all().filter(
      (entry) => entry.source === 'skarnmere-reclaimed' && isBy(readMoment('2025-10-01'), entry.sampled),
    )
    const before = all().filter(
      (entry) =>
        entry.source === 'skarnmere-reclaimed' && isSurelyBefore(entry.sampled, readMoment('2025-08-01')),
    )
    expect(after.length).toBeGreaterThan(3)
    expect(after.flatMap(accredited)).not.toContain(true)
    expect(before.flatMap(accredited)).not.toContain(false)
  })
  it('counts a retest from the day on which it was reported', () => {
    const { records } = loadRecords(CONTENT)
    const indexOn = (day: string) =>
      computeEdition(records, { program: PROGRAM, asOf: readMoment(day) })
        .lot('skarnmere-ash/SA-2024-002')
        .results.find(
          ({ property, condition, age, valid }) =>
            property === 'strength-activity-index' && condition === 'c311' && age?.text === '28 d' && valid,
        )?.value
    // By hand from the record: loads of the first test and of the retest over those of the control, in kN.
    const control = 95.8 + 95.9 + 92.6
    expect(indexOn('2024-03-17')).toBeCloseTo((100 * (92 + 94.2 + 87.7)) / control, 9)
    expect(indexOn('2024-03-18')).toBeCloseTo((100 * (90.6 + 92.1 + 89.9)) / control, 9)
  })
  it('has provisional, complete, withdrawn and replaced certificates and one draft', () => {
    const states = new Map<string, number>()
    for (const entry of all()) states.set(entry.state, (states.get(entry.state) ?? 0) + 1)
    expect(states.get('draft')).toBe(1)
    expect(states.get('withdrawn')).toBe(1)
    expect(states.get('provisional')).toBeGreaterThanOrEqual(5)
    const withdrawn = all().find((entry) => entry.state === 'withdrawn')
    expect(lot(withdrawn?.revisions.at(-1)?.replacedBy ?? '')).toBeDefined()
  })
  it('finds the record altered after issue, the bill above its lot, the copied row of oxides, three lots sampled in outages, the coarse sample of one day and the result that never came; lots that do not meet were shipped', () => {
    const codes = all()
      .flatMap((entry) => entry.findings)
      .map((finding) => finding.reason.code)
    expect(codes.filter((code) => !['time', 'agency'].includes(CHECKS[code].family))).toEqual([
      'other-sample-fails',
      'changed-after-issue',
      'sampled-in-outage',
      'shipment-mass',
      'shipped-above-quantity',
      'sampled-in-outage',
      'readings-alike',
      'sampled-in-outage',
      'result-overdue',
    ])
    const timed = new Set(codes.filter((code) => CHECKS[code].family === 'time'))
    expect([...timed].sort()).toEqual([
      'failed-after-shipping',
      'shipped-after-failure',
      'shipped-on-missed-age',
      'shipped-without-certificate',
    ])
  })
  it('asks by name about each thing planted in the history of a source', () => {
    const asked = new Set(
      [...edition.sources.keys()].flatMap((id) => edition.source(id).findings.map((finding) => finding.id)),
    )
    const planted = [
      'number-gap/skarnmere-ash/SA-2024-009',
      'laboratory-unbridged/skarnmere-ash/skarnmere-works/north-quay',
      'cement-unbridged/hollenby-ash/millrace-lane',
      'control-batch-off/quellan-ash/NQ-2026-0304-50',
      'equipment-unverified/tansgarth-ash/millrace-lane/ML-S4/2024-12-02',
      'shipped-while-unlisted/hollenby-ash/suspended/2025-07-07',
      'report-late/orrinmoss-ash/2025-09',
      'bunched-at-limit/skarnmere-reclaimed/c618-12a/activity-1/low',
      'tested-outside-accreditation/skarnmere-reclaimed/skarnmere-works',
      'class-beside-calcium/quellan-ash',
      'retested/skarnmere-ash',
      'split-bias/skarnmere-ash/loss-on-ignition/F',
      'independent-differs/tarn-hollow-tuff/strength-activity-index/c311/28-d/N',
      'producer-never-fails/tarn-hollow-tuff/activity-2',
      'no-independent-sample/skarnmere-ash',
      'verification-behind/skarnmere-ash/independent/2025-01-01',
      'custody-not-stated/skarnmere-ash',
    ]
    expect(planted.filter((id) => !asked.has(id))).toEqual([])
  })
  it('has splits of one source that differ in one direction, and samples of another that differ where its splits agree', () => {
    const about = (id: string) => edition.source(id).findings.map(({ reason }) => reason.code)
    expect(about('skarnmere-ash').filter((code) => code === 'split-bias')).toHaveLength(1)
    expect(about('tarn-hollow-tuff').filter((code) => code === 'independent-differs')).toHaveLength(3)
    expect(about('tarn-hollow-tuff')).not.toContain('split-bias')
    expect(about('quellan-ash').filter((code) => code.startsWith('independent'))).toEqual([])
  })
  it('has about one split in twenty beyond its limit of difference', () => {
    const precisions = [...edition.sources.keys()].flatMap((id) =>
      (edition.source(id).agency()?.split ?? []).flatMap(({ precision }) => precision ?? []),
    )
    const sum = (of: 'beyond' | 'of') => precisions.reduce((total, one) => total + one[of], 0)
    expect([sum('beyond'), sum('of')]).toEqual([5, 130])
  })
  it('shows the pattern that the modified condition is for: fillers pass at 20 % and 23 °C or come close, and fall far behind at 50 % and 50 °C', () => {
    const mean = (source: string, condition: string) => {
      const values = all()
        .filter((entry) => entry.source === source)
        .map((entry) => index(entry, 'strength-activity-index', condition, '28 d')?.value)
        .filter((value) => value !== undefined)
      return values.reduce((sum, value) => sum + value, 0) / values.length
    }
    expect(mean('tarn-hollow-limestone', 'c311')).toBeGreaterThan(75)
    expect(mean('tarn-hollow-limestone', 'modified-50c')).toBeLessThan(50)
    expect(mean('tarn-hollow-tuff', 'modified-50c')).toBeGreaterThan(70)
  })
  it('is told without a date or a unit in the letters of a record', () => {
    const sentences = [
      ...sentencesIn(JSON.parse([...checkReport(edition, [])].join(''))),
      ...[...edition.criteria.values()].flatMap((set) =>
        // Where a limit was read stands in the owner's own text.
        set.clauses.map(({ basis: _basis, ...clause }) => clauseSentence(clause, set, (id) => id)),
      ),
    ]
    expect(sentences.some((text) => /\bdue \d+\u00a0[A-Z][a-z]+ 2026/.test(text))).toBe(true)
    expect(sentences.some((text) => text.includes('g/cm³'))).toBe(true)
    expect(sentences.filter((text) => RECORD_LETTERS.test(text))).toEqual([])
  })
  it('names sources, laboratories, conditions and sets in its findings as print does, never by id', () => {
    const report = JSON.parse([...checkReport(edition, [])].join('')) as {
      [list in 'lots' | 'sources']: { findings: { sentence: string; evidence: string[] }[] }[]
    }
    const texts = [...report.sources, ...report.lots].flatMap(({ findings }) =>
      findings.flatMap(({ sentence, evidence }) => [sentence, ...evidence]),
    )
    const ids = ['sources', 'laboratories', 'conditions', 'criteria'] as const
    const named = new RegExp(
      `(?<![\\w-])(?:${ids.flatMap((list) => [...edition[list].keys()]).join('|')})(?![\\w-])`,
    )
    expect(texts.length).toBeGreaterThan(150)
    expect(texts.filter((text) => named.test(text))).toEqual([])
  })
  it('leaves a gap in the lot numbers and a month without a sample', () => {
    const numbers = readdirSync(join(CONTENT, 'lots/skarnmere-ash'))
    expect(numbers).not.toContain('SA-2024-009.yaml')
    expect(numbers).toContain('SA-2024-010.yaml')
    expect(
      all().some((entry) => entry.source === 'quellan-ash' && entry.sampled.text.startsWith('2025-01')),
    ).toBe(false)
  })
})
