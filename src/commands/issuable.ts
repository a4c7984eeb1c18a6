/** Records as issuing reads them: some may be at fault, and a lot that none of these touches is issued all the same. */
import { dirname } from 'node:path'
import { type IssueBlock, issueBlocks } from '../edition/certificate/issue-blocks.ts'
import { faultyRecords } from '../records/checks/faulty-records.ts'
import { readText } from '../records/files.ts'
import { hasSite } from '../records/load.ts'
import { blockWords } from '../words/issue-blocks.ts'
import { countWords } from '../words/numbers.ts'
import { keptReadings } from './kept-readings.ts'
import { CommandFailure, EXIT, commandLine, usualOut } from './program.ts'
import { printDiagnostics, type ReadContent, readContent } from './read-content.ts'

export interface Issuable extends ReadContent {
  /** What keeps a lot from being issued, by SOURCE/LOT. */
  readonly blocks: (lot: string) => readonly IssueBlock[]
}

const NOTHING = 'Nothing was issued.'

/** @throws CommandFailure where nothing can be judged, for the site cannot be read */
export function readIssuable(folder: string): Issuable {
  const { issued } = keptReadings({ beside: dirname(usualOut(folder, 'dist')), content: folder })
  const content = readContent(folder, { issued })
  if (!hasSite(content.records)) {
    printDiagnostics(content)
    throw new CommandFailure(NOTHING, EXIT.failed)
  }
  return { ...content, blocks: blocksIn(content) }
}

/** What keeps each lot of some records from being issued. */
export function blocksIn(
  content: Pick<ReadContent, 'records' | 'diagnostics' | 'datedFaultyLots'>,
): Issuable['blocks'] {
  return issueBlocks({
    records: content.records,
    faulty: faultyRecords(content.diagnostics),
    dated: content.datedFaultyLots,
    textOf: (file) => {
      const reading = readText(content.records.contentDir, file)
      return 'text' in reading ? reading.text : null
    },
  })
}

/** @throws CommandFailure where a fault touches one of the lots; the faults that do are printed before */
export function refuseBlocked(content: Issuable, lots: readonly string[]): void {
  const blocked = lots
    .map((lot) => ({ lot, blocks: content.blocks(lot) }))
    .filter(({ blocks }) => 0 < blocks.length)
  if (blocked.length === 0) return
  const files = new Set(blocked.flatMap(({ blocks }) => blocks.map(({ file }) => file)))
  const diagnostics = content.diagnostics.filter(
    ({ file, severity }) => severity === 'error' && files.has(file),
  )
  printDiagnostics({ ...content, diagnostics, errors: diagnostics.length })
  const lines = blocked.map(({ lot, blocks }) => `${blockWords(lot, blocks)}.`)
  throw new CommandFailure([...lines, NOTHING].join('\n'), EXIT.failed)
}

/** Warnings in full where nothing is worse; of records at fault, which do not touch what is issued, only the number. */
export function tellUntouched(content: Issuable): void {
  const faulty = faultyRecords(content.diagnostics).length
  if (faulty === 0) printDiagnostics(content)
  else
    process.stderr.write(
      `${countWords(faulty, 'other record')} ${faulty === 1 ? 'has a fault' : 'have faults'}; ${commandLine('check')} shows ${faulty === 1 ? 'it' : 'them'}.\n`,
    )
}
