/**
 * What somebody may do to records and documents after a site was published, one at a time: each is seen as an error
 * that stops the build, as a loss against the earlier site that stops it too, or as a change that is told.
 */
import { CHECKS } from '../../../src/core/checks/catalogue.ts'
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { writeRevision } from '../../../src/commands/write-revision.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { carryOutPlan } from '../../../src/edition/certificate/issue-plan.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { changedRecords, lossesBetween } from '../../../src/edition/writers/compare-manifests.ts'
import { type IssuedState, issuedState } from '../../../src/edition/writers/manifest.ts'
import { digestOf } from '../../../src/records/issued/digest.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { issueBase, LOT } from '../../records/issued/issue-base.ts'

const BASE = resolve(import.meta.dirname, '../../diagnostics/base')
const RECORD = `lots/${LOT}.yaml`
const OTHER = 'tuff/T-9'

let good = ''
let published: IssuedState

/** Two revisions of one lot, another one withdrawn, a laboratory with an accreditation. */
beforeAll(() => {
  good = join(mkdtempSync(join(tmpdir(), 'published-')), 'content')
  cpSync(BASE, good, { recursive: true })
  const laboratory = 'name: Quay laboratory\naddress: [2 Quay]\nstanding: in-house\n'
  const accreditation =
    'accreditation:\n  - { body: Board, number: "7", from: 2023-01-01, to: 2027-12-31, conditions: [warm], scope: [residue-45um, compressive-strength] }\n'
  writeFileSync(join(good, 'laboratories/quay.yaml'), laboratory + accreditation)
  issueBase(good)
  const withdrawal = { lot: OTHER, by: 'A. Mason', function: 'manager', reason: 'mixed up', withdrawn: true }
  const day = readMoment('2026-04-10')
  const issuing = { program: 'test', saltOf: () => 'withdrawal' }
  const { records } = loadRecords(good)
  for (const { request, revision } of carryOutPlan(records, [{ ...withdrawal, date: day }], day, issuing))
    writeRevision(good, request.lot, revision)
  published = stateOf(good)
})

function editionOf(folder: string) {
  return forAudience(computeEdition(loadRecords(folder).records, { program: 'test' }), 'public')
}

function stateOf(folder: string): IssuedState {
  return issuedState(editionOf(folder))
}

/** Everything that tells of a tampering: codes of errors, or losses, changed records and findings. */
function seen(tamper: (folder: string) => void): string[] {
  const folder = join(mkdtempSync(join(tmpdir(), 'tampered-')), 'content')
  cpSync(good, folder, { recursive: true })
  tamper(folder)
  const { records, diagnostics } = loadRecords(folder)
  const errors = diagnostics.filter(({ severity }) => severity === 'error').map(({ code }) => code)
  if (errors.length > 0) return errors
  const edition = computeEdition(records, { program: 'test' })
  const findings = [...edition.lots.keys()].flatMap((id) =>
    edition
      .lot(id)
      .findings.map(({ reason }) => reason.code)
      // Days of shipping are asked about whatever is tampered with.
      .filter((code) => CHECKS[code].family !== 'time'),
  )
  const today = stateOf(folder)
  return [
    ...lossesBetween(published, today).map(({ what }) => what),
    ...changedRecords(published, today),
    ...findings,
  ]
}

function edit(folder: string, path: string, from: string | RegExp, to: string): void {
  const text = readFileSync(join(folder, path), 'utf8')
  expect(text).toMatch(from)
  writeFileSync(join(folder, path), text.replace(from, to))
}

const document = (folder: string, lot: string, number: number) => join(folder, `issued/${lot}/${number}.json`)

/** Alters a lot's newest document and puts its digest on record, as a forger would. */
function forge(folder: string, from: string | RegExp, to: string, number = 1): void {
  const path = document(folder, LOT, number)
  const before = digestOf(readFileSync(path))
  edit(folder, `issued/${LOT}/${number}.json`, from, to)
  edit(folder, RECORD, before, digestOf(readFileSync(path)))
}

function parts(folder: string, what: string): string[] {
  const all = readdirSync(join(folder, 'issued/parts')).map((name) => join(folder, 'issued/parts', name))
  return all.filter((path) => readFileSync(path, 'utf8').includes(what))
}

function dropDocuments(folder: string, lot: string, numbers: readonly number[]): void {
  for (const number of numbers) rmSync(document(folder, lot, number))
}

type Tampering = readonly [what: string, tamper: (folder: string) => void, seenAs: string]

const ERRORS: readonly Tampering[] = [
  ['a lot’s record deleted', (f) => rmSync(join(f, RECORD)), 'issued-unrecorded'],
  ['the revisions dropped', (f) => edit(f, RECORD, /\nrevisions:[\s\S]*/, '\n'), 'issued-unrecorded'],
  ['the newest line dropped', (f) => edit(f, RECORD, / {2}- \{ number: 1.*\n/, ''), 'issued-unrecorded'],
  ['the newest document deleted', (f) => dropDocuments(f, LOT, [1]), 'issued-missing'],
  ['an earlier document deleted', (f) => dropDocuments(f, LOT, [0]), 'issued-missing'],
  ['all documents deleted', (f) => rmSync(join(f, 'issued'), { recursive: true }), 'issued-missing'],
  ['a document altered', (f) => edit(f, `issued/${LOT}/1.json`, '65.9', '75.9'), 'issued-altered'],
  ['an earlier one altered', (f) => edit(f, `issued/${LOT}/0.json`, 'first', 'other'), 'issued-altered'],
  ['an earlier one forged with its digest', (f) => forge(f, 'cast 11', 'cast 12', 0), 'issued-mismatch'],
  ['a digest altered', (f) => edit(f, RECORD, /sha256-..../, 'sha256-0000'), 'issued-altered'],
  ['a date altered', (f) => edit(f, RECORD, 'date: 2026-03-17', 'date: 2026-03-16'), 'issued-mismatch'],
  ['a signatory altered', (f) => edit(f, RECORD, 'by: A. Mason', 'by: B. Baker'), 'issued-mismatch'],
  ['a function altered', (f) => edit(f, RECORD, 'function: manager', 'function: m'), 'issued-mismatch'],
  ['a reason altered', (f) => edit(f, RECORD, 'reason: first', 'reason: second'), 'issued-mismatch'],
  [
    'a withdrawal struck out',
    (f) => edit(f, `lots/${OTHER}.yaml`, ', withdrawn: yes', ''),
    'issued-mismatch',
  ],
  [
    'a withdrawal written in',
    (f) => edit(f, RECORD, /28 d results/, '28 d results, withdrawn: yes'),
    'issued-mismatch',
  ],
  ['a document of another lot', (f) => cpSync(document(f, OTHER, 0), document(f, LOT, 1)), 'issued-altered'],
  ['a stray document', (f) => cpSync(document(f, LOT, 1), document(f, LOT, 2)), 'issued-unrecorded'],
  [
    'a stray lot',
    (f) => cpSync(join(f, 'issued/tuff/T-9'), join(f, 'issued/tuff/T-8'), { recursive: true }),
    'issued-unrecorded',
  ],
  ['a stray file', (f) => writeFileSync(join(f, 'issued/notes'), ''), 'issued-stray'],
  ['a shared part altered', (f) => edit(f, shared(f), 'Hill tuff', 'Mill tuff'), 'issued-part'],
  ['a private part deleted', (f) => rmSync(parts(f, '"salt"')[0] ?? ''), 'issued-part'],
  [
    'a printed verdict forged',
    (f) => forge(f, /"headline":"Meets/, '"headline":"Does not meet'),
    'issued-mismatch',
  ],
  [
    'a printed mark forged',
    (f) => forge(f, /("headline":"Meets[^"]*","outcome":)"meets"/, '$1"pending"'),
    'issued-mismatch',
  ],
  [
    'a verdict in the data forged',
    (f) => forge(f, /("criterion":"strength",)"outcome":"meets"/, '$1"outcome":"pending"'),
    'issued-mismatch',
  ],
  [
    'a printed state forged',
    (f) => forge(f, /"state":"complete"(?=,"|\})/, '"state":"provisional"'),
    'issued-mismatch',
  ],
]

function shared(folder: string): string {
  return `issued/parts/${(parts(folder, '"words"')[0] ?? '').split('/').at(-1)}`
}

const LOSSES: readonly Tampering[] = [
  [
    'a lot deleted with all its documents',
    (f) => {
      rmSync(join(f, RECORD))
      rmSync(join(f, `issued/${LOT}`), { recursive: true })
    },
    'lot-vanished',
  ],
  [
    'the revisions dropped with their documents',
    (f) => {
      edit(f, RECORD, /\nrevisions:[\s\S]*/, '\n')
      rmSync(join(f, `issued/${LOT}`), { recursive: true })
    },
    'lot-vanished',
  ],
  [
    'the newest revision rolled back with its document',
    (f) => {
      edit(f, RECORD, / {2}- \{ number: 1.*\n/, '')
      dropDocuments(f, LOT, [1])
    },
    'revision-vanished',
  ],
  [
    'a withdrawal undone with its document',
    (f) => {
      edit(f, `lots/${OTHER}.yaml`, / {2}- \{ number: 1.*\n/, '')
      dropDocuments(f, OTHER, [1])
    },
    'withdrawal-undone',
  ],
  ['the newest document forged with its digest', (f) => forge(f, '65.9', '75.9'), 'document-exchanged'],
  [
    'a lot renamed without its earlier id',
    (f) => {
      renameSync(join(f, RECORD), join(f, 'lots/tuff/T-3.yaml'))
      rmSync(join(f, `issued/${LOT}`), { recursive: true })
      edit(f, 'lots/tuff/T-3.yaml', /\nrevisions:[\s\S]*/, '\n')
    },
    'lot-vanished',
  ],
]

const CHANGES: readonly Tampering[] = [
  [
    'a condition’s tolerance',
    (f) => edit(f, 'conditions/warm.yaml', '7 d, within: 3 h', '7 d, within: 9 h'),
    'conditions/warm',
  ],
  [
    'a condition’s temperature',
    (f) => edit(f, 'conditions/warm.yaml', '50 degC', '60 degC'),
    'conditions/warm',
  ],
  [
    'accreditation dates',
    (f) => edit(f, 'laboratories/quay.yaml', '2023-01-01', '2020-01-01'),
    'laboratories/quay',
  ],
  [
    'accreditation scope',
    (f) => edit(f, 'laboratories/quay.yaml', 'residue-45um, ', ''),
    'laboratories/quay',
  ],
  ['a control’s load', (f) => edit(f, 'controls/K1.yaml', '118.2', '108.2'), 'changed-after-issue'],
  ['a control’s cement', (f) => edit(f, 'controls/K1.yaml', 'PC-1', 'PC-2'), 'controls/K1'],
  ['a limit', (f) => edit(f, 'criteria/strength.yaml', '60 %', '70 %'), 'criteria/strength'],
  [
    'a limit that the lot fails now',
    (f) => edit(f, 'criteria/strength.yaml', '60 %', '70 %'),
    'would-now-be-judged-otherwise',
  ],
  ['a clause', (f) => edit(f, 'criteria/strength.yaml', 'age: 7 d', 'age: 28 d'), 'criteria/strength'],
  ['a lot’s load', (f) => edit(f, RECORD, '78.4 kN', '79.4 kN'), 'changed-after-issue'],
  ['a lot’s analysis', (f) => edit(f, RECORD, '63.1 %', '73.1 %'), 'changed-after-issue'],
  ['a lot’s quantity', (f) => edit(f, RECORD, '1450 t', '9450 t'), 'changed-after-issue'],
  [
    'a day of sampling',
    (f) => edit(f, RECORD, '2026-03-02T06:00', '2026-03-03T06:00'),
    'changed-after-issue',
  ],
  [
    'a specimen left out',
    (f) => edit(f, RECORD, 'a: 78.4 kN', 'a: { load: 78.4 kN, excluded: chipped }'),
    'changed-after-issue',
  ],
  ['a source’s class', (f) => edit(f, 'sources/tuff.yaml', 'class: N', 'class: F'), 'sources/tuff'],
  ['a source’s name', (f) => edit(f, 'sources/tuff.yaml', 'Hill tuff', 'Mill tuff'), 'sources/tuff'],
  ['a producer’s name', (f) => edit(f, 'producers/hill.yaml', 'Hill Pozzolans', 'Hill'), 'producers/hill'],
  ['the governing set', (f) => edit(f, 'site.yaml', '[strength]', '[plain, strength]'), 'site.yaml'],
]

describe('a site published from records', () => {
  it('has nothing against the same records', () => expect(seen(() => {})).toEqual([]))
  it.each(ERRORS)('is not replaced after %s: an error', (_, tamper, code) => {
    expect(seen(tamper)).toContain(code)
  })
  it.each(LOSSES)('is not replaced after %s: a loss', (_, tamper, loss) => {
    const told = seen(tamper)
    expect(told).toContain(loss)
    expect(told.filter((what) => what.startsWith('issued-'))).toEqual([])
  })
  it.each(CHANGES)('shows what follows from another %s', (_, tamper, change) => {
    expect(seen(tamper)).toContain(change)
  })
  it('has nothing against a lot that was renamed and says so', () => {
    const renamed = (folder: string) => {
      renameSync(join(folder, RECORD), join(folder, 'lots/tuff/T-3.yaml'))
      renameSync(join(folder, `issued/${LOT}`), join(folder, 'issued/tuff/T-3'))
      edit(folder, 'lots/tuff/T-3.yaml', 'produced:', `formerly: [${LOT}]\nproduced:`)
    }
    expect(seen(renamed)).toEqual([])
  })
})
