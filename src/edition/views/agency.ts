/** Producer against agency, of a source and of a lot: strings, numbers and drawings. */
import { type DifferenceModel, differenceModel } from '../../charts/difference.ts'
import type { IndependentComparison } from '../../core/agency/independent-comparison.ts'
import { areOpposite, byTestDate, isBeyond, type Pair, pairsOfLot } from '../../core/agency/pairs.ts'
import type { TestKey } from '../../core/agency/precision.ts'
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import type { SplitComparison } from '../../core/agency/split-comparison.ts'
import { momentOfDay } from '../../core/measure/moment.ts'
import { property } from '../../core/measure/properties.ts'
import {
  differenceUnit,
  differenceWords,
  independentSentences,
  NO_INDEPENDENT,
  sidesWords,
  spreadWords,
  splitSentences,
  takenWords,
  verificationKindWords,
} from '../../words/agency.ts'
import { period, shortDate } from '../../words/dates.ts'
import { number, plural } from '../../words/numbers.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { testName } from '../../words/standing.ts'
import { propertyWords } from '../../words/property-names.ts'
import { resultText } from '../../words/units.ts'
import { unitSign } from '../../words/unit-signs.ts'
import { link, paths } from '../shape/addresses.ts'
import { comparedLot, precisionOf } from '../shape/compared-lot.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry, SourceEntry } from '../shape/edition.ts'

export interface AgencyView {
  readonly name: string
  /** Whether this audience may see agencies' results at all. */
  readonly published: boolean
  /** How many samples of each kind are on record. */
  readonly counts: string
  /** Said in place of comparisons, by kind. */
  readonly none: Readonly<Record<Pair['kind'], string>>
  /** Said where there is no independent sample; null otherwise. */
  readonly caution: string | null
  readonly status: readonly StatusLine[]
  readonly independent: readonly ComparisonView[]
  readonly split: readonly ComparisonView[]
  /** Every pair, independent samples first. */
  readonly all: readonly PairRow[]
}

export interface StatusLine {
  readonly period: string
  readonly kind: string
  readonly taken: string
  /** Sampler, custody, methods and cement, as far as stated. */
  readonly remarks: string
}

export interface ComparisonView {
  readonly title: string
  readonly sentences: readonly string[]
  /** null where no pair has a difference. */
  readonly chart: DifferenceChart | null
  readonly rows: readonly PairRow[]
  /** Where the limits of difference come from, each once. */
  readonly sources: readonly string[]
}

export interface DifferenceChart {
  readonly title: string
  readonly description: string
  readonly unit: string
  readonly model: DifferenceModel
  /** In the order of the model's. */
  readonly yTicks: readonly string[]
  readonly ends: readonly string[]
  readonly hasBand: boolean
  readonly hasRing: boolean
  readonly hasBeyond: boolean
  readonly hasChange: boolean
}

export interface PairRow {
  readonly lot: string
  readonly number: string
  readonly href: string
  readonly kind: string
  /** Name of the test, for the pairs of a lot. */
  readonly test: string
  readonly tested: string
  readonly producer: string
  readonly agency: string
  readonly laboratories: string
  readonly difference: string
  /** "0.57 points", or a dash. */
  readonly allowed: string
  readonly beyond: boolean
  readonly opposite: boolean
  readonly sides: readonly string[]
}

const NONE = '—'

/** Whether agencies' results may be shown to the edition's audience. */
export function verificationPublished({ audience, site }: Pick<Edition, 'audience' | 'site'>): boolean {
  return audience === 'internal' || (site.publish ?? []).includes('verification')
}

/**
 * A source's comparison, independent samples before splits.
 * @param isShown which lots take part; all without it
 */
export function agencyView(
  edition: Edition,
  id: string,
  isShown?: Parameters<SourceEntry['agency']>[0],
): AgencyView {
  const source = edition.source(id)
  const agency = source.agency(isShown)
  const name = source.record.name
  if (agency === null)
    return {
      name,
      published: false,
      counts: '',
      none: { independent: '', split: '' },
      caution: null,
      status: [],
      independent: [],
      split: [],
      all: [],
    }
  const independent = agency.independent.map((found) => independentView(edition, found))
  const split = agency.split.map((found) => splitView(edition, found))
  return {
    name,
    published: true,
    counts: countsOf(agency),
    none: { independent: noneOf('independent', agency), split: noneOf('split', agency) },
    caution: agency.independents === 0 && 0 < agency.splits ? NO_INDEPENDENT : null,
    status: agency.status.map((status) => ({
      period: period(status.from, status.to),
      kind: sentence(verificationKindWords(status.kind)),
      taken: takenWords(status),
      remarks: remarksOf(status),
    })),
    independent,
    split,
    all: [...independent, ...split].flatMap(({ rows }) => rows),
  }
}

/** Where no comparison can be made of samples of a kind. */
function noneOf(kind: Pair['kind'], { independents, splits }: SourceAgency): string {
  const [count, name] = kind === 'split' ? [splits, 'split'] : [independents, 'independent sample']
  return count === 0
    ? `No ${name} is on record.`
    : 'None can be compared: of these tests no valid result of both sides is on record, or the lot was withdrawn.'
}

function countsOf({ independents, splits, ofWithdrawn }: SourceAgency): string {
  const withdrawn = ofWithdrawn.independent + ofWithdrawn.split
  const apart =
    withdrawn === 0
      ? ''
      : `; ${withdrawn === 1 ? '1 of a withdrawn lot, whose results stand' : `${withdrawn} of withdrawn lots, whose results stand`} on the lot’s page and are not compared here`
  return `${plural(independents, 'independent sample', 'independent samples')}, ${plural(splits, 'split', 'splits')} on record${apart}`
}

function remarksOf(status: SourceAgency['status'][number]): string {
  const { kind, taken, withSampler, withCustody, methods, cement, sampler, custody, note, level } = status
  const visits = (status.visits ?? []).map(({ on, note: seen }) =>
    seen === undefined ? shortDate(on) : `${shortDate(on)} (${seen})`,
  )
  const alike = (what: string, of: 'alike' | 'not-alike' | undefined) =>
    of === undefined ? [] : [`${what} ${of === 'alike' ? 'alike' : 'not alike'}`]
  const recorded =
    taken === null || taken === 0 || kind === 'assurance'
      ? []
      : [`sampler named for ${withSampler} of ${taken}`, `custody stated for ${withCustody} of ${taken}`]
  return [
    ...(sampler === undefined ? [] : [`sampler: ${sampler}`]),
    ...(custody === undefined ? [] : [`custody: ${custody}`]),
    ...recorded,
    ...alike('methods', methods),
    ...alike('control cement', cement),
    ...(level === undefined ? [] : [`compared at ${level}`]),
    ...(visits.length === 0 ? [] : [`visits: ${visits.join(', ')}`]),
    ...(note === undefined ? [] : [note]),
  ].join('; ')
}

function independentView(edition: Edition, found: IndependentComparison): ComparisonView {
  const { decimals } = property(found.property)
  const sentences = independentSentences(found, decimals, edition.site.units)
  return comparisonView(edition, found, sentences, { mean: null, interval: null })
}

function splitView(edition: Edition, found: SplitComparison): ComparisonView {
  const { decimals } = property(found.property)
  const sentences = splitSentences(found, decimals, edition.site.units)
  return comparisonView(edition, found, sentences, {
    mean: found.mean,
    interval: found.paired?.interval ?? null,
  })
}

type Mean = Pick<Parameters<typeof differenceModel>[0], 'mean' | 'interval'>

function comparisonView(
  edition: Edition,
  found: TestKey & { readonly pairs: readonly Pair[] },
  sentences: readonly string[],
  mean: Mean,
): ComparisonView {
  const title = sentence(titleOf(edition, found))
  return {
    title,
    sentences,
    chart: chartOf(found, title, sentences, mean),
    rows: found.pairs.map((pair) => pairRow(edition, pair)).reverse(),
    sources: [
      ...new Set(found.pairs.flatMap(({ allowed }) => (allowed === undefined ? [] : [allowed.source]))),
    ],
  }
}

function titleOf(edition: Edition, { property: key, condition, age }: TestKey): string {
  const name =
    age === undefined
      ? propertyWords({ property: key })
      : testName({ property: key, age: age.text, conditionName: null })
  return unbroken(condition === undefined ? name : `${name} (${conditionTitle(edition, condition)})`)
}

function chartOf(
  { property: key, pairs }: TestKey & { readonly pairs: readonly Pair[] },
  title: string,
  sentences: readonly string[],
  mean: Mean,
): DifferenceChart | null {
  const drawn = pairs.filter(({ difference }) => difference !== null)
  const points = drawn.map((pair) => ({
    day: pair.tested.day,
    difference: pair.difference ?? 0,
    allowed: pair.allowed?.limit,
    beyond: isBeyond(pair) === true,
    opposite: areOpposite(pair),
  }))
  if (points.length === 0) return null
  const model = differenceModel({ points, ...mean, changes: laboratoryChanges(drawn) })
  return {
    title,
    description: `Difference, agency less producer, against the date of the agency’s test. ${sentences.join('. ')}.`,
    unit: unitSign(differenceUnit(key)),
    model,
    yTicks: model.yTicks.map(({ value }) =>
      tickText(
        value,
        model.yTicks.map((tick) => tick.value),
      ),
    ),
    ends: model.ends.map(({ day }) => shortDate(momentOfDay(day))),
    hasBand: model.band !== null,
    hasRing: points.some(({ opposite }) => opposite),
    hasBeyond: points.some(({ beyond }) => beyond),
    hasChange: 0 < model.changes.length,
  }
}

/** As many decimals as the distance of the ticks needs. */
function tickText(value: number, [first = 0, second = first + 1]: readonly number[]): string {
  return number(value, Math.max(0, Math.ceil(-Math.log10(Math.abs(second - first)) - 1e-9)))
}

/** Days of the pairs before which either side was tested elsewhere. */
function laboratoryChanges(pairs: readonly Pair[]): number[] {
  return pairs.flatMap((pair, place) => {
    const before = pairs[place - 1]
    const same = before === undefined || laboratoriesOf(before) === laboratoriesOf(pair)
    return same ? [] : [pair.tested.day]
  })
}

function laboratoriesOf({ producer, agency }: Pair): string {
  return `${producer.laboratory}|${agency.laboratory}`
}

function pairRow(edition: Edition, pair: Pair): PairRow {
  const { property: key, difference, allowed, producer, agency } = pair
  const decimals = Math.max(producer.decimals, agency.decimals)
  const units = edition.site.units
  const laboratory = (id: string) => edition.laboratories.get(id)?.name ?? id
  return {
    lot: pair.lot,
    number: pair.number,
    href: link(edition, paths.certificate(pair.lot)),
    kind: pair.kind === 'split' ? 'split sample' : 'independent sample',
    test: sentence(titleOf(edition, pair)),
    tested: shortDate(pair.tested),
    producer: resultText(producer, units),
    agency: resultText(agency, units),
    laboratories: `${laboratory(producer.laboratory)} and ${laboratory(agency.laboratory)}`,
    difference: difference === null ? NONE : differenceWords(key, difference, decimals, units),
    allowed: allowed === undefined ? NONE : spreadWords(key, allowed.limit, decimals, units),
    beyond: isBeyond(pair) === true,
    opposite: areOpposite(pair),
    sides: pair.sides.map((side) => unbroken(sidesWords(side))),
  }
}

/** An agency's results of one lot beside its producer's. */
export interface AgencyOfLot {
  readonly rows: readonly PairRow[]
  readonly sources: readonly string[]
}

/** Null where nothing may be shown or nothing is on record. */
export function agencyOfLot(edition: Edition, lot: LotEntry): AgencyOfLot | null {
  if (!verificationPublished(edition)) return null
  const pairs = pairsOfLot(comparedLot(lot, edition.criteria), precisionOf(edition.site)).sort(
    independentFirst,
  )
  if (pairs.length === 0) return null
  return {
    rows: pairs.map((pair) => pairRow(edition, pair)),
    sources: [...new Set(pairs.flatMap(({ allowed }) => (allowed === undefined ? [] : [allowed.source])))],
  }
}

function independentFirst(a: Pair, b: Pair): number {
  return a.kind === b.kind ? byTestDate(a, b) : a.kind === 'independent' ? -1 : 1
}
