/** npm run issue: freezes a lot's certificate as a new revision. */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { sourceOf } from '../core/measure/lot-id.ts'
import { dateOf } from '../core/measure/moment.ts'
import { asOfDate } from '../edition/compute.ts'
import { issueRevision, type IssuedRevision, withRevisionLine } from '../edition/certificate/issue.ts'
import { sourceStates } from '../edition/passes/source-state.ts'
import { loadYaml } from '../records/yaml/load-yaml.ts'
import type { Records } from '../records/records.ts'
import { fileReport } from '../records/diagnostics/report.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { CommandFailure, command, dateOption, EXIT, PROGRAM, run } from './program.ts'
import { readGoodContent } from './read-content.ts'

interface Options {
  content: string
  by: string
  reason: string
  function?: string
  date?: string
  withdraw?: boolean
  replacedBy?: string
}

await run(() => {
  const program = command('issue', 'Issue a lot’s certificate as a new revision, or withdraw it.')
    .argument('<lot>', 'the lot as SOURCE/LOT')
    .requiredOption('--by <name>', 'who issues it')
    .requiredOption('--reason <text>', 'why')
    .option('--function <text>', 'function of that person, where the producer’s record does not tell')
    .option('--date <date>', 'date of issue; the as-of date without it', dateOption)
    .option('--withdraw', 'withdraw the certificate')
    .option('--replaced-by <lot>', 'the lot that replaces a withdrawn one')
    .parse()
  const options = program.opts<Options>()
  const lot = program.args[0] ?? ''
  const records = readGoodContent(options.content, 'Nothing was issued.')
  const issued = issue(records, lot, options)
  write(records, lot, issued)
  const governing = issued.document.verdicts[0]
  process.stdout.write(
    `${lot}, revision ${issued.document.revision}, ${issued.document.state}: ${governing === undefined ? 'no criterion applies' : `${governing.outcome} under ${governing.criterion}`}\n${issued.digest}\n`,
  )
  return EXIT.well
})

function issue(records: Records, lot: string, options: Options): IssuedRevision {
  const record = records.lots.get(lot)
  if (record === undefined)
    throw new CommandFailure(
      `There is no lot ${lot} in ${records.contentDir}.\nmend: write it as SOURCE/LOT, for instance ${[...records.lots.keys()][0] ?? 'tarn-hollow/TH-001'}`,
      EXIT.wrongUse,
    )
  if (options.replacedBy !== undefined && options.withdraw !== true)
    throw new CommandFailure('--replaced-by goes with --withdraw.', EXIT.wrongUse)
  if (options.replacedBy !== undefined && !records.lots.has(options.replacedBy))
    throw new CommandFailure(`There is no lot ${options.replacedBy} to replace ${lot}.`, EXIT.wrongUse)
  const date = options.date ?? asOfDate(records)
  const earlier = record.revisions?.at(-1)
  if (earlier !== undefined && date < earlier.date)
    throw new CommandFailure(
      `Revision ${earlier.number} is of ${earlier.date}, later than ${date}.\nmend: give a later --date`,
      EXIT.wrongUse,
    )
  if (options.withdraw === true && earlier === undefined)
    throw new CommandFailure(`${lot} was never issued, so there is nothing to withdraw.`, EXIT.wrongUse)
  const source = sourceOf(lot)
  const state = sourceStates(records, [date, asOfDate(records)].sort().at(-1) ?? date).get(source)
  const place = state?.lots.findIndex((candidate) => candidate.id === lot) ?? -1
  if (state === undefined || place < 0 || date < dateOf(state.lots[place]?.sampled ?? date))
    throw new CommandFailure(
      `${lot} was sampled after ${date}, so it cannot be issued on that date.`,
      EXIT.wrongUse,
    )
  return issueRevision(
    { records, state, place, program: PROGRAM },
    {
      lot,
      date,
      by: options.by,
      function: functionOf(records, source, options),
      reason: options.reason,
      withdrawn: options.withdraw === true,
      ...(options.replacedBy === undefined ? {} : { replacedBy: options.replacedBy }),
    },
    earlier,
  )
}

function functionOf(records: Records, source: string, options: Options): string {
  const producer = records.producers.get(records.sources.get(source)?.producer ?? '')
  const known = producer?.signatories?.find((person) => person.name === options.by)?.function
  const named = options.function ?? known
  if (named === undefined)
    throw new CommandFailure(
      `${options.by} is not among the producer’s signatories.\nmend: add the person to the producer’s record, or give --function`,
      EXIT.wrongUse,
    )
  return named
}

/**
 * The document first, then the record's line: a document without its line is overwritten by the next issue,
 * the reverse would be a loss.
 */
function write(records: Records, lot: string, issued: IssuedRevision): void {
  const document = join(records.contentDir, 'issued', lot, `${issued.document.revision}.json`)
  const recordFile = join(records.contentDir, 'lots', `${lot}.yaml`)
  const next = withRevisionLine(readFileSync(recordFile, 'utf8'), issued.recordLine)
  // Read back before anything is written: a record that the line does not fit into stays as it is.
  const record = loadYaml('lot', next, fileReport(recordFile, next, [])) as Lot | undefined
  if (record?.revisions?.at(-1)?.digest !== issued.digest) {
    throw new CommandFailure(
      `The revision cannot be added to ${recordFile}, which is as before.\nmend: write revisions: as a list with one line a revision`,
      EXIT.failed,
    )
  }
  mkdirSync(dirname(document), { recursive: true })
  replaceFile(document, issued.text)
  replaceFile(recordFile, next)
}

function replaceFile(path: string, text: string): void {
  const next = `${path}.next`
  writeFileSync(next, text)
  renameSync(next, path)
  if (!existsSync(path)) throw new CommandFailure(`${path} could not be written.`, EXIT.failed)
}
