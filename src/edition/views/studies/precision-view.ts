/** How precision goes with the level, and how each laboratory scores. */
import { type LevelLaw, levelFits } from '../../../core/studies/interlaboratory/level-dependence.ts'
import {
  precisionLevels,
  type RoundRobinMaterial,
} from '../../../core/studies/interlaboratory/round-robin.ts'
import {
  meanUncertainty,
  scoreRating,
  scoreStanding,
} from '../../../core/studies/interlaboratory/score-rating.ts'
import { plainNumber } from '../../../words/numbers.ts'
import {
  LEVEL_LAWS,
  lawText,
  levelSentence,
  ratingText,
  SCORE_STANDINGS,
  scoreCaution,
} from '../../../words/study-precision.ts'

export interface LevelsView {
  readonly rows: readonly {
    readonly law: string
    readonly repeatability: string
    readonly reproducibility: string
  }[]
  readonly sentence: string
}

export interface ScoresView {
  readonly laboratories: readonly string[]
  readonly rows: readonly {
    readonly material: string
    readonly cells: readonly { readonly z: string; readonly standing: string; readonly rating: string }[]
  }[]
  readonly caution: string
}

const LAWS: readonly LevelLaw[] = ['constant', 'proportional', 'linear', 'power']

/** @returns null with fewer than two materials that have a precision */
export function levelsView(own: readonly RoundRobinMaterial[]): LevelsView | null {
  const { repeatability, reproducibility } = precisionLevels(own)
  if (repeatability.length < 2) return null
  const [within, between] = [levelFits(repeatability), levelFits(reproducibility)]
  const means = repeatability.map(({ mean }) => mean)
  const shown = LAWS.filter((law) => [...within, ...between].some((fit) => fit.law === law))
  return {
    rows: shown.map((law) => ({
      law: LEVEL_LAWS[law],
      repeatability: lawText(within.find((fit) => fit.law === law)),
      reproducibility: lawText(between.find((fit) => fit.law === law)),
    })),
    sentence: levelSentence(means.length, Math.min(...means), Math.max(...means)),
  }
}

/** @returns null where no material has a robust deviation */
export function scoresView(
  own: readonly RoundRobinMaterial[],
  laboratories: readonly string[],
): ScoresView | null {
  if (own.every(({ scores }) => scores.length === 0)) return null
  const most = Math.max(...own.map(({ scores }) => scores.length))
  return {
    laboratories,
    rows: own.map(({ material, scores }) => ({
      material,
      cells: laboratories.map((code) => {
        const z = scores.find(({ laboratory }) => laboratory === code)?.z
        return z === undefined
          ? { z: '–', standing: '', rating: '' }
          : {
              z: plainNumber(z, 2),
              standing: SCORE_STANDINGS[scoreStanding(z)],
              rating: ratingText(scoreRating(z)),
            }
      }),
    })),
    caution: scoreCaution(most, meanUncertainty(most)),
  }
}
