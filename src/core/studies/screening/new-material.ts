/** What a new material of a class would read, tested like those of the study. */
import { mean, sum } from '../../statistics/descriptive.ts'
import { cumulative, quantile } from '../../statistics/distributions.ts'
import {
  componentAt,
  type FittedComponents,
  meanSquareParts,
  satterthwaite,
} from '../../statistics/fitted-components.ts'
import type { VariationRow, VariationTerm, VariesAsked, VaryingPart } from './variation-terms.ts'

/** What a new material of a class would read, tested like these. */
export interface NewMaterial {
  /** Materials of the class that it rests on. */
  readonly n: number
  /** Of the natural logarithms: mean over the materials, and deviation of a new one's mean about it. */
  readonly logMean: number
  readonly logDeviation: number
  readonly df: number
  /** Index, %: the mean, and the interval that a new material's falls into at the level asked for. */
  readonly value: number
  readonly interval: readonly [number, number]
}

/** Why nothing can be said of a new material. */
export type NoNewMaterial = 'one-material' | 'above-ceiling' | 'no-scatter'

export interface NewMaterialAsked {
  readonly rows: readonly VariationRow[]
  readonly terms: readonly VariationTerm[]
  readonly found: FittedComponents
  readonly own: 'inert' | 'reactive'
  readonly asked: VariesAsked
}

/**
 * What a new material would read by the mean of so many new batches.
 * @param asked the model with its components; class, batches and level
 * Note: components below zero count as nought, which narrows it.
 */
export function newMaterial({
  rows,
  terms,
  found,
  own,
  asked,
}: NewMaterialAsked): NewMaterial | NoNewMaterial {
  const materials = Map.groupBy(
    rows.filter((row) => row.class === own),
    ({ material }) => material,
  )
  const n = materials.size
  if (n < 2) return 'one-material'
  const weights = rows.map((row) =>
    row.class === own ? 1 / n / (materials.get(row.material)?.length ?? 1) : 0,
  )
  const all = [...terms, { part: 'batch' as const, groups: rows.map((_, place) => String(place)) }]
  const shares = all.map(({ part, groups }, place) => {
    const { variance, factors } = componentAt(found, place)
    if (variance === null || variance <= 0) return []
    const share = inNew(part, own, asked.batches, found) + inMean(weights, groups)
    return factors.map((one) => share * one)
  })
  const joined = found.factors.map((_, place) => sum(shares.map((share) => share[place] ?? 0)))
  const variance = sum(meanSquareParts(found, joined).map(({ factor, meanSquare }) => factor * meanSquare))
  const df = satterthwaite(meanSquareParts(found, joined))
  if (df === null || variance <= 0) return 'no-scatter'
  const logMean = mean([...materials.values()].map((batches) => mean(batches.map(({ log }) => log))))
  const [logDeviation, reach] = [Math.sqrt(variance), quantile((1 + asked.level) / 2, df)]
  return {
    n,
    logMean,
    logDeviation,
    df,
    value: Math.exp(logMean),
    interval: [Math.exp(logMean - reach * logDeviation), Math.exp(logMean + reach * logDeviation)],
  }
}

/** How much of a part's variance the mean of a new material's batches holds. */
function inNew(
  part: VaryingPart,
  own: string,
  batches: number,
  { withinResidual }: FittedComponents,
): number {
  if (part.startsWith('material')) return part === `material-${own}` ? 1 : 0
  if (part === 'control') return 1 / batches
  // Where laboratory × material cannot be told from the batches, averaging over batches is not sure to lessen it.
  return part === 'batch' && withinResidual.length === 0 ? 1 / batches : 1
}

/** The same of the mean over the class: Σ over groups of the square of the weight that falls to each. */
function inMean(weights: readonly number[], groups: readonly (string | null)[]): number {
  const totals = new Map<string, number>()
  for (const [place, group] of groups.entries())
    if (group !== null) totals.set(group, (totals.get(group) ?? 0) + (weights[place] ?? 0))
  return sum([...totals.values()].map((total) => total ** 2))
}

/**
 * Share of new materials of a class that a threshold is expected to judge wrongly.
 * @param found what a new material would read
 * @param threshold index, %, above zero
 * @param side above: new ones that pass; below: new ones that fail
 * @returns from 0 to 1, by Student's t
 */
export function predictedShare(found: NewMaterial, threshold: number, side: 'above' | 'below'): number {
  const distance = (found.logMean - Math.log(threshold)) / found.logDeviation
  return cumulative(side === 'above' ? distance : -distance, found.df)
}
