/**
 * What laboratories call the properties: the one list of the trade's names, with our key for each. A name that the trade
 * uses for two things is not decided here: whoever reads it asks. Long, as the list is.
 */
import { PROPERTIES, type PropertyKey } from './properties.ts'

/** A name that means one property, or one that may mean several things. */
export type TradeWord =
  | { readonly sure: PropertyKey }
  | {
      /** The keys that it may stand for; a single one where the other meaning has no key. */
      readonly either: readonly PropertyKey[]
      /** Why it is not plain, as a clause without a full stop: "alkalis may be available or total". */
      readonly why: string
    }

/** Names of one meaning, beside each property's own key, title and symbol. */
const SURE: Readonly<Partial<Record<PropertyKey, readonly string[]>>> = {
  SiO2: ['silica', 'silicon oxide', 'silicium dioxide'],
  Al2O3: ['alumina', 'aluminum oxide', 'aluminium trioxide', 'aluminum trioxide'],
  Fe2O3: ['ferric oxide', 'iron(III) oxide', 'iron trioxide', 'total iron as Fe2O3'],
  CaO: ['calcium oxide', 'total CaO', 'total calcium oxide', 'lime as CaO'],
  MgO: ['magnesia', 'magnesium oxide'],
  SO3: [
    'sulphur trioxide',
    'sulfur as SO3',
    'sulphur as SO3',
    'sulfate as SO3',
    'sulphate as SO3',
    'total SO3',
  ],
  Na2O: ['soda', 'sodium oxide', 'total Na2O'],
  K2O: ['potash', 'potassium oxide', 'total K2O'],
  TiO2: ['titania', 'titanium oxide'],
  P2O5: ['phosphorus oxide', 'total phosphate', 'total P2O5', 'phosphate as P2O5'],
  Mn2O3: ['manganese(III) oxide'],
  SrO: ['strontia', 'strontium oxide'],
  'free-CaO': ['free lime', 'CaO free', 'f-CaO', 'FCaO', 'free calcium oxide'],
  'reactive-CaO': ['reactive lime', 'CaO reactive'],
  'reactive-SiO2': ['reactive silica', 'SiO2 reactive'],
  chloride: ['Cl', 'chlorides', 'chloride content', 'chloride ion'],
  'available-alkalis': [
    'available alkali',
    'avail. alkalis',
    'avail. alkali',
    'available alkalies',
    'available Na2O equivalent',
    'available Na2Oeq',
    'available alkali as Na2O',
    'available alkalis as Na2O equivalent',
  ],
  'amorphous-content': ['amorphous', 'amorphous phase', 'amorphous phases'],
  sulfide: ['sulphide', 'sulfide sulfur', 'sulphide sulphur', 'S2-'],
  silicon: ['free silicon', 'elemental Si', 'metallic silicon'],
  'soluble-phosphate': ['water-soluble phosphate', 'soluble P2O5'],
  moisture: ['H2O', 'water content', 'moist.', 'loss on drying'],
  'loss-on-ignition': ['LOI', 'L.O.I.', 'ignition loss', 'loss of ignition'],
  'oxide-sum': [
    'sum of oxides',
    'S+A+F',
    'SAF',
    'SiO2+Al2O3+Fe2O3',
    'sum of SiO2, Al2O3 and Fe2O3',
    'sum S+A+F',
    'sum of S+A+F',
    'sum SiO2+Al2O3+Fe2O3',
  ],
  'alkali-equivalent': [
    'total alkalis',
    'total alkali',
    'total alkalies',
    'equivalent alkalis',
    'equivalent alkalies',
    'alkali equivalent',
    'Na2Oeq',
    'Na2Oe',
    'Na2O equivalent',
    'equivalent Na2O',
    'total Na2O equivalent',
    'total Na2Oeq',
  ],
  'multiple-factor': ['MF'],
  density: ['particle density', 'true density', 'absolute density'],
  'specific-surface': [
    'Blaine',
    'Blaine fineness',
    'fineness (Blaine)',
    'Blaine specific surface',
    'BET',
    'SSA',
    'specific surface area',
    'specific surface (Blaine)',
    'specific surface (BET)',
    'surface area',
    'BET surface',
    'air permeability fineness',
    'fineness m2/kg',
    'fineness cm2/g',
  ],
  'autoclave-expansion': [
    'autoclave',
    'autoclave exp.',
    'autoclave soundness',
    'soundness (autoclave)',
    'autoclave expansion or contraction',
  ],
  'soundness-expansion': [
    'Le Chatelier',
    'Le Chatelier expansion',
    'Le Chatelier soundness',
    'soundness (Le Chatelier)',
    'soundness mm',
  ],
  'drying-shrinkage-increase': ['increase in drying shrinkage', 'drying shrinkage increase'],
  'air-content': ['air', 'mortar air', 'mortar air content', 'air in mortar'],
  'air-entraining-demand': ['AEA demand', 'AEA', 'air entrainment demand', 'air-entraining agent demand'],
  'water-requirement': ['water req.', 'water demand', 'W.R.', 'water requirement, percent of control'],
  'r3-heat': ['R3 heat', 'heat of R3 test', 'cumulative heat', 'heat release', 'R3 cumulative heat release'],
  'lime-consumption': [
    'calcium hydroxide consumption',
    'Ca(OH)2 consumption',
    'CH consumption',
    'portlandite consumption',
  ],
  'bound-water': ['chemically bound water'],
  'compressive-strength': ['strength', 'mortar strength', 'cube strength', 'mean strength', 'fc'],
  'bulk-resistivity': ['resistivity', 'bulk electrical resistivity', 'electrical resistivity'],
  'strength-activity-index': [
    'SAI',
    'S.A.I.',
    'strength index',
    'activity index',
    'strength activity',
    'slag activity index',
    'strength activity index with portland cement',
    'PAI',
    'pozzolanic activity index',
  ],
  'resistivity-index': ['bulk resistivity index', 'relative bulk resistivity', 'relative resistivity'],
}

interface Question {
  readonly names: readonly string[]
  readonly either: readonly PropertyKey[]
  readonly why: string
}

const SIEVE: Omit<Question, 'names'> = {
  either: ['residue-45um', 'passing-45um'],
  why: 'a figure of the 45 µm sieve may be what is retained on it or what passes it',
}

/** Names that the trade uses for more than one thing. */
const QUESTIONS: readonly Question[] = [
  {
    names: ['fineness'],
    either: ['residue-45um', 'specific-surface'],
    why: 'fineness may be the residue on the 45 µm sieve or the specific surface by air permeability (Blaine)',
  },
  {
    names: ['specific gravity', 'S.G.', 'sp. gr.', 'sp. gravity', 'spec. gravity', 'relative density', 'Gs'],
    either: ['density'],
    why: 'specific gravity is a ratio to the density of water and has no unit; density is in g/cm3',
  },
  {
    names: ['bulk density', 'loose density', 'tapped density', 'unit weight'],
    either: ['density'],
    why: 'the density on record is that of the particles, not that of the powder with its voids',
  },
  {
    names: ['alkalis', 'alkali', 'alkalies', 'alkali content', 'alkalis as Na2O', 'alkali as Na2O'],
    either: ['available-alkalis', 'alkali-equivalent'],
    why: 'alkalis may be those available to lime solution or the total, Na2O + 0.658 K2O',
  },
  {
    names: ['sulfur', 'sulphur', 'total sulfur', 'total sulphur'],
    either: ['SO3', 'sulfide'],
    why: 'sulfur may be given as SO3 (2.5 times the element) or be that of sulfides',
  },
  {
    names: ['sulfate', 'sulphate', 'sulfates', 'sulphates', 'SO4'],
    either: ['SO3'],
    why: 'sulfate may be given as SO4 or as SO3, which is 0.833 times as much',
  },
  {
    names: ['phosphate', 'phosphates', 'phosphorus'],
    either: ['P2O5', 'soluble-phosphate'],
    why: 'phosphate may be the total or what is soluble in water',
  },
  {
    names: ['lime'],
    either: ['CaO', 'free-CaO'],
    why: 'lime may be all calcium oxide or only what is free',
  },
  {
    names: ['manganese', 'MnO', 'MnO2'],
    either: ['Mn2O3'],
    why: 'Mn2O3 is 1.113 times MnO, 0.908 times MnO2 and 1.437 times the element',
  },
  {
    names: ['iron', 'FeO'],
    either: ['Fe2O3'],
    why: 'Fe2O3 is 1.430 times the element and 1.111 times FeO',
  },
  {
    names: ['carbon', 'unburned carbon', 'unburnt carbon', 'TOC', 'carbon content', 'total carbon'],
    either: ['loss-on-ignition'],
    why: 'carbon is not the loss on ignition, which counts bound water and carbon dioxide as well',
  },
  {
    names: ['glass', 'amorphous silica', 'vitreous content'],
    either: ['amorphous-content', 'glass-content', 'reactive-SiO2'],
    why: 'it may be the amorphous content by diffraction, the glass of a slag by microscope, or dissolved silica',
  },
  {
    names: ['soundness'],
    either: ['autoclave-expansion', 'soundness-expansion'],
    why: 'soundness may be the autoclave expansion in per cent or that of the Le Chatelier ring in mm',
  },
  {
    names: ['shrinkage'],
    either: ['drying-shrinkage', 'drying-shrinkage-increase'],
    why: 'shrinkage may be that of the mortar or its increase over the control',
  },
  {
    names: ['ASR', 'ASR expansion', 'alkali silica reaction', 'ASR effectiveness', 'alkali silica expansion'],
    either: ['expansion-alkali-silica', 'expansion-alkali-silica-relative'],
    why: 'the expansion may be that of the bars or its per cent of the control’s',
  },
  {
    names: ['sulfate expansion', 'sulphate expansion', 'sulfate resistance', 'sulphate resistance'],
    either: ['expansion-sulfate', 'expansion-sulfate-relative'],
    why: 'the expansion may be that of the bars or its per cent of the control’s',
  },
  {
    names: ['index'],
    either: ['strength-activity-index', 'resistivity-index'],
    why: 'an index may be one of strength or of resistivity',
  },
  {
    names: ['pozzolanic activity', 'pozzolanicity', 'activity', 'reactivity'],
    either: ['strength-activity-index', 'r3-heat', 'lime-consumption'],
    why: 'activity may be a strength index, or the heat or the lime consumption of a paste',
  },
  {
    names: ['R3', 'R3 test'],
    either: ['r3-heat', 'bound-water'],
    why: 'the R3 test gives the heat and the bound water',
  },
  {
    names: ['surface resistivity'],
    either: ['bulk-resistivity'],
    why: 'a surface resistivity is bulk resistivity only after correction for the specimen’s shape',
  },
  {
    names: ['setting time', 'initial set', 'initial setting time', 'set time'],
    either: ['setting-ratio'],
    why: 'the setting ratio is the time in per cent of that of the test cement alone, not the time itself',
  },
]

/** A figure of the 45 µm sieve, the No. 325 of US practice: words before and after its size. */
const OPENING = '(?:no)?325(?:mesh)?|45(?:um|microns?|mic)'
/** Beside a word that says which side is meant, the number alone serves: R45. */
const SIZE = `${OPENING}|45`
const SIEVE_WORDS = '(?:fineness|amount|wet|dry|washed|sieved?|on|the|by|a)*'
const RETAINED = '(?:retained|retention|ret|residue|plus|\\+|oversize|coarser(?:than)?|rest|r)'
const PASSING = '(?:passing|passed|pass|minus|finer(?:than)?|undersize|through|below|p)'

const sieve = (kind: string) =>
  new RegExp(
    `^${SIEVE_WORDS}(?:${kind}${SIEVE_WORDS}(?:${SIZE})${SIEVE_WORDS}|(?:${SIZE})${SIEVE_WORDS}${kind}${SIEVE_WORDS})$`,
  )
const ON_SIEVE = sieve(RETAINED)
const THROUGH_SIEVE = sieve(PASSING)
const OF_SIEVE = new RegExp(`^${SIEVE_WORDS}(?:${OPENING})${SIEVE_WORDS}$`)

/** A unit or an age at either end of a heading: "SiO2, wt %", "Blaine m2/kg", "SAI 7 d". */
const UNITS =
  /(?:^|[\s,;:_-])(?:wt\.?[\s-]*%|mass[\s-]*%|%[\s-]*(?:by\s+)?(?:mass|weight|wt)?|(?:wt\.?|weight|mass)?\s*per\s?cent|mpa|psi|n\/mm2|m2\/kg|cm2\/g|g\/cm3|kg\/m3|mg\/m3|j\/g|ohm[\s-]*m|kohm[\s-]*cm)\s*$/i
const AGE = /^(?:at\s+)?\d{1,3}[\s-]*d(?:ays?)?[\s,:_-]+|[\s,:_-]+(?:at\s+)?\d{1,3}[\s-]*d(?:ays?)?\s*$/i

/**
 * What a laboratory's name of a property means.
 * @param text a column's heading or a key: "LOI (%)", "SO₃", "+325", "SAI 7 d"
 * @returns the key that is meant, the keys that may be meant with the reason, or undefined for a name that the list has not
 * Notes: 1. case, blanks, hyphens, points, subscripts, "%" and a unit or an age at the end make no difference; what stands in
 * parentheses is read as part of the name first, then left out; 2. a key that is computed, such as oxide-sum, is given too.
 */
export function tradeWord(text: string): TradeWord | undefined {
  const plain = text.normalize('NFKC').replaceAll(/[μµ]/g, 'u')
  for (const form of [plain, plain.replaceAll(/[([][^)\]]*[)\]]/g, ' ')])
    for (const name of new Set([form, withoutUnitAndAge(form)])) {
      const found = meaning(sameForm(name))
      if (found !== undefined) return found
    }
  return undefined
}

function withoutUnitAndAge(text: string): string {
  return text
    .replaceAll('%', ' % ')
    .trim()
    .replace(UNITS, '')
    .trim()
    .replace(AGE, '')
    .trim()
    .replace(UNITS, '')
}

function meaning(name: string): TradeWord | undefined {
  const found = WORDS.get(name)
  if (found !== undefined) return found
  if (ON_SIEVE.test(name)) return { sure: 'residue-45um' }
  if (THROUGH_SIEVE.test(name)) return { sure: 'passing-45um' }
  return OF_SIEVE.test(name) ? SIEVE : undefined
}

/** Small letters and digits alone; a sign before a sieve's size says what is retained and what passes. */
function sameForm(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/^[\s%]*[-−–]\s*(?=(?:no\.?\s*|#)?\d)/, 'minus')
    .replace(/^[\s%]*\+\s*(?=(?:no\.?\s*|#)?\d)/, 'plus')
    .replaceAll(/[μµ]/g, 'u')
    .replaceAll(/[^a-z0-9]/g, '')
}

const WORDS: ReadonlyMap<string, TradeWord> = new Map<string, TradeWord>([
  ...QUESTIONS.flatMap(({ names, either, why }) =>
    names.map((name): [string, TradeWord] => [sameForm(name), { either, why }]),
  ),
  ...(Object.keys(PROPERTIES) as PropertyKey[]).flatMap((key) => {
    const { title, symbol } = PROPERTIES[key] as { title: string; symbol?: string }
    return [key, title, ...(symbol === undefined ? [] : [symbol]), ...(SURE[key] ?? [])].map(
      (name): [string, TradeWord] => [sameForm(name), { sure: key }],
    )
  }),
])
