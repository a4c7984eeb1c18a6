/** Sums of oxides and the class that follows from calcium oxide. All in per cent by mass. */
import type { MaterialKind } from '../measure/material-kind.ts'
import type { PropertyKey } from '../measure/properties.ts'

/** The oxides that an analysis of the whole material reports; free and reactive parts are within them. */
export const OXIDES: readonly PropertyKey[] = [
  'SiO2',
  'Al2O3',
  'Fe2O3',
  'CaO',
  'MgO',
  'SO3',
  'Na2O',
  'K2O',
  'TiO2',
  'P2O5',
  'Mn2O3',
  'SrO',
]

/**
 * SiO₂ + Al₂O₃ + Fe₂O₃.
 * @param SiO2,Al2O3,Fe2O3 per cent by mass, on one basis
 * @returns per cent by mass, unrounded
 * Source: ASTM C618-12a, table 1, read second-hand.
 */
export function oxideSum({ SiO2, Al2O3, Fe2O3 }: { SiO2: number; Al2O3: number; Fe2O3: number }): number {
  // ASTM C618-12a, table 1, read second-hand.
  return SiO2 + Al2O3 + Fe2O3
}

/**
 * Molar mass of Na₂O over that of K₂O, as the trade rounds it (61.979/94.196 = 0.65798): ASTM C989-18, table
 * 3, read second-hand.
 */
export const K2O_AS_NA2O = 0.658

/**
 * Alkalis as sodium oxide: Na₂O + 0.658 K₂O.
 * @param Na2O,K2O per cent by mass, on one basis
 * @returns per cent by mass, unrounded
 * Source: ASTM C989-18, table 3, read second-hand.
 */
export function alkaliEquivalent(Na2O: number, K2O: number): number {
  // ASTM C989-18, table 3, read second-hand.
  return Na2O + K2O_AS_NA2O * K2O
}

const COAL_ASH: readonly MaterialKind[] = ['coal-fly-ash', 'coal-bottom-ash', 'harvested-coal-ash']
/**
 * CaO that divides the classes of coal ash: ASTM C618-19 (read in an ADAA note of 19 February 2019); that
 * 18.0 itself is F is from memory.
 */
const CLASS_DIVIDER = 18

/**
 * Class of a coal ash by its calcium oxide.
 * @param CaO per cent by mass, compared as it is
 * @returns null for every other material
 * Source: ASTM C618-19, read second-hand; that 18.0 itself is F is from memory.
 */
export function classByCalcium(CaO: number, kind: MaterialKind): 'F' | 'C' | null {
  if (!COAL_ASH.includes(kind)) return null
  return CaO <= CLASS_DIVIDER ? 'F' : 'C'
}
