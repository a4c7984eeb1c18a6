/** npm run issue: freezes a lot's certificate as a new revision. */
import { randomBytes } from 'node:crypto'
import { defined } from '../core/measure/defined.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import { isBy, isSurelyBefore, type Moment } from '../core/measure/moment.ts'
import { asOfDate } from '../edition/compute.ts'
import { issueRevision, type IssuedRevision } from '../edition/certificate/issue.ts'
import { type SourceState, sourceStates } from '../edition/passes/source-state.ts'
import type { Records } from '../records/records.ts'
import type { Lot } from '../records/schema/loaded-records.ts'
import { CommandFailure, command, dateOption, EXIT, PROGRAM, run } from './program.ts'
import { readGoodContent } from './read-content.ts'
import { writeRevision } from './write-revision.ts'

interface Options {
  content: string
  by: string
  reason: string
  function?: string
  date?: Moment
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
  writeRevision(records.contentDir, lot, issued)
  process.stdout.write(`${lot}, ${stateLine(issued)}\n${issued.digest}\n`)
  return EXIT.well
})

function stateLine({ document: { revision, state, data } }: IssuedRevision): string {
  const { verdict } = data
  const outcome =
    verdict === undefined ? 'no criterion applies' : `${verdict.outcome} under ${verdict.criterion}`
  return `revision ${revision}, ${state}: ${outcome}`
}

function issue(records: Records, lot: string, options: Options): IssuedRevision {
  const record = recordOf(records, lot)
  checkReplacement(records, lot, options)
  const date = options.date ?? asOfDate(records)
  const earlier = record.revisions?.at(-1)
  checkEarlier(lot, date, { earlier, withdraw: options.withdraw === true })
  return issueRevision(
    {
      records,
      program: PROGRAM,
      salt: randomBytes(16).toString('base64url'),
      ...placeOf(records, lot, date),
    },
    defined({
      lot,
      date,
      by: options.by,
      function: functionOf(records, sourceOf(lot), options),
      reason: options.reason,
      withdrawn: options.withdraw === true,
      replacedBy: options.replacedBy,
    }),
    earlier,
  )
}

function recordOf({ lots, contentDir }: Records, lot: string): Lot {
  const record = lots.get(lot)
  if (record !== undefined) return record
  throw new CommandFailure(
    `There is no lot ${lot} in ${contentDir}.`,
    EXIT.wrongUse,
    `write it as SOURCE/LOT, for instance ${[...lots.keys()][0] ?? 'tarn-hollow/TH-001'}`,
  )
}

function checkReplacement({ lots }: Records, lot: string, { replacedBy, withdraw }: Options): void {
  if (replacedBy === undefined) return
  if (withdraw !== true) throw new CommandFailure('--replaced-by goes with --withdraw.', EXIT.wrongUse)
  if (!lots.has(replacedBy))
    throw new CommandFailure(`There is no lot ${replacedBy} to replace ${lot}.`, EXIT.wrongUse)
}

interface Before {
  readonly earlier: { readonly number: number; readonly date: Moment } | undefined
  readonly withdraw: boolean
}

function checkEarlier(lot: string, date: Moment, { earlier, withdraw }: Before): void {
  if (earlier !== undefined && isSurelyBefore(date, earlier.date))
    throw new CommandFailure(
      `Revision ${earlier.number} is of ${earlier.date}, later than ${date}.`,
      EXIT.wrongUse,
      'give a later --date',
    )
  if (withdraw && earlier === undefined)
    throw new CommandFailure(`${lot} was never issued, so there is nothing to withdraw.`, EXIT.wrongUse)
}

/** The lot in the history of its source, which reaches to the later of the day of issue and the as-of date. */
function placeOf(records: Records, lot: string, date: Moment): { state: SourceState; place: number } {
  const asOf = asOfDate(records)
  const state = sourceStates(records, isBy(date, asOf) ? asOf : date).get(sourceOf(lot))
  const place =
    state?.lots.findIndex((candidate) => candidate.id === lot && isBy(candidate.sampled, date)) ?? -1
  if (state === undefined || place < 0)
    throw new CommandFailure(
      `${lot} was sampled after ${date}, so it cannot be issued on that date.`,
      EXIT.wrongUse,
    )
  return { state, place }
}

function functionOf(records: Records, source: string, options: Options): string {
  const producer = records.producers.get(records.sources.get(source)?.producer ?? '')
  const known = producer?.signatories?.find((person) => person.name === options.by)?.function
  const named = options.function ?? known
  if (named === undefined)
    throw new CommandFailure(
      `${options.by} is not among the producer’s signatories.`,
      EXIT.wrongUse,
      'add the person to the producer’s record, or give --function',
    )
  return named
}
