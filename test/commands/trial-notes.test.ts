/** What is told of limits from memory before and after somebody confirms them. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { planIssue } from '../../src/commands/plan-issue.ts'
import { revisionSummary } from '../../src/commands/revision-summary.ts'
import { trialChangeWords, trialLines } from '../../src/commands/trial-notes.ts'
import { writeRevision } from '../../src/commands/write-revision.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { loadRecords } from '../../src/records/load.ts'
import { fillIn, NAMED, newSite } from './new-site-folder.ts'

const SET = 'c618-23e1'

/** Issues the lot once more, and returns what was told of it. */
function issued(folder: string, lot: string): string {
  const { records } = loadRecords(folder, readMoment('2026-11-27'))
  const order = { lots: [lot], by: 'A. Mason', reason: 'limits', date: readMoment('2026-11-27') }
  const [planned] = planIssue(records, order)
  if (planned === undefined) throw new Error('nothing was planned')
  writeRevision(folder, lot, planned.revision)
  return revisionSummary(planned, records)
}

function notes(folder: string): string[] {
  const set = loadRecords(folder, readMoment('2026-11-27')).records.criteria.get(SET)
  return set === undefined ? ['no such set'] : trialLines(set)
}

it('says how to confirm a set with limits from memory, and in the revision that it was confirmed', async () => {
  const { folder, lot } = await newSite(NAMED)
  fillIn(folder, lot, ['84 %', '92 %'])
  expect(notes(folder)).toEqual([
    `${SET}: trial judgement, not a statement of conformity, since some limits are from memory; compare them with the standard, then write confirmed: { by: NAME, date: DATE, edition: "23e1" } in criteria/${SET}.yaml`,
  ])
  expect(issued(folder, lot)).not.toContain('trial judgement')
  const file = join(folder, 'criteria', `${SET}.yaml`)
  const line = 'confirmed: { by: "A. Mason", date: 2026-11-26, edition: "23e1" }'
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^# confirmed: .*$/m, line))
  expect(notes(folder)).toEqual([])
  expect(issued(folder, lot).split('\n')[1]).toBe(
    `  ${SET}: limits of ASTM C618, edition 23e1 confirmed against edition 23e1 by A. Mason on 2026-11-26; no longer a trial judgement`,
  )
  writeFileSync(file, readFileSync(file, 'utf8').replace(line, ''))
  expect(issued(folder, lot)).toContain(`${SET}: a limit from memory is not confirmed, so the verdict is`)
})

it('names nobody where the limits that were from memory have gone', () => {
  expect(trialChangeWords({ criterion: 'set', trial: false }, undefined)).toBe(
    'set: no longer a trial judgement',
  )
})
