/**
 * Finds links and images of a method page that lead where a page may not: a link may run a program
 * (javascript:), and a picture from elsewhere tells its host who reads the page.
 */
import { lineAndColumn, lineStarts } from './line-and-column.ts'
import type { ProgramText } from './program-text.ts'

/** Where an image begins, a link's address in round brackets, or the address of a definition. */
const PLACE = /!\[|\](\(|:)\s*<?([^\s)>]*)/g
/** An image with its address beside it; its words may hold brackets in pairs. */
const IMAGE = /^!\[(?:[^[\]\\]|\\.|\[[^[\]]*\])*\]\(\s*<?([^\s)>]*)/
const SCHEME = /^(?:https?:\/\/|mailto:)/i
/** Without a scheme or a host, and without a sign that Markdown would read as another one. */
const RELATIVE = /^(?!\/\/)[^:&\\/?#]*(?:\/[^&\\?#]*)?(?:[?#].*)?$/

const LINK_MEND = 'write an address with https:, http: or mailto:, or a path within the site'
const IMAGE_MEND = 'put the picture into the site and write ![words](/path), with the path in the same place'

/**
 * @param lines of the page's text, without its heading, each line of a code block empty
 * @param from line of the file that the first of them is, from 1
 */
export function wrongLinksIn(lines: readonly string[], from: number): ProgramText[] {
  const text = lines.join('\n')
  const starts = lineStarts(text)
  const faults: ProgramText[] = []
  for (const match of text.matchAll(PLACE)) {
    const fault = match[1] === undefined ? imageFault(text.slice(match.index)) : linkFault(match[2] ?? '')
    if (fault === undefined) continue
    const at = match[1] === undefined ? match.index : match.index + match[0].length - (match[2] ?? '').length
    const { line, column } = lineAndColumn(starts, at)
    faults.push({ line: from + line - 1, column, ...fault })
  }
  return faults
}

type Fault = Pick<ProgramText, 'message' | 'mend'>

function imageFault(text: string): Fault | undefined {
  const address = IMAGE.exec(text)?.[1]
  if (address === undefined) return { message: 'the image has no address beside its words', mend: IMAGE_MEND }
  if (!isRelative(address))
    return { message: `the image "${address}" does not lie within the site`, mend: IMAGE_MEND }
  // Beside the page no picture is read, so that one named from there stops the build of the pages.
  return address.startsWith('/')
    ? undefined
    : { message: `the address of the image "${address}" does not begin at the site’s root`, mend: IMAGE_MEND }
}

function linkFault(address: string): Fault | undefined {
  return SCHEME.test(address) || isRelative(address)
    ? undefined
    : { message: `the link "${address}" is of a kind that no page may have`, mend: LINK_MEND }
}

function isRelative(address: string): boolean {
  return RELATIVE.test(address)
}
