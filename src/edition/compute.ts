/** Records to Edition: every lot computed once, then judged, then held against what was issued. */
import { defined } from '../core/measure/defined.ts'
import { type Checked, checksRun } from '../core/checks/checked.ts'
import { controlDrift } from '../core/checks/control-drift.ts'
import { kept } from '../core/measure/kept.ts'
import { LastUsed } from '../core/measure/last-used.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import { once } from '../core/measure/once.ts'
import { isBy, type Moment } from '../core/measure/moment.ts'
import { issuedReader } from '../records/issued/read-document.ts'
import type { Records } from '../records/load.ts'
import { NO_MEMORY, type Remembering } from './passes/memory.ts'
import { auditIndex } from './passes/audit.ts'
import { asSiteWants } from './passes/audit-source.ts'
import { type ComputedSource, computedSource, type WholeSource } from './certificate/computed-source.ts'
import { controlEntries } from './passes/control-entries.ts'
import { Histories } from './passes/histories.ts'
import { knownRecords } from './passes/known-record.ts'
import { type KeptParts, partsOfSources } from './passes/parts-of-sources.ts'
import { type RestsOn, restsOn } from './passes/rests-on.ts'
import { type Remembered, sourceStates } from './passes/source-state.ts'
import { studyEntry } from './passes/study-entry.ts'
import type { Edition, ListedLot, ListedSource } from './shape/edition.ts'
import { listedLot, listedSource } from './shape/listing.ts'

/** The clock is the command's: below it a day is an input like any other. */
export interface AsOf {
  /** Calendar date that is asked about. */
  readonly asOf?: Moment
  /** Stands in where the site states no as-of date. */
  readonly today?: Moment
}

export interface EditionOptions extends AsOf {
  /** Origin and base path in place of the site's. */
  readonly address?: string
  readonly program: string
  /** Called whenever a lot is computed or asked for, so that a command can look at its memory; may throw. */
  readonly atLot?: () => void
  /** Of an earlier computation of the same folder and program, and for a later one. */
  readonly memory?: Remembering
  /** What earlier computations with the same program made of sources that are as they were. */
  readonly kept?: KeptParts
  /** Lots that are held at once, all without it: a source that was let go is computed again when it is asked for. */
  readonly held?: HeldLots
  /**
   * Called with each source while it is held: what is asked of every source is asked here, as a part (`Edition.ofSource`)
   * or a value of the caller's. The rows of later sources are not there yet.
   */
  readonly atSource?: (edition: Edition, source: string) => void
  /** Sets and conditions that the program ships: the bench judges under them too. */
  readonly shipped?: Edition['shipped']
}

export interface HeldLots {
  /** Of which the results are held. */
  readonly results: number
  /** Of which everything is. */
  readonly whole: number
}

const ALL_HELD: HeldLots = { results: Number.POSITIVE_INFINITY, whole: Number.POSITIVE_INFINITY }

/**
 * The date an edition of these records is read on: as asked, else the site's, else today's.
 * @throws RangeError where none of them is given
 */
export function asOfDate({ site }: Pick<Records, 'site'>, { asOf, today }: AsOf): Moment {
  const date = asOf ?? site['as-of'] ?? today
  if (date === undefined) throw new RangeError('asOfDate needs a date of the site, or today, got none')
  return date
}

/** Origin and base path of an address such as "https://example.org/pozzolans/". */
export function splitAddress(address: string | undefined): Edition['address'] {
  // An address that is none has its diagnostic; the lots are judged all the same.
  if (address === undefined || !URL.canParse(address)) return { origin: null, base: '/' }
  const url = new URL(address)
  return { origin: url.origin, base: url.pathname.endsWith('/') ? url.pathname : `${url.pathname}/` }
}

/** The whole edition with everything in it; `forAudience` takes out what is not published. */
export function computeEdition(whole: Records, options: EditionOptions): Edition {
  const asOf = asOfDate(whole, options)
  // Cut before anything is made of them, so that no page and no writer can tell what happened later.
  const { memory = NO_MEMORY, atLot = () => undefined, held = ALL_HELD } = options
  const records = knownRecords(whole, asOf, (lot, make) => memory.known(lot, asOf, make))
  memory.begin(records, asOf)
  const controls = controlEntries(records, asOf)
  const computed: Remembered = (id, record, make) => {
    atLot()
    return memory.computed(id, record, make)
  }
  const rests = restsOn(records, asOf)
  const part = partsOfSources(options.kept)
  const states = sourceStates(records, asOf, {
    controls,
    computed,
    heldLots: held.results,
    batches: (id, lots, make) =>
      part({ source: id, name: 'batches', restsOn: () => rests.batches(id, lots) }, make),
  })
  atLot()
  const index = auditIndex(records, asOf, controls)
  atLot()
  const histories = new Histories(records, controls)
  const issued = issuedReader(records.contentDir)
  const wholes = new LastUsed<WholeSource>(held.whole)
  const making = { records, issued, index, histories, memory, rests, kept: options.kept, atLot, held: wholes }
  const sources = new Map([...states].map(([id, state]) => [id, computedSource(state, making)]))
  const source = (id: string) => entryOf('source', sources, id)
  const address = splitAddress(options.address ?? records.site.address)
  // Parts hold links.
  const linkedTo = `${address.origin} ${address.base}`
  const ofSource: Edition['ofSource'] = (id, name, make, beside = () => '') =>
    part({ source: id, name, restsOn: () => `${source(id).restsOn()} ${linkedTo} ${beside()}` }, make)
  const digests = new Map<string, ReadonlyMap<string, string>>()
  const lotsRestOn = (id: string) =>
    kept(digests, id, () => new Map(ofSource(id, 'lots rest on', source(id).lotsRestOn)))
  const listed = nothingListed()
  const edition: Edition = {
    asOf,
    ...siteOf(records),
    address,
    audience: 'internal',
    producers: records.producers,
    laboratories: records.laboratories,
    conditions: records.conditions,
    announcedConditions: records.announcedConditions,
    controls,
    criteria: records.criteria,
    sources: listed.sources,
    lots: listed.lots,
    lotsOf: (id) => listed.lotsOf.get(id) ?? [],
    lot: (id) => {
      atLot()
      return entryOf('lot', sources.get(sourceOf(id))?.whole().lots ?? new Map(), id)
    },
    source: (id) => source(id).whole().source,
    scatterFor: (id) => entryOf('source', states, id).pooled,
    laboratoryHistory: (id) => histories.ofLaboratory(id),
    ...laboratoryAudit(records.site, histories),
    shipmentsOf: (id) => {
      if (!sources.has(id)) return []
      const { whole } = source(id)
      return options.kept === undefined
        ? whole().shipments
        : ofSource(id, 'shipments', () => whole().shipments)
    },
    ...studiesOf(records, asOf),
    methods: records.methods,
    restsOn: digestsOfParts(lotsRestOn, sources, rests),
    ofSource,
    program: options.program,
    ...defined({ shipped: options.shipped }),
  }
  for (const [id, { whole }] of sources) {
    list(listed, id, {
      rows: ofSource(id, 'rows', () => [...whole().lots.values()].map(listedLot)),
      row: ofSource(id, 'row', () => listedSource(whole().source)),
    })
    if (options.kept !== undefined) lotsRestOn(id)
    options.atSource?.(edition, id)
  }
  return edition
}

/** The rows of an edition, of one source after the other. */
interface Listed {
  readonly sources: Map<string, ListedSource>
  readonly lots: Map<string, ListedLot>
  readonly lotsOf: Map<string, readonly ListedLot[]>
}

function nothingListed(): Listed {
  return { sources: new Map(), lots: new Map(), lotsOf: new Map() }
}

/** What a source gives to the rows. */
interface RowsOfSource {
  readonly rows: readonly ListedLot[]
  readonly row: ListedSource
}

function list(listed: Listed, id: string, { rows, row }: RowsOfSource): void {
  listed.sources.set(id, row)
  listed.lotsOf.set(id, rows)
  for (const one of rows) listed.lots.set(one.id, one)
}

function siteOf({ site: { 'as-of': statedAsOf, ...site } }: Records): Pick<Edition, 'site' | 'statedAsOf'> {
  return defined({ site, statedAsOf })
}

/** @param lotsRestOn the digest of each lot of a source */
function digestsOfParts(
  lotsRestOn: (source: string) => ReadonlyMap<string, string>,
  sources: ReadonlyMap<string, ComputedSource>,
  rests: RestsOn,
): Edition['restsOn'] {
  const ofLot = (id: string) =>
    sources.has(sourceOf(id)) ? (lotsRestOn(sourceOf(id)).get(id) ?? null) : null
  return (part) => {
    const [kind, id = ''] = part.split(' ')
    if (kind === 'lot') return ofLot(id)
    if (kind === 'source') return sources.get(id)?.restsOn() ?? null
    if (kind === 'control') return rests.control(id)
    return kind === 'laboratory' ? rests.laboratory() : rests.study(id)
  }
}

/** Studies whose plan was fixed by the as-of day. */
function studiesOf(records: Records, asOf: Moment): Pick<Edition, 'studies' | 'study'> {
  const begun = [...records.studies].filter(([, { record }]) => isBy(record.plan.fixed, asOf))
  const entries = new Map(begun.map(([id, study]) => [id, once(() => studyEntry(id, study, asOf))]))
  return {
    studies: new Map(begun.map(([id, { record }]) => [id, { id, title: record.title, kind: record.kind }])),
    study: (id) => entryOf('study', entries, id)(),
  }
}

/** What concerns a laboratory is asked of it once, and not of each source that it tests for. */
function laboratoryAudit(
  site: Records['site'],
  histories: Histories,
): Pick<Edition, 'laboratoryFindings' | 'laboratoryChecks'> {
  const known = new Map<string, Checked>()
  const drift = (id: string) => kept(known, id, () => controlDrift(histories.ofLaboratory(id)))
  return {
    laboratoryFindings: (id) => drift(id).findings.map((finding) => asSiteWants(finding, site)),
    laboratoryChecks: (id) => checksRun([drift(id)], 0),
  }
}

function entryOf<Entry>(
  what: 'lot' | 'source' | 'study',
  entries: ReadonlyMap<string, Entry>,
  id: string,
): Entry {
  const entry = entries.get(id)
  if (entry === undefined) throw new RangeError(`${what} needs the id of a ${what} of the edition, got ${id}`)
  return entry
}
