/** npm run new: lays out a new site, or a new record in one. */
import { existsSync } from 'node:fs'
import { join, relative } from 'node:path'
import { type Command, Option } from 'commander'
import { addHours, type Moment } from '../core/measure/moment.ts'
import { compareAges } from '../core/measure/age.ts'
import type { Records } from '../records/records.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { STANDINGS } from '../scaffold/party-records.ts'
import { countWords } from '../words/numbers.ts'
import { SCHEMA_FOLDER } from '../scaffold/schema-line.ts'
import { withLock } from './folder-lock.ts'
import { type LaidOutLot, type LotOptions, layOutLot } from './lay-out-lot.ts'
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
import { siteFiles, siteFolder, type SiteOptions } from './lay-out-site.ts'
import { addressOption, command, commandLine, dateOption, EXIT, run, today } from './program.ts'
import { askingAt, TERMINAL, UNASKED } from './questions.ts'
import { readContent } from './read-content.ts'
import { checkSaid } from './said-texts.ts'
import { missingSchemas, schemaFiles } from './shipped.ts'
import { LOOK, writeNewFiles, writeNewFolder } from './write-new-files.ts'
import { writeWhole } from './write-revision.ts'

await run(async () => {
  const program = command('new', 'Lay out a new site, or a new record in a site.')
  siteCommand(program)
  lotCommand(program)
  recordCommands(program)
  schemasCommand(program)
  await program.parseAsync()
  return EXIT.well
})

function siteCommand(program: Command): void {
  program
    .command('site <folder>')
    .description('a new folder with one record of each kind; asks what is not given, at a terminal')
    .option('--name <text>', 'title of the site')
    .option('--address <url>', 'address that the site will have, ending in "/"', addressOption)
    .addOption(new Option('--units <system>', 'units shown first').choices(['SI', 'US']))
    .option('--producer <name>', 'name of the producer')
    .option('--producer-address <lines>', 'its postal address, lines parted by commas')
    .option('--material <kind>', 'kind of material')
    .option('--governing <set>', 'specification that governs')
    .option('--class <class>', 'class that is claimed under it')
    .option('--source <name>', 'name of the source')
    .option('--laboratory <name>', 'name of the laboratory')
    .option('--laboratory-address <lines>', 'its postal address, lines parted by commas')
    .addOption(
      new Option('--standing <word>', 'what the laboratory is to the producer').choices([...STANDINGS]),
    )
    .option('--signatory <name>', 'who signs certificates')
    .option('--function <text>', 'that person’s function')
    .addOption(new Option('--persons <answer>', 'whether the site may name persons').choices(['yes', 'no']))
    .addOption(figuresOption())
    .option('--yes', 'ask nothing')
    .action(newSite)
}

function figuresOption(): Option {
  return new Option(
    '--figures <kind>',
    'whether the laboratory gives finished indices or readings of specimens',
  ).choices(['finished', 'readings'])
}

async function newSite(name: string, options: SiteOptions & { readonly yes?: boolean }): Promise<void> {
  const folder = siteFolder(name)
  // Told before anybody has answered a dozen questions.
  if (existsSync(folder)) await writeNewFolder(folder, [])
  const isAsked = options.yes !== true && process.stdin.isTTY === true && process.stdout.isTTY === true
  const asking = isAsked ? askingAt(TERMINAL) : UNASKED
  const { site, files } = await siteFiles(folder, options, { asking, today: today() })
  asking.end()
  await writeNewFolder(folder, files)
  const place = relative('', folder) || '.'
  const lot = `${site.source.id}/${site.lot}`
  const own = `--content ${place}`
  say(
    `${countWords(files.length, 'file')} in ${place}.`,
    '',
    `1. Write the figures of your first lot into ${place}/lots/${lot}.yaml.`,
    ...placeholderLine(place, files),
    `2. ${commandLine('check', own)}`,
    `3. ${commandLine('issue', `${lot} ${own} --by "${byName(site.producer.signatory.name)}" --reason "first results"`)}`,
    `4. ${commandLine('build', `${own} --out ${place}-site`)}`,
  )
}

function byName(name: string): string {
  return name.startsWith('<') ? 'YOUR NAME' : name
}

function placeholderLine(place: string, files: readonly NewFile[]): string[] {
  const left = files.filter(({ text }) => /<your [^<>]+>/.test(text)).map(({ path }) => `${place}/${path}`)
  return left.length === 0 ? [] : [`   Replace each <your ...> in ${left.join(', ')}.`]
}

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
  const due = ages.toSorted(compareAges).map((age) => `${age.text} on ${addHours(day, age.hours)}`)
  return [
    `${relative('', path)}: lot ${lot}, with room for ${countWords(asked.length, 'figure')} that ${governing.id} asks for.`,
    'Write each value behind its colon; what is blank counts as not known yet.',
    ...(due.length === 0
      ? []
      : [`Due, if the mortars are cast ${cast === undefined ? 'today' : `on ${day}`}: ${due.join(', ')}.`]),
    `Then: ${commandLine('check', `--content ${relative('', records.contentDir) || '.'} --lots ${lot}`)}`,
  ]
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
        'name it in analyses: and tests: of lots',
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

function contentOf(program: Command): Records {
  return readContent(program.opts<{ content: string }>().content).records
}

/** With the schemas that the records’ first lines name, where the folder lacks them. */
function write({ contentDir }: Records, files: readonly NewFile[]): void {
  writeNewFiles(contentDir, [...files, ...missingSchemas(contentDir)])
}

function say(...lines: readonly string[]): void {
  process.stdout.write(lines.map((line) => `${line}\n`).join(''))
}
