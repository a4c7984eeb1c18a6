/** A figure of a history, or why there is none: what cannot be computed carries its reason in place of a number. */
import type { ReasonOf } from '../result/reason.ts'

/** Nothing that the sentence needs. */
type Nothing = Readonly<Record<string, never>>

/** Why something is not shown, with what its sentence needs. Codes are permanent. */
export interface NotShownParams {
  /** So many valid results or pairs are there, and so many are needed. */
  'too-few': { readonly n: number; readonly needed: number }
  /** Lots that share a control batch count as one: so many batches are there. */
  'too-few-batches': { readonly batches: number; readonly needed: number }
  /** Neighbours are so much alike that the results are worth so many independent ones. */
  'too-few-independent': { readonly n: number; readonly effectiveN: number; readonly needed: number }
  /** No month has so many results. */
  'too-few-a-month': { readonly needed: number }
  /** Results span so many whole months of the calendar, and so many are needed. */
  'too-short': { readonly months: number; readonly needed: number }
  /** Results known only within bounds have no mean. */
  'known-within-bounds': { readonly n: number }
  /** All results are equal. */
  'no-scatter': Nothing
  /** The governing criterion sets no limit for a single result. */
  'no-limit': Nothing
  /** So many points signal on the control chart, so that no distribution describes the source. */
  'out-of-control': { readonly signals: number }
  /** More results lie beyond the limit than the estimated share outside would give by chance. */
  'not-as-estimated': { readonly outside: number; readonly n: number; readonly percentWithin: number }
  /** So much material was diverted without its results, and what is left does not speak for the source. */
  'diverted-without-results': { readonly entries: number }
  /** Neither duplicate tests nor a stated repeatability. */
  'no-testing-error': Nothing
  /** One pair of duplicates alone, and no stated repeatability. */
  'single-duplicate': Nothing
  /** The interval of the slope holds zero. */
  'no-trend': Nothing
  /** The line moves away from every limit, or does not reach one within so many lots, half of the fitted span. */
  'limit-not-reached': { readonly withinLots: number }
  /** No mortar with a control is behind the results. */
  'no-control': Nothing
}

export type NotShown = ReasonOf<NotShownParams>

/** A figure, or why there is none. */
export type Shown<Figure> =
  | ({ readonly shown: true } & Figure)
  | { readonly shown: false; readonly reason: NotShown }

/** From low to high at a level of confidence. */
export interface TInterval {
  readonly low: number
  readonly high: number
  readonly level: number
  readonly df: number
}

/** Of all intervals of a history. */
export const LEVEL = 0.95

/** A figure that is not shown, for its reason. */
export function notShown(reason: NotShown): { readonly shown: false; readonly reason: NotShown } {
  return { shown: false, reason }
}
