import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../src/records/issued/digest.ts'

const ROOT = resolve(import.meta.dirname, '../../..')
const ISSUED = join(ROOT, 'content/issued')
const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true })
ajv.addSchema(JSON.parse(readFileSync(join(ROOT, 'schemas/issued.json'), 'utf8')) as object)

function expectValid(definition: string, path: string): unknown {
  const validate = ajv.getSchema(`issued.json${definition}`)
  const text = readFileSync(path, 'utf8')
  const value = JSON.parse(text) as unknown
  expect(validate?.(value), JSON.stringify(validate?.errors)).toBe(true)
  expect(canonicalJson(value)).toBe(text)
  return value
}

const partPath = (digest: string) => join(ISSUED, 'parts', `${digest}.json`)

describe('issued documents of the demo', () => {
  it('are as schemas/issued.json describes with all their parts, and their bytes are their canonical form', () => {
    const files = readdirSync(ISSUED, { recursive: true, withFileTypes: true }).filter(
      (entry) => entry.isFile() && !entry.parentPath.endsWith('parts'),
    )
    expect(files.length).toBeGreaterThan(280)
    for (const file of files) {
      const document = expectValid('', join(file.parentPath, file.name)) as Record<
        'shared' | 'lot' | 'controls',
        { part: string }
      > & { private: string }
      expectValid('#/$defs/shared', partPath(document.shared.part))
      expectValid('#/$defs/lot', partPath(document.lot.part))
      expectValid('#/$defs/controls', partPath(document.controls.part))
      expectValid('#/$defs/private', partPath(document.private))
    }
  })
})
