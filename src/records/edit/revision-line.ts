/** A lot's YAML text with one revision more: the text is edited, so that everything else stays byte for byte. */
import type { Moment } from '../../core/measure/moment.ts'

/** What an issue writes into the lot's record. */
export interface RevisionLine {
  readonly revision: number
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn: boolean
  /** The lot that replaces a withdrawn one; null without one. */
  readonly replacedBy: string | null
}

/** The line for `revisions:` in the lot's record. @param digest of the issued document */
export function revisionLine(issue: RevisionLine, digest: string): string {
  const parts = [
    `number: ${issue.revision}`,
    `date: ${issue.date}`,
    `by: ${scalar(issue.by)}`,
    `function: ${scalar(issue.function)}`,
    `reason: ${scalar(issue.reason)}`,
    ...(issue.withdrawn ? ['withdrawn: yes'] : []),
    ...(issue.replacedBy === null ? [] : [`replaced-by: ${issue.replacedBy}`]),
    `digest: ${digest}`,
  ]
  return `  - { ${parts.join(', ')} }`
}

/** Plain where YAML reads plain words back as the same text, double-quoted (JSON is YAML) otherwise. */
export function scalar(text: string): string {
  return /^[A-Za-z][A-Za-z0-9 .-]*[A-Za-z0-9.]$/.test(text) && !/^(true|false|null|yes|no)$/i.test(text)
    ? text
    : JSON.stringify(text)
}

/**
 * A lot's YAML text with one revision more; everything else stays byte for byte.
 * Note: `revisions:` is looked for at the left margin, as a block list; a flow list there is not extended but
 * refused by the caller's re-read.
 */
export function withRevisionLine(text: string, line: string): string {
  const newline = text.includes('\r\n') ? '\r\n' : '\n'
  const { record, ending } = beforeEndMark(text)
  const lines = record.replace(/\s*$/, '').split(/\r?\n/)
  const start = lines.findIndex((candidate) => /^revisions:\s*(#.*)?$/.test(candidate))
  if (start < 0) return `${[...lines, '', 'revisions:', line].join(newline)}${newline}${ending}`
  const after = lines.findIndex((candidate, index) => start < index && /^[^\s#-]/.test(candidate))
  let end = after < 0 ? lines.length : after
  while (start + 1 < end && /^\s*(#.*)?$/.test(lines[end - 1] ?? '')) end -= 1
  const item = asIndented(line, lines.slice(start + 1, end))
  return `${[...lines.slice(0, end), item, ...lines.slice(end)].join(newline)}${newline}${ending}`
}

/** An item stands as far from the margin as those before it, however these are written. */
function asIndented(line: string, before: readonly string[]): string {
  const indent = before.flatMap((one) => /^( *)-(?=\s|$)/.exec(one)?.[1] ?? [])[0]
  return indent === undefined ? line : `${indent}${line.trimStart()}`
}

/** A record may end in YAML's own mark of an end, after which nothing more of it can stand; before it begins such a mark ends nothing. */
function beforeEndMark(text: string): { readonly record: string; readonly ending: string } {
  const mark = [...text.matchAll(/^\.\.\.(?=\s|$)/gm)].find(({ index }) => hasBegun(text.slice(0, index)))
  return mark === undefined
    ? { record: text, ending: '' }
    : { record: text.slice(0, mark.index), ending: text.slice(mark.index) }
}

/** Whether a key stands at the left margin. */
function hasBegun(text: string): boolean {
  return /^[^\s#.%-]/m.test(text)
}
