/** npm run new: lays out a new site, or a new record in one. */
import { join, relative } from 'node:path'
import { type Command, Option } from 'commander'
import { addHours, type Moment } from '../core/measure/moment.ts'
import { compareAges } from '../core/measure/age.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Records } from '../records/records.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { STANDINGS } from '../scaffold/party-records.ts'
import { countWords } from '../words/numbers.ts'
import { SCHEMA_FOLDER } from '../scaffold/schema-line.ts'
import { withLock } from './folder-lock.ts'
import { type LaidOutLot, type LotOptions, layOutLot, namesOnDisk } from './lay-out-lot.ts'
import {
  type ControlOptions,
  type LaboratoryOptions,
  layOutControl,
  layOutCriterion,
  layOutLaboratory,
  layOutProducer,
  layOutSource,
  layOutStudy,
  type PartyOptions,
  type SourceOptions,
} from './lay-out-records.ts'
import { figuresOption, siteCommand } from './new-site.ts'
import { command, CommandFailure, commandLine, dateOption, EXIT, run, today } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'
import { checkSaid } from './said-texts.ts'
import { say } from './say.ts'
import { missingSchemas, schemaFiles } from './shipped.ts'
import { LOOK, writeNewFiles } from './write-new-files.ts'
import { writeWhole } from './write-whole.ts'

await run(async () => {
  const program = command('new', 'Lay out a new site, or a new record in a site.')
  siteCommand(program)
  lotCommand(program)
  recordCommands(program)
  schemasCommand(program)
  await program.parseAsync()
  return EXIT.well
})

function lotCommand(program: Command): void {
  program
    .command('lot <source> [lot]')
    .description('the next lot of a source: its samples, and room for what its specification asks')
    .option('--from <date>', 'first day of production', dateOption)
    .option('--to <date>', 'last day of production', dateOption)
    .option('--quantity <mass>', 'mass of the lot with its unit')
    .option('--laboratory <id>', 'laboratory that tests it; by default that of the lot before')
    .option('--cast <date>', 'day on which mortars are cast, from which due dates are counted', dateOption)
    .addOption(figuresOption())
    .action((source: string, lot: string | undefined, options: LotOptions) => {
      const records = contentOf(program)
      const laidOut = layOutLot(records, [source, lot], options, today())
      write(records, [laidOut.file])
      say(...lotLines(records, laidOut, options.cast))
    })
}

function lotLines(
  records: Records,
  { lot, file, governing, asked }: LaidOutLot,
  cast: Moment | undefined,
): string[] {
  const path = join(records.contentDir, file.path)
  const day = cast ?? today()
  const ages = [...new Map(asked.flatMap(({ age }) => (age === undefined ? [] : [[age.text, age]]))).values()]
  const before = unwritten(records, lot)
  const due = ages.toSorted(compareAges).map((age) => `${age.text} on ${addHours(day, age.hours)}`)
  return [
    `${relative('', path)}: lot ${lot}, with room for ${countWords(asked.length, 'figure')} that ${governing.id} asks for.`,
    'Write each value behind its colon; what is blank counts as not known yet.',
    ...(due.length === 0
      ? []
      : [`Due, if the mortars are cast ${cast === undefined ? 'today' : `on ${day}`}: ${due.join(', ')}.`]),
    ...(before.length === 0 ? [] : [`Laid out before and not on record yet: ${before.join(', ')}.`]),
    `Then: ${commandLine('check', `--content ${relative('', records.contentDir) || '.'} --lots ${lot}`)}`,
  ]
}

/** Other lots of the source whose records say nothing yet, or are at fault. @param lot just laid out */
function unwritten({ contentDir, lots }: Records, lot: string): string[] {
  const source = sourceOf(lot)
  const ids = namesOnDisk(contentDir, `lots/${source}`).map((name) => `${source}/${name}`)
  return ids.filter((id) => id !== lot && !lots.has(id))
}

function recordCommands(program: Command): void {
  program
    .command('control <laboratory>')
    .description('a batch of the control mortar')
    .option('--condition <id>', 'condition that it is made at')
    .option('--id <id>', 'its id')
    .action((laboratory: string, options: ControlOptions) =>
      laid(
        program,
        (records) => layOutControl(records, laboratory, options),
        'name it in tests: of the lots that it serves',
      ),
    )
  program
    .command('producer [id]')
    .description('who makes or sells the material')
    .option('--name <text>', 'its name')
    .option('--signatory <name>', 'who signs certificates')
    .option('--function <text>', 'that person’s function')
    .action((id: string | undefined, options: PartyOptions) =>
      laid(program, () => layOutProducer(id, named(options)), 'write its sources: new source'),
    )
  program
    .command('laboratory [id]')
    .description('a laboratory')
    .option('--name <text>', 'its name')
    .addOption(new Option('--standing <word>', 'what it is to the producer').choices([...STANDINGS]))
    .action((id: string | undefined, options: LaboratoryOptions) =>
      laid(
        program,
        (records) => layOutLaboratory(records, id, named(options)),
        options.standing === 'agency'
          ? 'name it in verification: of the lots that it checks'
          : 'name it in analyses: and tests: of lots',
      ),
    )
  program
    .command('source [id]')
    .description('a source of material')
    .option('--name <text>', 'its name')
    .option('--producer <id>', 'its producer')
    .option('--material <kind>', 'kind of material')
    .option('--governing <set>', 'specification that governs, where it is not the site’s')
    .option('--class <class>', 'class that is claimed under it')
    .option('--pattern <text>', 'pattern of lot numbers')
    .action((id: string | undefined, options: SourceOptions) =>
      laid(program, (records) => layOutSource(records, id, named(options)), 'lay out its first lot: new lot'),
    )
  program
    .command('criterion <id>')
    .description('a specification of your own that rests on another one')
    .requiredOption('--extends <set>', 'the set that it changes, as SET or SET/CLASS')
    .action((id: string, options: { readonly extends: string }) =>
      laid(
        program,
        (records) => layOutCriterion(records, id, options.extends),
        `proof-read it with check --explain ${id}, then list it in site.yaml`,
      ),
    )
  program
    .command('study <kind> [id]')
    .description('a study: screening, interlaboratory or ruggedness')
    .action((kind: string, id: string | undefined) =>
      laid(program, () => layOutStudy(kind, id, today()), 'replace each <your ...>, then run check'),
    )
}

/** Names that a record takes. @throws CommandFailure (wrong use) for one that says nothing */
function named<T extends PartyOptions | LaboratoryOptions | SourceOptions>(options: T): T {
  const given: PartyOptions = options
  for (const option of ['name', 'signatory', 'function'] as const) checkSaid(`--${option}`, given[option])
  return options
}

/** What an editor is told lies in the content folder, and would stay that of an earlier version. */
function schemasCommand(program: Command): void {
  program
    .command('schemas')
    .description('the schemas for editors as they are in this version')
    .action(() => {
      const { contentDir } = contentOf(program)
      const files = schemaFiles()
      withLock(contentDir, () => {
        for (const { path, text } of files) writeWhole(join(contentDir, path), text, LOOK)
      })
      say(`${countWords(files.length, 'schema')} in ${relative('', join(contentDir, SCHEMA_FOLDER))}.`)
    })
}

function laid(program: Command, layOut: (records: Records) => readonly NewFile[], next: string): void {
  const records = contentOf(program)
  const files = layOut(records)
  write(records, files)
  say(...files.map(({ path }) => relative('', join(records.contentDir, path))), `Next: ${next}.`)
}

/** @throws CommandFailure where no record can be read, after what hinders it; a record at fault hinders nobody */
function contentOf(program: Command): Records {
  const content = readContent(program.opts<{ content: string }>().content)
  if (content.nothingRead !== true) return content.records
  printDiagnostics(content)
  throw new CommandFailure('Nothing was written.', EXIT.failed)
}

/** With the schemas that the records’ first lines name, where the folder lacks them. */
function write({ contentDir }: Records, files: readonly NewFile[]): void {
  writeNewFiles(contentDir, [...files, ...missingSchemas(contentDir)])
}
