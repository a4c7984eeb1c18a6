/** A lot that is withdrawn once more. */
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { beforeEach, expect, it } from 'vitest'
import { planIssue } from '../../src/commands/plan-issue.ts'
import { writeRevision } from '../../src/commands/write-revision.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase, LOT } from '../records/issued/issue-base.ts'

let folder = ''

/** The good records with two more lots, which are never issued, and the first one withdrawn. */
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'plan-')), 'content')
  cpSync(resolve(import.meta.dirname, '../diagnostics/base'), folder, { recursive: true })
  issueBase(folder)
  for (const name of ['T-7', 'T-8']) {
    const text = readFileSync(join(folder, 'lots/tuff/T-9.yaml'), 'utf8')
    const draft = text.replace(/\nrevisions:[\s\S]*/, '\n').replace('BL-2', `BL-${name}`)
    writeFileSync(join(folder, `lots/tuff/${name}.yaml`), draft)
  }
  withdraw({ reason: 'cracked' })
})

interface Withdrawal {
  readonly reason: string
  readonly replacedBy?: string
}

/** Plans a withdrawal and writes it. */
function withdraw(withdrawal: Withdrawal): void {
  const { records, diagnostics } = loadRecords(folder)
  expect(diagnostics).toEqual([])
  const order = { content: folder, lots: [LOT], by: 'A. Mason', function: 'manager', withdraw: true }
  const date = readMoment('2026-04-10')
  for (const { request, revision } of planIssue(records, { ...order, ...withdrawal, date }))
    writeRevision(folder, request.lot, revision)
}

function replacements(): unknown[] {
  const revisions = loadRecords(folder).records.lots.get(LOT)?.revisions ?? []
  return revisions.filter(({ withdrawn }) => withdrawn === 'yes').map((revision) => revision['replaced-by'])
}

const ALREADY = /^tuff\/T-1 is already withdrawn\.\nfix: leave/

it('is refused with another reason alone', () => {
  expect(() => withdraw({ reason: 'crushed' })).toThrow(ALREADY)
})

it('is issued with another replacement, even where neither was issued and both are printed alike', () => {
  withdraw({ reason: 'replaced', replacedBy: 'tuff/T-7' })
  withdraw({ reason: 'replaced', replacedBy: 'tuff/T-8' })
  expect(replacements()).toEqual([undefined, 'tuff/T-7', 'tuff/T-8'])
})

it('keeps the replacement where none is given', () => {
  withdraw({ reason: 'replaced', replacedBy: 'tuff/T-9' })
  expect(() => withdraw({ reason: 'crushed' })).toThrow(ALREADY)
  const record = join(folder, `lots/${LOT}.yaml`)
  writeFileSync(record, readFileSync(record, 'utf8').replace('a: 78.4 kN', 'a: 79.4 kN'))
  withdraw({ reason: 'read anew' })
  expect(replacements()).toEqual([undefined, 'tuff/T-9', 'tuff/T-9'])
})
