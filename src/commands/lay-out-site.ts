/** new site: asks what only the owner knows, and lays out the records of a new site. */
import { basename, resolve } from 'node:path'
import { type Criterion, setName } from '../core/criteria/criterion.ts'
import type { MaterialKind } from '../core/measure/material-kind.ts'
import { type Moment, yearOf } from '../core/measure/moment.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { nextLotNumber } from '../scaffold/lot-number.ts'
import type { Figures } from '../scaffold/lot-sheet.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { type NewSite, newSiteRecords } from '../scaffold/new-site.ts'
import { type NewProducer, type Standing, STANDINGS } from '../scaffold/party-records.ts'
import { projectFiles } from '../scaffold/project-files.ts'
import { idFault, idFor } from '../scaffold/record-id.ts'
import { kindWords, MATERIAL_KINDS } from '../words/material-kinds.ts'
import { idFailure } from './lay-out-lot.ts'
import { CommandFailure, EXIT } from './program.ts'
import { type Asking, meantAnswer, type Question } from './questions.ts'
import { schemaFiles, shippedMethods, shippedRecords, shippedWith } from './shipped.ts'
import { checkSaid } from './said-texts.ts'

export interface SiteOptions {
  readonly name?: string
  readonly address?: string
  readonly units?: 'SI' | 'US'
  readonly governing?: string
  readonly material?: string
  readonly class?: string
  readonly producer?: string
  readonly producerAddress?: string
  readonly signatory?: string
  readonly function?: string
  readonly laboratory?: string
  readonly laboratoryAddress?: string
  readonly standing?: string
  readonly source?: string
  readonly persons?: string
  readonly figures?: Figures
}

/** The folder's name, which is that of its package too. @throws CommandFailure (wrong use) for one that is no id */
export function siteFolder(name: string): string {
  const folder = resolve(name)
  const wrong = idFault('source', basename(folder))
  if (wrong !== undefined) throw idFailure(wrong)
  return folder
}

/** All files of a new site. @param today gives the first lot its year */
export async function siteFiles(
  folder: string,
  options: SiteOptions,
  { asking, today }: { readonly asking: Asking; readonly today: Moment },
): Promise<{ readonly site: NewSite; readonly files: readonly NewFile[] }> {
  const site = await answered(folder, options, asking, today)
  const files = [
    ...newSiteRecords(site),
    ...shippedWith(site.governing.id),
    ...shippedMethods(),
    ...schemaFiles(),
    ...projectFiles(basename(folder)),
  ]
  return { site, files }
}

/** Asked in the order in which one would tell it; an option that is given is not asked for. */
async function answered(
  folder: string,
  options: SiteOptions,
  asking: Asking,
  today: Moment,
): Promise<NewSite> {
  const ask = (given: string | undefined, question: Question) => answer(asking, given, question)
  const title = await ask(options.name, { text: 'Title of the site', otherwise: titleOf(basename(folder)) })
  const producer = await producerAnswers(ask, options)
  const material = (await ask(options.material, {
    text: `Material (${MATERIAL_KINDS.join(', ')})`,
    otherwise: 'coal-fly-ash',
    ...oneOf('kind of material', MATERIAL_KINDS),
  })) as MaterialKind
  const governing = await governingSet(ask, options.governing, material)
  const claimed = await claimedClass(ask, options.class, governing, material)
  const source = await ask(options.source, {
    text: 'Name of the source',
    otherwise: sentenceOf(kindWords(material)),
  })
  const laboratory = await laboratoryAnswers(ask, options, producer)
  const units = (await ask(options.units, {
    text: 'Units shown first (SI, US)',
    otherwise: 'SI',
    ...oneOf('system of units', ['SI', 'US']),
  })) as 'SI' | 'US'
  const persons = await ask(options.persons, {
    text: 'May the site name the persons who sign and who take samples (yes, no)',
    otherwise: 'no',
    ...oneOf('answer', ['yes', 'no']),
  })
  const id = idFor(source, material)
  const pattern = `${initialsOf(id)}-YYYY-###`
  return {
    ...{
      title,
      units,
      producer,
      material,
      governing,
      class: claimed,
      laboratory,
      source: { id, name: source },
    },
    ...(options.address === undefined ? {} : { address: options.address }),
    persons: persons === 'yes',
    conditions: shippedRecords().conditions,
    figures: options.figures ?? 'finished',
    lotNumberPattern: pattern,
    lot: nextLotNumber({ pattern, given: [], year: yearOf(today) }) ?? 'A-1',
  }
}

async function producerAnswers(ask: Ask, options: SiteOptions): Promise<NewProducer> {
  const name = await ask(options.producer, { text: 'Producer', otherwise: '<your company>' })
  const address = await ask(options.producerAddress, {
    text: 'Its postal address, lines parted by commas',
    otherwise: '<your street and number>, <your town>',
  })
  const signatory = await ask(options.signatory, { text: 'Who signs certificates', otherwise: '<your name>' })
  const office = await ask(options.function, { text: 'That person’s function', otherwise: '<your function>' })
  return {
    ...{ id: idFor(name, 'producer'), name, address: addressOf(address) },
    signatory: { name: signatory, function: office },
  }
}

async function laboratoryAnswers(
  ask: Ask,
  options: SiteOptions,
  producer: NewProducer,
): Promise<NewSite['laboratory']> {
  const name = await ask(options.laboratory, { text: 'Laboratory', otherwise: '<your laboratory>' })
  const standing = (await ask(options.standing, {
    text: `What it is to the producer (${STANDINGS.join(', ')})`,
    otherwise: 'in-house',
    ...oneOf('standing', STANDINGS),
  })) as Standing
  const address = await ask(options.laboratoryAddress, {
    text: 'Its postal address, lines parted by commas',
    otherwise: producer.address.join(', '),
  })
  return { id: idFor(name, 'laboratory'), name, standing, address: addressOf(address) }
}

/** Lines of an address; as many as a record takes. */
function addressOf(text: string): string[] {
  const lines = text
    .split(',')
    .map((line) => line.trim())
    .filter(Boolean)
  return lines.length <= MOST_LINES
    ? lines
    : [...lines.slice(0, MOST_LINES - 1), lines.slice(MOST_LINES - 1).join(', ')]
}

/** Lines of an address in a record. */
const MOST_LINES = 8

type Ask = (given: string | undefined, question: Question) => Promise<string>

/** @throws CommandFailure (wrong use) for an option that is at fault; a person is asked again */
async function answer(asking: Asking, given: string | undefined, question: Question): Promise<string> {
  const said = (text: string) => {
    try {
      checkSaid('The answer', text)
      return question.fault?.(text)
    } catch (error) {
      return (error as Error).message.split('\n')[0]
    }
  }
  if (given === undefined) return asking.ask({ ...question, fault: said })
  const meant = meantAnswer(given, question.known)
  const wrong = said(meant)
  if (wrong !== undefined) throw new CommandFailure(wrong, EXIT.wrongUse)
  return meant
}

function oneOf(what: string, known: readonly string[]): Required<Pick<Question, 'known' | 'fault'>> {
  return {
    known,
    fault: (given) =>
      known.includes(given)
        ? undefined
        : `There is no ${what} "${given}"; ${nearNames(given, known) || `write one of ${known.join(', ')}`}`,
  }
}

/** Sets that are asked for where nothing else is said, the first that judges the material. */
const USUAL_SETS = ['c618-23e1', 'c989-18', 'c1240-2004', 'c1697-2016', 'modified-r3']

/** Sets that judge a material, the usual one first. */
export function setsFor(material: MaterialKind): Criterion[] {
  const all = [...shippedRecords().criteria.values()].filter(({ kinds }) => kinds.includes(material))
  const usual = USUAL_SETS.flatMap((id) => all.find((criterion) => criterion.id === id) ?? [])
  return [...new Set([...usual, ...all])]
}

async function governingSet(ask: Ask, given: string | undefined, material: MaterialKind): Promise<Criterion> {
  const sets = setsFor(material)
  const ids = sets.map(({ id }) => id)
  const id = await ask(given, {
    text: `Governing specification\n${sets.map((set) => `  ${set.id}: ${setName(set)}`).join('\n')}\n `,
    otherwise: ids[0] ?? '',
    ...oneOf(`specification for ${kindWords(material)}`, ids),
  })
  const set = sets.find((criterion) => criterion.id === id)
  if (set === undefined) throw new RangeError(`governingSet needs a shipped set, got ${id}`)
  return set
}

async function claimedClass(
  ask: Ask,
  given: string | undefined,
  { classes, bestFirst, classFrom }: Criterion,
  material: MaterialKind,
): Promise<string | null> {
  if (classes.length === 0 || classFrom !== undefined) return null
  const usual = /natural/.test(material) ? 'N' : 'F'
  const otherwise = classes.includes(usual) ? usual : ((bestFirst ? classes.at(-1) : classes[0]) ?? '')
  return ask(given, {
    text: `Class that you claim (${classes.join(', ')})`,
    otherwise,
    ...oneOf('class', classes),
  })
}

/** "our-fly-ash" gives "Our fly ash". */
function titleOf(name: string): string {
  return sentenceOf(name.replaceAll('-', ' '))
}

function sentenceOf(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** Letters at the head of a lot's number, at most. */
const MOST_LETTERS = 4

/** Letters that begin a lot's number: "fly-ash" gives "FA". */
function initialsOf(id: string): string {
  const letters = id
    .split('-')
    .map((word) => word.charAt(0))
    .join('')
  return letters.slice(0, MOST_LETTERS).toUpperCase()
}
