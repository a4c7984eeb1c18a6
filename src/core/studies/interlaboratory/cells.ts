/** Results of one material, by laboratory. */
import { mean, standardDeviation } from '../../statistics/descriptive.ts'

export interface Cell {
  /** Code, never a name. */
  readonly laboratory: string
  /** One or more results, all in one unit, in the order of their replicates. */
  readonly values: readonly number[]
}

export interface CellFigures extends Cell {
  readonly mean: number
  /** Between replicates; null with a single result. */
  readonly deviation: number | null
}

/**
 * Mean and standard deviation of each cell.
 * @param cells of one material; those without a result are left out
 * @returns in the order given
 */
export function cellFigures(cells: readonly Cell[]): CellFigures[] {
  return cells
    .filter(({ values }) => 0 < values.length)
    .map((cell) => ({
      ...cell,
      mean: mean(cell.values),
      deviation: cell.values.length < 2 ? null : standardDeviation(cell.values),
    }))
}
