/** The control that a test mortar is divided by: a batch on record, or a strength that is all that is known of it. */
import { defined } from '../measure/defined.ts'
import type { ControlMortar, LotEvidence, StrengthReading, TestMortar } from './mortar.ts'

/** What a control is called that has no record of its own. */
export const STATED_CONTROL = 'as stated'

/** Whether nothing is known of a test mortar's control but strengths that stand beside its own. */
export function hasStatedControl({ control, strength = [] }: TestMortar): boolean {
  return control === undefined && strength.some((reading) => reading.control !== undefined)
}

/**
 * The control of a test mortar.
 * @returns the batch that it names; else one with nothing but the strengths stated beside its readings, as if cast
 * and tested with it; undefined where the batch is not on record, or nothing is stated
 */
export function controlOf(
  test: TestMortar,
  { controls }: Pick<LotEvidence, 'controls'>,
): ControlMortar | undefined {
  if (test.control !== undefined) return controls.get(test.control)
  if (!hasStatedControl(test)) return undefined
  const { condition, laboratory, cast, strength = [] } = test
  return { condition, laboratory, cast, strength: strength.flatMap(statedReading) }
}

function statedReading({ age, tested, reported, control }: StrengthReading): StrengthReading[] {
  return control === undefined ? [] : [{ age, mean: control, ...defined({ tested, reported }) }]
}
