import { expect, it } from 'vitest'
import { faultyRecords } from '../../../src/records/checks/faulty-records.ts'

/** Kinds and ids of the records that errors in some files are faults of. */
function named(...files: readonly string[]): string[] {
  const diagnostics = files.map((file) => ({ file, severity: 'error' as const }))
  return faultyRecords(diagnostics).map(({ kind, id }) => `${kind} ${id}`)
}

it('faultyRecords names the record of each file with an error once, and none for a warning', () => {
  expect(named('controls/K1.yaml', 'controls/K1.yaml', 'lots/tuff/T-1.yaml', 'site.yaml')).toEqual([
    'control K1',
    'lot tuff/T-1',
    'site site',
  ])
  expect(faultyRecords([{ file: 'controls/K1.yaml', severity: 'warning' }])).toEqual([])
})

it('faultyRecords takes an issued document for its lot, and a part or the whole folder for any record', () => {
  expect(named('issued/tuff/T-1/0.json', 'issued/parts/sha256-0.json')).toEqual(['lot tuff/T-1', 'any '])
  expect(named('issued/')).toEqual(['any '])
})

it('faultyRecords goes by the place of a file that is named wrongly, or of a folder that cannot be read', () => {
  expect(named('lots/tuff/T 1.yaml', 'lots/ash', 'laboratories/quay.yml', 'studies/heat.csv')).toEqual([
    'lot tuff/T 1',
    'lot ash/',
    'laboratory quay',
    'study heat',
  ])
  expect(named('lots', 'controls', 'toString/a.yaml')).toEqual(['any '])
})
