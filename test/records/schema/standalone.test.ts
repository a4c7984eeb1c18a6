import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROOT } from '../../../src/commands/program.ts'
import type * as Schemas from '../../../src/records/schema/schemas.ts'
import { resolveReference, schemaNamed, validatorOf } from '../../../src/records/schema/schemas.ts'
import { standaloneModule } from '../../../src/records/schema/standalone.ts'
import { faultsIn, spoiledRecords } from './spoiled-records.ts'

describe('standaloneModule', () => {
  const folder = mkdtempSync(join(tmpdir(), 'standalone-'))
  let made: Pick<typeof Schemas, 'validatorOf' | 'schemaNamed' | 'resolveReference'>

  beforeAll(async () => {
    const modules = pathToFileURL(`${ROOT}/node_modules/`).href
    const code = standaloneModule('.ts')
      .replaceAll(
        "'./schema-set.ts'",
        JSON.stringify(pathToFileURL(`${ROOT}/src/records/schema/schema-set.ts`).href),
      )
      .replaceAll('from "ajv/', `from "${modules}ajv/`)
    const file = join(folder, 'schemas.mjs')
    writeFileSync(file, code)
    made = await import(/* @vite-ignore */ pathToFileURL(file).href)
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  it('finds in every spoiled lot and control what the reader on a disk finds, in the same words', () => {
    let found = 0
    for (const { kind, text } of spoiledRecords().filter(
      ({ kind }) => kind === 'lot' || kind === 'control',
    )) {
      const expected = faultsIn(text, validatorOf(kind))
      found += expected.length
      expect(faultsIn(text, made.validatorOf(kind))).toEqual(expected)
    }
    expect(found).toBeGreaterThan(60)
  })

  it('finds nothing in sound lots', () => {
    const lots = resolve(ROOT, 'content/lots/orrinmoss-ash')
    for (const name of readdirSync(lots))
      expect(faultsIn(readFileSync(join(lots, name), 'utf8'), made.validatorOf('lot'))).toEqual([])
  })

  it('asks for nothing that a page does not have', () => {
    expect(standaloneModule('.ts')).not.toMatch(/\brequire\(|\bnew Function\b|\beval\(/)
  })

  it('holds the schemas that a form is built from', () => {
    expect(made.schemaNamed('lot.json')).toEqual(schemaNamed('lot.json'))
    const reference = 'common.json#/$defs/strengthTest'
    expect(made.resolveReference(reference, 'lot.json')).toEqual(resolveReference(reference, 'lot.json'))
    expect(() => made.validatorOf('site')).toThrow('validatorOf needs a kind that pages read, got site')
  })
})
