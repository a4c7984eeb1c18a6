/** Why a resistivity moved, in words and in the cells of its table. */
import type { Explanation, Range } from '../core/resistivity/resistivity-explained.ts'
import { plainNumber } from './numbers.ts'

/** One plain sentence without a full stop. */
export function explanationWords({ ratio, poreSolution, poreStructure }: Explanation): string {
  return `the pore solution may account for a factor of ${rangeWords(poreSolution, 1)} and the pore structure for a factor of ${rangeWords(poreStructure, 1)}; under each set of assumptions their product is the index, ${plainNumber(ratio, 2)} times the control`
}

/**
 * What stands in the table beside the sentence, in its order: test, control and factor of pore solution and
 * of pore structure.
 */
export function explanationCells(explanation: Explanation): string[] {
  const { testPore, controlPore, poreSolution, testFormation, controlFormation, poreStructure } = explanation
  return [
    rangeWords(testPore, 2),
    rangeWords(controlPore, 2),
    rangeWords(poreSolution, 1),
    rangeWords(testFormation, 0),
    rangeWords(controlFormation, 0),
    rangeWords(poreStructure, 1),
  ]
}

function rangeWords({ low, high }: Range, decimals: number): string {
  return `${plainNumber(low, decimals)} to ${plainNumber(high, decimals)}`
}
