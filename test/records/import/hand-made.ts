/** Workbooks made by hand, part by part, as no library would write them. */
import { crc32, deflateRawSync } from 'node:zlib'

export interface ZipPart {
  readonly name: string
  readonly bytes: Buffer
  /** Size that the archive claims for the unpacked part. */
  readonly claimed?: number
  readonly flags?: number
}

/** A zip archive of parts; every second one is packed. */
export function zipOf(parts: readonly ZipPart[]): Buffer {
  const locals: Buffer[] = []
  const central: Buffer[] = []
  let offset = 0
  parts.forEach(({ name, bytes, claimed = bytes.length, flags = 0 }, index) => {
    const packs = index % 2 === 1
    const data = packs ? deflateRawSync(bytes) : bytes
    const label = Buffer.from(name)
    const head = Buffer.alloc(26)
    head.writeUInt16LE(20, 0)
    head.writeUInt16LE(flags, 2)
    head.writeUInt16LE(packs ? 8 : 0, 4)
    head.writeUInt32LE(crc32(bytes), 10)
    head.writeUInt32LE(data.length, 14)
    head.writeUInt32LE(claimed, 18)
    head.writeUInt16LE(label.length, 22)
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), head, label, data])
    const tail = Buffer.alloc(14)
    tail.writeUInt32LE(offset, 10)
    const entry = [Buffer.from('PK\x01\x02', 'latin1'), Buffer.from([20, 0]), head, tail, label]
    central.push(Buffer.concat(entry))
    locals.push(local)
    offset += local.length
  })
  const list = Buffer.concat(central)
  const end = Buffer.alloc(18)
  end.writeUInt16LE(parts.length, 4)
  end.writeUInt16LE(parts.length, 6)
  end.writeUInt32LE(list.length, 8)
  end.writeUInt32LE(offset, 12)
  return Buffer.concat([...locals, list, Buffer.from('PK\x05\x06', 'latin1'), end])
}

export interface HandMade {
  /** Content of sheetData. */
  readonly rows: string
  readonly merged?: readonly string[]
  readonly strings?: readonly string[]
  /** Codes of number formats by the number of the cell's style from 1 on. */
  readonly formats?: readonly string[]
  readonly since1904?: boolean
  /** The sheet's columns, as the element cols holds them. */
  readonly columns?: string
  /** A second sheet named "Lists" that the workbook hides. */
  readonly hidden?: { readonly state: 'hidden' | 'veryHidden'; readonly rows: string }
}

const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'

/** A workbook of one sheet named "Bench". */
export function workbookOf({
  rows,
  merged = [],
  strings = [],
  formats = [],
  since1904,
  columns = '',
  hidden,
}: HandMade): Buffer {
  const part = (name: string, text: string): ZipPart => ({
    name,
    bytes: Buffer.from(`<?xml version="1.0" encoding="UTF-8"?>${text}`),
  })
  const relations = (...all: readonly (readonly [string, string])[]) =>
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all
      .map(
        ([type, target], index) =>
          `<Relationship Id="r${index + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
      )
      .join('')}</Relationships>`
  const merges = merged.map((reference) => `<mergeCell ref="${reference}"/>`).join('')
  return zipOf([
    part('_rels/.rels', relations(['officeDocument', 'book/main.xml'])),
    part(
      'book/main.xml',
      `<x:workbook xmlns:x="a" xmlns:r="${OFFICE}"><x:workbookPr date1904="${since1904 === true ? 1 : 0}"/><x:sheets><x:sheet name="Bench" sheetId="1" r:id="r1"/>${hidden === undefined ? '' : `<x:sheet name="Lists" sheetId="2" state="${hidden.state}" r:id="r4"/>`}</x:sheets></x:workbook>`,
    ),
    part(
      'book/_rels/main.xml.rels',
      relations(
        ['worksheet', 'bench.xml'],
        ['sharedStrings', '/book/strings.xml'],
        ['styles', 'styles.xml'],
        ['worksheet', 'lists.xml'],
      ),
    ),
    part(
      'book/bench.xml',
      `<worksheet ${MAIN}>${columns === '' ? '' : `<cols>${columns}</cols>`}<sheetData>${rows}</sheetData>${merges === '' ? '' : `<mergeCells>${merges}</mergeCells>`}</worksheet>`,
    ),
    part('book/lists.xml', `<worksheet ${MAIN}><sheetData>${hidden?.rows ?? ''}</sheetData></worksheet>`),
    part('book/strings.xml', `<sst ${MAIN}>${strings.map((one) => `<si>${one}</si>`).join('')}</sst>`),
    part(
      'book/styles.xml',
      `<styleSheet ${MAIN}><numFmts>${formats
        .map((code, index) => `<numFmt numFmtId="${164 + index}" formatCode="${code}"/>`)
        .join('')}</numFmts><cellXfs><xf numFmtId="0"/>${formats
        .map((_, index) => `<xf numFmtId="${164 + index}"/>`)
        .join('')}</cellXfs></styleSheet>`,
    ),
  ])
}
