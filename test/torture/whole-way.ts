/** Takes records the whole way: computed, judged, reported, published, drawn, issued; says what went wrong. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import { computeEdition } from '../../src/edition/compute.ts'
import { carryOutPlan } from '../../src/edition/certificate/issue-plan.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { criterionPage } from '../../src/edition/views/criterion-page.ts'
import { comparisonPage } from '../../src/edition/views/comparison-page.ts'
import { conditionsPage } from '../../src/edition/views/conditions-page.ts'
import { findingsView } from '../../src/edition/views/findings.ts'
import { frontView } from '../../src/edition/views/front.ts'
import { laboratoryPageView } from '../../src/edition/views/laboratory-page.ts'
import { lotTodayView } from '../../src/edition/views/lot-today.ts'
import { lotWorkingView } from '../../src/edition/views/lot-working.ts'
import { registerView } from '../../src/edition/views/register.ts'
import { routeGroups, routesOfLot, routesOfSource } from '../../src/edition/views/routes.ts'
import { shipmentsView } from '../../src/edition/views/shipments.ts'
import { sourcePageView } from '../../src/edition/views/source-page.ts'
import { sourceLines } from '../../src/edition/views/sources.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { dataFiles } from '../../src/edition/writers/outputs.ts'
import type { Diagnostic } from '../../src/records/diagnostics/diagnostic.ts'
import { withRevisionLine } from '../../src/records/edit/revision-line.ts'
import { fileReport } from '../../src/records/diagnostics/report.ts'
import { valueOfForm } from '../../src/records/issued/issued-forms.ts'
import type { Records } from '../../src/records/records.ts'
import type { Lot } from '../../src/records/schema/loaded-records.ts'
import { loadYaml } from '../../src/records/yaml/load-yaml.ts'
import { slowness, TODAY, traceOf } from './read-spoiled.ts'
import type { SpoiledRecord } from './spoiled-record.ts'

const SCHEMAS = resolve(import.meta.dirname, '../../schemas')

let validators: Readonly<Record<'check' | 'lotData', ValidateFunction>> | undefined

function validatorsOf(): NonNullable<typeof validators> {
  if (validators !== undefined) return validators
  const read = (name: string) => JSON.parse(readFileSync(resolve(SCHEMAS, name), 'utf8')) as object
  const ajv = new Ajv2020({ allowUnionTypes: true, strict: false })
  validators = { check: ajv.compile(read('check.json')), lotData: ajv.compile(read('lot-data.json')) }
  return validators
}

/**
 * What went wrong on the way; empty where all is well.
 * @param records as read, those without a fault
 */
export function wholeWayFaults(
  records: Records,
  diagnostics: readonly Diagnostic[],
  spoiled: SpoiledRecord,
): string[] {
  const begun = process.cpuUsage()
  try {
    const edition = computeEdition(records, { program: 'torture', today: TODAY })
    const publicEdition = forAudience(edition, 'public')
    return [
      ...reportFaults(edition, diagnostics),
      ...dataFaults(publicEdition),
      ...dataFaults(edition),
      ...drawn(publicEdition),
      ...drawn(edition),
      // Nothing is issued while a record has a fault.
      ...(diagnostics.length > 0 ? [] : issueFaults(records, edition, spoiled)),
      ...slowness(begun),
    ]
  } catch (error) {
    return [traceOf(error)]
  }
}

function reportFaults(edition: Edition, diagnostics: readonly Diagnostic[]): string[] {
  const { check } = validatorsOf()
  const text = [...checkReport(edition, diagnostics)].join('')
  if (check(JSON.parse(text))) return []
  const [error] = check.errors ?? []
  return [`the check report is not as its schema says: ${error?.schemaPath} ${error?.message}`]
}

function dataFaults(edition: Edition): string[] {
  const { lotData } = validatorsOf()
  return [...dataFiles(edition)].flatMap(({ path, pieces }) => {
    const made = pieces()
    const text = made === null ? null : [...made].join('')
    if (text === null || !path.endsWith('.json')) return []
    const value: unknown = JSON.parse(text)
    if (!/^data\/lots\//.test(path) || lotData(value)) return []
    const [error] = lotData.errors ?? []
    return [`a lot's data are not as their schema says: ${error?.schemaPath} ${error?.message}`]
  })
}

/** What pages ask for; nothing is looked at but that it can be made. @returns nothing */
function drawn(edition: Edition): [] {
  frontView(edition)
  registerView(edition)
  shipmentsView(edition)
  sourceLines(edition)
  findingsView(edition)
  comparisonPage(edition)
  conditionsPage(edition)
  routeGroups(edition)
  for (const criterion of edition.criteria.values()) criterionPage(edition, criterion)
  for (const id of edition.laboratories.keys()) laboratoryPageView(edition, id)
  for (const id of edition.sources.keys()) {
    sourcePageView(edition, id)
    routesOfSource(edition, id)
  }
  for (const id of edition.lots.keys()) {
    const lot = edition.lot(id)
    lotTodayView(edition, lot)
    lotWorkingView(edition, lot)
    routesOfLot(edition, lot)
  }
  return []
}

/** Each draft could be issued today: its document is of its form, and its record takes the line. */
function issueFaults(records: Records, edition: Edition, { record, text }: SpoiledRecord): string[] {
  const issue = {
    date: edition.asOf,
    by: 'A. Mason',
    function: 'manager',
    reason: 'torture: "x"',
    withdrawn: false,
  }
  const drafts = [...edition.lots.keys()].filter((id) => edition.lot(id).revisions.length === 0)
  const plan = drafts.map((lot) => ({ lot, ...issue }))
  const issuing = { program: 'torture', saltOf: () => 'salt' }
  return [...carryOutPlan(records, plan, edition.asOf, issuing)].flatMap(({ request, revision }) => [
    ...(valueOfForm('document', Buffer.from(revision.text)) === null
      ? ['the document that would be issued is not of its form']
      : []),
    ...(record.path === `lots/${request.lot}.yaml`
      ? lineFaults(text, revision.recordLine, revision.digest)
      : []),
  ])
}

/** Flow style and a `revisions:` of another form are refused with a message by the command that writes the line. */
function lineFaults(text: string, line: string, digest: string): string[] {
  if (/^\s*\{|^revisions:|^["']revisions|^\? /m.test(text)) return []
  const next = withRevisionLine(text, line)
  const lot = loadYaml('lot', next, fileReport('lot', next, [])) as Lot | undefined
  return lot?.revisions?.at(-1)?.digest === digest
    ? []
    : ['the record does not take the line of its revision']
}
