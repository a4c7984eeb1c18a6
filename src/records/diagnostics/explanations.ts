/** Every code with its explanation, by family: for the command that explains one and for the page of them all. */
import { type Code, CODES } from './codes.ts'
import { OF_CRITERIA } from './explained/criteria.ts'
import type { Explanation } from './explained/explanation.ts'
import { OF_FILES } from './explained/files.ts'
import { OF_ISSUED, OF_RECORDS } from './explained/records.ts'
import { OF_STUDIES } from './explained/studies.ts'
import { OF_VALUES } from './explained/values.ts'

const EXPLANATIONS: Readonly<Record<Code, Explanation>> = {
  ...OF_FILES,
  ...OF_VALUES,
  ...OF_RECORDS,
  ...OF_ISSUED,
  ...OF_STUDIES,
  ...OF_CRITERIA,
}

export function explanationOf(code: Code): Explanation {
  return EXPLANATIONS[code]
}

export interface Family {
  /** For addresses within a page. */
  readonly id: string
  readonly title: string
  readonly codes: readonly Code[]
}

const family = (id: string, title: string, of: Readonly<Record<string, Explanation>>): Family => ({
  id,
  title,
  codes: (Object.keys(CODES) as Code[]).filter((code) => Object.hasOwn(of, code)),
})

/** Families in the order in which a record is read. */
export const FAMILIES: readonly Family[] = [
  family('files', 'Files and their text', OF_FILES),
  family('values', 'Keys and values', OF_VALUES),
  family('records', 'Records beside each other', OF_RECORDS),
  family('issued', 'Issued documents', OF_ISSUED),
  family('studies', 'Studies', OF_STUDIES),
  family('criteria', 'Acceptance criteria', OF_CRITERIA),
]

/** What a code says, as a sentence. */
export function titleOf(code: Code): string {
  const text: string = CODES[code]
  return `${text[0]?.toUpperCase()}${text.slice(1)}.`
}
