/** What a ruggedness study's page shows of each index. */
import { halfNormalPlot, type HalfNormalModel } from '../../../charts/half-normal-plot.ts'
import { tickDecimals } from '../../../charts/tick-decimals.ts'
import { aliases, levelsOf } from '../../../core/studies/ruggedness/design.ts'
import type { RuggednessOf } from '../../../core/studies/ruggedness/ruggedness-study.ts'
import { plainNumber, plural } from '../../../words/numbers.ts'
import { MINUS } from '../../../words/signs.ts'
import { listWords, sentence } from '../../../words/sentences.ts'
import { shareText, STUDY_ROUTES } from '../../../words/studies.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface RuggednessView {
  readonly groups: readonly RuggednessGroup[]
  readonly design: {
    readonly factors: readonly string[]
    readonly runs: readonly { readonly code: string; readonly levels: readonly string[] }[]
  }
  /** What the design cannot see. */
  readonly blind: string
}

export interface RuggednessGroup {
  readonly id: string
  readonly heading: string
  readonly lead: readonly string[]
  readonly effects: readonly {
    readonly factor: string
    readonly levels: string
    readonly effect: string
    readonly p: string
    readonly standsOut: boolean
  }[]
  readonly chart: HalfNormalModel | null
  readonly names: readonly string[]
  readonly xTicks: readonly string[]
  readonly yTicks: readonly string[]
}

/** Chance of an effect as large without a cause, below which it is said to stand out. */
const STANDS_OUT = 1 - STUDY_LEVEL

export function ruggednessView({ record }: StudyEntry, all: readonly RuggednessOf[]): RuggednessView {
  const factors = record.factors ?? []
  const runs = Object.entries(record.runs ?? {})
  const levels = runs.map(([, signs]) => ({
    levels: levelsOf(signs),
  }))
  return {
    groups: all.map((one) => groupView(one, factors)),
    design: {
      factors: factors.map(({ title }) => title),
      runs: runs.map(([code, signs]) => ({
        code,
        levels: [...signs].map(
          (sign, place) =>
            (sign === '+' ? factors[place]?.high : factors[place]?.low) ?? sign.replace('-', MINUS),
        ),
      })),
    },
    blind: blindSentence(factors, aliases(levels)),
  }
}

type Factors = NonNullable<StudyEntry['record']['factors']>

function groupView(
  { material, age, property, found, halfNormal, missing }: RuggednessOf,
  factors: Factors,
): RuggednessGroup {
  const heading = `${sentence(STUDY_ROUTES[property])} of ${material}, ${age.text}`
  const id = `${property}-${material}-${age.hours}`
  const none = { id, heading, effects: [], chart: null, names: [], xTicks: [], yTicks: [] }
  if (found === null)
    return {
      ...none,
      lead: [`No result counts in ${missing.join(', ')}, so the effects cannot be told apart.`],
    }
  const effects = found.effects.toSorted((a, b) => Math.abs(b.effect) - Math.abs(a.effect))
  const standsOut = (p: number | null) => p !== null && p < STANDS_OUT
  const out = effects.filter(({ factor, p }) => standsOut(p) && factors[factor]?.dummy !== true)
  const dummiesOut = effects.filter(({ factor, p }) => standsOut(p) && factors[factor]?.dummy === true)
  const byFactor = new Map(found.effects.map(({ factor, p }) => [factor, standsOut(p)]))
  const chart = halfNormalPlot(
    halfNormal.map((point) => ({ ...point, standsOut: byFactor.get(point.factor) ?? false })),
    found.error?.standardError ?? null,
  )
  const title = (factor: number) => factors[factor]?.title ?? String(factor + 1)
  return {
    id,
    heading,
    lead: [
      out.length === 0
        ? 'No effect stands out from the error.'
        : `${sentence(out.map(({ factor, effect }) => `${title(factor)} moves the index by ${signed(effect)} points`).join(', '))} between its levels: ${out.length === 1 ? 'this tolerance matters' : 'these tolerances matter'} most.`,
      errorSentence(found),
      ...(dummiesOut.length === 0
        ? []
        : [
            `${listWords(
              dummiesOut.map(({ factor }) => title(factor)),
              'and',
            )} ${dummiesOut.length === 1 ? 'stands' : 'stand'} out though no factor stands behind: interactions move the results as well.`,
          ]),
    ],
    effects: effects.map(({ factor, effect, half, p }) => ({
      factor: title(factor),
      levels:
        factors[factor]?.dummy === true ? 'no factor' : `${factors[factor]?.low} to ${factors[factor]?.high}`,
      effect: half === null ? signed(effect) : `${signed(effect)} ± ${plainNumber(half, 1)}`,
      p: p === null ? '–' : p < 0.001 ? 'below 0.001' : plainNumber(p, 3),
      standsOut: standsOut(p),
    })),
    chart,
    names: chart?.points.map(({ factor }) => title(factor)) ?? [],
    xTicks: chart?.xTicks.map(({ value }) => plainNumber(value, tickDecimals(chart.xTicks))) ?? [],
    yTicks: chart?.yTicks.map(({ value }) => plainNumber(value, tickDecimals(chart.yTicks))) ?? [],
  }
}

function signed(value: number): string {
  return `${0 < value ? '+' : ''}${plainNumber(value, 1)}`
}

function errorSentence({ error, mean }: NonNullable<RuggednessOf['found']>): string {
  if (error === null) return 'The results do not scatter, so no effect can be held against an error.'
  const from = {
    replicates: `from replicates of the runs (${error.df} degrees of freedom)`,
    'dummy-columns': `from ${plural(error.df, 'dummy column', 'dummy columns')}, whose effects hold no factor but parts of interactions as well`,
    'small-effects': 'from the small effects themselves, for the runs have no replicates',
  }[error.from]
  return `Mean ${plainNumber(mean, 0)} %; standard error of an effect ${plainNumber(error.standardError, 1)} points, ${from}; intervals at ${shareText(STUDY_LEVEL)}.`
}

/** Interactions of two factors, and how much of each enters an effect. */
function blindSentence(factors: Factors, all: ReturnType<typeof aliases>): string {
  const isDummy = (place: number) => factors[place]?.dummy === true
  const mixed = all.filter(({ interaction }) => !interaction.some(isDummy))
  if (mixed.length === 0) return 'No interaction of two factors enters an effect.'
  const ofFactors = mixed.filter(({ factor }) => !isDummy(factor))
  if (ofFactors.length === 0) return 'No interaction of two factors enters the effect of a factor.'
  const counts = [...Map.groupBy(ofFactors, ({ factor }) => factor).values()].map(({ length }) => length)
  const [least, most] = [Math.min(...counts), Math.max(...counts)]
  const each = least === most ? `${most}` : `${least} to ${most}`
  if (mixed.every(({ part }) => Math.abs(part) === 1))
    return `Each effect holds ${each} interactions of two other factors whole: the design cannot tell them from the factor itself.`
  const part = Math.max(...mixed.map((one) => Math.abs(one.part)))
  const dummies = factors.some((_, place) => isDummy(place)) ? ', dummy ones too' : ''
  return `Each effect holds parts of ${each} interactions of two other factors, up or down: an interaction is spread over all columns but those of its own two factors${dummies}, and enters each with ${Math.abs(3 * part - 1) < 1e-9 ? 'a third' : `up to ${shareText(part)}`} of its size. The design shows no interaction by itself and cannot tell their sum from the factor.`
}
