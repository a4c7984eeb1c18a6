/**
 * The one list of what a laboratory reports and the tool derives: key, title, symbol, kind of quantity,
 * bounds.
 * `npm run generate` writes it into the schemas. Long, as the list is.
 */
import { KINDS, type QuantityKind } from './units.ts'

/**
 * measured: read off an instrument; derived: from other results of one analysis; index: test over control at
 * one condition.
 */
export type PropertyNature = 'measured' | 'derived' | 'index'

export interface Property {
  readonly title: string
  /** As mills in the United States print it, where that differs. */
  readonly americanTitle?: string
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
  title,
  ...(symbol === undefined ? {} : { symbol }),
  kind: 'fraction',
  nature: 'measured',
  bounds: [0, top],
  decimals: 2,
  basis: 'dry',
  group: 'composition',
  description,
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
  'available-alkalis': percent(
    'Available alkalis as Na₂O',
    undefined,
    'Available alkalis as sodium oxide equivalent, by mass.',
  ),
  'amorphous-content': percent('Amorphous content', undefined, 'Glass or other amorphous phase by mass.'),
  sulfide: percent('Sulfide sulfur', 'S²⁻', 'Sulfur as sulfide by mass.'),
  silicon: percent('Elemental silicon', 'Si', 'Free silicon by mass.'),
  'soluble-phosphate': {
    ...percent('Soluble phosphate', undefined, 'Phosphate soluble in water, as phosphorus pentoxide.'),
    decimals: 4,
  },
  'glass-content': percent('Glass content', undefined, 'Glass of a granulated slag by mass.'),
  'co-fired-ash': percent(
    'Ash from co-fired material',
    undefined,
    'Share of the ash that comes from material fired with the coal.',
  ),
  'share-silica-fume': percent(
    'Share of silica fume in the blend',
    undefined,
    'Silica fume in a blended material by mass.',
  ),
  'share-fly-ash': percent(
    'Share of fly ash in the blend',
    undefined,
    'Fly ash in a blended material by mass.',
  ),
  'share-natural-pozzolan': percent(
    'Share of natural pozzolan in the blend',
    undefined,
    'Natural pozzolan in a blended material by mass.',
  ),
  'share-slag': percent('Share of slag in the blend', undefined, 'Slag in a blended material by mass.'),
  moisture: {
    ...percent('Moisture content', undefined, 'Mass lost on drying, of the material as received.'),
    basis: 'as received',
  },
  'loss-on-ignition': {
    ...percent(
      'Loss on ignition',
      undefined,
      'Mass lost on ignition of the dried material; not the same as carbon.',
    ),
    bounds: [-5, 100],
  },
  'oxide-sum': {
    ...percent(
      'SiO₂ + Al₂O₃ + Fe₂O₃',
      undefined,
      'Sum of silicon dioxide, aluminium oxide and iron oxide.',
      105,
    ),
    nature: 'derived',
  },
  'alkali-equivalent': {
    ...percent('Total alkalis as Na₂O', 'Na₂O eq', 'Na₂O + 0.658 K₂O.'),
    nature: 'derived',
  },
  'residue-45um': {
    ...percent('Residue on 45 µm, wet', undefined, 'Amount retained on the 45 µm (No. 325) sieve, washed.'),
    americanTitle: 'Fineness, retained on No. 325',
    decimals: 1,
    group: 'physical',
  },
  'passing-45um': {
    ...percent(
      'Passing 45 µm, wet',
      undefined,
      '100 % less the residue on the 45 µm (No. 325) sieve, washed; either is derived from the other.',
    ),
    americanTitle: 'Fineness, passing No. 325',
    decimals: 1,
    group: 'physical',
  },
  'finer-3.5um': {
    ...percent('Finer than 3.5 µm', undefined, 'Share of particles finer than 3.5 µm.'),
    decimals: 1,
    group: 'physical',
  },
  'finer-9um': {
    ...percent('Finer than 9 µm', undefined, 'Share of particles finer than 9 µm.'),
    decimals: 1,
    group: 'physical',
  },
  'multiple-factor': {
    title: 'Multiple factor',
    kind: 'ratio',
    nature: 'derived',
    bounds: [-500, 10000],
    decimals: 0,
    group: 'physical',
    description: 'Loss on ignition times residue on 45 µm, both in per cent.',
  },
  'residue-160um': {
    ...percent('Residue on 160 µm', undefined, 'Amount retained on the 160 µm sieve.'),
    decimals: 1,
    group: 'physical',
  },
  density: {
    title: 'Density',
    kind: 'density',
    nature: 'measured',
    bounds: [0.5, 6],
    decimals: 2,
    basis: 'dry',
    group: 'physical',
    description: 'Particle density.',
  },
  'specific-surface': {
    title: 'Specific surface',
    kind: 'specific-surface',
    nature: 'measured',
    bounds: [10, 100000],
    decimals: 0,
    basis: 'dry',
    group: 'physical',
    description: 'Specific surface by air permeability or gas adsorption; name the method.',
  },
  'autoclave-expansion': {
    title: 'Autoclave expansion',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-20, 50],
    decimals: 2,
    group: 'physical',
    description: 'Length change of the paste bar in the autoclave; contraction is negative.',
  },
  'soundness-expansion': {
    title: 'Soundness, Le Chatelier',
    kind: 'length',
    nature: 'measured',
    bounds: [0, 60],
    decimals: 1,
    group: 'physical',
    description: 'Expansion of the Le Chatelier ring.',
  },
  'drying-shrinkage-increase': {
    title: 'Increase of drying shrinkage',
    kind: 'points',
    nature: 'measured',
    bounds: [-5, 5],
    decimals: 2,
    group: 'physical',
    description: 'Drying shrinkage of mortar bars less that of the control, 28 d.',
  },
  'drying-shrinkage': {
    title: 'Drying shrinkage',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-5, 5],
    decimals: 3,
    group: 'physical',
    description: 'Drying shrinkage of mortar bars, 28 d; that of the control under control-results.',
  },
  'expansion-alkali-silica': {
    title: 'Expansion, alkali-silica reaction',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-5, 20],
    decimals: 3,
    group: 'physical',
    description: 'Expansion of mortar bars with reactive aggregate; name the method.',
  },
  'expansion-sulfate': {
    title: 'Expansion in sulfate solution',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-5, 20],
    decimals: 3,
    group: 'physical',
    description: 'Expansion of mortar bars in sulfate solution; name the method.',
  },
  'expansion-alkali-silica-relative': {
    title: 'Expansion, alkali-silica reaction, relative to the control',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-500, 2000],
    decimals: 0,
    group: 'physical',
    description:
      'Expansion of mortar bars with reactive aggregate, percent of that of bars with a low-alkali cement.',
  },
  'expansion-sulfate-relative': {
    title: 'Expansion in sulfate solution, relative to the control',
    kind: 'fraction',
    nature: 'measured',
    bounds: [-500, 2000],
    decimals: 0,
    group: 'physical',
    description:
      'Expansion of mortar bars in sulfate solution, percent of that of bars with a sulfate-resisting cement.',
  },
  'air-content': {
    title: 'Air content of mortar',
    kind: 'fraction',
    nature: 'measured',
    bounds: [0, 60],
    decimals: 1,
    group: 'physical',
    description: 'Air in mortar by volume.',
  },
  'setting-ratio': {
    title: 'Initial setting time relative to the test cement',
    kind: 'fraction',
    nature: 'measured',
    bounds: [0, 2000],
    decimals: 0,
    group: 'physical',
    description:
      'Initial setting time of the paste with the material, percent of that of the test cement alone.',
  },
  'flow-ratio': {
    title: 'Flow ratio',
    kind: 'fraction',
    nature: 'measured',
    bounds: [0, 300],
    decimals: 0,
    group: 'physical',
    description: 'Flow of the test mortar at the control’s water, percent of the control’s flow.',
  },
  'air-entraining-demand': {
    title: 'Air-entraining admixture demand',
    kind: 'batch-mass',
    nature: 'measured',
    bounds: [0, 1000],
    decimals: 2,
    group: 'physical',
    description: 'Admixture needed for 18 % air in mortar.',
  },
  'water-requirement': {
    title: 'Water requirement',
    kind: 'fraction',
    nature: 'index',
    bounds: [20, 300],
    decimals: 0,
    group: 'physical',
    description: 'Water of the test mortar for the control’s flow, percent of the control’s water.',
  },
  'r3-heat': {
    title: 'R3 cumulative heat',
    kind: 'heat',
    nature: 'measured',
    bounds: [0, 2000],
    decimals: 0,
    group: 'activity',
    description: 'Cumulative heat of the lime paste test, per gram of material.',
  },
  'lime-consumption': {
    title: 'Lime consumption',
    kind: 'fraction',
    nature: 'measured',
    bounds: [0, 300],
    decimals: 1,
    group: 'activity',
    description: 'Calcium hydroxide consumed in the lime paste test, per 100 g of material.',
  },
  'bound-water': {
    title: 'R3 bound water',
    kind: 'fraction',
    nature: 'measured',
    bounds: [0, 100],
    decimals: 1,
    group: 'activity',
    description: 'Bound water of the lime paste test.',
  },
  'compressive-strength': {
    title: 'Compressive strength',
    kind: 'stress',
    nature: 'measured',
    bounds: [0.05, 400],
    decimals: 1,
    group: 'activity',
    description: 'Mean compressive strength of the mortar specimens of one batch and age.',
  },
  'bulk-resistivity': {
    title: 'Bulk resistivity',
    kind: 'resistivity',
    nature: 'measured',
    bounds: [0.01, 1e6],
    decimals: 1,
    group: 'activity',
    description: 'Mean bulk resistivity of the mortar specimens of one batch and age.',
  },
  'strength-activity-index': {
    title: 'Strength activity index',
    kind: 'fraction',
    nature: 'index',
    bounds: [0, 1000],
    decimals: 1,
    group: 'activity',
    description: 'Mean strength of the test mortar, percent of the control mortar, same condition and age.',
  },
  'resistivity-index': {
    title: 'Resistivity index',
    kind: 'fraction',
    nature: 'index',
    bounds: [0, 1e6],
    decimals: 0,
    group: 'activity',
    description:
      'Mean bulk resistivity of the test mortar, percent of the control mortar, same condition and age.',
  },
} as const satisfies Record<string, Property>

export type PropertyKey = keyof typeof PROPERTIES

/** What is known of a property: title, kind of quantity, bounds, decimals. */
export function property(key: PropertyKey): Property {
  return PROPERTIES[key]
}

/** The symbol of the unit that values of a property are stored and compared in; "" for a plain number. */
export function storedUnit(key: PropertyKey): string {
  return KINDS[property(key).kind].stored
}

/**
 * Whether a word of a record names a property.
 * @param key any text
 */
export function isPropertyKey(key: string): key is PropertyKey {
  return Object.hasOwn(PROPERTIES, key)
}

/**
 * Keys that a laboratory may report in `results:` of an analysis (derived ones are computed, indices may be
 * stated).
 */
export function reportableKeys(): PropertyKey[] {
  return (Object.keys(PROPERTIES) as PropertyKey[]).filter((key) => property(key).nature !== 'derived')
}
