import { describe, expect, it } from 'vitest'
import { dataFile, dataFiles } from '../../../src/edition/writers/outputs.ts'
import { finding, shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash', { findings: [finding('ash')] })],
  [tinyLot('ash/1', { shipments: [shipment('ash/1', 'B-1', '2026-03-12')] })],
)

describe('dataFile', () => {
  it('gives the development server the bytes that a build writes, of text and of tables alike', () => {
    const kinds = new Set<string>()
    for (const { path, pieces } of dataFiles(edition)) {
      const made = pieces()
      if (made === null) {
        expect(dataFile(edition, path), path).toBeUndefined()
        continue
      }
      kinds.add(/\.\w+$/.exec(path)?.[0] ?? '')
      const written = Buffer.concat([...made].map((piece) => Buffer.from(piece)))
      expect(written.equals(dataFile(edition, path) ?? Buffer.of()), path).toBe(true)
    }
    expect([...kinds].sort()).toEqual(['.csv', '.json', '.parquet', '.sql'])
  })

  it('gives nothing for a path that is none', () => {
    for (const path of [
      'data/tables/',
      'data/tables/lots/source=ash/year=1999/part.parquet',
      'data/queries/none.sql',
      'data/queries/',
      'data/lots/ash/2.json',
    ])
      expect(dataFile(edition, path), path).toBeUndefined()
  })
})
