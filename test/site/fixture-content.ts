/**
 * A small invented content folder for tests of single pages: one source, two laboratories, fourteen lots, of
 * which one is
 * pending, one withdrawn and replaced, one superseded and one not valid. Names belong to no company or place
 * known to us.
 */
import { readMoment } from '../../src/core/measure/moment.ts'
import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { PROGRAM, ROOT } from '../../src/commands/program.ts'
import type { IssueRequest } from '../../src/edition/certificate/issue.ts'
import { carryOutPlan } from '../../src/edition/certificate/issue-plan.ts'
import { withRevisionLine } from '../../src/records/edit/revision-line.ts'
import { loadRecords } from '../../src/records/load.ts'

export const SOURCE = 'tarn-hollow-tuff'
/** 7 d done, 28 d due. */
export const PENDING = `${SOURCE}/TH-014`
export const WITHDRAWN = `${SOURCE}/TH-012`
/** Issued three times. */
export const REVISED = `${SOURCE}/TH-013`
/** An id that the lot issued three times had before. */
export const FORMER = 'hollow/T-13'
/** Its resistivity was read hot. */
export const READ_HOT = `${SOURCE}/TH-005`
export const DRAFT = `${SOURCE}/TH-011`

const SITE = `title: Varrow Vale register of pozzolans
address: https://example.org/a/b/
as-of: 2026-04-10
units: SI
criteria: [c618-12a, strength-or-resistivity, modified-strength, resistivity-option]
grace: 7 d
publish: [verification, findings, persons]
drafts: yes
notice: Invented example data
`

const PRODUCER = `name: Tarn Hollow Pozzolans
address: [Mill Lane 2, Tarn Hollow]
plants: { mill: { name: Mill 2 } }
signatories:
  - { name: M. Okafor, function: quality manager, independent-of-production: yes }
`

const LABORATORY = `name: North Quay laboratory
address: [Quay 4, Varrow]
standing: in-house
accreditation:
  - { body: Invented accreditation body, number: L-114, scope: [strength-activity-index, compressive-strength, SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, loss-on-ignition, moisture, density, residue-45um], conditions: [c311], from: 2024-01-01 }
methods:
  strength-activity-index: [ { method: ASTM C311, edition: "22" } ]
  resistivity-index: [ { method: own procedure R-4 } ]
  loss-on-ignition: [ { method: ASTM C311, edition: "22" } ]
  moisture: [ { method: ASTM C311, edition: "22" } ]
  residue-45um: [ { method: ASTM C430, edition: "17" } ]
  density: [ { method: ASTM C188, edition: "17" } ]
  SiO2: [ { method: XRF, edition: "fused bead" } ]
  Al2O3: [ { method: XRF, edition: "fused bead" } ]
  Fe2O3: [ { method: XRF, edition: "fused bead" } ]
`

const SOURCE_RECORD = `name: Tarn Hollow tuff
producer: tarn-hollow
plant: mill
kind: raw-natural-pozzolan
class: N
unit: mill 2
deposit: bench 4
trade-name: Tarn N
events:
  - { date: 2025-08-20, to: 2025-09-25, kind: outage, title: mill stop }
`

function pad(value: number): string {
  return String(value).padStart(2, '0')
}

/** Month by month from February 2025; lot 14 is of March 2026. */
function monthOf(lot: number): string {
  return `${2025 + Math.floor(lot / 12)}-${pad((lot % 12) + 1)}`
}

/** A small fixed wave in place of scatter, within ± 1. */
function wave(lot: number, phase: number): number {
  return Math.sin(lot * 1.7 + phase)
}

function controlText(month: string, condition: string, kN: number, ohm: number): string {
  const water = condition === 'c311' ? 'water: 242 g\n' : ''
  return `condition: ${condition}
laboratory: north-quay
cement: { lot: PC-2026-A, type: portland, Na2O-equivalent: 0.62 % }
cast: ${month}-11T09:00
flow: 104 %
${water}strength:
  - { age: 7 d, tested: ${month}-18T09:55, specimens: { d: ${(kN * 0.81).toFixed(1)} kN, e: ${(kN * 0.82).toFixed(1)} kN, f: ${(kN * 0.805).toFixed(1)} kN } }
  - { age: 28 d, tested: ${after28(month)}T09:30, specimens: { a: ${kN.toFixed(1)} kN, b: ${(kN + 1.4).toFixed(1)} kN, c: ${(kN + 0.5).toFixed(1)} kN } }
resistivity:
  - { age: 28 d, tested: ${after28(month)}T08:40, temperature: 23.0 degC, end-contact: 4.1 ohm, frequency: 1 kHz, specimens: { a: ${ohm} ohm, b: ${ohm + 13} ohm, c: ${ohm + 5} ohm } }
`
}

/** 28 days after the 11th of a month. */
function after28(month: string): string {
  const date = new Date(`${month}-11T00:00:00Z`)
  date.setUTCDate(date.getUTCDate() + 28)
  return date.toISOString().slice(0, 10)
}

function lotText(lot: number): string {
  const month = monthOf(lot)
  const kN = 102 + 3 * wave(lot, 0)
  const ohm = Math.round(4300 + 250 * wave(lot, 1))
  const reading = lot === 5 ? '48.5 degC' : '23.1 degC'
  const loi = lot === 9 ? '10.40' : (4.8 + 0.3 * wave(lot, 2)).toFixed(2)
  const late = lot === 14
  return `${lot === 13 ? `formerly: [${FORMER}]\n` : ''}produced: { from: ${month}-02, to: ${month}-08 }
quantity: 1450 t
silo: S2
samples:
  - id: C
    kind: composite
    taken: { from: ${month}-02T06:00, to: ${month}-08T14:30 }
    place: mill discharge to silo S2
    by: J. Brandt
    method: automatic cutter
    increments: 28
    mass: 6 kg
    represents: 1450 t
    received: ${month}-09
    retained: { place: sample store, until: 2027-03-08 }
  - { id: S, kind: split, of: C, to: roads-authority }
analyses:
  - laboratory: north-quay
    sample: C
    tested: ${month}-10
    results: { SiO2: 63.1 %, Al2O3: 16.0 %, Fe2O3: 4.2 %, CaO: 3.5 %, MgO: 1.1 %, SO3: 0.1 %, Na2O: 2.9 %, K2O: 3.3 %, chloride: < 0.01 %, moisture: 0.92 %, loss-on-ignition: ${loi} %, residue-45um: ${(8.2 + wave(lot, 3)).toFixed(1)} %, density: ${(2.43 + 0.02 * wave(lot, 4)).toFixed(2)} g/cm3, autoclave-expansion: 0.03 % }
tests:
  - sample: C
    condition: modified-50c
    control: NQ-${month}-W
    laboratory: north-quay
    cast: ${month}-11T09:20
    flow: 108 %
    resistivity:
      - { age: 28 d, tested: ${after28(month)}T08:50, temperature: ${reading}, end-contact: 4.1 ohm, frequency: 1 kHz, specimens: { a: ${ohm} ohm, b: ${ohm + 92} ohm, c: ${ohm - 45} ohm } }
    strength:
      - { age: 7 d, tested: ${month}-18T10:05, specimens: { d: 78.4 kN, e: 80.1 kN, f: { load: 77.2 kN, excluded: corner lost in demoulding } } }
      - { age: 28 d, tested: ${after28(month)}T09:40, specimens: { a: ${kN.toFixed(1)} kN, b: ${(kN + 2.6).toFixed(1)} kN, c: ${(kN - 1.5).toFixed(1)} kN } }
  - sample: C
    condition: c311
    control: NQ-${month}-C
    laboratory: north-quay
    cast: ${month}-11T10:40
    flow: 106 %
    water: 249 g
    strength:
      - { age: 7 d, tested: ${month}-18T10:40, specimens: { a: 67.9 kN, b: 69.3 kN, c: 68.6 kN } }
      - ${late ? '{ age: 28 d }' : `{ age: 28 d, tested: ${after28(month)}T10:40, specimens: { d: ${(kN - 10).toFixed(1)} kN, e: ${(kN - 8).toFixed(1)} kN, f: ${(kN - 9).toFixed(1)} kN } }`}
shipments:
  - { bill: BL-88${200 + lot}, date: ${month}-21, mass: 24.8 t, to: Quellan Mix, project: Varrow Bridge, seal: "44871" }
  - { bill: BL-88${300 + lot}, date: ${month}-23, mass: 25.1 t, to: Quellan Mix, project: Varrow Bridge, seal: "44902" }
verification:
  - { kind: split, laboratory: roads-authority, sample: S, tested: ${month}-25, results: { residue-45um: 9.1 %, loss-on-ignition: 4.7 % } }
`
}

const LOTS = 14

function issues(): IssueRequest[] {
  const common = { by: 'M. Okafor', function: 'quality manager', withdrawn: false }
  const requests: IssueRequest[] = []
  for (let lot = 1; lot <= LOTS; lot += 1) {
    const id = `${SOURCE}/TH-${String(lot).padStart(3, '0')}`
    if (id === DRAFT) continue
    requests.push({
      ...common,
      lot: id,
      date: readMoment(`${monthOf(lot)}-20`),
      reason: 'issued with 7-day results',
    })
    const complete = after28(monthOf(lot)) < '2026-04-10' ? after28(monthOf(lot)) : '2026-04-09'
    requests.push({ ...common, lot: id, date: readMoment(complete), reason: '28-day results added' })
    if (id === REVISED)
      requests.push({ ...common, lot: id, date: readMoment('2026-04-02'), reason: 'trade name corrected' })
    if (id === WITHDRAWN)
      requests.push({
        ...common,
        lot: id,
        date: readMoment('2026-04-03'),
        reason: 'sample mixed up in the laboratory',
        withdrawn: true,
        replacedBy: REVISED,
      })
  }
  return requests
}

/**
 * Writes the folder and issues its certificates.
 * @param prepare may change the texts by path before anything is issued
 */
export function writeFixtureContent(prepare: (texts: Map<string, string>) => void = () => undefined): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'fixture-')), 'content')
  const texts = new Map<string, string>([
    ['site.yaml', SITE],
    ['producers/tarn-hollow.yaml', PRODUCER],
    ['laboratories/north-quay.yaml', LABORATORY],
    [`sources/${SOURCE}.yaml`, SOURCE_RECORD],
    [
      'laboratories/roads-authority.yaml',
      'name: Varrow Vale roads laboratory\naddress: [Varrow]\nstanding: agency\n',
    ],
  ])
  for (let lot = 1; lot <= LOTS; lot += 1) {
    const month = monthOf(lot)
    texts.set(`controls/NQ-${month}-W.yaml`, controlText(month, 'modified-50c', 146.1, 874))
    texts.set(`controls/NQ-${month}-C.yaml`, controlText(month, 'c311', 119.2, 610))
    texts.set(`lots/${SOURCE}/TH-${String(lot).padStart(3, '0')}.yaml`, lotText(lot))
  }
  for (const kind of ['conditions', 'criteria', 'studies', 'methods'])
    cpSync(resolve(ROOT, 'content', kind), join(folder, kind), { recursive: true })
  texts.set(
    'methods/reading.mdx',
    '---\ntitle: Reading a certificate\nsummary: What a reader finds where.\norder: 1\n---\n## Marks\n\nA **full circle** says that a clause is met; `code` is plain text, and in a block braces are too.\n\n```\n{ 1 + 1 }\n```\n\n- one\n- two\n\n| mark | word |\n|---|---|\n| circle | meets |\n',
  )
  const put = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  prepare(texts)
  for (const [path, text] of texts) put(path, text)
  issueAll(folder, texts, put)
  return folder
}

function issueAll(
  folder: string,
  texts: Map<string, string>,
  put: (path: string, text: string) => void,
): void {
  const { records } = loadRecords(folder)
  const issuing = { program: PROGRAM, saltOf: ({ lot, reason }: IssueRequest) => `${lot} ${reason}` }
  for (const { request, revision } of carryOutPlan(records, issues(), readMoment('2026-04-10'), issuing)) {
    for (const [digest, text] of revision.parts) put(`issued/parts/${digest}.json`, text)
    put(`issued/${request.lot}/${revision.document.revision}.json`, revision.text)
    const path = `lots/${request.lot}.yaml`
    texts.set(path, withRevisionLine(texts.get(path) ?? '', revision.recordLine))
    put(path, texts.get(path) ?? '')
  }
}
