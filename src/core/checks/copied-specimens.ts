/**
 * Audit checks: specimens of one batch that all read the same, and readings of a test mortar that are those of its
 * control, as they are where a bench sheet was copied.
 */
import { type Quantity, writtenNumber } from '../measure/units.ts'
import type { Checked } from './checked.ts'
import { type Finding, warningOn } from './finding.ts'

/** Specimens of one mortar read at one age, those left out not among them, beside those of its control. */
export interface SpecimensRead {
  readonly of: 'strength' | 'resistivity'
  /** Id of the condition. */
  readonly condition: string
  readonly age: string
  readonly laboratory: string
  readonly sample: string
  /** Id of the control batch; null where none is on record. */
  readonly control: string | null
  readonly specimens: readonly Quantity[]
  readonly ofControl: readonly Quantity[]
}

/** Two specimens agree by chance too often: own choice. */
const FEWEST = 3
/** Part of a reading that its last digit stands for; read more coarsely, specimens agree by chance. Own choice. */
const FINEST = 0.002

/**
 * A warning for each set of three specimens or more whose readings are one and the same.
 * @param lot id as SOURCE/LOT
 * Note: where specimens scatter by 2.5 % and are read to 0.13 %, chance makes three alike in 2 sets of 10,000 (simulated
 * in test/core/checks/copied-specimens.test.ts).
 */
export function specimensEqual(lot: string, sets: readonly SpecimensRead[]): Checked {
  const looked = sets.filter(({ specimens }) => FEWEST <= specimens.length && specimens.every(isFine))
  const findings = looked.flatMap((set): Finding[] => {
    const [first, ...others] = set.specimens.map(({ written }) => written)
    if (first === undefined || others.some((other) => other !== first)) return []
    const { of, condition, age, laboratory, sample } = set
    const params = {
      lot,
      of,
      condition,
      age,
      laboratory,
      sample,
      specimens: set.specimens.length,
      written: first,
    }
    return [warningOn(lot, { code: 'specimens-equal', params }, ...placeOf(set))]
  })
  return { check: 'specimens-equal', looked: looked.length, findings }
}

/**
 * A warning for each set of three specimens or more whose readings are those of the control, in whatever order.
 * @param lot id as SOURCE/LOT
 */
export function readingsOfControl(lot: string, sets: readonly SpecimensRead[]): Checked {
  const looked = sets.filter(
    ({ specimens, ofControl }) => FEWEST <= specimens.length && specimens.length === ofControl.length,
  )
  const findings = looked.flatMap((set): Finding[] => {
    const { of, condition, age, laboratory, sample, control } = set
    if (control === null || !set.specimens.every(isFine)) return []
    if (textOf(set.specimens) !== textOf(set.ofControl)) return []
    const params = { lot, of, condition, age, laboratory, sample, control, specimens: set.specimens.length }
    return [warningOn(lot, { code: 'readings-of-control', params }, ...placeOf(set))]
  })
  return { check: 'readings-of-control', looked: looked.length, findings }
}

function placeOf({ of, condition, age, laboratory, sample }: SpecimensRead): string[] {
  return [of, condition, age, laboratory, sample]
}

function textOf(specimens: readonly Quantity[]): string {
  return specimens
    .map(({ written }) => written)
    .sort()
    .join('|')
}

/** Whether a reading has digits enough. Zeros at the end of a whole number are not taken for read ones. */
function isFine(quantity: Quantity): boolean {
  const digits = writtenNumber(quantity)
  const zeros = /\./.test(digits) ? -quantity.decimals : (/0*$/.exec(digits)?.[0].length ?? 0)
  return 10 ** zeros <= FINEST * Math.abs(Number(digits))
}
