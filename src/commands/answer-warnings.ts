/** Warnings of answers that name no finding: a slip of the pen, or the finding is no longer made. */
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { answersLeftOver } from '../edition/views/answers.ts'
import { foundOf } from '../edition/shape/found-of-source.ts'
import type { Diagnostic } from '../records/diagnostics/diagnostic.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { fileReport } from '../records/diagnostics/report.ts'
import { readText } from '../records/files.ts'
import type { Records } from '../records/records.ts'
import { commandLine } from './program.ts'

/**
 * @param records as read, of which the edition may know only a part
 * @returns one for each answer, at its place in the record
 */
export function answerWarnings(edition: Edition, records: Records): Diagnostic[] {
  if (!hasAnswers(records)) return []
  const made = findingsBySource(edition)
  const ofLaboratories = [...edition.laboratories.keys()].flatMap((id) =>
    edition.laboratoryFindings(id).map((finding) => finding.id),
  )
  const leftOver = answersLeftOver(edition, new Set([...made.values(), ofLaboratories].flat()))
  return leftOver.flatMap(({ about, answer: { finding } }) => {
    const warnings: Diagnostic[] = []
    const isLot = records.lots.has(about)
    const file = isLot ? `lots/${about}.yaml` : `sources/${about}.yaml`
    const reading = readText(records.contentDir, file)
    const answers = (isLot ? records.lots : records.sources).get(about)?.answers ?? []
    const at = `/answers/${answers.findIndex((answer) => answer.finding === finding)}/finding`
    const near = nearNames(finding, [...(made.get(isLot ? sourceOf(about) : about) ?? []), ...ofLaboratories])
    fileReport(file, 'text' in reading ? reading.text : '', warnings).at(
      at,
      'reference-unknown',
      `no finding of today has the id "${finding}"`,
      `${near.startsWith('did') ? near : `copy the id as ${commandLine('check')} prints it`} (the answer to a finding that is no longer made may stay)`,
    )
    return warnings.map((warning) => ({ ...warning, severity: 'warning' as const }))
  })
}

export function hasAnswers({ lots, sources }: Records): boolean {
  return [...lots.values(), ...sources.values()].some(({ answers = [] }) => answers.length > 0)
}

/** Ids of the findings about a source and its lots. */
function findingsBySource(edition: Edition): Map<string, string[]> {
  return new Map(
    [...edition.sources.keys()].map((source) => {
      const { ofSource, ofLots } = foundOf(edition, source)
      return [source, [...ofSource, ...ofLots.flatMap(([, findings]) => findings)].map(({ id }) => id)]
    }),
  )
}
