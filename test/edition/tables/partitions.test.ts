import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { partitions } from '../../../src/edition/tables/partitions.ts'
import type { Edition, LotEntry } from '../../../src/edition/shape/edition.ts'
import { tableParts } from '../../../src/edition/writers/table-parts.ts'
import { finding, shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const pathsOf = (edition: Edition) => [...partitions(edition)].map(({ path }) => path)

const lot = (id: string, sampled: string, more: Partial<LotEntry> = {}) =>
  tinyLot(id, { sampled: readMoment(sampled), ...more })

/** Bytes of every file by its path. */
const bytesOf = (edition: Edition) =>
  new Map([...tableParts(edition)].map(({ path, bytes }) => [path, Buffer.from(bytes()).toString('base64')]))

describe('partitions', () => {
  it('puts the rows of a lot under its source and the year of its sampling', () => {
    const edition = tinyEdition(
      [tinySource('ash')],
      [lot('ash/1', '2025-12-31T23:59', { verdicts: [verdict('a', 'meets')] }), lot('ash/2', '2026-01-01')],
    )
    expect(pathsOf(edition)).toEqual([
      'data/tables/lots/source=ash/year=2025/part.parquet',
      'data/tables/results/source=ash/year=2025/part.parquet',
      'data/tables/verdicts/source=ash/year=2025/part.parquet',
      'data/tables/clauses/source=ash/year=2025/part.parquet',
      'data/tables/lots/source=ash/year=2026/part.parquet',
      'data/tables/results/source=ash/year=2026/part.parquet',
    ])
  })

  it('puts a shipment under the year in which it left, whatever the year of its lot', () => {
    const edition = tinyEdition(
      [tinySource('ash')],
      [lot('ash/1', '2025-12-20', { shipments: [shipment('ash/1', 'B-1', '2026-01-04')] })],
    )
    expect(pathsOf(edition)).toContain('data/tables/shipments/source=ash/year=2026/part.parquet')
    expect(pathsOf(edition)).not.toContain('data/tables/shipments/source=ash/year=2025/part.parquet')
  })

  it('puts what a check asks of a source under no year, and of a laboratory under no source either', () => {
    const edition = tinyEdition(
      [tinySource('ash', { findings: [finding('ash')] })],
      [lot('ash/1', '2026-03-05', { findings: [finding('ash/1')] })],
      {
        laboratories: new Map([['ash', { name: 'Ash laboratory' } as never]]),
        laboratoryFindings: (id) => [finding(id)],
      },
    )
    const found = [...partitions(edition)].filter(({ table }) => table.name === 'findings')
    expect(
      found.map(({ path, columns }) => [
        path.slice('data/tables/findings/'.length),
        columns().find(({ name }) => name === 'about_kind')?.values,
        columns().find(({ name }) => name === 'about')?.values,
      ]),
    ).toEqual([
      ['source=ash/year=2026/part.parquet', ['lot'], ['ash/1']],
      ['source=ash/year=__HIVE_DEFAULT_PARTITION__/part.parquet', ['source'], ['ash']],
      [
        'source=__HIVE_DEFAULT_PARTITION__/year=__HIVE_DEFAULT_PARTITION__/part.parquet',
        ['laboratory'],
        ['ash'],
      ],
    ])
  })

  it('has no file for a table without rows', () => {
    expect(pathsOf(tinyEdition([tinySource('ash')], []))).toEqual([])
  })

  it('changes with a new lot only what stands under its source and year', () => {
    const sources = [tinySource('ash'), tinySource('tuff')]
    const lots = [lot('ash/1', '2025-03-05'), lot('ash/2', '2026-03-05'), lot('tuff/1', '2026-03-05')]
    const [before, after] = [lots, [...lots.slice(0, 2), lot('ash/3', '2026-03-06'), ...lots.slice(2)]].map(
      (all) => bytesOf(tinyEdition(sources, all)),
    )
    const changed = [...(after ?? [])].filter(([path, bytes]) => before?.get(path) !== bytes)
    expect(changed.map(([path]) => path)).toEqual(['data/tables/lots/source=ash/year=2026/part.parquet'])
  })

  it('states in no file the day as of which it was made', () => {
    const edition = tinyEdition([tinySource('ash')], [lot('ash/1', '2026-03-05')])
    expect(bytesOf({ ...edition, asOf: readMoment('2027-01-01'), program: 'later' })).toEqual(
      bytesOf(edition),
    )
  })

  it('leaves the open end of an interval and what is no number out, as JSON does', () => {
    const open = lot('ash/1', '2026-03-05')
    const quantity = { ...open.record.quantity, value: Number.POSITIVE_INFINITY }
    const edition = tinyEdition([tinySource('ash')], [{ ...open, record: { ...open.record, quantity } }])
    const [lots] = [...partitions(edition)]
    expect(lots?.columns().find(({ name }) => name === 'quantity_t')?.values).toEqual([null])
  })
})
