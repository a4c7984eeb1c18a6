/** Writes a map from the headings of a spreadsheet. */
import { existsSync, writeFileSync } from 'node:fs'
import { basename, relative } from 'node:path'
import { loadRecords } from '../records/load.ts'
import { proposeTables } from '../records/import/propose-map.ts'
import { linesToDecide, proposedText } from '../records/import/proposed-text.ts'
import { countWords } from '../words/numbers.ts'
import { CommandFailure, EXIT, today, commandLine } from './program.ts'
import { readSheets, type SheetFile } from './read-sheets.ts'

/**
 * @returns the exit status
 * @throws CommandFailure for a file without headings, and where the map would take another's place
 */
export function proposeMap(
  path: string,
  { content, map }: { readonly content: string; readonly map?: string },
): number {
  const { file, encoding } = readAnyEncoding(path)
  const tables = proposeTables(file.sheets)
  if (tables.length === 0)
    throw new CommandFailure(
      `No row of headings is found in ${path}.`,
      EXIT.failed,
      'head the columns within the first 30 rows, such as Lot, LOI (%), SO3 (%)',
    )
  const out = map ?? basename(path).replace(/\.[^.]*$/, '.map.yaml')
  if (existsSync(out))
    throw new CommandFailure(
      `${out} is there already.`,
      EXIT.wrongUse,
      'name another with --map FILE, or remove it',
    )
  const { records } = loadRecords(content, today())
  const standard = [...records.conditions].filter(([, { standing }]) => standing === 'standard')
  const text = proposedText(tables, {
    file: file.name,
    source: only([...records.sources.keys()]),
    laboratory: only([...records.laboratories.keys()]),
    condition: only(standard.map(([id]) => id)),
    encoding,
  })
  writeFileSync(out, text)
  const open = linesToDecide(text)
  process.stdout.write(
    `${out} proposes ${countWords(tables.length, 'table')}; ${open === 0 ? 'nothing' : countWords(open, 'line')} left to decide.\n` +
      file.sheets
        .filter(({ hidden }) => hidden === true)
        .map(
          ({ name }) => `The hidden sheet "${name}" is left out; name it under sheet where it is wanted.\n`,
        )
        .join('') +
      `Look it through, then: ${commandLine('import', `${path} --map ${out} --content ${relative('', content) || '.'}`)}\n`,
  )
  return EXIT.well
}

/** A file of an older spreadsheet is read in its own encoding, which the map then names. */
function readAnyEncoding(path: string): {
  readonly file: SheetFile
  readonly encoding: 'windows-1252' | null
} {
  try {
    return { file: readSheets(path), encoding: null }
  } catch (error) {
    if (!(error instanceof CommandFailure) || !/UTF-8/.test(error.message)) throw error
    return { file: readSheets(path, { encoding: 'windows-1252' }), encoding: 'windows-1252' }
  }
}

function only(ids: readonly string[]): string | null {
  return ids.length === 1 ? (ids[0] ?? null) : null
}
