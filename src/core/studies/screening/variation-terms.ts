/** The model of what an index varies with: its batches, and the random terms that they stand in. */
import type { BatchIndex } from '../batch-indices.ts'
import type { MaterialClass } from './material-means.ts'

/** Materials stand by class: inert ones scatter otherwise than reactive ones. */
export type VaryingPart =
  | `material-${MaterialClass}`
  | 'laboratory'
  | 'control'
  | 'laboratory-material'
  | 'batch'

export interface VariesAsked {
  /** Class of each material by its code; those without one are left out. */
  readonly classes: ReadonlyMap<string, MaterialClass>
  /** Batches whose mean a new material would be judged by. */
  readonly batches: number
  /** Of the intervals, between 0 and 1. */
  readonly level: number
}

/** One batch. */
export interface VariationRow {
  readonly material: string
  readonly class: MaterialClass
  readonly laboratory: string
  readonly log: number
  /** Of the control batch; null for an index that the laboratory reports finished. */
  readonly control: string | null
}

/** A random term of the model. */
export interface VariationTerm {
  readonly part: VaryingPart
  readonly name: string
  readonly groups: readonly (string | null)[]
}

/** A batch as the model takes it. */
export function rowOf(
  { material, laboratory, value, control }: BatchIndex,
  { classes }: VariesAsked,
): VariationRow {
  return {
    material,
    class: classes.get(material) ?? 'weak',
    laboratory,
    log: Math.log(value),
    control: control === null ? null : `${laboratory} ${control.batch}`,
  }
}

/**
 * The random terms, those that hold others first; the batches themselves are what is left.
 * @param rows of one condition and age
 * @param classes among them
 */
export function termsOf(rows: readonly VariationRow[], classes: readonly MaterialClass[]): VariationTerm[] {
  const serves = Map.groupBy(rows, ({ control }) => control)
  const shared = (control: string | null) =>
    control !== null && 1 < new Set(serves.get(control)?.map(({ material }) => material)).size
  const term = (part: VaryingPart, group: (row: VariationRow) => string | null): VariationTerm => ({
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
