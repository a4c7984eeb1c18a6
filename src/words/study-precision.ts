/** Level dependence and scores of a round robin, in words. */
import { FEW_LEVELS, type LevelFit, type LevelLaw } from '../core/studies/interlaboratory/level-dependence.ts'
import type { ScoreStanding } from '../core/studies/interlaboratory/score-rating.ts'
import { plainNumber, plural } from './numbers.ts'
import { MINUS } from './signs.ts'
import { shareText } from './studies.ts'

export const LEVEL_LAWS: Readonly<Record<LevelLaw, string>> = {
  constant: 'The same at every level',
  proportional: 'In proportion to the level',
  linear: 'Straight line',
  power: 'Power of the level',
}

/** "s = 0.32 + 0.0154 m", then how far the levels miss it. */
export function lawText(fit: LevelFit | undefined): string {
  if (fit === undefined) return 'cannot be fitted'
  return `${equation(fit)}; misses by ${shareText(fit.misfit)}`
}

function equation({ law, intercept, slope }: LevelFit): string {
  const sign = slope < 0 ? MINUS : '+'
  const size = plainNumber(Math.abs(slope), 4)
  switch (law) {
    case 'constant':
      return `s = ${plainNumber(intercept, 2)}`
    case 'proportional':
      return `s = ${plainNumber(slope, 4)} m`
    case 'linear':
      return `s = ${plainNumber(intercept, 2)} ${sign} ${size} m`
    case 'power':
      return `log s = ${plainNumber(intercept, 3)} ${sign} ${plainNumber(Math.abs(slope), 3)} log m`
  }
}

/** What the laws rest on, and how weak that is. */
export function levelSentence(levels: number, low: number, high: number): string {
  const rests = `${plural(levels, 'level', 'levels')} from ${plainNumber(low, 1)} to ${plainNumber(high, 1)} %; an equation holds between them and not beyond.`
  return levels < FEW_LEVELS
    ? `${rests} With so few nearly every law runs close to all of them, and none is shown by it.`
    : `${rests} Each deviation is itself known only within its interval above, so laws that miss by about as much are not told apart.`
}

/** Whole ratings, with the side that a lesser one lies on: "5", "2, low". A minus before the best rating would read as a fault. */
export function ratingText(rating: number): string {
  const size = plainNumber(Math.abs(rating), 0)
  return Math.abs(rating) === 5 || rating === 0 ? size : `${size}, ${rating < 0 ? 'low' : 'high'}`
}

export const SCORE_STANDINGS: Readonly<Record<ScoreStanding, string>> = {
  satisfactory: 'satisfactory',
  questionable: 'questionable',
  unsatisfactory: 'unsatisfactory',
}

/** @param uncertainty of the robust mean, in robust deviations */
export function scoreCaution(laboratories: number, uncertainty: number): string {
  return `With ${plural(laboratories, 'laboratory', 'laboratories')} the robust mean is itself uncertain by ${plainNumber(uncertainty, 2)} robust deviations${uncertainty <= 0.3 ? '' : ', more than the 0.3 up to which that may be left aside'}; a score is a question to the laboratory, and each laboratory is in the mean that it is held against.`
}
