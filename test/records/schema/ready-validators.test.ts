import { hash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, describe, expect, it } from 'vitest'
import { forValidation, SHARED } from '../../../src/records/schema/make-validators.ts'
import { readyValidators, type Validator } from '../../../src/records/schema/ready-validators.ts'
import { RECORD_KINDS } from '../../../src/records/schema/schema-set.ts'
import { readSchema } from '../../../src/records/schema/schema-texts.ts'
import { faultsIn, spoiledRecords } from './spoiled-records.ts'

describe('readyValidators', () => {
  const home = mkdtempSync(join(tmpdir(), 'validators-'))
  afterAll(() => rmSync(home, { recursive: true }))

  it('find in every spoiled record what ajv finds by the schemas as they stand, in the same words', () => {
    const ajv = new Ajv2020({
      allErrors: true,
      verbose: true,
      strict: false,
      schemas: [...SHARED, ...RECORD_KINDS].map((name) => forValidation(readSchema(name))),
    })
    const validators = readyValidators()
    let found = 0
    for (const { kind, text } of spoiledRecords()) {
      const expected = faultsIn(text, ajv.getSchema(`${kind}.json`) as Validator)
      found += expected.length
      expect(faultsIn(text, validators[kind])).toEqual(expected)
    }
    expect(found).toBeGreaterThan(80)
  })

  it('are kept, take the place of those kept before, and are taken from there', () => {
    const folder = join(home, 'kept')
    mkdirSync(folder)
    writeFileSync(join(folder, 'validators-of-before.cjs'), '')
    expect(readyValidators(folder).site({})).toBe(false)
    const [name = '', ...more] = readdirSync(folder)
    expect(name).toMatch(/^validators-[0-9a-f]{64}\.cjs$/)
    expect(more).toEqual([])
    const other = join(home, 'other')
    mkdirSync(other)
    const script = 'exports.site = () => true'
    writeFileSync(join(other, name), `// ${hash('sha256', script)}\n${script}`)
    expect(readyValidators(other).site({})).toBe(true)
  })

  it('leave alone what else lies in the folder', () => {
    const folder = join(home, 'beside')
    mkdirSync(join(folder, 'page-program-1'), { recursive: true })
    writeFileSync(join(folder, 'validators-of-before.cjs'), '')
    readyValidators(folder)
    expect(readdirSync(folder).sort()).toEqual([
      'page-program-1',
      expect.stringMatching(/^validators-[0-9a-f]{64}/),
    ])
  })

  it('are made again where they cannot be kept, or what is kept is spoiled', () => {
    const file = join(home, 'file')
    writeFileSync(file, '')
    expect(readyValidators(file).manifest({})).toBe(false)
    const folder = join(home, 'kept')
    const [name = ''] = readdirSync(folder)
    const whole = readFileSync(join(folder, name), 'utf8')
    const spoiledFolder = join(home, 'spoiled')
    mkdirSync(spoiledFolder)
    const spoiled = ['', 'exports.site = (', 'module.exports = {}', whole.replace('"silo"', '"sila"')]
    for (const text of spoiled) {
      writeFileSync(join(spoiledFolder, name), text)
      expect(readyValidators(spoiledFolder)['issued/lot']({})).toBe(false)
      expect(readFileSync(join(spoiledFolder, name), 'utf8')).toBe(whole)
    }
  })
})
