/** What an index varies with at one condition: materials of a class, laboratories, controls, batches; and what a new material would read. */
import {
  componentAt,
  type FittedComponents,
  fittedComponents,
  meanSquareParts,
  satterthwaite,
} from '../../statistics/fitted-components.ts'
import type { BatchIndex } from '../batch-indices.ts'
import { type NewMaterial, type NoNewMaterial, newMaterial } from './new-material.ts'
import { rowOf, termsOf, type VariesAsked, type VaryingPart } from './variation-terms.ts'

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
  // With one batch of each material its scatter and that of materials are one, and classes scatter otherwise.
  if (found === null || found.withinResidual.some((part) => part.startsWith('material-'))) return null
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

function figureOf(
  found: FittedComponents,
  part: VaryingPart,
  place: number,
  laboratories: number,
): VaryingFigure {
  const { variance, factors } = componentAt(found, place)
  if (variance === null) {
    const isWithin = found.withinResidual.includes(part)
    return { part, deviation: null, why: whyNot(part, isWithin, laboratories), isNegative: false, df: null }
  }
  return {
    part,
    deviation: Math.sqrt(Math.max(0, variance)),
    why: null,
    isNegative: variance < 0,
    df: satterthwaite(meanSquareParts(found, factors)),
  }
}

function whyNot(part: VaryingPart, isWithin: boolean, laboratories: number): NotSeparable {
  if (isWithin) return 'one-batch'
  if (part.startsWith('laboratory') && laboratories === 1) return 'one-laboratory'
  if (part.startsWith('material')) return 'one-material'
  return part === 'control' ? 'one-control' : 'not-separable'
}
