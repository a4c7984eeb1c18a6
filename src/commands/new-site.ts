/** new site: asks, lays the site out, and says what comes next. */
import { existsSync } from 'node:fs'
import { relative } from 'node:path'
import { type Command, Option } from 'commander'
import type { NewFile } from '../scaffold/new-file.ts'
import { STANDINGS } from '../scaffold/party-records.ts'
import { countWords } from '../words/numbers.ts'
import { siteFiles, siteFolder, type SiteOptions } from './lay-out-site.ts'
import { addressOption, commandLine, today } from './program.ts'
import { askingAt, TERMINAL, UNASKED } from './questions.ts'
import { say } from './say.ts'
import { writeNewFolder } from './write-new-files.ts'

export function siteCommand(program: Command): void {
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

/** What a new lot is written from. */
export function figuresOption(): Option {
  return new Option(
    '--figures <kind>',
    'whether the laboratory gives finished indices or readings of specimens',
  ).choices(['finished', 'readings'])
}
