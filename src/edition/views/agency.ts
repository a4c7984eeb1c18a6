/** Producer against agency, of a source: strings, numbers and drawings. */
import type { IndependentComparison } from '../../core/agency/independent-comparison.ts'
import type { Pair } from '../../core/agency/pairs.ts'
import type { TestKey } from '../../core/agency/precision.ts'
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import type { SplitComparison } from '../../core/agency/split-comparison.ts'
import { property } from '../../core/measure/properties.ts'
import {
  independentSentences,
  NO_INDEPENDENT,
  splitSentences,
  takenWords,
  verificationKindWords,
} from '../../words/agency.ts'
import { period, shortDate } from '../../words/dates.ts'
import { plural } from '../../words/numbers.ts'
import { sentence } from '../../words/sentences.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { type DifferenceChart, differenceChart, type MeanDifference } from './agency-chart.ts'
import { type PairRow, pairRow, testTitle } from './agency-of-lot.ts'

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

function comparisonView(
  edition: Edition,
  found: TestKey & { readonly pairs: readonly Pair[] },
  sentences: readonly string[],
  mean: MeanDifference,
): ComparisonView {
  const title = sentence(testTitle(edition, found))
  return {
    title,
    sentences,
    chart: differenceChart(found, title, sentences, mean),
    rows: found.pairs.map((pair) => pairRow(edition, pair)).reverse(),
    sources: [
      ...new Set(found.pairs.flatMap(({ allowed }) => (allowed === undefined ? [] : [allowed.source]))),
    ],
  }
}
