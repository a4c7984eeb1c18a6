import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../src/edition/certificate/digest.ts'

const ROOT = resolve(import.meta.dirname, '../../..')
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(
  JSON.parse(readFileSync(join(ROOT, 'schemas/issued.json'), 'utf8')) as object,
)

describe('issued documents of the demo', () => {
  it('are as schemas/issued.json describes, and their bytes are their canonical form', () => {
    const files = readdirSync(join(ROOT, 'content/issued'), { recursive: true, withFileTypes: true }).filter(
      (entry) => entry.isFile(),
    )
    expect(files.length).toBeGreaterThan(280)
    for (const file of files.slice(0, 60)) {
      const text = readFileSync(join(file.parentPath, file.name), 'utf8')
      const document = JSON.parse(text) as unknown
      expect(validate(document), JSON.stringify(validate.errors)).toBe(true)
      expect(canonicalJson(document)).toBe(text)
    }
  })
})
