/** What the index varies with at a route's best condition. */
import { sum } from '../../../core/statistics/descriptive.ts'
import { predictedShare } from '../../../core/studies/screening/new-material.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import type { VaryingFigure, WhatVaries } from '../../../core/studies/screening/what-varies.ts'
import { shareText } from '../../../words/studies.ts'
import {
  dfText,
  newMaterialSentence,
  VARYING_PARTS,
  variationNotes,
  variedText,
} from '../../../words/study-variation.ts'
import { unbroken } from '../../../words/sentences.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface WhatVariesView {
  readonly title: string
  readonly rows: readonly {
    readonly part: string
    readonly deviation: string
    /** Of the variance of one batch of an inert and of a reactive material; empty where the part has none in it. */
    readonly inert: string
    readonly reactive: string
    readonly df: string
  }[]
  readonly sentences: readonly string[]
}

/**
 * @param name of the route's best condition
 * @returns null where no batch is a repeat of another
 */
export function whatVariesView(
  { record }: StudyEntry,
  { conditions: [best] }: ScreenedRoute,
  name: string,
): WhatVariesView | null {
  if (best === undefined || best.varies === null) return null
  const { varies } = best
  return {
    title: `What varies, ${name}`,
    rows: varies.figures.map((figure) => ({
      part: VARYING_PARTS[figure.part],
      deviation: variedText(figure),
      inert: shareOf(varies, figure, 'inert'),
      reactive: shareOf(varies, figure, 'reactive'),
      df: dfText(figure.df),
    })),
    sentences: [
      ...(['inert', 'reactive'] as const).map((own) =>
        newMaterialSentence({
          class: own,
          found: varies[own],
          batches: record.plan.batches ?? 1,
          level: varies.level,
          atThreshold: atThreshold(best, varies, own),
        }),
      ),
      ...variationNotes(varies),
    ].map(unbroken),
  }
}

function atThreshold({ errors }: ConditionScreen, varies: WhatVaries, own: 'inert' | 'reactive') {
  const found = varies[own]
  if (errors === null || typeof found === 'string') return null
  return {
    threshold: errors.threshold,
    predicted: predictedShare(found, errors.threshold, own === 'inert' ? 'above' : 'below'),
    atMost: errors[own].newMaterial,
  }
}

function shareOf(
  { figures }: WhatVaries,
  { part, deviation }: VaryingFigure,
  own: 'inert' | 'reactive',
): string {
  const isIn = (one: string) => !one.startsWith('material-') || one === `material-${own}`
  const total = sum(figures.map((one) => (isIn(one.part) ? (one.deviation ?? 0) ** 2 : 0)))
  const hasOwn = figures.some((one) => one.part === `material-${own}` && one.deviation !== null)
  return deviation === null || !hasOwn || !isIn(part) || total === 0 ? '' : shareText(deviation ** 2 / total)
}
