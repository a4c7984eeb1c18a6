/** The cubes that a laboratory casts: its moulds, which a condition written in other units does not know. */
import { defined } from '../measure/defined.ts'
import { kept } from '../measure/kept.ts'
import type { Quantity } from '../measure/units.ts'
import type { MortarCondition, SpecimenShape } from './mortar.ts'

const known = new WeakMap<MortarCondition, Map<number, MortarCondition>>()

/**
 * A condition with cubes of the laboratory's own moulds.
 * @param mould side of its cubes; undefined where it is not on record
 * @returns the same object for the same condition and side; the condition itself without a mould; what it does
 * not make of cubes stays as it is
 */
export function withMould(condition: MortarCondition, mould: Quantity | undefined): MortarCondition {
  if (mould === undefined) return condition
  const bySide = kept(known, condition, () => new Map<number, MortarCondition>())
  const { strength, resistivity } = condition
  return kept(bySide, mould.value, () => ({
    ...condition,
    ...defined({
      strength: strength && withCube(strength, mould),
      resistivity: resistivity && withCube(resistivity, mould),
    }),
  }))
}

function withCube<Test extends { readonly specimen: SpecimenShape }>(test: Test, side: Quantity): Test {
  const { specimen } = test
  return specimen.shape === 'cube' ? { ...test, specimen: { ...specimen, side, ofMould: true } } : test
}

/** A cube of two inches: the mould of a laboratory that reads pounds-force. */
const TWO_INCHES: Quantity = { kind: 'length', value: 50.8, unit: 'in', written: '2 in', decimals: 0 }
/** Half of the difference of 50 mm and 2 in, and a little more: no other usual cube is as near. */
const NEARLY_MM = 1

/**
 * The cube that a load was read on where no mould is on record.
 * @param shape nominal shape of the condition
 * @returns a cube of 2 in for a load in pounds-force where the condition asks for about as much in millimetres;
 * undefined where nothing is to be assumed
 * Source: ASTM C109 has cubes of 2 in or 50 mm (from memory); that who reads lbf has the former is common practice,
 * no source.
 */
export function assumedCube(
  load: Pick<Quantity, 'unit'>,
  shape: SpecimenShape | undefined,
): SpecimenShape | undefined {
  const side = shape?.side
  const isPounds = load.unit === 'lbf' || load.unit === 'kip'
  if (!isPounds || shape?.shape !== 'cube' || shape.ofMould === true || side === undefined) return undefined
  if (side.unit === 'in' || NEARLY_MM < Math.abs(side.value - TWO_INCHES.value)) return undefined
  return { ...shape, side: TWO_INCHES }
}
