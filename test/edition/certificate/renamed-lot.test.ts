import { cpSync, mkdtempSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { planIssue } from '../../../src/commands/plan-issue.ts'
import { writeRevision } from '../../../src/commands/write-revision.ts'
import { presentId } from '../../../src/core/measure/lot-id.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { linkTo } from '../../../src/edition/views/printed-links.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { issueBase, LOT } from '../../records/issued/issue-base.ts'

const BASE = resolve(import.meta.dirname, '../../diagnostics/base')
const [OLD, NEW] = ['tuff/T-9', 'tuff/T-8']

function issued(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'renamed-')), 'content')
  cpSync(BASE, folder, { recursive: true })
  issueBase(folder)
  return folder
}

/** Plans the withdrawal of the lot in favour of the one that was renamed. */
function withdrawal(folder: string, replacedBy: string) {
  const said = { content: folder, by: 'A. Mason', function: 'manager', reason: 'mixed up' }
  const order = { ...said, lots: [LOT], date: readMoment('2026-04-10'), withdraw: true, replacedBy }
  return planIssue(loadRecords(folder).records, order)
}

/** As README says: file, issued folder and the earlier id. */
function rename(folder: string): void {
  const record = readFileSync(join(folder, `lots/${OLD}.yaml`), 'utf8')
  renameSync(join(folder, `lots/${OLD}.yaml`), join(folder, `lots/${NEW}.yaml`))
  renameSync(join(folder, `issued/${OLD}`), join(folder, `issued/${NEW}`))
  writeFileSync(join(folder, `lots/${NEW}.yaml`), `formerly: [${OLD}]\n${record}`)
}

describe('a lot that was renamed after it replaced another', () => {
  it('is found by the line as it was issued, and named and linked by its present id', () => {
    const folder = issued()
    for (const { request, revision } of withdrawal(folder, OLD)) writeRevision(folder, request.lot, revision)
    rename(folder)
    const { records, diagnostics } = loadRecords(folder)
    expect(diagnostics).toEqual([])
    expect(records.lots.get(LOT)?.revisions?.at(-1)).toMatchObject({ 'replaced-by': OLD })
    const edition = forAudience(computeEdition(records, { program: 'test' }), 'public')
    expect(edition.lot(LOT).revisions.at(-1)?.replacedBy).toBe(NEW)
    const { printed } = edition.lot(LOT).certificate()
    expect(linkTo(edition)(printed.withdrawal?.replacement?.to)).toMatch(/lots\/tuff\/T-8\/$/)
  })
  it('is named by its present id in a withdrawal to come, whichever is given', () => {
    const folder = issued()
    rename(folder)
    expect(withdrawal(folder, OLD).map(({ request }) => request.replacedBy)).toEqual([NEW])
    expect(() => withdrawal(folder, 'tuff/T-0')).toThrow('There is no lot tuff/T-0 to replace tuff/T-1.')
  })
})

describe('presentId', () => {
  it('is the id that a lot has or had, and none for another', () => {
    const lots = new Map([
      ['ash/1', {}],
      ['ash/2', { formerly: ['ash/B', 'ash/C'] }],
    ])
    expect(['ash/1', 'ash/C', 'ash/D'].map((id) => presentId(lots, id))).toEqual([
      'ash/1',
      'ash/2',
      undefined,
    ])
  })
})
