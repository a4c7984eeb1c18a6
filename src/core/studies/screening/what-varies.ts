/** What an index varies with at one condition: materials of a class, laboratories, controls, batches; and what a new material would read. */
import { mean, sum } from '../../statistics/descriptive.ts'
import { cumulative, quantile } from '../../statistics/distributions.ts'
import { type FittedComponents, fittedComponents, satterthwaite } from '../../statistics/fitted-components.ts'
import type { BatchIndex } from '../batch-indices.ts'
import type { MaterialClass } from './material-means.ts'

/** Materials stand by class: inert ones scatter otherwise than reactive ones. */
export type VaryingPart =
  | `material-${MaterialClass}`
  | 'laboratory'
  | 'control'
  | 'laboratory-material'
  | 'batch'

/** Why a part has no figure of its own. */
export type NotSeparable = 'one-laboratory' | 'one-material' | 'one-control' | 'one-batch' | 'not-separable'

export interface VaryingFigure {
  readonly part: VaryingPart
  /** Of the natural logarithm of the index; 0 where the variance came out below zero; null where it cannot be told from the others. */
  readonly deviation: number | null
  readonly why: NotSeparable | null
  /** The variance came out below zero. */
  readonly isNegative: boolean
  /** Of the variance, by Satterthwaite; null without a figure above zero. */
  readonly df: number | null
}

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

export interface WhatVaries {
  /** Materials of both kinds first, batches last. Only what the study can ask about: without a shared control there is none of it. */
  readonly figures: readonly VaryingFigure[]
  readonly laboratories: number
  /** Left out, since some of their batches are known only as above a bound. */
  readonly aboveCeiling: readonly string[]
  readonly inert: NewMaterial | NoNewMaterial
  readonly reactive: NewMaterial | NoNewMaterial
  readonly level: number
}

export interface VariesAsked {
  /** Class of each material by its code; those without one are left out. */
  readonly classes: ReadonlyMap<string, MaterialClass>
  /** Batches whose mean a new material would be judged by. */
  readonly batches: number
  /** Of the intervals, between 0 and 1. */
  readonly level: number
}

/**
 * Components of the scatter at one condition and age, by log index = class + material + laboratory + control batch +
 * laboratory × material + batch, all but the class random.
 * @param indices of one route, condition and age
 * @returns null where no batch is a repeat of another
 * Notes: 1. a control batch that serves several materials moves all of them alike and is a part of its own; one that serves a single
 * batch counts with the batch; 2. a new material is tested in a laboratory like these: with one laboratory, in that one;
 * 3. the interval takes the logarithms of a class as normal, which few materials cannot show.
 */
export function whatVaries(indices: readonly BatchIndex[], asked: VariesAsked): WhatVaries | null {
  const known = indices.filter(({ material }) => asked.classes.has(material))
  const aboveCeiling = [...new Set(known.filter(({ above }) => above).map(({ material }) => material))]
  const rows = known
    .filter(({ material }) => !aboveCeiling.includes(material))
    .map((index) => rowOf(index, asked))
  const classes = (['inert', 'weak', 'reactive'] as const).filter((own) =>
    rows.some((row) => row.class === own),
  )
  const terms = termsOf(rows, classes)
  const found = fittedComponents(
    rows.map(({ log }) => log),
    rows.map((row) => row.class),
    terms,
  )
  if (found === null) return null
  const laboratories = new Set(rows.map(({ laboratory }) => laboratory)).size
  const newOf = (own: 'inert' | 'reactive') =>
    aboveCeiling.some((material) => asked.classes.get(material) === own)
      ? 'above-ceiling'
      : newMaterial({ rows, terms, found, own, asked })
  return {
    figures: [
      ...terms.map(({ part }, place) => figureOf(found, part, place, laboratories)),
      figureOf(found, 'batch', terms.length, laboratories),
    ],
    laboratories,
    aboveCeiling,
    inert: newOf('inert'),
    reactive: newOf('reactive'),
    level: asked.level,
  }
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

interface Row {
  readonly material: string
  readonly class: MaterialClass
  readonly laboratory: string
  readonly log: number
  /** Of the control batch; null for an index that the laboratory reports finished. */
  readonly control: string | null
}

interface Term {
  readonly part: VaryingPart
  readonly name: string
  readonly groups: readonly (string | null)[]
}

function rowOf({ material, laboratory, value, control }: BatchIndex, { classes }: VariesAsked): Row {
  return {
    material,
    class: classes.get(material) ?? 'weak',
    laboratory,
    log: Math.log(value),
    control: control === null ? null : `${laboratory} ${control.batch}`,
  }
}

function termsOf(rows: readonly Row[], classes: readonly MaterialClass[]): Term[] {
  const serves = Map.groupBy(rows, ({ control }) => control)
  const shared = (control: string | null) =>
    control !== null && 1 < new Set(serves.get(control)?.map(({ material }) => material)).size
  const term = (part: VaryingPart, group: (row: Row) => string | null): Term => ({
    part,
    name: part,
    groups: rows.map(group),
  })
  return [
    ...classes.map((own) => term(`material-${own}`, (row) => (row.class === own ? row.material : null))),
    term('laboratory', ({ laboratory }) => laboratory),
    ...(rows.some(({ control }) => shared(control))
      ? [term('control', ({ control }) => (shared(control) ? control : null))]
      : []),
    term('laboratory-material', ({ laboratory, material }) => `${laboratory} ${material}`),
  ]
}

function figureOf(
  found: FittedComponents,
  part: VaryingPart,
  place: number,
  laboratories: number,
): VaryingFigure {
  const variance = varianceOf(found, place)
  if (variance === null) {
    const isWithin = found.withinResidual.includes(part)
    return { part, deviation: null, why: whyNot(part, isWithin, laboratories), isNegative: false, df: null }
  }
  return {
    part,
    deviation: Math.sqrt(Math.max(0, variance)),
    why: null,
    isNegative: variance < 0,
    df: satterthwaite(parts(found, found.factors[rowIn(found, place)] ?? [])),
  }
}

function whyNot(part: VaryingPart, isWithin: boolean, laboratories: number): NotSeparable {
  if (isWithin) return 'one-batch'
  if (part.startsWith('laboratory') && laboratories === 1) return 'one-laboratory'
  if (part.startsWith('material')) return 'one-material'
  return part === 'control' ? 'one-control' : 'not-separable'
}

/** The residual stands behind the terms that were fitted, which can be fewer than all. */
function rowIn({ terms, factors }: FittedComponents, place: number): number {
  return place === terms.length ? factors.length - 1 : place
}

function varianceOf({ terms, residual }: FittedComponents, place: number): number | null {
  return place === terms.length ? residual.meanSquare : (terms[place]?.variance ?? null)
}

/** A sum of mean squares by the factors of each. */
function parts({ terms, residual, factors }: FittedComponents, weights: readonly number[]) {
  const last = factors.length - 1
  return weights.map((factor, place) => {
    const { meanSquare, df } = place === last ? residual : (terms[place] ?? residual)
    return { factor, meanSquare, df }
  })
}

interface NewAsked {
  readonly rows: readonly Row[]
  readonly terms: readonly Term[]
  readonly found: FittedComponents
  readonly own: 'inert' | 'reactive'
  readonly asked: VariesAsked
}

function newMaterial({ rows, terms, found, own, asked }: NewAsked): NewMaterial | NoNewMaterial {
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
    const variance = varianceOf(found, place)
    if (variance === null || variance <= 0) return []
    const factor = inNew(part, own, asked.batches, found) + inMean(weights, groups)
    return (found.factors[rowIn(found, place)] ?? []).map((one) => factor * one)
  })
  const joined = found.factors.map((_, place) => sum(shares.map((share) => share[place] ?? 0)))
  const variance = sum(parts(found, joined).map(({ factor, meanSquare }) => factor * meanSquare))
  const df = satterthwaite(parts(found, joined))
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
