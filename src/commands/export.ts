/** npm run export: writes records of lots and control batches as a spreadsheet, with the map that reads it back. */
import { basename } from 'node:path'
import writeXlsxFile, { type Cell, type SheetData } from 'write-excel-file/node'
import { sourceOf } from '../core/measure/lot-id.ts'
import { isBy, type Moment } from '../core/measure/moment.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { exportMap, NOT_EXPORTED } from '../records/export/export-map.ts'
import { exportTables, type ExportedRecords } from '../records/export/export-tables.ts'
import type { ExportTable } from '../records/export/table-builder.ts'
import type { CellValue } from '../records/import/grid.ts'
import type { Records } from '../records/records.ts'
import { countWords, plural } from '../words/numbers.ts'
import { command, CommandFailure, dateOption, EXIT, run } from './program.ts'
import { readGoodContent } from './read-content.ts'
import { writeFilesWhole } from './write-whole.ts'

interface Options {
  readonly content: string
  readonly out?: string
  readonly source?: string[]
  readonly from?: Moment
  readonly to?: Moment
}

await run(async () => {
  const options = command('export', 'Write lots and their control batches as a spreadsheet.')
    .option('--out <file>', 'the spreadsheet to write, ending in .xlsx')
    .option('--source <ids...>', 'only lots of these sources')
    .option('--from <date>', 'only lots whose production ended on this day or later', dateOption)
    .option('--to <date>', 'only lots whose production ended by this day', dateOption)
    .parse()
    .opts<Options>()
  const { out } = options
  if (out === undefined || !/\.xlsx$/i.test(out))
    throw new CommandFailure('No spreadsheet is named to write.', EXIT.wrongUse, 'give --out FILE.xlsx')
  const records = readGoodContent(options.content, 'Nothing was exported.')
  const chosen = chosenRecords(records, options)
  const tables = exportTables(chosen)
  if (tables.length === 0) throw new CommandFailure('No lot is of that source and time.', EXIT.failed)
  const map = out.replace(/\.xlsx$/i, '.map.yaml')
  const sheet = await writeXlsxFile(
    tables.map((table) => ({
      data: sheetData(table),
      sheet: table.name,
      columns: table.headings.map((heading) => ({ width: Math.min(24, heading.length + 3) })),
      stickyRowsCount: 1,
    })),
  ).toBuffer()
  writeFilesWhole(
    [
      { path: out, content: sheet },
      { path: map, content: exportMap(tables, basename(out)) },
    ],
    'check the permissions, the free space and what is in its place; an earlier spreadsheet is as it was',
  )
  process.stdout.write(
    `${countWords(chosen.lots.size, 'lot')} and ${plural(chosen.controls.size, 'control batch', 'control batches')} written to ${out}\n` +
      `${map} is the map that reads it back; ${NOT_EXPORTED}\n`,
  )
  return EXIT.well
})

/** @throws CommandFailure for a source that is not on record */
function chosenRecords(records: Records, { source, from, to }: Options): ExportedRecords {
  const unknown = source?.find((id) => !records.sources.has(id))
  if (unknown !== undefined)
    throw new CommandFailure(
      `There is no source "${unknown}".`,
      EXIT.wrongUse,
      nearNames(unknown, records.sources.keys()) || 'name a source on record',
    )
  const isChosen = (id: string, end: Moment) =>
    (source?.includes(sourceOf(id)) ?? true) &&
    (from === undefined || from.day <= end.day) &&
    (to === undefined || isBy(end, to))
  const lots = new Map([...records.lots].filter(([id, lot]) => isChosen(id, lot.produced.to)))
  const all = lots.size === records.lots.size
  const used = new Set([...lots.values()].flatMap(({ tests = [] }) => tests.map(({ control }) => control)))
  return { lots, controls: new Map([...records.controls].filter(([id]) => all || used.has(id))) }
}

function sheetData({ headings, rows }: ExportTable): SheetData {
  const head = headings.map((value): Cell => ({ value, type: String, fontWeight: 'bold' }))
  return [head, ...rows.map((row) => row.map((cell) => (cell === null ? null : writtenCell(cell))))]
}

/** What begins like a formula is text all the same: each cell says its type. */
function writtenCell(cell: CellValue): Cell {
  if (cell.kind === 'number') {
    const decimals = cell.text.split('.')[1]?.length ?? 0
    return {
      value: Number(cell.text),
      type: Number,
      ...(decimals === 0 ? {} : { format: `0.${'0'.repeat(decimals)}` }),
    }
  }
  // A date with an offset or with seconds is more than a spreadsheet shows.
  if (cell.kind === 'date' && /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2})?$/.test(cell.text)) {
    const time = cell.text.includes('T')
    return {
      value: new Date(`${cell.text}${time ? ':00' : 'T00:00:00'}Z`),
      type: Date,
      format: time ? 'yyyy-mm-dd hh:mm' : 'yyyy-mm-dd',
    }
  }
  return { value: cell.text, type: String }
}
