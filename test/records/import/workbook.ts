/** An .xlsx workbook put together by hand: the parts of its package as XML, stored in a zip archive. */
import { crc32 } from 'node:zlib'

/** Source: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16; method 0 is stored. @param size said of each part, where it is to differ */
export function stored(parts: Readonly<Record<string, string>>, size?: number): Buffer {
  const [files, index]: [Buffer[], Buffer[]] = [[], []]
  let offset = 0
  for (const [name, text] of Object.entries(parts)) {
    const [path, bytes] = [Buffer.from(name), Buffer.from(text)]
    const facts = Buffer.alloc(26)
    facts.writeUInt16LE(20, 0)
    facts.writeUInt32LE(crc32(bytes), 10)
    facts.writeUInt32LE(bytes.length, 14)
    facts.writeUInt32LE(size ?? bytes.length, 18)
    facts.writeUInt16LE(path.length, 22)
    const local = Buffer.concat([Buffer.from('PK\u0003\u0004'), facts, path, bytes])
    const tail = Buffer.alloc(14)
    tail.writeUInt32LE(offset, 10)
    index.push(Buffer.concat([Buffer.from('PK\u0001\u0002\u0014\u0000'), facts, tail, path]))
    files.push(local)
    offset += local.length
  }
  const directory = Buffer.concat(index)
  const end = Buffer.alloc(22)
  end.write('PK\u0005\u0006', 0, 'latin1')
  end.writeUInt16LE(index.length, 8)
  end.writeUInt16LE(index.length, 10)
  end.writeUInt32LE(directory.length, 12)
  end.writeUInt32LE(offset, 16)
  return Buffer.concat([...files, directory, end])
}

interface Parts {
  readonly rows: string
  readonly merged?: readonly string[]
  readonly strings?: readonly string[]
  /** Formats of cells by style, as codes of the spreadsheet. */
  readonly formats?: readonly string[]
  readonly since1904?: boolean
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships'

/** A workbook of one sheet, "Bench". Source: ECMA-376 part 1, 18.2 to 18.8. */
export function workbook({
  rows,
  merged = [],
  strings = [],
  formats = [],
  since1904 = false,
}: Parts): Buffer {
  const relation = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${RELATIONS}/${kind}" Target="${target}"/>`
  const cells = merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('')
  return stored({
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}">${relation('r1', 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}">${relation('r1', 'worksheet', 'worksheets/sheet1.xml')}${relation('r2', 'sharedStrings', 'sharedStrings.xml')}${relation('r3', 'styles', 'styles.xml')}</Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><workbookPr${since1904 ? ' date1904="1"' : ''}/><sheets><sheet name="Bench" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/sharedStrings.xml': `<sst xmlns="${MAIN}">${strings.map((text) => `<si>${text}</si>`).join('')}</sst>`,
    'xl/styles.xml': `<styleSheet xmlns="${MAIN}"><numFmts>${formats.map((code, place) => `<numFmt numFmtId="${164 + place}" formatCode="${code}"/>`).join('')}</numFmts><cellXfs>${['<xf numFmtId="0"/>', ...formats.map((_, place) => `<xf numFmtId="${164 + place}"/>`)].join('')}</cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${cells === '' ? '' : `<mergeCells>${cells}</mergeCells>`}</worksheet>`,
  })
}
