/** A page of content/methods: a heading in YAML and text in Markdown, without program text. */
import { loadYaml } from './load-yaml.ts'
import type { FileReport } from './report.ts'
import type { MethodHeading } from './types.ts'

export interface MethodPage { readonly id: string; readonly title: string; readonly summary: string; readonly order: number; readonly body: string }

const HEADING = /^\ufeff?---\r?\n([\s\S]*?)\r?\n---\r?\n/

/** The page; undefined where heading or text is at fault. */
export function readMethodPage(id: string, text: string, report: FileReport): MethodPage | undefined {
  const heading = HEADING.exec(text)
  if (heading === null) {
    report.atPlace(1, 1, 'key-missing', 'the page has no heading', 'begin with ---, then title, summary and order, then ---')
    return undefined
  }
  const before = report.count()
  // Two lines of blanks keep the heading's lines where they are in the file.
  const record = loadYaml('method', `\n${heading[1]}`, report) as MethodHeading | undefined
  reportProgramText(text, heading[0].split('\n').length - 1, report)
  if (record === undefined || report.count() > before) return undefined
  return { id, title: record.title, summary: record.summary, order: record.order, body: text.slice(heading[0].length) }
}

/** Import, export, braces and raw tags would run or embed something; code blocks may show them. */
function reportProgramText(text: string, from: number, report: FileReport): void {
  let fenced = false
  for (const [index, line] of text.split('\n').entries()) {
    if (index < from) continue
    if (/^\s*(```|~~~)/.test(line)) fenced = !fenced
    if (fenced) continue
    const bare = line.replace(/`[^`]*`/g, (code) => ' '.repeat(code.length))
    const column = bare.search(/^\s*(import|export)\b|[{}]|<[A-Za-z/!]/)
    if (column >= 0) report.atPlace(index + 1, column + 1, 'method-program', 'method pages hold text, not program text: import, export, { } and tags are refused', 'put it in a code block or write it in words')
  }
}
