/** Every code with its explanation, by family: for the command that explains one and for the page of them all. */
import { CODES } from './codes.ts'
import { OF_CRITERIA } from './explained/criteria.ts'
import type { Explanation } from './explained/explanation.ts'
import { OF_FILES } from './explained/files.ts'
import { OF_IMPORTS } from './explained/imports.ts'
import { OF_ISSUED, OF_RECORDS } from './explained/records.ts'
import { OF_STUDIES } from './explained/studies.ts'
import { OF_VALUES } from './explained/values.ts'
import { IMPORT_CODES } from './import-codes.ts'

/** Every code that is explained: of diagnostics of records, and of what an import says of a spreadsheet. */
export const EXPLAINED_CODES = { ...CODES, ...IMPORT_CODES } as const

export type ExplainedCode = keyof typeof EXPLAINED_CODES

/** Whether a text is one of the codes. */
export function isExplained(text: string): text is ExplainedCode {
  return Object.hasOwn(EXPLAINED_CODES, text)
}

const EXPLANATIONS: Readonly<Record<ExplainedCode, Explanation>> = {
  ...OF_FILES,
  ...OF_VALUES,
  ...OF_RECORDS,
  ...OF_ISSUED,
  ...OF_STUDIES,
  ...OF_CRITERIA,
  ...OF_IMPORTS,
}

export function explanationOf(code: ExplainedCode): Explanation {
  return EXPLANATIONS[code]
}

export interface Family {
  /** For addresses within a page. */
  readonly id: string
  readonly title: string
  readonly codes: readonly ExplainedCode[]
}

const family = (id: string, title: string, of: Readonly<Record<string, Explanation>>): Family => ({
  id,
  title,
  codes: (Object.keys(EXPLAINED_CODES) as ExplainedCode[]).filter((code) => Object.hasOwn(of, code)),
})

/** Families in the order in which a record is read. */
export const FAMILIES: readonly Family[] = [
  family('files', 'Files and their text', OF_FILES),
  family('values', 'Keys and values', OF_VALUES),
  family('records', 'Records beside each other', OF_RECORDS),
  family('issued', 'Issued documents', OF_ISSUED),
  family('studies', 'Studies', OF_STUDIES),
  family('criteria', 'Acceptance criteria', OF_CRITERIA),
  family('imports', 'Spreadsheets', OF_IMPORTS),
]

/** What a code says, as a sentence. */
export function titleOf(code: ExplainedCode): string {
  const text: string = EXPLAINED_CODES[code]
  return `${text[0]?.toUpperCase()}${text.slice(1)}.`
}
