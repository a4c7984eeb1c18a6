import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { dataPackage } from '../../../src/edition/writers/data-package.ts'
import { finding, shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'
import { withTables } from '../in-duckdb.ts'

/** Of a resource what the tests read. */
interface Resource {
  readonly name: string
  readonly description?: string
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

/** Every table has a row. */
const whole = computeEdition(loadRecords('content').records, { program: 'test' })

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

  it('gives every quantity of every table a unit or the column that names it, and every column its words', () => {
    const fields = described(whole).resources.flatMap(({ name, schema }) =>
      schema.fields.map((field) => ({ of: `${name}.${String(field['name'])}`, field })),
    )
    const without = fields.filter(
      ({ field: { type, unit, unitColumn } }) => type === 'number' && (unit ?? unitColumn) === undefined,
    )
    // A confidence is a share of one.
    expect(without.map(({ of }) => of)).toEqual(['results.interval_level'])
    expect(fields.filter(({ field }) => typeof field['description'] !== 'string')).toEqual([])
    const names = new Map(
      described(whole).resources.map((one) => [one.name, one.schema.fields.map(({ name }) => name)]),
    )
    for (const { of, field } of fields)
      if (field['unitColumn'] !== undefined)
        expect(names.get(of.slice(0, of.indexOf('.')))).toContain(field['unitColumn'])
  })

  it('says of a spreadsheet’s columns which are days and how yes and no are written', () => {
    const field = (resource: string, name: string) =>
      described()
        .resources.find((one) => one.name === resource)
        ?.schema.fields.find((one) => one['name'] === name)
    expect(field('lots-csv', 'issued')?.['type']).toBe('date')
    expect(field('shipments-csv', 'date')?.['type']).toBe('date')
    expect(field('shipments-csv', 'mass_t')).toMatchObject({ type: 'number', unit: 't' })
    expect(field('results-csv', 'margin')).toMatchObject({ type: 'number', unitColumn: 'unit' })
    expect(field('results-csv', 'valid')).toMatchObject({ trueValues: ['yes'], falseValues: ['no'] })
  })

  it('warns of the apostrophe before a text that looks like a formula', () => {
    const sheets = described().resources.filter(({ name }) => name.endsWith('-csv'))
    expect(sheets).toHaveLength(3)
    for (const { description } of sheets) expect(description).toContain('begins with =, +, - or @')
  })

  it('leaves a table without a file out', () => {
    expect(described(tinyEdition([], [])).resources.map(({ name }) => name)).toEqual([
      'lots-csv',
      'results-csv',
      'shipments-csv',
    ])
  })
})
