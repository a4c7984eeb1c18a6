/**
 * The sheets of an .xlsx workbook. Own code, since an import must know what a library reads past: cells in error, merged
 * cells, numbers that the sheet shows in per cent, the decimals that it shows.
 * Source: ECMA-376 part 1, 18.2 (workbook), 18.3 (sheets), 18.4 (shared strings), 18.8 (styles).
 */
import { posix } from 'node:path'
import {
  type CellValue,
  columnOfLetters,
  isBlank,
  type MergedCells,
  type Sheet,
  type SheetRow,
} from './grid.ts'
import { type NumberFormat, numberFormat, shownNumber } from './number-format.ts'
import { scanXml } from './xml-scan.ts'
import { type Archive, openArchive, WorkbookFault } from './zip.ts'

/** Cells of one sheet at most: 10,000 rows of a bench's table have some 300,000. */
const MOST_CELLS = 2_000_000
/** Rows that a spreadsheet has. */
const LAST_ROW = 1_048_576

/** @throws WorkbookFault for a file that is no sound workbook */
export function readWorkbook(bytes: Buffer): readonly Sheet[] {
  if (bytes.length < 22) throw new WorkbookFault('the file is no .xlsx workbook', 'save it as .xlsx')
  const archive = openArchive(bytes)
  const main = mainPart(archive)
  const workbook = textOf(archive, main)
  if (workbook === null)
    throw new WorkbookFault('the file is an archive without a workbook', 'save it as .xlsx')
  const { sheets, since1904 } = sheetList(workbook)
  const targets = relations(archive, main)
  const near = (kind: string) => [...targets.values()].find(({ type }) => type.endsWith(`/${kind}`))?.path
  const context: Context = {
    since1904,
    strings: sharedStrings(textOf(archive, near('sharedStrings') ?? 'xl/sharedStrings.xml')),
    formats: cellFormats(textOf(archive, near('styles') ?? 'xl/styles.xml')),
  }
  return sheets.flatMap(({ name, id, hidden }) => {
    const target = targets.get(id)
    // A sheet that is a chart alone has no cells.
    if (target !== undefined && !target.type.endsWith('/worksheet')) return []
    const xml = target === undefined ? null : textOf(archive, target.path)
    if (xml === null)
      throw new WorkbookFault(`the sheet "${name}" is missing in the file`, 'save it anew as .xlsx')
    const sheet = readSheet(name, xml, context)
    return [hidden ? { ...sheet, hidden: true as const } : sheet]
  })
}

interface Context {
  readonly since1904: boolean
  readonly strings: readonly string[]
  readonly formats: readonly NumberFormat[]
}

function textOf(archive: Archive, name: string): string | null {
  return (
    archive
      .read(name)
      ?.toString('utf8')
      .replace(/^\ufeff/, '') ?? null
  )
}

function mainPart(archive: Archive): string {
  const found = [...relations(archive, '').values()].find(({ type }) => type.endsWith('/officeDocument'))
  return found?.path ?? 'xl/workbook.xml'
}

interface Relation {
  readonly path: string
  readonly type: string
}

/** What a part of the package refers to, by id. @param part its path; empty for the package itself */
function relations(archive: Archive, part: string): Map<string, Relation> {
  const folder = posix.dirname(part)
  const xml = textOf(archive, posix.join(folder, '_rels', `${posix.basename(part)}.rels`))
  const found = new Map<string, Relation>()
  if (xml !== null)
    scanXml(xml, {
      open: (name, attribute) => {
        const [id, target] = [attribute('Id'), attribute('Target')]
        if (name !== 'Relationship' || id === undefined || target === undefined) return
        const path = target.startsWith('/') ? target.slice(1) : posix.join(folder, target)
        found.set(id, { path, type: attribute('Type') ?? '' })
      },
    })
  return found
}

interface ListedSheet {
  readonly name: string
  readonly id: string
  readonly hidden: boolean
}

function sheetList(xml: string): { sheets: ListedSheet[]; since1904: boolean } {
  const sheets: ListedSheet[] = []
  let since1904 = false
  scanXml(xml, {
    open: (name, attribute) => {
      if (name === 'workbookPr') since1904 = isOn(attribute('date1904'))
      // "hidden", or "veryHidden" to what only a program shows again.
      if (name === 'sheet')
        sheets.push({
          name: attribute('name') ?? '',
          id: attribute('id') ?? '',
          hidden: /hidden$/i.test(attribute('state') ?? ''),
        })
    },
  })
  return { sheets, since1904 }
}

/** Text of strings and of cells, rich text joined, without what says how it is read aloud. */
function collector(): {
  readonly open: (name: string) => void
  readonly close: (name: string) => void
  readonly text: (text: string) => void
  readonly take: () => string
} {
  let [inText, phonetic, text] = [false, false, '']
  return {
    open: (name) => {
      if (name === 't') inText = true
      if (name === 'rPh') phonetic = true
    },
    close: (name) => {
      if (name === 't') inText = false
      if (name === 'rPh') phonetic = false
    },
    text: (part) => {
      if (inText && !phonetic) text += part
    },
    take: () => {
      const whole = text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex: string) =>
        String.fromCharCode(Number.parseInt(hex, 16)),
      )
      text = ''
      return whole
    },
  }
}

function sharedStrings(xml: string | null): string[] {
  const strings: string[] = []
  const string = collector()
  if (xml !== null)
    scanXml(xml, {
      open: string.open,
      close: (name) => {
        string.close(name)
        if (name === 'si') strings.push(string.take())
      },
      text: string.text,
    })
  return strings
}

/** Formats of cells by the number of their style. */
function cellFormats(xml: string | null): NumberFormat[] {
  const codes = new Map<number, string>()
  const formats: NumberFormat[] = []
  let inCells = false
  if (xml !== null)
    scanXml(xml, {
      open: (name, attribute) => {
        const id = Number(attribute('numFmtId') ?? 0)
        if (name === 'numFmt') codes.set(id, attribute('formatCode') ?? '')
        if (name === 'cellXfs') inCells = true
        if (name === 'xf' && inCells) formats.push(numberFormat(id, codes.get(id)))
      },
      close: (name) => {
        if (name === 'cellXfs') inCells = false
      },
    })
  return formats
}

/** What a cell's element says of it. */
interface OpenCell {
  readonly column: number
  readonly type: string
  readonly style: number
  value: string | null
  formula: boolean
}

function readSheet(name: string, xml: string, context: Context): Sheet {
  const rows: SheetRow[] = []
  const merged: MergedCells[] = []
  const hiddenRows: number[] = []
  const hiddenColumns: [number, number][] = []
  const inline = collector()
  let [row, next, count] = [0, 0, 0]
  let cells = new Map<number, CellValue>()
  let cell: OpenCell | null = null
  let inValue = false
  scanXml(xml, {
    open: (element, attribute) => {
      if (element === 'row') {
        row = Number(attribute('r') ?? row + 1)
        if (!(0 < row && row <= LAST_ROW)) throw damagedSheet(name)
        next = 0
        cells = new Map()
        if (isOn(attribute('hidden'))) hiddenRows.push(row)
      } else if (element === 'col') {
        if (isOn(attribute('hidden')))
          hiddenColumns.push([Number(attribute('min')) - 1, Number(attribute('max')) - 1])
      } else if (element === 'c') {
        const letters = /^[A-Z]+/.exec(attribute('r') ?? '')?.[0]
        const column = letters === undefined ? next : (columnOfLetters(letters) ?? next)
        next = column + 1
        count += 1
        if (MOST_CELLS < count)
          throw new WorkbookFault(
            `the sheet "${name}" has more than ${MOST_CELLS} cells`,
            'save the rows that are to be imported in a workbook of their own',
          )
        const [type, style] = [attribute('t') ?? 'n', Number(attribute('s') ?? 0)]
        cell = { column, type, style, value: null, formula: false }
      } else if (element === 'v') inValue = cell !== null
      else if (element === 'f' && cell !== null) cell.formula = true
      else if (element === 'mergeCell') merged.push(...mergedCells(attribute('ref') ?? ''))
      else inline.open(element)
    },
    close: (element) => {
      inline.close(element)
      if (element === 'v') inValue = false
      else if (element === 'c' && cell !== null) {
        const value = cellValue(cell, inline.take(), context)
        if (value !== null) cells.set(cell.column, value)
        cell = null
      } else if (element === 'row' && 0 < cells.size) rows.push({ row, cells })
    },
    text: (text) => {
      if (inValue && cell !== null) cell.value = `${cell.value ?? ''}${text}`
      else if (cell !== null) inline.text(text)
    },
  })
  return {
    ...{ name, rows: rows.sort((a, b) => a.row - b.row), merged },
    ...(hiddenRows.length === 0 ? {} : { hiddenRows }),
    ...(hiddenColumns.length === 0 ? {} : { hiddenColumns }),
  }
}

function isOn(attribute: string | undefined): boolean {
  return /^(?:1|true)$/.test(attribute ?? '')
}

function damagedSheet(name: string): WorkbookFault {
  return new WorkbookFault(
    `the sheet "${name}" is damaged`,
    'open it in a spreadsheet program and save it anew as .xlsx',
  )
}

/** null for a blank cell. */
function cellValue(cell: OpenCell, inlineText: string, context: Context): CellValue | null {
  const { type, value } = cell
  if (type === 'inlineStr') return textValue(inlineText)
  if (value === null || value === '') return cell.formula && type !== 'str' ? NO_RESULT : null
  switch (type) {
    case 's': {
      const shared = context.strings[Number(value)]
      return shared === undefined ? { kind: 'fault', text: `shared text ${value}` } : textValue(shared)
    }
    case 'e':
      return { kind: 'fault', text: value }
    case 'b':
      return { kind: 'text', text: value === '1' ? 'TRUE' : 'FALSE' }
    case 'd':
      return {
        kind: 'date',
        text: value.replace(/(?:T00:00(?::00(?:\.0+)?)?)?Z?$/, '').replace(/\.\d+$/, ''),
      }
    case 'str':
      return textValue(value)
    default:
      return shownNumber(value, context.formats[cell.style] ?? numberFormat(0, undefined), context.since1904)
  }
}

/** A formula that no program has computed yet. */
const NO_RESULT: CellValue = { kind: 'fault', text: 'a formula without a stored result' }

function textValue(text: string): CellValue | null {
  return isBlank(text) ? null : { kind: 'text', text }
}

function mergedCells(reference: string): MergedCells[] {
  const found = /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(reference)
  if (found === null) return []
  const [, left = '', top, right = '', bottom] = found
  const columns = [columnOfLetters(left), columnOfLetters(right)] as const
  if (columns[0] === null || columns[1] === null) return []
  return [{ rows: [Number(top), Number(bottom)], columns: [columns[0], columns[1]] }]
}
