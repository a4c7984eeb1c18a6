/** What an index varies with, in words. */
import type { NewMaterial, NoNewMaterial } from '../core/studies/screening/new-material.ts'
import type { VaryingPart } from '../core/studies/screening/variation-terms.ts'
import type { NotSeparable, VaryingFigure, WhatVaries } from '../core/studies/screening/what-varies.ts'
import { plainNumber, plural } from './numbers.ts'
import { listWords } from './sentences.ts'
import { chanceText, indexText, shareText } from './studies.ts'

export const VARYING_PARTS: Readonly<Record<VaryingPart, string>> = {
  'material-inert': 'Between inert materials',
  'material-weak': 'Between weak materials',
  'material-reactive': 'Between reactive materials',
  laboratory: 'Between laboratories',
  control: 'Control batch that materials share',
  'laboratory-material': 'Laboratory × material',
  batch: 'Between batches',
}

const NOT_SEPARABLE: Readonly<Record<NotSeparable, string>> = {
  'one-laboratory': 'not separable from the rest: one laboratory',
  'one-material': 'not known: one material',
  'one-control': 'not separable from the laboratory: one control batch serves all',
  'one-batch': 'not separable from the batches: one batch in each laboratory',
  'not-separable': 'not separable from the rest',
}

/** The standard deviation, or why there is none. */
export function variedText({ deviation, why, isNegative }: VaryingFigure): string {
  if (deviation === null) return NOT_SEPARABLE[why ?? 'not-separable']
  if (isNegative) return '0 (below zero as computed)'
  // A third of the logarithm is no per cent of an index any more.
  return deviation < 0.3
    ? plainNumber(100 * deviation, 1)
    : `a factor of ${plainNumber(Math.exp(deviation), 1)}`
}

/** Degrees of freedom of a figure; with less than a tenth of one hardly anything is known of it. */
export function dfText(df: number | null): string {
  if (df === null) return '–'
  return df < 0.1 ? 'hardly any' : plainNumber(df, 1)
}

const NO_NEW: Readonly<Record<NoNewMaterial, string>> = {
  'one-material': 'the class has one material or none',
  'above-ceiling': 'some of the class read above the ceiling',
  'no-scatter': 'the readings do not scatter',
}

export interface NewMaterialSaid {
  readonly class: 'inert' | 'reactive'
  readonly found: NewMaterial | NoNewMaterial
  readonly batches: number
  readonly level: number
  /** At the threshold; null without one. */
  readonly atThreshold: {
    readonly threshold: number
    readonly predicted: number
    readonly atMost: number
  } | null
}

/** What a new material of a class would read, and what the threshold would then do, beside the bound of the count. */
export function newMaterialSentence(said: NewMaterialSaid): string {
  const { class: own, found, batches, level, atThreshold } = said
  if (typeof found === 'string') return `Of a new ${own} material nothing is predicted: ${NO_NEW[found]}.`
  const [low, high] = found.interval
  const reads = `A new ${own} material, by the mean of ${plural(batches, 'batch', 'batches')}: ${indexText(found.value)} %, ${indexText(low)} to ${indexText(high)} % (prediction at ${shareText(level)}, ${dfText(found.df)} degrees of freedom)`
  if (atThreshold === null) return `${reads}.`
  const { threshold, predicted, atMost } = atThreshold
  const does = own === 'inert' ? 'pass' : 'fail'
  return `${reads}. At the threshold of ${plainNumber(threshold, 0)} % that predicts that ${chanceText(predicted)} of new ${own} materials ${does}; the count alone, with no distribution assumed, allows at most ${shareText(atMost)}.`
}

/** What the figures leave out or take for granted. */
export function variationNotes({ figures, laboratories, aboveCeiling }: WhatVaries): string[] {
  return [
    ...(figures.some(({ isNegative }) => isNegative)
      ? [
          'A component below zero, where the means lie closer than their own scatter would spread them, is taken as 0; that narrows a prediction.',
        ]
      : []),
    ...(laboratories === 1 ? ['A new material is one tested in this laboratory.'] : []),
    ...(aboveCeiling.length === 0
      ? []
      : [
          `Left out, with batches above the ceiling: ${listWords(aboveCeiling, 'and')}; what their class scatters is that of the rest.`,
        ]),
  ]
}
