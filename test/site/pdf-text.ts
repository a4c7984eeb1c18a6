/** What a PDF of the browser says, sheet by sheet: enough of the format for what the browser writes, no more. */
import { inflateSync } from 'node:zlib'

/** Objects by number: dictionary as text, stream unpacked. */
interface PdfObject {
  readonly dictionary: string
  readonly stream: string
}

/**
 * The words on each sheet in the order of drawing, what stands in the margins included.
 * Source: ISO 32000-1, 7.7.3 (pages), 9.4.3 (showing text), 9.10.3 (ToUnicode).
 */
export function sheetsOf(pdf: Buffer): string[] {
  const objects = objectsOf(pdf)
  const sheets = [...objects.values()].filter(({ dictionary }) => /\/Type\s*\/Page\b(?!s)/.test(dictionary))
  return sheets.map(({ dictionary }) => {
    const fonts = fontsOf(dictionary, objects)
    const contents = /\/Contents (\d+) 0 R/.exec(dictionary)?.[1] ?? ''
    return textOf(objects.get(contents)?.stream ?? '', fonts)
  })
}

/** Where marked elements lie, by id: the sheet, from 1, and the height from its foot, in points. */
export function placesIn(pdf: Buffer): Map<string, { readonly sheet: number; readonly height: number }> {
  const text = pdf.toString('latin1')
  const sheets = [...objectsOf(pdf)]
    .filter(([, { dictionary }]) => /\/Type\s*\/Page\b(?!s)/.test(dictionary))
    .map(([number]) => number)
  const found = text.matchAll(/\/(\S+) \[(\d+) 0 R \/XYZ \S+ (\S+) \S+\]/g)
  return new Map(
    [...found].map(([, name = '', sheet = '', height]) => [
      name,
      { sheet: sheets.indexOf(sheet) + 1, height: Number(height) },
    ]),
  )
}

function objectsOf(pdf: Buffer): Map<string, PdfObject> {
  const text = pdf.toString('latin1')
  const starts = [...text.matchAll(/(?:^|\n)(\d+) 0 obj\n/g)]
  return new Map(
    starts.map((start) => {
      const from = start.index + start[0].length
      const end = text.indexOf('endobj', from)
      const stream = text.indexOf('stream\n', from)
      if (stream === -1 || end < stream)
        return [start[1] ?? '', { dictionary: text.slice(from, end), stream: '' }]
      const dictionary = text.slice(from, stream)
      const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1])
      const bytes = pdf.subarray(stream + 7, stream + 7 + length)
      const plain = dictionary.includes('/FlateDecode') ? inflateSync(bytes) : bytes
      return [start[1] ?? '', { dictionary, stream: plain.toString('latin1') }]
    }),
  )
}

type Glyphs = ReadonlyMap<string, string>

function fontsOf(page: string, objects: ReadonlyMap<string, PdfObject>): Map<string, Glyphs> {
  const named = [...(/\/Font\s*<<([^>]*)>>/.exec(page)?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)]
  return new Map(
    named.map(([, name = '', number = '']) => {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(number)?.dictionary ?? '')?.[1] ?? ''
      return [name, glyphsOf(objects.get(map)?.stream ?? '')]
    }),
  )
}

/** Four hexadecimal digits a glyph to its letters. */
function glyphsOf(map: string): Glyphs {
  const glyphs = new Map<string, string>()
  for (const [block] of map.matchAll(/beginbfchar[\s\S]*?endbfchar/g))
    for (const [, glyph = '', letters = ''] of block.matchAll(/<(\w+)> <(\w+)>/g))
      glyphs.set(glyph.toUpperCase(), lettersOf(letters))
  for (const [block] of map.matchAll(/beginbfrange[\s\S]*?endbfrange/g))
    for (const [, low = '', high = '', first = ''] of block.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g))
      for (let glyph = Number.parseInt(low, 16); glyph <= Number.parseInt(high, 16); glyph++)
        glyphs.set(
          glyph.toString(16).padStart(4, '0').toUpperCase(),
          String.fromCodePoint(Number.parseInt(first, 16) + glyph - Number.parseInt(low, 16)),
        )
  return glyphs
}

function lettersOf(hex: string): string {
  return Buffer.from(hex, 'hex').swap16().toString('utf16le')
}

function textOf(content: string, fonts: ReadonlyMap<string, Glyphs>): string {
  let glyphs: Glyphs = new Map()
  let text = ''
  for (const [, font, shown, end] of content.matchAll(/\/(\w+) \S+ Tf|<([0-9A-Fa-f]+)>|(\bET\b)/g)) {
    if (font !== undefined) glyphs = fonts.get(font) ?? new Map()
    if (shown !== undefined)
      text += (shown.match(/.{4}/g) ?? []).map((glyph) => glyphs.get(glyph.toUpperCase()) ?? ' ').join('')
    if (end !== undefined) text += ' '
  }
  return text.replace(/[\s\u00a0]+/g, ' ')
}
