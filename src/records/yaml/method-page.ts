/** A page of content/methods: a heading in YAML and text in Markdown, without program text. */
import { reportConflicts } from './conflict-markers.ts'
import { loadYaml } from './load-yaml.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { wrongLinksIn } from './page-links.ts'
import { programTextIn, withoutCode } from './program-text.ts'
import { reportUnseenLines } from './unseen-characters.ts'
import type { MethodHeading } from '../schema/loaded-records.ts'

export interface MethodPage {
  readonly id: string
  readonly title: string
  readonly summary: string
  readonly order: number
  readonly body: string
}

const HEADING = /^\ufeff?---\r?\n([\s\S]*?)\r?\n---\r?\n/

/**
 * A page's heading, its marks blanked and all else where it is in the page; empty where there is none. What is sought
 * in a page's YAML is sought here: its text is not YAML.
 */
export function headingOf(text: string): string {
  const heading = HEADING.exec(text)?.[0] ?? ''
  return heading.replace(/^(\ufeff?)---/, '$1   ').replace(/---\r?\n$/, '')
}

/**
 * @param report whose text is the page's heading
 * @returns the page; undefined where heading or text is at fault
 */
export function readMethodPage(id: string, text: string, report: FileReport): MethodPage | undefined {
  if (reportConflicts(text, report)) return undefined
  const heading = HEADING.exec(text)
  if (heading === null) {
    report.atPosition(
      1,
      1,
      'key-missing',
      'the page has no heading',
      'begin with ---, then title, summary and order, then ---',
    )
    return undefined
  }
  const before = report.count()
  const record = loadYaml('method', headingOf(text), report) as MethodHeading | undefined
  const lines = text.slice(heading[0].length).split(/\r?\n/)
  const from = heading[0].split('\n').length
  for (const { line, column, message, mend } of programTextIn(lines, from))
    report.atPosition(line, column, 'method-program', message, mend)
  for (const { line, column, message, mend } of wrongLinksIn(withoutCode(lines), from))
    report.atPosition(line, column, 'method-link', message, mend)
  reportUnseenLines(lines, from, report)
  if (record === undefined || report.count() > before) return undefined
  return {
    id,
    title: record.title,
    summary: record.summary,
    order: record.order,
    body: text.slice(heading[0].length),
  }
}
