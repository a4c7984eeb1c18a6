/** Reading the records for a command: diagnostics to standard error, a fatal fault as one line. */
import { countWords } from '../words/numbers.ts'
import { compactText, diagnosticsText, inOrder } from '../records/diagnostics/diagnostic-text.ts'
import { firstScreen, type Screen } from '../records/diagnostics/first-screen.ts'
import { type LoadedContent, type LoadOptions, loadRecords, type Records } from '../records/load.ts'
import { memoryWatch } from './memory-watch.ts'
import { CommandFailure, commandLine, EXIT, today } from './program.ts'
import { progress } from './progress.ts'

export interface ReadContent extends Omit<LoadedContent, 'fatal'> {
  readonly errors: number
}

/** A screen's worth, all of them, or each on one line for an editor. */
export type DiagnosticForm = 'screen' | 'all' | 'compact'

/** What of reading records is a command's own. */
export type ReadOptions = Pick<LoadOptions, 'before' | 'issued' | 'asked'>

/** Files between two that are told of: every one of them would only flicker. */
const TOLD_EVERY = 100

/** Where standard error is no terminal: enough to work on, and a log stays readable. */
const WITHOUT_TERMINAL: Screen = { diagnostics: 40 }

/** @throws CommandFailure (wrong use) when the folder itself cannot be read */
export function readContent(folder: string, options: ReadOptions = {}): ReadContent {
  const telling = progress()
  const watch = memoryWatch()
  const { fatal, ...content } = loadRecords(folder, today(), {
    ...options,
    reading: (place, files) => {
      watch()
      if (place % TOLD_EVERY === 0) telling.at(`Reading file ${place + 1} of ${files}`)
    },
  })
  telling.end()
  if (fatal !== undefined) throw new CommandFailure(fatal.message, EXIT.wrongUse, fatal.mend)
  return {
    ...content,
    errors: content.diagnostics.filter((diagnostic) => diagnostic.severity === 'error').length,
  }
}

export function printDiagnostics(
  { records, diagnostics, errors }: Pick<ReadContent, 'records' | 'diagnostics' | 'errors'>,
  form: DiagnosticForm = 'screen',
): void {
  if (diagnostics.length === 0) return
  if (form === 'compact') {
    process.stderr.write(
      inOrder(diagnostics)
        .map((one) => `${compactText(one)}\n`)
        .join(''),
    )
    return
  }
  const counts = [countWords(errors, 'error'), countWords(diagnostics.length - errors, 'warning')]
  const text =
    form === 'all'
      ? diagnosticsText(diagnostics, records.contentDir)
      : firstScreen(diagnostics, records.contentDir, screenNow())
  const more = process.stderr.isTTY ? '\ncheck --explain-code CODE says what a code means' : ''
  process.stderr.write(`${text}\n${counts.join(', ')}${more}\n`)
}

function screenNow(): Screen {
  const { isTTY, rows } = process.stderr
  return isTTY && rows > 0 ? { lines: rows } : WITHOUT_TERMINAL
}

/** The records, or one failure after all diagnostics have been printed. */
export function readGoodContent(folder: string, consequence: string, options?: ReadOptions): Records {
  return goodContent(folder, consequence, options).records
}

/** The same for a site that anyone may read: beside certificates it never says "<your company>". */
export function readPublishable(folder: string, consequence: string, options?: ReadOptions): Records {
  const { records, diagnostics } = goodContent(folder, consequence, options)
  const left = diagnostics.filter(({ code }) => code === 'placeholder')
  if (left.length === 0 || !hasCertificates(records)) return records
  const places = left.map(({ file, line, message }) => `  ${file}:${line}: ${message}\n`).join('')
  throw new CommandFailure(
    `A site with certificates cannot be public with texts that new records were laid out with:\n${places}${consequence}`,
    EXIT.failed,
    `write your own text in place of each; until then, look at the pages with ${commandLine('dev')} or ${commandLine('build', '--audience internal')}`,
  )
}

function hasCertificates({ lots }: Records): boolean {
  return [...lots.values()].some(({ revisions = [] }) => 0 < revisions.length)
}

function goodContent(folder: string, consequence: string, options?: ReadOptions): ReadContent {
  const content = readContent(folder, options)
  printDiagnostics(content)
  if (content.errors > 0) throw new CommandFailure(consequence, EXIT.failed)
  return content
}
