/** The sets that the project ships, loaded and compiled as the program does it. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { compileCriteria, type CriterionSource } from '../../../src/records/criteria/compile.ts'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { loadYaml } from '../../../src/records/yaml/load-yaml.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import type { CriterionRecord } from '../../../src/records/schema/loaded-records.ts'

const CONTENT = join(import.meta.dirname, '../../../content')

function ids(folder: string): string[] {
  return readdirSync(join(CONTENT, folder)).map((name) => name.replace(/\.yaml$/, ''))
}

function source(id: string): CriterionSource {
  const path = join(CONTENT, 'criteria', `${id}.yaml`)
  const text = readFileSync(path, 'utf8')
  const diagnostics: Diagnostic[] = []
  const record = loadYaml('criterion', text, fileReport(path, text, diagnostics))
  if (record === undefined || 0 < diagnostics.length)
    throw new Error(`${id}: ${diagnostics.map(({ message }) => message).join('; ')}`)
  return {
    record: record as CriterionRecord,
    report: (pointer, fault) => {
      throw new Error(`${id}${pointer}: ${fault.message}`)
    },
  }
}

export const SHIPPED = ids('criteria')

const sets = compileCriteria(new Map(SHIPPED.map((id) => [id, source(id)])), {
  conditions: new Set(ids('conditions')),
  criteria: new Set(SHIPPED),
})

export function shippedSet(id: string): Criterion {
  const set = sets.get(id)
  if (set === undefined) throw new Error(`no shipped set ${id}`)
  return set
}
