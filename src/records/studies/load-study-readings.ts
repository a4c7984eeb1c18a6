/** Readings of studies: their own, those of the tables that they name, and the reference tests beside them. */
import type { ReadFiles } from '../checks/assemble.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { fileReport } from '../diagnostics/report.ts'
import { UNREADABLE, UNREADABLE_MEND, type TextFault } from '../diagnostics/unreadable-text.ts'
import { readText } from '../files.ts'
import { reportConflicts } from '../yaml/conflict-markers.ts'
import { checkComposition } from './check-composition.ts'
import { checkCoverage } from './check-coverage.ts'
import { checkMeasures, checkShape } from './check-study.ts'
import { withCrossed } from './crossed-conditions.ts'
import { ownReadings } from './study-readings.ts'
import { tableReadings } from './table-readings.ts'
import { ReferenceTables } from './reference/reference-tables.ts'
import type { TableText } from './reference/table-rows.ts'
import { referenceTests } from './reference/reference-tests.ts'

/** Readings in the studies themselves and in the tables that they name; a table that none names is not read. */
export function loadStudyReadings(
  files: ReadFiles,
  tables: readonly string[],
  diagnostics: Diagnostic[],
): void {
  const named = new Set<string>()
  for (const [id, { record: written, report }] of files.loaded.study) {
    const record = withCrossed(written)
    files.loaded.study.set(id, { record, report })
    const table = (file: string, pointer: string): TableText | null => {
      const path = `studies/${file}`
      named.add(path)
      const reading = readText(files.contentDir, path)
      if (!('fault' in reading)) {
        const own = fileReport(path, reading.text, diagnostics)
        if (!reportConflicts(reading.text, own)) return { text: reading.text, report: own }
        report.countElsewhere()
        return null
      }
      report.at(pointer, ...tableFault(path, reading.fault))
      return null
    }
    if (record.table === undefined) files.studyReadings.set(id, ownReadings(record, report))
    else {
      const found = table(record.table.file, '/table/file')
      if (found !== null) files.studyReadings.set(id, tableReadings(record, found.text, found.report, report))
      // The table's faults are told with their lines; the study is not fit to be used all the same.
      if (found !== null && 0 < found.report.count()) report.countElsewhere()
    }
    files.studyReference.set(
      id,
      referenceTests(record, new ReferenceTables(table, Object.keys(record.materials)), report),
    )
    const readings = files.studyReadings.get(id) ?? []
    checkShape(record, readings, report)
    checkMeasures(record, readings, report)
    checkComposition(record, report)
    if (report.count() === 0) checkCoverage(record, readings, report)
  }
  // A study with a fault names its table all the same.
  const all = new Set(files.ids.study)
  for (const path of tables)
    if (!named.has(path) && files.loaded.study.size === all.size)
      diagnostics.push({
        file: path,
        line: 1,
        column: 1,
        code: 'file-unexpected',
        severity: 'warning',
        message: 'no study names this table, so it is not read',
        mend: 'name it in the study that it belongs to: table: { file: ... }',
      })
}

function tableFault(path: string, fault: TextFault): ['reference-unknown', string, string] {
  return [
    'reference-unknown',
    fault === 'missing' ? `there is no table ${path}` : `the table ${path} ${UNREADABLE[fault]}`,
    fault === 'missing' ? 'put it beside the study, or write its name as it is' : UNREADABLE_MEND[fault],
  ]
}
