/** What the commands share: the program's name and version, where it lies and works, how a command ends. */
import { existsSync, readFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { inspect, stripVTControlCharacters } from 'node:util'
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import { faultWords, isCurrentFolderGone, systemFault, systemSentence } from './system-faults.ts'
import { isInCalendar, type Moment, momentIn, momentOfDay, readMoment } from '../core/measure/moment.ts'

/** The project's root folder: a clone of it, or the package that was installed, which is never written to. */
export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..')

/** Whether this is the program as it is packed, which holds no TypeScript (write-built.ts). */
export const INSTALLED = import.meta.filename.endsWith('.js')

/** The folder that content lies in where no option names it. */
export const HOME = INSTALLED ? process.cwd() : ROOT

/**
 * The content folder where no option names one.
 * @param installed whether the program is, so that records are where it was started, perhaps this very folder
 */
export function usualContent(home: string, installed = INSTALLED): string {
  return installed && existsSync(resolve(home, 'site.yaml')) ? home : resolve(home, 'content')
}

/** The output folder where no option names one: in a clone its own, else beside the records. */
export function usualOut(content: string, name: string, installed = INSTALLED): string {
  return resolve(installed ? dirname(content) : ROOT, name)
}

/**
 * A command as a reader of this program types it.
 * @param name of the command @param rest its arguments and options, none where empty
 */
export function commandLine(name: string, rest = '', installed = INSTALLED): string {
  if (installed) return ['npx puteoli', name, ...(rest === '' ? [] : [rest])].join(' ')
  return `${name === 'start' ? 'npm start' : `npm run ${name}`}${rest === '' ? '' : ` -- ${rest}`}`
}

const manifest = JSON.parse(readFileSync(resolve(ROOT, 'package.json'), 'utf8')) as {
  name: string
  version: string
}

/** Printed in certificates and feeds. */
export const PROGRAM = `${manifest.name} ${manifest.version}`

/** Exit statuses: all well; a diagnostic is an error or the work failed; wrong use. */
export const EXIT = { well: 0, failed: 1, wrongUse: 2 } as const

/** Ends a command with one clear line on standard error, and a second one that says what to do about it. */
export class CommandFailure extends Error {
  readonly status: number
  constructor(message: string, status: number, mend?: string) {
    super(mend === undefined ? message : `${message}\nfix: ${mend}`)
    this.status = status
  }
}

/** A command with the options that every command takes. */
export function command(name: string, description: string): Command {
  return new Command(INSTALLED ? `puteoli ${name}` : name)
    .description(description)
    .exitOverride()
    .addOption(
      new Option('--content <folder>', 'folder with the records')
        .argParser(folderOption)
        .default(
          usualContent(HOME),
          INSTALLED ? 'this folder where it has site.yaml, else content' : 'content',
        ),
    )
}

/** The options of a command that holds its lots against a site that is published. */
export function comparing(command: Command): Command {
  return command
    .option(
      '--against <folder>',
      'a copy of the published site, or of its manifest.json, to compare with',
      folderOption,
    )
    .option('--accept <lots...>', 'lots whose certificates may vanish or change (SOURCE/LOT, * for any text)')
}

/** A folder given as an option, absolute from here on. */
export function folderOption(text: string): string {
  return resolve(text)
}

/** An earlier year is a slip of the pen, as it is in a record. */
const EARLIEST = readMoment('1900-01-01')

/** A calendar date given as an option. */
export function dateOption(text: string): Moment {
  const date = momentIn(text)
  if (date === null || date.minute !== null || !isInCalendar(date) || date.day < EARLIEST.day)
    throw new InvalidArgumentError('a date such as 2026-04-10 was expected, from 1900 on.')
  return date
}

/** Runs a command's main function; whatever goes wrong is told in words, and a trace is shown to who asks for one. */
export async function run(main: () => Promise<number> | number): Promise<void> {
  process.stdout.on('error', outputFault)
  process.stderr.on('error', toldNowhere)
  // What nothing waits for, such as a file that a server or a watcher reads, ends the command in the same way.
  for (const event of ['uncaughtException', 'unhandledRejection'] as const)
    process.on(event, (error: unknown) => {
      if (!isClosedConnection(error)) process.exit(told(error))
    })
  try {
    const status = await main()
    process.exitCode = outputLost && status === EXIT.well ? EXIT.failed : status
  } catch (error) {
    process.exitCode = told(error)
    // What else was begun, such as pages that are being drawn, has nobody left to wait for it.
    setImmediate(() => process.exit())
  }
}

/** Who was told something has left: no fault of the one who told it. */
function isClosedConnection(error: unknown): boolean {
  const { code } = error as NodeJS.ErrnoException
  return code === 'EPIPE' || code === 'ECONNRESET'
}

/** Environment variable that asks for the trace of a fault of the program. */
const TRACE = 'PUTEOLI_TRACE'

/** Whether the reader of a command asks for traces. */
export function asksForTrace(): boolean {
  return (process.env[TRACE] ?? '') !== ''
}

/** Tells what went wrong on standard error. @returns the exit status */
function told(error: unknown): number {
  const refused = systemFault(error)
  if (refused !== undefined) return told(systemFailure(refused))
  // commander has told its own faults already.
  if (error instanceof CommandFailure) process.stderr.write(`${error.message}\n`)
  else if (error instanceof CommanderError) process.stderr.write(useFix(error))
  else process.stderr.write(programFault(error))
  return statusOf(error)
}

/** What to do about wrong use, where commander names the fault alone. */
function useFix({ code, message }: CommanderError): string {
  switch (code) {
    case 'commander.unknownCommand':
      return 'fix: --help lists what there is\n'
    case 'commander.excessArguments':
      return `fix: name a folder of records with --content ${/1: (\S+)\.$/.exec(message)?.[1] ?? 'FOLDER'}; --help lists the options\n`
    default:
      return ''
  }
}

/** No record can be blamed for it, and nobody who writes records can read a trace. */
function programFault(error: unknown): string {
  if (asksForTrace()) return `${inspect(error)}\n`
  const text = stripVTControlCharacters(error instanceof Error ? error.message : String(error))
  // "Build failed with 1 error:" says what it means on the line after.
  const said = /^[^\n:]*(?::\s+)?[^\n]*/.exec(text.trim())?.[0].replace(/\s+/g, ' ')
  return `The program itself has a fault: ${said === '' ? 'it does not say which' : said}\nfix: run it again with ${TRACE}=1 set, and report what it prints\n`
}

/** Whether what a command reports could not be written, so that it has not ended well. */
let outputLost = false

/** A reader that has seen enough, such as `head`, closes the pipe: no fault of the command. A full disk is one. */
function outputFault(error: NodeJS.ErrnoException): void {
  // Each piece that is written fails anew.
  if (isClosedConnection(error) || outputLost) return
  outputLost = true
  process.exitCode = EXIT.failed
  process.stderr.write(`What the command reports cannot be written: ${faultWords(error)}.\n`)
}

/** Where faults cannot be told, the status alone says so: telling it there would never end. */
function toldNowhere(error: NodeJS.ErrnoException): void {
  if (!isClosedConnection(error)) process.exitCode = EXIT.failed
}

function systemFailure(fault: NodeJS.ErrnoException): CommandFailure {
  return new CommandFailure(systemSentence(fault), EXIT.failed, mendOf(fault))
}

function mendOf(fault: NodeJS.ErrnoException): string {
  if (isCurrentFolderGone(fault)) return 'change to a folder that exists, then run the command again'
  if (fault.code === 'ENOSPC' || fault.code === 'EDQUOT')
    return 'make room, then run the command again; a build needs room for the whole site beside the one that it replaces'
  return 'look at the permissions, the free space and what stands in its place'
}

function statusOf(error: unknown): number {
  if (error instanceof CommandFailure) return error.status
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.well : EXIT.wrongUse
  return EXIT.failed
}

/** The address of a site: origin and a base path that ends in "/". */
export function addressOption(text: string): string {
  if (!/^https?:\/\/[^\s/?#]+(\/[^\s?#]*)?\/$/.test(text) || !URL.canParse(text))
    throw new InvalidArgumentError(
      'an address such as https://example.org/pozzolans/ was expected, ending in "/".',
    )
  return text
}

/** A port number. */
export function portOption(text: string): number {
  const port = Number(text)
  if (!/^\d+$/.test(text) || port < 1 || 65535 < port)
    throw new InvalidArgumentError('a port from 1 to 65535 was expected.')
  return port
}

/** What a command that goes on serving says once it does. */
export function openLine(address: string): string {
  return `open ${address}   (stop with Ctrl+C)\n`
}

/** Seconds of a day. */
const DAY = 86_400

/**
 * The day of SOURCE_DATE_EPOCH where it is set, else today's in UTC: read once, by a command alone.
 * @throws CommandFailure (wrong use) for a SOURCE_DATE_EPOCH that is no number of seconds
 */
export function today(): Moment {
  const epoch = process.env['SOURCE_DATE_EPOCH']
  if (epoch === undefined || epoch === '') return momentOfDay(Math.floor(Date.now() / 1000 / DAY))
  if (!/^\d{1,11}$/.test(epoch))
    throw new CommandFailure(
      `SOURCE_DATE_EPOCH is "${epoch}", but seconds since 1970 were expected.`,
      EXIT.wrongUse,
      'set it to a whole number of seconds, or unset it',
    )
  return momentOfDay(Math.floor(Number(epoch) / DAY))
}
