/**
 * The one list of what a laboratory reports and the tool derives: key, title, symbol, kind of quantity, bounds.
 * `npm run generate` writes it into the schemas.
 */
import { KINDS, type QuantityKind } from './units.ts'

/** measured: read off an instrument; derived: from other results of one analysis; index: test over control at one condition. */
export type PropertyNature = 'measured' | 'derived' | 'index'

export interface Property {
  readonly title: string
  /** How the property stands in a table of oxides or a formula; the title where there is no symbol. */
  readonly symbol?: string
  readonly kind: QuantityKind
  readonly nature: PropertyNature
  /** Values beyond these are not physical, in the stored unit: a diagnostic, not a finding. */
  readonly bounds: readonly [number, number]
  /** Decimals that a computed value is printed with, in the stored unit. */
  readonly decimals: number
  /** Basis that the usual method reports on. */
  readonly basis?: 'as received' | 'dry' | 'ignited'
  readonly group: 'activity' | 'composition' | 'physical'
  readonly description: string
}

const percent = (title: string, symbol: string | undefined, description: string, top = 100): Property => ({
  title, ...(symbol === undefined ? {} : { symbol }), kind: 'fraction', nature: 'measured', bounds: [0, top], decimals: 2, basis: 'dry', group: 'composition', description,
})
const oxide = (symbol: string, title: string): Property => percent(title, symbol, `${title} content by mass.`)

export const PROPERTIES = {
  SiO2: oxide('SiO₂', 'Silicon dioxide'),
  Al2O3: oxide('Al₂O₃', 'Aluminium oxide'),
  Fe2O3: oxide('Fe₂O₃', 'Iron oxide'),
  CaO: oxide('CaO', 'Calcium oxide'),
  MgO: oxide('MgO', 'Magnesium oxide'),
  SO3: oxide('SO₃', 'Sulfur trioxide'),
  Na2O: oxide('Na₂O', 'Sodium oxide'),
  K2O: oxide('K₂O', 'Potassium oxide'),
  TiO2: oxide('TiO₂', 'Titanium dioxide'),
  P2O5: oxide('P₂O₅', 'Phosphorus pentoxide'),
  Mn2O3: oxide('Mn₂O₃', 'Manganese oxide'),
  SrO: oxide('SrO', 'Strontium oxide'),
  'free-CaO': percent('Free calcium oxide', 'free CaO', 'Uncombined calcium oxide by mass.'),
  'reactive-CaO': percent('Reactive calcium oxide', 'reactive CaO', 'Reactive calcium oxide by mass.'),
  'reactive-SiO2': percent('Reactive silicon dioxide', 'reactive SiO₂', 'Reactive silicon dioxide by mass.'),
  chloride: percent('Chloride', 'Cl⁻', 'Chloride by mass.'),
  'available-alkalis': percent('Available alkalis as Na₂O', undefined, 'Available alkalis as sodium oxide equivalent, by mass.'),
  'amorphous-content': percent('Amorphous content', undefined, 'Glass or other amorphous phase by mass.'),
  moisture: { ...percent('Moisture content', undefined, 'Mass lost on drying, of the material as received.'), basis: 'as received' },
  'loss-on-ignition': { ...percent('Loss on ignition', undefined, 'Mass lost on ignition of the dried material; not the same as carbon.'), bounds: [-5, 100] },
  'oxide-sum': { ...percent('SiO₂ + Al₂O₃ + Fe₂O₃', undefined, 'Sum of silicon dioxide, aluminium oxide and iron oxide.', 105), nature: 'derived' },
  'alkali-equivalent': { ...percent('Total alkalis as Na₂O', 'Na₂O eq', 'Na₂O + 0.658 K₂O.'), nature: 'derived' },
  'residue-45um': { ...percent('Residue on 45 µm, wet', undefined, 'Amount retained on the 45 µm (No. 325) sieve, washed.'), decimals: 1, group: 'physical' },
  'residue-160um': { ...percent('Residue on 160 µm', undefined, 'Amount retained on the 160 µm sieve.'), decimals: 1, group: 'physical' },
  density: { title: 'Density', kind: 'density', nature: 'measured', bounds: [0.5, 6], decimals: 2, basis: 'dry', group: 'physical', description: 'Particle density.' },
  'specific-surface': { title: 'Specific surface', kind: 'specific-surface', nature: 'measured', bounds: [10, 100000], decimals: 0, basis: 'dry', group: 'physical', description: 'Specific surface by air permeability or gas adsorption; name the method.' },
  'autoclave-expansion': { title: 'Autoclave expansion', kind: 'fraction', nature: 'measured', bounds: [-20, 50], decimals: 2, group: 'physical', description: 'Length change of the paste bar in the autoclave; contraction is negative.' },
  'soundness-expansion': { title: 'Soundness, Le Chatelier', kind: 'length', nature: 'measured', bounds: [0, 60], decimals: 1, group: 'physical', description: 'Expansion of the Le Chatelier ring.' },
  'drying-shrinkage-increase': { title: 'Increase of drying shrinkage', kind: 'points', nature: 'measured', bounds: [-5, 5], decimals: 2, group: 'physical', description: 'Drying shrinkage of mortar bars less that of the control, 28 d.' },
  'air-entraining-demand': { title: 'Air-entraining admixture demand', kind: 'batch-mass', nature: 'measured', bounds: [0, 1000], decimals: 2, group: 'physical', description: 'Admixture needed for 18 % air in mortar.' },
  'water-requirement': { title: 'Water requirement', kind: 'fraction', nature: 'index', bounds: [20, 300], decimals: 0, group: 'physical', description: 'Water of the test mortar for the control’s flow, percent of the control’s water.' },
  'r3-heat': { title: 'R3 cumulative heat', kind: 'heat', nature: 'measured', bounds: [0, 2000], decimals: 0, group: 'activity', description: 'Cumulative heat of the lime paste test, per gram of material.' },
  'bound-water': { title: 'R3 bound water', kind: 'fraction', nature: 'measured', bounds: [0, 100], decimals: 1, group: 'activity', description: 'Bound water of the lime paste test.' },
  'compressive-strength': { title: 'Compressive strength', kind: 'stress', nature: 'measured', bounds: [0.05, 400], decimals: 1, group: 'activity', description: 'Mean compressive strength of the mortar specimens of one batch and age.' },
  'bulk-resistivity': { title: 'Bulk resistivity', kind: 'resistivity', nature: 'measured', bounds: [0.01, 1e6], decimals: 1, group: 'activity', description: 'Mean bulk resistivity of the mortar specimens of one batch and age.' },
  'strength-activity-index': { title: 'Strength activity index', kind: 'fraction', nature: 'index', bounds: [0, 1000], decimals: 1, group: 'activity', description: 'Mean strength of the test mortar, percent of the control mortar, same condition and age.' },
  'resistivity-index': { title: 'Resistivity index', kind: 'fraction', nature: 'index', bounds: [0, 1e6], decimals: 0, group: 'activity', description: 'Mean bulk resistivity of the test mortar, percent of the control mortar, same condition and age.' },
} as const satisfies Record<string, Property>

export type PropertyKey = keyof typeof PROPERTIES

export function property(key: PropertyKey): Property {
  return PROPERTIES[key]
}

/** Unit that values of a property are stored in. */
export function storedUnit(key: PropertyKey): string {
  return KINDS[property(key).kind].stored
}

export function isPropertyKey(key: string): key is PropertyKey {
  return Object.hasOwn(PROPERTIES, key)
}

/** Keys that a laboratory may report in `results:` of an analysis (derived ones are computed, indices may be stated). */
export function reportableKeys(): PropertyKey[] {
  return (Object.keys(PROPERTIES) as PropertyKey[]).filter((key) => property(key).nature !== 'derived')
}
