/**
 * Elements and text of a workbook's XML, one after the other: no tree is built, since a sheet has hundreds of thousands
 * of cells. Names are local, entities those that XML defines itself; a document with a DOCTYPE is refused.
 */
import { WorkbookFault } from './zip.ts'

export interface XmlHandler {
  readonly open: (name: string, attribute: (name: string) => string | undefined) => void
  readonly close?: (name: string) => void
  readonly text?: (text: string) => void
}

/** @throws WorkbookFault for a text that is not well-formed */
export function scanXml(xml: string, { open, close, text }: XmlHandler): void {
  let place = 0
  while (place < xml.length) {
    const mark = xml.indexOf('<', place)
    const until = mark < 0 ? xml.length : mark
    if (place < until && text !== undefined) text(decoded(xml.slice(place, until)))
    if (mark < 0) return
    if (xml.startsWith('<!--', mark)) place = behind(xml, '-->', mark)
    else if (xml.startsWith('<?', mark)) place = behind(xml, '?>', mark)
    else if (xml.startsWith('<![CDATA[', mark)) {
      place = behind(xml, ']]>', mark)
      text?.(xml.slice(mark + 9, place - 3))
    } else if (xml.startsWith('<!', mark)) throw malformed()
    else {
      const end = tagEnd(xml, mark)
      place = end + 1
      tag(xml.slice(mark + 1, end), open, close)
    }
  }
}

function malformed(): WorkbookFault {
  return new WorkbookFault(
    'the workbook is damaged',
    'open it in a spreadsheet program and save it anew as .xlsx',
  )
}

function behind(xml: string, mark: string, from: number): number {
  const found = xml.indexOf(mark, from)
  if (found < 0) throw malformed()
  return found + mark.length
}

/** The bracket that ends a tag; one within quotes is a sign of a value. */
function tagEnd(xml: string, from: number): number {
  let end = xml.indexOf('>', from)
  let quote = nextQuote(xml, from)
  while (0 <= quote && quote < end) {
    const closing = xml.indexOf(xml[quote] ?? '', quote + 1)
    if (closing < 0) throw malformed()
    end = closing < end ? end : xml.indexOf('>', closing)
    quote = nextQuote(xml, closing + 1)
  }
  if (end < 0) throw malformed()
  return end
}

const QUOTE = /["'>]/g

/** The next quote before the tag's end; negative where there is none. */
function nextQuote(xml: string, from: number): number {
  QUOTE.lastIndex = from
  const found = QUOTE.exec(xml)
  return found === null || found[0] === '>' ? -1 : found.index
}

function tag(inner: string, open: XmlHandler['open'], close: XmlHandler['close']): void {
  if (inner.startsWith('/')) {
    close?.(localName(inner.slice(1).trim()))
    return
  }
  const empty = inner.endsWith('/')
  const body = empty ? inner.slice(0, -1) : inner
  const space = body.search(/\s/)
  const name = localName(space < 0 ? body : body.slice(0, space))
  open(name, (wanted) => attributeIn(body, wanted))
  if (empty) close?.(name)
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1)
}

const patterns = new Map<string, RegExp>()

function attributeIn(body: string, name: string): string | undefined {
  let pattern = patterns.get(name)
  if (pattern === undefined) {
    pattern = new RegExp(`\\s(?:[\\w.-]+:)?${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`)
    patterns.set(name, pattern)
  }
  const found = pattern.exec(body)
  return found === null ? undefined : decoded(found[1] ?? found[2] ?? '')
}

const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" }

function decoded(text: string): string {
  return text.includes('&')
    ? text.replace(/&(?:#x([0-9a-fA-F]{1,6})|#(\d{1,7})|(\w+));/g, (whole, hex, decimal, name) => {
        if (name !== undefined) return NAMED[name] ?? whole
        const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16)
        return code <= 0x10ffff ? String.fromCodePoint(code) : whole
      })
    : text
}
