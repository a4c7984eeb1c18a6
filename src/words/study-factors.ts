/** Factors of a screening study in words. */
import { plainNumber, plural } from './numbers.ts'
import { listWords, sentence } from './sentences.ts'

/** "Temperature", "W/cm and flow". */
export function factorName(names: readonly string[]): string {
  const text = listWords(names, 'and')
  return text.startsWith('w/cm') ? text : sentence(text)
}

/** "23 °C to 50 °C". */
export function stepText(from: readonly string[], to: readonly string[]): string {
  return `${from.join(', ')} to ${to.join(', ')}`
}

/** A change of a logarithm as a factor: "× 1.26 (1.13 to 1.40)". */
export function changeText(change: number, interval: readonly [number, number] | null = null): string {
  const ratio = `× ${plainNumber(Math.exp(change), 2)}`
  return interval === null
    ? ratio
    : `${ratio} (${interval.map((end) => plainNumber(Math.exp(end), 2)).join(' to ')})`
}

/** Why a step has no effect: what it changes together with. */
export function inseparableText(others: readonly (readonly string[])[]): string {
  return others.length === 0
    ? 'not separable: no two conditions differ in this alone'
    : `not separable: changes only together with ${listWords(
        others.map((names) => listWords(names, 'and')),
        'and',
      )}`
}

/** Factors that change together in all conditions. */
export function togetherSentence(names: readonly string[]): string {
  return `${factorName(names)} change together in all conditions, so nothing tells their effects apart.`
}

export interface InteractionSaid {
  readonly from: string
  readonly to: string
  /** Levels of the second factor, with what the step does at each, as a logarithm. */
  readonly lower: { readonly level: string; readonly change: number }
  readonly upper: { readonly level: string; readonly change: number }
  readonly change: number
  readonly interval: readonly [number, number] | null
  readonly settings: number
  readonly inert: number
  readonly reactive: number
  readonly leftOut: readonly string[]
}

export function interactionSentence(said: InteractionSaid): string {
  const { from, to, lower, upper, change, interval, settings, inert, reactive, leftOut } = said
  const range =
    interval === null ? '' : ` (${interval.map((end) => plainNumber(Math.exp(end), 2)).join(' to ')} at 95 %)`
  return [
    `From ${from} to ${to} the reactive mean over the inert one changes by ${changeText(lower.change)} at ${lower.level} and by ${changeText(upper.change)} at ${upper.level}: the second over the first is ${plainNumber(Math.exp(change), 2)}${range}, where 1 means parallel lines.`,
    `${plural(reactive, 'reactive', 'reactive')} and ${plural(inert, 'inert material', 'inert materials')}${settings === 1 ? '' : `, mean over ${settings} settings of the other factors`}${leftOut.length === 0 ? '' : `; left out, above the ceiling or not measured throughout: ${listWords(leftOut, 'and')}`}.`,
  ].join(' ')
}
