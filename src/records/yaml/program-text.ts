/**
 * Finds program text in a method page. Such a page is compiled to code, so a doubtful line is refused rather
 * than weighed: only a code
 * block that every reader of Markdown takes for one may hold braces and tags.
 */

export interface ProgramText {
  readonly line: number
  readonly column: number
  readonly message: string
  readonly mend: string
}

/**
 * The one form of code block accepted: at the very beginning of a line, with nothing but the name of a
 * language.
 */
const OPENING = /^(`{3,})[A-Za-z0-9-]*[ \t]*$/
/**
 * Import, export, braces and tags run or embed something. Code within a line is no shelter: which marks pair
 * depends on other lines.
 */
const PROGRAM = /^\s*(?:import|export)\b|[{}]|<[^\s\d=]/
const REFUSED = 'method pages hold text only: import, export, { } and tags are not allowed'
const FIX = 'put it in a code block or write it in words'

/**
 * Any other mark of a code block: indented, in a list, of waves, with more than a language's name after it.
 */
const MARKS = /```|~~~/
const DOUBTFUL = 'this code block may not end where it seems to'
const BEGIN_PLAINLY =
  'begin a code block with ``` at the beginning of a line, and only the name of a language after it'

/**
 * @param lines of the page's text, without its heading
 * @param from line of the file that the first of them is, from 1
 */
export function programTextIn(lines: readonly string[], from: number): ProgramText[] {
  const faults: ProgramText[] = []
  const shown = withoutCode(lines)
  lines.forEach((line, index) => {
    const add = (column: number, message: string, mend: string) => {
      faults.push({ line: from + index, column: column + 1, message, mend })
    }
    // A reader of Markdown begins a new line here, an editor often does not.
    if (line.includes('\r'))
      add(
        line.indexOf('\r'),
        'a line contains a carriage return',
        'save the page with one kind of line ending',
      )
    const text = shown[index] ?? ''
    if (MARKS.test(text)) add(text.search(MARKS), DOUBTFUL, BEGIN_PLAINLY)
    else if (PROGRAM.test(text)) add(text.search(PROGRAM), REFUSED, FIX)
  })
  return [...secondHeading(lines, from), ...faults]
}

/** The same lines, each one of a code block empty: what stands there is only shown. */
export function withoutCode(lines: readonly string[]): string[] {
  let fence = 0
  return lines.map((line) => {
    const inside = fence > 0
    if (inside) fence = closes(line, fence) ? 0 : fence
    else fence = OPENING.exec(line)?.[1]?.length ?? 0
    return inside || fence > 0 ? '' : line
  })
}

/** As many marks as the opening, or more, alone on their line. */
function closes(line: string, fence: number): boolean {
  return fence <= (/^[ \t]*(`{3,})[ \t]*$/.exec(line)?.[1]?.length ?? 0)
}

/** A second heading is read by the site's builder, which lets it name a file of program text as layout. */
function secondHeading(lines: readonly string[], from: number): ProgramText[] {
  const first = lines.findIndex((line) => line.replace(/^\ufeff/, '').trim() !== '')
  if (first < 0 || !/^\ufeff?\s*(?:---|\+\+\+)/.test(lines[first] ?? '')) return []
  const message = 'the text begins with a second heading'
  return [{ line: from + first, column: 1, message, mend: 'keep one heading, with title, summary and order' }]
}
