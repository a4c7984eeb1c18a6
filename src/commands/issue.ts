/** npm run issue: freezes certificates as new revisions, withdraws them, finishes an interrupted issue. */
import { createInterface } from 'node:readline/promises'
import { isBy, type Moment } from '../core/measure/moment.ts'
import { asOfDate, computeEdition } from '../edition/compute.ts'
import { isDue } from '../edition/shape/due.ts'
import { faultyRecords } from '../records/checks/faulty-records.ts'
import type { Records } from '../records/records.ts'
import { blockWords } from '../words/issue-blocks.ts'
import { countWords } from '../words/numbers.ts'
import { withLock } from './folder-lock.ts'
import { memoryWatch } from './memory-watch.ts'
import { type IssueOrder, type PlannedRevision, planIssue, signsFor } from './plan-issue.ts'
import { CommandFailure, command, dateOption, EXIT, PROGRAM, run, today, commandLine } from './program.ts'
import { progress } from './progress.ts'
import { type Issuable, readIssuable, refuseBlocked, tellUntouched } from './issuable.ts'
import { resumeIssue } from './resume-issue.ts'
import { checkSaid } from './said-texts.ts'
import { digestLine, revisionSummary } from './revision-summary.ts'
import { trialLines } from './trial-notes.ts'
import { writeAll } from './write-all.ts'
import { lineFault } from './write-revision.ts'

interface IssueOptions extends Partial<Omit<IssueOrder, 'lots'>> {
  readonly content: string
  readonly due?: boolean
  readonly resume?: boolean
  readonly yes?: boolean
}

await run(async () => {
  const program = command('issue', 'Issue certificates of lots as new revisions, or withdraw them.')
    .argument('[lots...]', 'lots as SOURCE/LOT')
    .option('--by <name>', 'who issues them')
    .option('--reason <text>', 'why')
    .option('--function <text>', 'that person’s function, where the producer’s record does not give it')
    .option('--date <date>', 'date of issue; by default the as-of date', dateOption)
    .option(
      '--due',
      'every draft whose first age is reported, and every certificate that further results came for unless it still waits for some that are not overdue, of the producers that the issuer signs for',
    )
    .option('--yes', 'issue what is due without asking')
    .option('--withdraw', 'withdraw the certificates')
    .option('--replaced-by <lot>', 'the lot that replaces a withdrawn one')
    .option('--resume', 'finish what an interrupted issue left behind and remove what it left half written')
    .parse()
  const options = program.opts<IssueOptions>()
  const lots = program.args
  checkUse(lots, options)
  if (options.resume === true) return withLock(options.content, () => resumeIssue(options.content))
  const content = readIssuable(options.content)
  const { records } = content
  const date = issueDate(records, options)
  const { named, blocked } =
    options.due === true ? dueLots(content, date, options) : { named: lots, blocked: 0 }
  refuseBlocked(content, named)
  tellUntouched(content)
  if (named.length === 0) {
    process.stdout.write(blocked === 0 ? 'No lot is due.\n' : 'Nothing was issued.\n')
    return blocked === 0 ? EXIT.well : EXIT.failed
  }
  const all = planIssue(records, { ...options, lots: named, date })
  const planned = options.due === true ? takingLines(records, all) : all
  const status = blocked === 0 && planned.length === all.length ? EXIT.well : EXIT.failed
  if (planned.length === 0) {
    process.stdout.write('Nothing was issued.\n')
    return status
  }
  if (options.withdraw !== true) tellTrials(records, planned)
  const preview = (revision: PlannedRevision) => process.stdout.write(revisionSummary(revision, records))
  // Who is asked sees beforehand what would be issued; otherwise a revision is told of once it is whole.
  const asks = options.due === true && options.yes !== true
  if (asks) planned.forEach(preview)
  if (asks && !(await confirmed(planned.length))) {
    process.stdout.write('Nothing was issued.\n')
    return EXIT.well
  }
  await writeAll(records, planned, (revision) => {
    if (!asks) preview(revision)
    process.stdout.write(digestLine(revision))
  })
  return status
})

/** Of what is due, all whose records take the line of a new revision; the others are told, and do not keep these back. */
function takingLines({ contentDir }: Records, planned: readonly PlannedRevision[]): PlannedRevision[] {
  return planned.filter(({ request, revision }) => {
    const fault = lineFault(contentDir, request.lot, revision)
    if (fault !== undefined) process.stderr.write(`${request.lot} is left out. ${fault.message}\n`)
    return fault === undefined
  })
}

/** Once for each set, before anything is asked or written. */
function tellTrials({ criteria }: Records, planned: readonly PlannedRevision[]): void {
  const judging = new Set(
    planned.flatMap(({ revision }) => revision.document.shared.criteria.map(({ id }) => id)),
  )
  for (const [id, criterion] of criteria)
    if (judging.has(id)) for (const line of trialLines(criterion)) process.stdout.write(`${line}\n`)
}

function checkUse(lots: readonly string[], options: IssueOptions): void {
  const wrong = (message: string, mend?: string) => {
    throw new CommandFailure(message, EXIT.wrongUse, mend)
  }
  if (options.resume === true) {
    if (lots.length > 0 || options.due === true) wrong('--resume takes neither lots nor --due.')
    return
  }
  if (options.due === true && lots.length > 0) wrong('Name lots, or give --due, not both.')
  if (options.due === true && options.withdraw === true) wrong('A withdrawal must name its lots.')
  if (options.due !== true && lots.length === 0)
    wrong('No lot is named.', 'write lots as SOURCE/LOT, or give --due')
  if (options.by === undefined) wrong('The issuer is not named.', 'give --by NAME')
  if (options.reason === undefined) wrong('No reason is given.', 'give --reason TEXT')
  for (const option of ['by', 'function', 'reason'] as const) checkSaid(`--${option}`, options[option])
  if (options.replacedBy !== undefined && options.withdraw !== true)
    wrong('--replaced-by can be used only with --withdraw.')
}

/** A certificate speaks of its day: neither of one to come, nor of one that its record has left behind. */
function issueDate(records: Records, { date: asked }: IssueOptions): Moment {
  const asOf = asOfDate(records, { today: today() })
  const date = asked ?? asOf
  if (!isBy(date, asOf))
    throw new CommandFailure(
      `${date} is later than the as-of date, ${asOf}.`,
      EXIT.wrongUse,
      'give an earlier --date, or move as-of in site.yaml',
    )
  return date
}

/**
 * Those that the issuer signs for and that no fault touches; of the others, which other producers sign for, only the
 * number is told.
 */
function dueLots(
  content: Issuable,
  date: Moment,
  options: IssueOptions,
): { readonly named: readonly string[]; readonly blocked: number } {
  const { records, blocks } = content
  refuseUnknownSignatories(content, options)
  const telling = progress()
  telling.at(`Computing ${countWords(records.lots.size, 'lot')}`)
  const edition = computeEdition(records, { program: PROGRAM, asOf: date, atLot: memoryWatch() })
  telling.end()
  const due = [...edition.lots.keys()].filter((id) => isDue(edition.lot(id)))
  const own = due.filter((id) => signsFor(records, id, options))
  if (own.length === 0 && due.length > 0)
    throw new CommandFailure(
      `${options.by} is not among the signatories of any producer with a lot that is due.`,
      EXIT.wrongUse,
      'add the person to the producer’s record, or give --function',
    )
  const left = due.length - own.length
  if (left > 0)
    process.stderr.write(
      `${countWords(left, 'lot')} of other producers ${left === 1 ? 'is' : 'are'} due as well; ${options.by} does not sign for them.\n`,
    )
  const named = own.filter((id) => blocks(id).length === 0)
  for (const id of own) if (!named.includes(id)) process.stderr.write(`${blockWords(id, blocks(id))}.\n`)
  return { named, blocked: own.length - named.length }
}

/** A function that is given holds for whoever is on record with no other producer, which one at fault leaves open. */
function refuseUnknownSignatories(content: Issuable, options: IssueOptions): void {
  const faulty = faultyRecords(content.diagnostics).find(({ kind }) => kind === 'producer')
  if (options.function === undefined || faulty === undefined) return
  throw new CommandFailure(
    `${faulty.file} has a fault, so it is not known whom ${options.by} signs for.`,
    EXIT.failed,
    `name the lots, or fix that record first; ${commandLine('check')} shows what is wrong with it`,
  )
}

async function confirmed(count: number): Promise<boolean> {
  if (!process.stdin.isTTY)
    throw new CommandFailure(
      `${countWords(count, 'lot')} would be issued.`,
      EXIT.wrongUse,
      'give --yes where nobody can be asked',
    )
  const terminal = createInterface({ input: process.stdin, output: process.stdout })
  const answer = await terminal.question(`Issue ${countWords(count, 'lot')}? [y/N] `)
  terminal.close()
  return /^y(es)?$/i.test(answer.trim())
}
