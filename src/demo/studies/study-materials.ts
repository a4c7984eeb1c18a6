/** Materials of the invented studies: what they are, and how the model lets them react. */

export interface StudyMaterial {
  readonly code: string
  readonly title: string
  readonly class: 'inert' | 'weak' | 'reactive'
  readonly kind?: string
  /** Heat in a reference test, J/g, and calcium hydroxide consumed, g/100 g. */
  readonly heat: number
  readonly calciumHydroxide: number
  /** CaO, %; density, g/cm³; median size, µm; amorphous part, %; soluble alkali, %; carbon, %. */
  readonly composition: readonly [number, number, number, number, number, number]
  /** Effect as a filler: a share of the diluted strength. */
  readonly filler: number
  /** Points of strength index that it can add at 30 %, and how fast at 23 °C, per day. */
  readonly strength: number
  readonly rate: number
  /** Natural logarithm of the resistivity index that it can reach at 50 %, and how fast at 23 °C, per day. */
  readonly resistivity: number
  readonly resistivityRate: number
}

// biome-ignore format: a table is read by rows
export const STUDY_MATERIALS: readonly StudyMaterial[] = [
  inert('Q1', 'quartz flour', 'quartz-filler', 11, 0.8, [0.2, 2.65, 14, 2, 0.01, 0.0], 0.0),
  inert('Q2', 'quartz flour, coarser', 'quartz-filler', 7, 0.5, [0.1, 2.65, 19, 1, 0.01, 0.0], -0.02),
  inert('L1', 'limestone filler', 'limestone-filler', 24, 0.3, [53.8, 2.71, 12, 0, 0.01, 0.1], 0.03),
  inert('L2', 'dolomitic limestone filler', 'limestone-filler', 18, 0.6, [38.9, 2.79, 16, 1, 0.01, 0.1], 0.01),
  inert('F1', 'feldspar filler', undefined, 29, 2.1, [1.2, 2.62, 15, 4, 0.05, 0.0], -0.01),
  inert('C1', 'corundum', undefined, 6, 0.2, [0.1, 3.95, 13, 0, 0.02, 0.0], -0.04),
  slow('W1', 'harvested ash, lime-bearing', 'weak', 201, 21, [9.6, 2.38, 31, 44, 0.11, 3.9], [-0.02, 14, 0.03, 0.7, 0.008]),
  slow('W2', 'weathered tuff', 'weak', 128, 26.5, [4.1, 2.41, 17, 38, 0.12, 0.3], [0.0, 12, 0.012, 0.9, 0.006]),
  slow('W3', 'ground bottom ash', 'weak', 104, 24, [3.2, 2.47, 27, 51, 0.03, 1.4], [-0.04, 10, 0.012, 0.8, 0.006]),
  slow('A1', 'low-calcium ash', 'reactive', 318, 56, [2.1, 2.29, 13, 74, 0.06, 1.1], [0.01, 44, 0.018, 3.4, 0.013]),
  slow('A2', 'low-calcium ash, coarse', 'reactive', 236, 45.5, [3.4, 2.33, 24, 66, 0.08, 2.6], [-0.03, 39, 0.011, 2.9, 0.01]),
  slow('A3', 'harvested low-calcium ash', 'reactive', 262, 49, [2.8, 2.36, 18, 69, 0.05, 3.3], [-0.02, 40, 0.011, 3.0, 0.010]),
  slow('H1', 'high-calcium ash', 'reactive', 251, 40.2, [24.7, 2.66, 14, 72, 0.14, 0.4], [0.01, 36, 0.08, 3.0, 0.005]),
  slow('H2', 'high-calcium ash', 'reactive', 161, 37.1, [27.3, 2.71, 16, 68, 0.17, 0.5], [0.0, 34, 0.09, 3.1, 0.0045]),
  slow('P1', 'ground pumice', 'reactive', 289, 61, [1.9, 2.35, 15, 82, 0.10, 0.2], [-0.06, 45, 0.014, 3.3, 0.012]),
  slow('P2', 'calcined clay', 'reactive', 452, 93.5, [0.8, 2.52, 9, 78, 0.05, 0.1], [0.0, 46, 0.10, 3.9, 0.05]),
  slow('K1', 'ash of co-fired biomass', 'reactive', 305, 52, [7.5, 2.40, 16, 70, 1.35, 1.8], [0.0, 38, 0.016, 0.12, 0.012]),
]

function inert(
  code: string,
  title: string,
  kind: string | undefined,
  heat: number,
  calciumHydroxide: number,
  composition: StudyMaterial['composition'],
  filler: number,
): StudyMaterial {
  return {
    ...{ code, title, class: 'inert', heat, calciumHydroxide, composition, filler },
    ...(kind === undefined ? {} : { kind }),
    ...{ strength: 0, rate: 0, resistivity: 0, resistivityRate: 0 },
  }
}

function slow(
  code: string,
  title: string,
  known: 'weak' | 'reactive',
  heat: number,
  calciumHydroxide: number,
  composition: StudyMaterial['composition'],
  [filler, strength, rate, resistivity, resistivityRate]: readonly [number, number, number, number, number],
): StudyMaterial {
  return {
    ...{ code, title, class: known, heat, calciumHydroxide, composition },
    ...{ filler, strength, rate, resistivity, resistivityRate },
  }
}

/** A material by its code. @throws RangeError for a code that is none */
export function studyMaterial(code: string): StudyMaterial {
  const found = STUDY_MATERIALS.find((one) => one.code === code)
  if (found === undefined) throw new RangeError(`studyMaterial needs a code of the list, got ${code}`)
  return found
}

/** What a record says of a material's reference tests. */
export interface ReferenceWords {
  /** Readings; empty where there are none. */
  readonly text: (code: string) => string
  readonly isFinished: (code: string, figure: 'heat' | 'calcium-hydroxide') => boolean
}

/** Every reference test as its laboratory reported it. */
export const FINISHED_ALONE: ReferenceWords = { text: () => '', isFinished: () => true }

/**
 * The materials of a study as its record lists them.
 * @param reference without it the record says neither classes nor reference tests
 */
export function materialsText(materials: readonly StudyMaterial[], reference?: ReferenceWords): string {
  return materials
    .map((one) => {
      const [calcium, density, size, amorphous, alkali, carbon] = one.composition
      const known =
        reference === undefined
          ? ''
          : `    class: ${one.class}\n    shown-by: calcium hydroxide consumed, two outside laboratories\n${finished(one, reference)}${reference.text(one.code)}`
      return (
        `  ${one.code}:\n    title: ${one.title}\n${one.kind === undefined ? '' : `    kind: ${one.kind}\n`}${known}` +
        `    composition: { CaO: ${calcium} %, density: ${density} g/cm3, median-size: ${size} µm, amorphous: ${amorphous} %, soluble-alkali: ${alkali} %, carbon: ${carbon} % }\n`
      )
    })
    .join('')
}

function finished({ code, heat, calciumHydroxide }: StudyMaterial, { isFinished }: ReferenceWords): string {
  return [
    isFinished(code, 'heat') ? `    heat: ${heat} J/g\n` : '',
    isFinished(code, 'calcium-hydroxide') ? `    calcium-hydroxide: ${calciumHydroxide} g/100 g\n` : '',
  ].join('')
}
