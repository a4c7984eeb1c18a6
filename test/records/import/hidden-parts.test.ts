import { describe, expect, it } from 'vitest'
import { proposeTables } from '../../../src/records/import/propose-map.ts'
import { readWorkbook } from '../../../src/records/import/xlsx.ts'
import { workbookOf } from './hand-made.ts'
import { texts, told } from './imported.ts'

function row(number: number, cells: readonly string[], more = ''): string {
  const texts = cells.map((text) => `<c t="inlineStr"><is><t>${text}</t></is></c>`)
  return `<row r="${number}"${more}>${texts.join('')}</row>`
}

const HEAD = ['Bill', 'Lot', 'Date', 'Mass']
const SHIPPED = row(2, ['B-1', 'W-1', '2026-03-21', '24.8'])
const MAP = `
every: { source: works }
tables:
  - holds: shipments
    columns: { Bill: bill, Lot: lot, Date: date, Mass: { to: mass, unit: t } }
`
const BOOK = { rows: row(1, HEAD) + SHIPPED }
const LISTS = { state: 'hidden', rows: row(1, HEAD) + row(2, ['B-9', 'W-9', '2026-03-22', '9']) } as const

function read(book: Parameters<typeof workbookOf>[0], map = MAP): { told: string[]; lots: string[] } {
  const given = { map, table: readWorkbook(workbookOf(book)) }
  return { told: told(given), lots: Object.keys(texts(given)) }
}

describe('a hidden sheet', () => {
  it.each(['hidden', 'veryHidden'] as const)('is left out and said so (%s)', (state) => {
    for (const map of [MAP, MAP.replace('holds: shipments', 'holds: shipments\n    sheet: "*"')])
      expect(read({ ...BOOK, hidden: { ...LISTS, state } }, map)).toEqual({
        told: [
          'bench.csv: note: the sheet "Lists" is hidden and is left out [import-hidden] -> name it in full under sheet in the map where it is wanted, or under not-read',
        ],
        lots: ['lots/works/W-1.yaml'],
      })
  })
  it('is read where the map names it, and silent where the map leaves it out', () => {
    const named = MAP.replace('holds: shipments', 'holds: shipments\n    sheet: Lists')
    expect(read({ ...BOOK, hidden: LISTS }, named).lots).toEqual(['lots/works/W-9.yaml'])
    expect(read({ ...BOOK, hidden: LISTS }, `not-read: [Lists]${MAP}`)).toEqual({
      told: [],
      lots: ['lots/works/W-1.yaml'],
    })
  })
  it('is named in full, not by a pattern', () => {
    const named = MAP.replace('holds: shipments', 'holds: shipments\n    sheet: "List*"')
    expect(read({ ...BOOK, hidden: LISTS }, named).told).toContainEqual(
      expect.stringContaining(
        'the file has no sheet "List*" that it shows [import-sheet] -> did you mean Lists',
      ),
    )
  })
  it('is in no proposed map', () => {
    const sheets = readWorkbook(workbookOf({ ...BOOK, hidden: LISTS }))
    expect(proposeTables(sheets).map(({ sheet }) => sheet)).toEqual(['Bench'])
  })
})

describe('hidden rows and columns', () => {
  it('are read like the others, and told once a sheet', () => {
    const hidden = [3, 4, 5, 6, 7, 8].map((at) =>
      row(at, [`B-${at}`, `W-${at}`, '2026-03-21', '24.8'], ' hidden="1"'),
    )
    const { told: said, lots } = read({
      rows: BOOK.rows + hidden.join(''),
      columns: '<col min="2" max="2" hidden="1"/><col min="9" max="12" hidden="1"/>',
    })
    expect(lots).toHaveLength(7)
    expect(said).toEqual([
      'bench.csv: note: 6 hidden rows are read like the others of the sheet "Bench": 3, 4, 5, 6, 7 and 1 more [import-hidden] -> look at them in the spreadsheet; what is not wanted is left out by except or rows in the map',
      'bench.csv: note: 1 hidden column is read like the others of the sheet "Bench": B [import-hidden] -> look at it in the spreadsheet; what is not wanted is left out by ignore in the map',
    ])
  })
  it('are silent where nothing of them is read', () => {
    const map = MAP.replace('holds: shipments', 'holds: shipments\n    rows: { to: 2 }')
    const hidden = row(3, ['B-3', 'W-3', '2026-03-21', '24.8'], ' hidden="true"')
    expect(read({ rows: BOOK.rows + hidden }, map).told).not.toContainEqual(expect.stringMatching(/hidden/))
  })
  it('are those of the sheet where a table stands on its side', () => {
    const turned = HEAD.map((heading, at) =>
      row(at + 1, [heading, ['B-1', 'W-1', '2026-03-21', '24.8'][at] ?? ''], at === 3 ? ' hidden="1"' : ''),
    )
    const map = MAP.replace('holds: shipments', 'holds: shipments\n    records-in: columns')
    expect(read({ rows: turned.join(''), columns: '<col min="2" max="2" hidden="1"/>' }, map).told).toEqual([
      expect.stringContaining('1 hidden row is read like the others of the sheet "Bench": 4'),
      expect.stringContaining('1 hidden column is read like the others of the sheet "Bench": B'),
    ])
  })
})
