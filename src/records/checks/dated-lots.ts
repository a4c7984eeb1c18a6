/** Lots with a fault whose time of sampling is known all the same. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { fileReport } from '../diagnostics/report.ts'
import { readText } from '../files.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { schemaNamed } from '../schema/schemas.ts'
import { loadYaml } from '../yaml/load-yaml.ts'
import { parseYaml } from '../yaml/parse-yaml.ts'
import type { ReadFiles } from './assemble.ts'

/** What says when a lot was sampled. */
export type LotDates = Pick<Lot, 'produced' | 'samples'>

/** Faults that leave open when a lot was sampled. */
const OF_DATES: ReadonlySet<string> = new Set(['date', 'dates-backwards', 'date-ahead', 'id-case'])

/**
 * @param diagnostics of all files read
 * @returns by SOURCE/LOT
 */
export function datedLots(
  { contentDir, loaded, ids }: ReadFiles,
  diagnostics: readonly Diagnostic[],
): ReadonlyMap<string, LotDates> {
  const undated = new Set(diagnostics.flatMap(({ code, file }) => (OF_DATES.has(code) ? [file] : [])))
  const dated = [...ids.lot].flatMap((id): [string, LotDates][] => {
    const file = `lots/${id}.yaml`
    const own = loaded.lot.get(id)
    if (undated.has(file) || own?.report.count() === 0) return []
    const dates = own?.record ?? datesOf(contentDir, file)
    return dates === undefined ? [] : [[id, dates]]
  })
  return new Map(dated)
}

/** Of a record without the form of a lot: its production and samples, where these have no fault. */
function datesOf(contentDir: string, file: string): LotDates | undefined {
  const reading = readText(contentDir, file)
  const yaml = 'text' in reading ? parseYaml(reading.text) : null
  if (yaml === null || 'fault' in yaml || typeof yaml.value !== 'object' || yaml.value === null)
    return undefined
  const { produced, samples, ...others } = yaml.value as Readonly<Record<string, unknown>>
  // A key that is none may be either of the two misspelt.
  const known = schemaNamed('lot.json').properties ?? {}
  if (Object.keys(others).some((name) => !Object.hasOwn(known, name))) return undefined
  // With any quantity the two make a whole lot, and JSON is YAML.
  const text = JSON.stringify({ produced, quantity: '1 t', samples })
  return loadYaml('lot', text, fileReport(file, text, [])) as Lot | undefined
}
