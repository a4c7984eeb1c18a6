/**
 * A source's evidence as one file: what the site publishes so that a reader's browser, or another site, can
 * judge the lots under any set with this same core. It holds moments and ages as texts, which are read once,
 * when the file is. Results of one property, condition, age, method and laboratory share an entry of `keys`.
 */
import type { Age } from '../measure/age.ts'
import { type Moment, readMoment } from '../measure/moment.ts'
import type { CertificateState } from './certificate-state.ts'
import type { Evidence } from './evidence.ts'
import { buildHistory, bySampling, type History } from '../history/history.ts'
import {
  type KnownOfLot,
  type LotBackground,
  lotEvidence,
  type LotOnDate,
  type SourceBackground,
} from './lot-evidence.ts'
import { defined } from '../measure/defined.ts'
import { property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import { type WithTexts, withTexts } from '../measure/texts-of-times.ts'
import { readAgeIfAny, readBackground, readIfAny, readLot, readPlanned, readUnmade } from './read-evidence.ts'
import { resultKey } from '../result/result-key.ts'
import type { PlannedTest, Result, UnmadeResult } from '../result/result.ts'

interface ResultKind {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
  readonly method?: string
  readonly laboratory: string
  readonly sampleKind: Result['sampleKind']
  readonly duty?: Result['duty']
}

type Extra = Pick<
  Result,
  'censored' | 'bounds' | 'controlValue' | 'controlBounds' | 'finished' | 'statedU' | 'summaryOnly'
> & {
  /** Where it was written with others than its property's. */
  readonly decimals?: number
  readonly known?: string
  readonly valid?: false
  readonly reasons?: Result['reasons']
}

/**
 * Place in `keys`, sample, value in the stored unit, date or moment of the test, and what is out of the
 * ordinary.
 */
export type PackedResult =
  | readonly [number, string, number, string]
  | readonly [number, string, number, string, Extra]

export interface PackedLot extends WithTexts<Omit<LotOnDate, 'results' | 'unmade' | 'planned'>> {
  readonly number: string
  readonly state: CertificateState
  readonly results: readonly PackedResult[]
  readonly unmade?: WithTexts<readonly UnmadeResult[]>
  readonly planned?: WithTexts<readonly PlannedTest[]>
}

export interface SourceEvidence {
  readonly format: 1
  readonly source: string
  readonly asOf: string
  readonly background: WithTexts<SourceBackground>
  /** Dates at which a series begins anew. */
  readonly restarts: readonly string[]
  /** Lots left out since they are not published; a history computed from this file lacks them. */
  readonly unpublished: number
  readonly conditions: Readonly<Record<string, string>>
  readonly keys: readonly ResultKind[]
  /** In order of sampling. */
  readonly lots: readonly PackedLot[]
}

export interface EvidenceLot extends LotOnDate {
  readonly number: string
  /** A reader never sees an outcome without it. */
  readonly state: CertificateState
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

/** What a file says of the whole source. */
export interface SourceHead extends Pick<SourceEvidence, 'source' | 'unpublished' | 'conditions'> {
  readonly asOf: Moment
  readonly background: SourceBackground
  readonly restarts: readonly Moment[]
}

/**
 * A source's evidence as one file.
 * @param lots in order of sampling, with the producer's results known by the date
 */
export function packSource(head: SourceHead, lots: readonly EvidenceLot[]): SourceEvidence {
  const places = new Map<string, number>()
  const keys: ResultKind[] = []
  const placeOf = (result: Result): number => {
    const { property: key, condition, age, method, laboratory, sampleKind, duty } = result
    const kind = {
      property: key,
      ...(condition === undefined ? {} : { condition }),
      ...(age === undefined ? {} : { age: age.text }),
      ...(method === undefined ? {} : { method }),
      laboratory,
      sampleKind,
      ...(duty === undefined ? {} : { duty }),
    }
    const text = JSON.stringify(kind)
    const known = places.get(text)
    if (known !== undefined) return known
    places.set(text, keys.length)
    return keys.push(kind) - 1
  }
  const rows = lots.map(
    ({ results, unmade, planned, ...lot }): PackedLot => ({
      ...withTexts(lot),
      results: results
        .filter((result) => result.role === 'producer')
        .map((result) => packResult(result, placeOf(result))),
      ...(unmade.length === 0 ? {} : { unmade: withTexts(unmade) }),
      ...(planned.length === 0 ? {} : { planned: withTexts(planned) }),
    }),
  )
  return { format: 1, ...withTexts(head), keys, lots: rows }
}

function packResult(
  { sample, value, tested, known, valid, reasons, decimals, ...result }: Result,
  place: number,
): PackedResult {
  const { censored, bounds, controlValue, controlBounds, finished, statedU, summaryOnly } = result
  const extra: Extra = {
    ...defined({ censored, bounds, controlValue, controlBounds, summaryOnly }),
    ...(finished === undefined ? {} : defined({ finished, statedU })),
    ...(decimals === property(result.property).decimals ? {} : { decimals }),
    ...(known === undefined ? {} : { known: known.text }),
    ...(valid ? {} : { valid }),
    ...(reasons.length === 0 ? {} : { reasons }),
  }
  return Object.keys(extra).length === 0
    ? [place, sample, value, tested.text]
    : [place, sample, value, tested.text, extra]
}

export interface UnpackedSource {
  readonly lots: readonly EvidenceLot[]
  /** What was known of a lot on the file's date. @throws RangeError for a place that holds no lot */
  evidenceOf(place: number): Evidence
  /** What would be known of a lot on a date if it stood among the others, in place of one of the same id. */
  evidenceWith(lot: LotBackground & KnownOfLot, asOf: Moment): Evidence
  /** A reader's name of a condition; its id where the file has none. */
  conditionTitle(id: string): string
}

/**
 * The other way: results without workings, and the source's history.
 * @throws RangeError for a result of a kind that the file does not list, or a text that is no moment or age
 */
export function unpackSource(file: SourceEvidence): UnpackedSource {
  const keys = file.keys.map(({ age, ...kind }) => ({ ...kind, ...defined({ age: readAgeIfAny(age) }) }))
  const lots = file.lots.map(
    ({ results, unmade = [], planned = [], ...lot }): EvidenceLot => ({
      ...readLot(lot),
      results: results.map((row) => unpackResult(row, keys)),
      unmade: unmade.map(readUnmade),
      planned: planned.map(readPlanned),
    }),
  )
  const restarts = file.restarts.map(readMoment)
  const history: History = buildHistory(lots, restarts)
  const [background, asOf] = [readBackground(file.background), readMoment(file.asOf)]
  return {
    lots,
    evidenceOf: (place) => {
      const lot = lots[place]
      if (lot === undefined)
        throw new RangeError(`evidenceOf needs a place among ${lots.length} lots, got ${place}`)
      return lotEvidence(background, history, lot, lot, asOf)
    },
    evidenceWith: (lot, day) => {
      const among = [...lots.filter(({ id }) => id !== lot.id), lot].sort(bySampling)
      return lotEvidence(background, buildHistory(among, restarts), lot, lot, day)
    },
    conditionTitle: (id) => (Object.hasOwn(file.conditions, id) ? file.conditions[id] : undefined) ?? id,
  }
}

/** A kind with its age read. */
type ReadKind = Omit<ResultKind, 'age'> & { readonly age?: Age }

function unpackResult(
  [place, sample, value, tested, extra]: PackedResult,
  keys: readonly ReadKind[],
): Result {
  const kind = keys[place]
  if (kind === undefined)
    throw new RangeError(`unpackResult needs a place among ${keys.length} keys, got ${place}`)
  const { valid = true, reasons = [], known, ...rest } = extra ?? {}
  return {
    ...kind,
    decimals: property(kind.property).decimals,
    ...rest,
    key: resultKey({ ...kind, sample }),
    sample,
    role: 'producer',
    value,
    unit: storedUnit(kind.property),
    n: 1,
    tested: readMoment(tested),
    ...defined({ known: readIfAny(known) }),
    valid,
    reasons,
    working: () => [],
  }
}
