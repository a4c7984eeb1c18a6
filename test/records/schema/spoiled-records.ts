/** Records with faults that their schemas tell, and those faults in our words. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { ROOT } from '../../../src/commands/program.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { reportSchemaErrors } from '../../../src/records/schema/schema-faults.ts'
import { kindInFolder } from '../../../src/records/record-path.ts'
import type { RecordKind } from '../../../src/records/schema/schema-set.ts'
import type { Validator } from '../../../src/records/schema/ready-validators.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'

const CASES = resolve(ROOT, 'test/diagnostics/cases')

/** Lots that are spoiled where the validators' schemas differ in build from those on the disk. */
const SPOILED_RESULTS = [
  'SiO2: 54',
  'SiO2: { value: 54 %, basys: dry }',
  'SiO2: { basis: dry }',
  'SiO2: { value: 54 %, basis: damp, of: 0, excluded-on: July, note: "" }',
  'density: [2.35 g/cm3]',
  'loi: 2.1 %',
  'strength-activity-index: [{ condition: c311, age: 7 }, 85 %]',
].map((result) => `samples: [{ id: C, kind: composite }]\nanalyses: [{ results: { ${result} } }]\n`)

export interface Spoiled {
  readonly kind: RecordKind
  readonly text: string
}

export function spoiledRecords(): readonly Spoiled[] {
  return [...spoiledCases(), ...SPOILED_RESULTS.map((text) => ({ kind: 'lot' as const, text }))]
}

/** The first line of a case names the file that it stands in for. */
function spoiledCases(): Spoiled[] {
  return readdirSync(CASES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(join(CASES, name), 'utf8'))
    .flatMap((text) => {
      const kind = kindOf(/^# ([^/\s]+)/.exec(text)?.[1] ?? '')
      return kind === undefined || kind === 'method'
        ? []
        : [{ kind, text: text.slice(text.indexOf('\n') + 1) }]
    })
}

function kindOf(place: string): RecordKind | undefined {
  return place === 'site.yaml' ? 'site' : kindInFolder(place)
}

/** What a validator has against a text, in no order: a reader sees faults sorted by place. */
export function faultsIn(text: string, validate: Validator): readonly string[] {
  const parsed = parseYaml(text)
  if ('fault' in parsed) return []
  const diagnostics: Diagnostic[] = []
  if (!validate(parsed.value))
    reportSchemaErrors(validate.errors ?? [], fileReport('file', text, diagnostics))
  return diagnostics.map((one) => JSON.stringify(one)).sort()
}
