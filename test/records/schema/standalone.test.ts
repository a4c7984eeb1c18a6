import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROOT } from '../../../src/commands/program.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { reportSchemaErrors } from '../../../src/records/schema/schema-faults.ts'
import type * as Schemas from '../../../src/records/schema/schemas.ts'
import { resolveReference, schemaNamed, validatorOf } from '../../../src/records/schema/schemas.ts'
import { standaloneModule } from '../../../src/records/schema/standalone.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'

/** What the schema has against a text, in our words, in no order: a reader sees them sorted by place. */
function faults(kind: 'lot' | 'control', text: string, of: typeof validatorOf): Diagnostic[] {
  const parsed = parseYaml(text)
  if ('fault' in parsed) return []
  const diagnostics: Diagnostic[] = []
  const validate = of(kind)
  if (!validate(parsed.value))
    reportSchemaErrors(validate.errors ?? [], fileReport('file', text, diagnostics))
  return diagnostics.sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1))
}

const CASES = resolve(ROOT, 'test/diagnostics/cases')

/** Spoiled lots and controls: the first line names the file that they stand in for. */
function spoiled(kind: 'lot' | 'control'): string[] {
  return readdirSync(CASES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(join(CASES, name), 'utf8'))
    .filter((text) => text.startsWith(`# ${kind}s/`))
    .map((text) => text.slice(text.indexOf('\n') + 1))
}

/** Lots that are spoiled where the module's schemas differ in build from those on the disk. */
const SPOILED_RESULTS = [
  'SiO2: 54',
  'SiO2: { value: 54 %, basys: dry }',
  'SiO2: { basis: dry }',
  'SiO2: { value: 54 %, basis: damp, of: 0, excluded-on: July, note: "" }',
  'density: [2.35 g/cm3]',
  'loi: 2.1 %',
  'strength-activity-index: [{ condition: c311, age: 7 }, 85 %]',
].map((result) => `samples: [{ id: C, kind: composite }]\nanalyses: [{ results: { ${result} } }]\n`)

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
    for (const kind of ['lot', 'control'] as const)
      for (const text of [...spoiled(kind), ...SPOILED_RESULTS]) {
        const expected = faults(kind, text, validatorOf)
        found += expected.length
        expect(faults(kind, text, made.validatorOf)).toEqual(expected)
      }
    expect(found).toBeGreaterThan(60)
  })

  it('finds nothing in sound lots', () => {
    const lots = resolve(ROOT, 'content/lots/orrinmoss-ash')
    for (const name of readdirSync(lots))
      expect(faults('lot', readFileSync(join(lots, name), 'utf8'), made.validatorOf)).toEqual([])
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
