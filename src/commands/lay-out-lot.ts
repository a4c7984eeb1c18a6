/** new lot: the next number of a source, its samples, and what its specification asks. */
import type { Criterion } from '../core/criteria/criterion.ts'
import { defined } from '../core/measure/defined.ts'
import { daysBetween, dateOf, type Moment, yearOf } from '../core/measure/moment.ts'
import { isFault, readQuantity } from '../core/measure/units.ts'
import { criteriaInForce, listedCriteria } from '../records/checks/criteria-in-force.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { listFolder } from '../records/files.ts'
import { hasSite } from '../records/load.ts'
import type { Records } from '../records/records.ts'
import type { Lot, Source } from '../records/schema/loaded-records.ts'
import { type AskedFigure, askedFigures, reportedOn } from '../scaffold/asked-figures.ts'
import { nextLotNumber } from '../scaffold/lot-number.ts'
import { type Figures, type LotSheet, lotSheet, type RegularSamples } from '../scaffold/lot-sheet.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { type IdFault, lotNameFault } from '../scaffold/record-id.ts'
import { CommandFailure, commandLine, EXIT } from './program.ts'

export interface LotOptions {
  readonly from?: Moment
  readonly to?: Moment
  readonly quantity?: string
  readonly laboratory?: string
  readonly figures?: Figures
  readonly cast?: Moment
}

export interface LaidOutLot {
  /** SOURCE/LOT. */
  readonly lot: string
  readonly file: NewFile
  readonly governing: Criterion
  readonly asked: readonly AskedFigure[]
}

/** @throws CommandFailure (wrong use) for a source, number, laboratory or quantity that cannot be used */
export function layOutLot(
  records: Records,
  [sourceId, name]: readonly [source: string, lot: string | undefined],
  options: LotOptions,
  today: Moment,
): LaidOutLot {
  checkProduction(options)
  const source = knownRecord(records.sources, 'source', sourceId)
  const day = options.to ?? today
  const governing = governingSet(records, sourceId, source, day)
  const lot = `${sourceId}/${name ?? nextNumber(records, sourceId, source, day)}`
  const wrong = lotNameFault(lot.slice(sourceId.length + 1))
  if (wrong !== undefined) throw idFailure(wrong)
  const before = lastLot(records, sourceId)
  const laboratory = laboratoryFor(records, options.laboratory, before)
  const asked = askedFigures(governing, { kind: source.kind, class: source.class ?? null })
  const file = lotSheet({
    ...{ lot, sourceName: source.name, laboratory, asked, units: records.site.units },
    figures: options.figures ?? usualFigures(records, before),
    regular: regularSamples(source, options),
    conditions: records.conditions,
    controls: newestControls(records, laboratory),
    ...written(options),
  })
  return { lot, file, governing, asked }
}

function written({
  from,
  to,
  quantity,
  cast,
}: LotOptions): Pick<LotSheet, 'from' | 'to' | 'quantity' | 'cast'> {
  return defined({ from: from?.text, to: to?.text, quantity, cast: cast?.text })
}

/** @throws CommandFailure (wrong use) with near names */
export function knownRecord<T>(records: ReadonlyMap<string, T>, what: string, id: string): T {
  const record = records.get(id)
  if (record !== undefined) return record
  throw new CommandFailure(
    `There is no ${what} "${id}", or its record has a fault.`,
    EXIT.wrongUse,
    nearNames(id, records.keys()) ||
      (records.size === 0 ? `write one first: new ${what}` : `name one of ${[...records.keys()].join(', ')}`),
  )
}

/** A wrong use of an id. */
export function idFailure({ message, mend }: IdFault): CommandFailure {
  return new CommandFailure(`${message.charAt(0).toUpperCase()}${message.slice(1)}.`, EXIT.wrongUse, mend)
}

function governingSet(records: Records, id: string, source: Source, day: Moment): Criterion {
  const [governing] = criteriaInForce(records, source, day)
  if (governing !== undefined) return governing
  const faulty = hasSite(records)
    ? listedCriteria(records, source, day).filter((set) => !records.criteria.has(set))
    : ['site.yaml']
  if (faulty.length > 0)
    throw new CommandFailure(
      `Which criteria hold for ${id} is not known: ${faulty.join(', ')} cannot be read or has a fault.`,
      EXIT.failed,
      `${commandLine('check')} shows the fault; mend it first`,
    )
  throw new CommandFailure(
    `No criterion in force judges ${source.kind}, the material of ${id}.`,
    EXIT.wrongUse,
    'list one in site.yaml or in the source’s record',
  )
}

function nextNumber(records: Records, id: string, source: Source, day: Moment): string {
  const pattern = source['lot-number-pattern']
  const given = [
    ...namesOnDisk(records.contentDir, `lots/${id}`),
    ...[...records.lots].flatMap(([lot, { number }]) =>
      number !== undefined && lot.startsWith(`${id}/`) ? [number] : [],
    ),
    ...(source['numbers-not-used'] ?? []).map(({ number }) => number),
  ]
  const next = pattern === undefined ? null : nextLotNumber({ pattern, given, year: yearOf(day) })
  if (next !== null) return next
  throw new CommandFailure(
    `The source ${id} states no pattern that its next lot number follows from.`,
    EXIT.wrongUse,
    `name the lot: new lot ${id} LOT`,
  )
}

/** Names of the records in a folder: one with a fault, or one that nothing is written into yet, has its name all the same. */
export function namesOnDisk(contentDir: string, folder: string): string[] {
  const listing = listFolder(contentDir)
  if ('fault' in listing) return []
  return listing.files.flatMap(({ path }) => {
    const name = path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : ''
    return /^[^/]+\.yaml$/.test(name) ? [name.replace(/\.yaml$/, '')] : []
  })
}

/** The lot produced last, as far as the records say. */
function lastLot({ lots }: Records, source: string): Lot | undefined {
  const own = [...lots].filter(([id]) => id.startsWith(`${source}/`)).map(([, lot]) => lot)
  return own.toSorted((a, b) => daysBetween(b.produced.to, a.produced.to)).at(-1)
}

/** As it was done last; of a first lot, whoever lays out control batches computes from readings. */
function usualFigures({ contentDir }: Records, before: Lot | undefined): Figures {
  const hasReadings =
    before === undefined ? namesOnDisk(contentDir, 'controls').length > 0 : (before.tests ?? []).some(isRead)
  return hasReadings ? 'readings' : 'finished'
}

/** A mortar whose figures came finished has its casting and its ages alone. */
function isRead({ strength = [], resistivity = [] }: NonNullable<Lot['tests']>[number]): boolean {
  return [...strength, ...resistivity].some(({ tested }) => tested !== undefined)
}

function laboratoryFor(records: Records, given: string | undefined, before: Lot | undefined): string {
  const own = [...(before?.tests ?? []), ...(before?.analyses ?? [])][0]?.laboratory
  const id = given ?? own ?? [...records.laboratories.keys()][0] ?? ''
  knownRecord(records.laboratories, 'laboratory', id)
  return id
}

/** A lot is on record from when all three are known: one of them alone would be a record with a fault. */
function checkProduction({ from, to, quantity, cast }: LotOptions): void {
  const given = [from, to, quantity].filter((one) => one !== undefined).length
  if (given === 0 && cast !== undefined)
    throw new CommandFailure(
      '--cast goes with --from, --to and --quantity: mortars are cast from what has been produced.',
      EXIT.wrongUse,
      'give all four, or none and write them into the lot’s record later',
    )
  if (given !== 0 && given !== 3)
    throw new CommandFailure(
      '--from, --to and --quantity go together.',
      EXIT.wrongUse,
      'give all three, or none and write them into the lot’s record later',
    )
  if (cast !== undefined && to !== undefined && daysBetween(to, cast) < 0)
    throw new CommandFailure(
      'The mortars are cast before production ends.',
      EXIT.wrongUse,
      'give --cast a day from --to on',
    )
  if (from !== undefined && to !== undefined && daysBetween(from, to) < 0)
    throw new CommandFailure(
      'Production ends before it begins.',
      EXIT.wrongUse,
      'give --to a day from --from on',
    )
  const mass = quantity === undefined ? undefined : readQuantity(quantity, 'lot-mass')
  if (mass !== undefined && (isFault(mass) || mass.value <= 0))
    throw new CommandFailure(
      `"${quantity}" is not a mass.`,
      EXIT.wrongUse,
      'write it with its unit, for instance 1450 t',
    )
}

/** Samples laid out at most for one line of the plan. */
const MOST_SAMPLES = 20

/** The grabs of the sampling plan: as many as its mass or its time asks for, as far as that is known. */
function regularSamples(source: Source, { from, to, quantity }: LotOptions): RegularSamples[] {
  const mass = quantity === undefined ? undefined : readQuantity(quantity, 'lot-mass')
  const tonnes = mass === undefined || isFault(mass) ? 0 : mass.value
  const days = from === undefined || to === undefined ? 0 : daysBetween(from, to) + 1
  return (source['sampling-plan'] ?? []).flatMap((line) => {
    if (line.kind !== 'grab') return []
    const [byMass, byTime] = [line.every, line['or-every']] as const
    const count = Math.max(
      1,
      byMass === undefined ? 0 : Math.ceil(tonnes / byMass.value),
      byTime === undefined ? 0 : Math.ceil((days * 24) / byTime.value),
    )
    return [{ properties: reportedOn(line.properties), count: Math.min(count, MOST_SAMPLES) }]
  })
}

/** By condition, the laboratory's batch that was cast last. */
function newestControls({ controls }: Records, laboratory: string): Map<string, string> {
  const own = [...controls].filter(([, control]) => control.laboratory === laboratory)
  const inOrder = own.toSorted(([, a], [, b]) => daysBetween(dateOf(b.cast), dateOf(a.cast)))
  return new Map(inOrder.map(([id, { condition }]) => [condition, id]))
}
