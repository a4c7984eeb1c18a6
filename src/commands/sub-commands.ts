/** `puteoli NAME ...` of the installed program: each name is a command of its own, and a line here. */
import { nearNames } from '../records/diagnostics/near-names.ts'
import { CommandFailure, commandLine, EXIT, PROGRAM, run } from './program.ts'

/** What a command does, in the order of a day's work, and how its module is read: reading it runs it. */
const COMMANDS: Readonly<Record<string, readonly [string, () => Promise<unknown>]>> = {
  new: ['lays out a new site, or a new record in one', () => import('./new.ts')],
  import: ['takes the rows of a spreadsheet into records', () => import('./import.ts')],
  export: ['writes lots and control batches as a spreadsheet', () => import('./export.ts')],
  check: ['reads all records, judges every lot and reports', () => import('./check.ts')],
  dev: ['serves the site and reloads it when a record is saved', () => import('./dev.ts')],
  issue: ['issues certificates as new revisions, or withdraws them', () => import('./issue.ts')],
  build: ['writes the site', () => import('./build.ts')],
  start: ['writes the site and serves it on this machine', () => import('./start.ts')],
}

const HELP = [
  `Usage: puteoli COMMAND [options]`,
  '',
  'Certificates for coal ash and natural pozzolan: lot records in YAML to a static site.',
  '',
  ...Object.entries(COMMANDS).map(([name, [does]]) => `  ${name.padEnd(8)}${does}`),
  '',
  `${commandLine('COMMAND', '--help')} tells the options of each.`,
  '',
].join('\n')

const [name = '--help'] = process.argv.splice(2, 1)
const known = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined
if (known === undefined) await run(() => answerTo(name))
else await known[1]()

/** @throws CommandFailure (wrong use) for what is neither a command nor an option of this one */
function answerTo(name: string): number {
  if (name === '--version' || name === '-V') process.stdout.write(`${PROGRAM}\n`)
  else if (name === '--help' || name === '-h' || name === 'help') process.stdout.write(HELP)
  else
    throw new CommandFailure(
      `There is no command "${name}".`,
      EXIT.wrongUse,
      nearNames(name, Object.keys(COMMANDS)) || `${commandLine('--help')} lists them`,
    )
  return EXIT.well
}
