import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../src/core/measure/moment.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { knownRecord } from '../../src/edition/passes/known-record.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import { dataFiles } from '../../src/edition/writers/outputs.ts'
import { loadRecords } from '../../src/records/load.ts'

const CONTENT = 'test/diagnostics/base'
const FILE = 'order of a customer.xlsx'
const ORIGIN = `imported: [ { file: ${FILE}, digest: sha256-${'a'.repeat(64)}, on: 2026-03-30 } ]\n`

function changed(): Map<string, string> {
  const text = (path: string) => readFileSync(`${CONTENT}/${path}`, 'utf8')
  return new Map([
    ['site.yaml', `${text('site.yaml')}drafts: yes\n`],
    ['lots/tuff/T-1.yaml', `${text('lots/tuff/T-1.yaml')}${ORIGIN}`],
    ['controls/K1.yaml', `${text('controls/K1.yaml')}${ORIGIN}`],
  ])
}

describe('the file that a record was imported from', () => {
  const { records, diagnostics } = loadRecords(CONTENT, undefined, { changed: changed() })
  const edition = computeEdition(records, { program: 'test', today: readMoment('2026-06-01') })
  const data = (audience: 'public' | 'internal') =>
    [...dataFiles(forAudience(edition, audience))]
      .map(({ pieces }) => [...(pieces() ?? [])].join(''))
      .join('\n')

  it('is read with the record', () => {
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(records.lots.get('tuff/T-1')?.imported?.[0]?.file).toBe(FILE)
  })
  it('stands in no file of a public site, and in the internal one', () => {
    expect(data('public')).toContain('tuff/T-1')
    expect(data('public')).not.toContain(FILE)
    expect(data('public')).not.toContain('a'.repeat(64))
    expect(data('internal')).toContain(FILE)
  })
  it('is no part of what an issued document holds, so that an import alone changes no certificate', () => {
    const lot = records.lots.get('tuff/T-1')
    if (lot === undefined) throw new Error('the lot is missing')
    const before = loadRecords(CONTENT).records
    const bare = before.lots.get('tuff/T-1')
    if (bare === undefined) throw new Error('the lot is missing')
    const day = readMoment('2026-06-01')
    expect(knownRecord(lot, records.controls, day)).toEqual(knownRecord(bare, before.controls, day))
  })
})
