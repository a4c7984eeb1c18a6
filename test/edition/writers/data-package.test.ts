import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { dataPackage } from '../../../src/edition/writers/data-package.ts'
import { finding, shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'
import { withTables } from '../in-duckdb.ts'

/** Of a resource what the tests read. */
interface Resource {
  readonly name: string
  readonly path: string | readonly string[]
  readonly schema: { readonly fields: readonly Record<string, unknown>[] }
  readonly partitionedBy?: readonly { readonly name: string }[]
}

const edition = tinyEdition(
  [tinySource('ash', { findings: [finding('ash')] }), tinySource('tuff')],
  [
    tinyLot('ash/1', {
      state: 'complete',
      shipments: [shipment('ash/1', 'B-1', '2026-03-12')],
    }),
    tinyLot('tuff/1'),
  ],
)

const described = (of = edition) =>
  JSON.parse(JSON.stringify(dataPackage(of))) as { readonly resources: readonly Resource[] }

describe('dataPackage', () => {
  // github.com/frictionlessdata/datapackage, public/profiles/2.0/datapackage.json at commit b9ee508, public domain.
  const profile = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../published/data-package-2.0/datapackage.json'), 'utf8'),
  ) as object
  const valid = new Ajv({ strict: false, validateFormats: false, allErrors: true }).compile(profile)

  it('is as the published schema of Data Package 2.0 says, with and without tables and an address', () => {
    for (const of of [edition, tinyEdition([], []), { ...edition, address: { origin: null, base: '/' } }]) {
      valid(described(of))
      expect(valid.errors).toBeNull()
    }
  })

  it('is held against a schema that refuses a resource without a path, and a field without a name', () => {
    const [first, ...others] = described().resources
    expect(valid({ ...described(), resources: [{ ...first, path: undefined }, ...others] })).toBe(false)
    expect(
      valid({ ...described(), resources: [{ ...first, schema: { fields: [{ type: 'string' }] } }] }),
    ).toBe(false)
  })

  it('lists every table file of the site once, and none that is not there', async () => {
    await withTables(edition, async (folder) => {
      const data = join(folder, 'data')
      const files = readdirSync(data, { recursive: true, encoding: 'utf8' })
      const tables = files.filter((path) => /\.(parquet|csv)$/.test(path))
      const listed = described().resources.flatMap(({ path }) => path)
      expect(listed.toSorted()).toEqual(tables.toSorted())
      expect(listed.every((path) => existsSync(join(data, path)))).toBe(true)
      expect(listed.length).toBeGreaterThan(8)
    })
  })

  it('describes the columns of a spreadsheet’s table as its head names them', async () => {
    await withTables(edition, async (folder) => {
      for (const { path, schema } of described().resources) {
        if (typeof path !== 'string') continue
        const [head = ''] = readFileSync(join(folder, 'data', path), 'utf8')
          .replace('\ufeff', '')
          .split('\n')
        expect(schema.fields.map(({ name }) => name)).toEqual(head.split(','))
      }
    })
  })

  it('gives each column its type, its unit or the column that names it, and the keys of the folders', () => {
    const lots = described().resources.find(({ name }) => name === 'lots')
    expect(lots?.schema.fields.find(({ name }) => name === 'quantity_t')).toEqual({
      name: 'quantity_t',
      type: 'number',
      description: 'Quantity of the lot',
      unit: 't',
      constraints: { required: true },
    })
    expect(lots?.partitionedBy?.map(({ name }) => name)).toEqual(['source', 'year'])
    const results = described().resources.find(({ name }) => name === 'results')
    expect(results?.schema.fields.find(({ name }) => name === 'value')?.['unitColumn']).toBe('unit')
  })

  it('leaves a table without a file out', () => {
    expect(described(tinyEdition([], [])).resources.map(({ name }) => name)).toEqual([
      'lots-csv',
      'results-csv',
      'shipments-csv',
    ])
  })
})
