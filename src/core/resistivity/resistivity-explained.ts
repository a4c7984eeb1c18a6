/**
 * Why a resistivity index stands where it does: what its pore solution and what its pore structure do to it.
 * For information: the model's assumptions reach further than any measurement of this register, so each
 * factor is a range, and none is a share.
 */
import { conductivity, type PasteInputs, poreSolution, waterLeft } from './pore-solution.ts'

/**
 * What is on record of a pair of mortars; alkalis as Na₂O equivalent in per cent, replacement a fraction by
 * mass.
 */
export interface ExplainedPair {
  readonly testOhmMetre: number
  readonly controlOhmMetre: number
  readonly cementAlkalis: number
  readonly materialAlkalis: number
  readonly replacement: number
  readonly waterToCementitious: number
  /** Of the control, where it differs: at constant flow each mortar has its own water. */
  readonly controlWaterToCementitious?: number
}

/** Lowest and highest over everything assumed. */
export interface Range {
  readonly low: number
  readonly high: number
}

export interface Explanation {
  /** Index over one hundred: the product of the two factors at each set of assumptions. */
  readonly ratio: number
  /** Pore resistivity of the test mortar over that of the control. */
  readonly poreSolution: Range
  /** Apparent formation factor of the test mortar over that of the control, at the saturation of curing. */
  readonly poreStructure: Range
  readonly testFormation: Range
  readonly controlFormation: Range
  readonly testPore: Range
  readonly controlPore: Range
}

/** Ends of what is assumed, as fractions: own choice, no source. The model is evaluated at every corner. */
export const ASSUMED: Assumptions = {
  cementReaction: [0.7, 0.95],
  materialReaction: [0.1, 0.6],
  bound: [0.1, 0.6],
}

export interface Assumptions {
  readonly cementReaction: readonly [number, number]
  readonly materialReaction: readonly [number, number]
  readonly bound: readonly [number, number]
}

/**
 * What pore solution and pore structure do to a resistivity index, each as a range over all that is assumed.
 * @param pair mean bulk resistivities at one age and temperature, and what the mortars are made of
 * @throws RangeError where the reaction takes all water at some set of assumptions
 * Note: test and control share the assumption on their cement; alkalis bound may differ, since a pozzolan's
 * hydrates bind more.
 * Source: Snyder and others 2003, equation (1) for the formation factor, (2) and (3) for the conductivity;
 * the estimate of the ions is own, see `poreSolution`.
 */
export function explainResistivity(pair: ExplainedPair, assumed: Assumptions = ASSUMED): Explanation {
  const corners = assumed.cementReaction.flatMap((cementReaction) =>
    assumed.materialReaction.flatMap((materialReaction) =>
      assumed.bound.flatMap((testBound) =>
        assumed.bound
          .filter((controlBound) => controlBound <= testBound)
          .map((controlBound) => corner(pair, { cementReaction, materialReaction, testBound, controlBound })),
      ),
    ),
  )
  const over = (pick: (at: Corner) => number): Range => ({
    low: Math.min(...corners.map(pick)),
    high: Math.max(...corners.map(pick)),
  })
  return {
    ratio: pair.testOhmMetre / pair.controlOhmMetre,
    poreSolution: over((at) => at.testPore / at.controlPore),
    poreStructure: over((at) => at.testFormation / at.controlFormation),
    testFormation: over((at) => at.testFormation),
    controlFormation: over((at) => at.controlFormation),
    testPore: over((at) => at.testPore),
    controlPore: over((at) => at.controlPore),
  }
}

/**
 * Whether both mortars keep free water at every set of assumptions; without it there is no pore solution.
 * @param pair mortars as for `explainResistivity`
 */
export function leavesWater(
  pair: Pick<ExplainedPair, 'replacement' | 'waterToCementitious' | 'controlWaterToCementitious'>,
  { cementReaction: [, cement], materialReaction: [, material] }: Assumptions = ASSUMED,
): boolean {
  const reaction = { cementReaction: cement, materialReaction: material }
  const { replacement, waterToCementitious } = pair
  const ofControl = pair.controlWaterToCementitious ?? waterToCementitious
  return (
    0 < waterLeft({ ...reaction, replacement, waterToCementitious }) &&
    0 < waterLeft({ ...reaction, replacement: 0, waterToCementitious: ofControl })
  )
}

interface Assumed {
  readonly cementReaction: number
  readonly materialReaction: number
  readonly testBound: number
  readonly controlBound: number
}
interface Corner {
  readonly testPore: number
  readonly controlPore: number
  readonly testFormation: number
  readonly controlFormation: number
}

function corner(
  pair: ExplainedPair,
  { cementReaction, materialReaction, testBound, controlBound }: Assumed,
): Corner {
  const shared: Omit<PasteInputs, 'replacement' | 'bound'> = {
    cementAlkalis: pair.cementAlkalis,
    materialAlkalis: pair.materialAlkalis,
    waterToCementitious: pair.waterToCementitious,
    cementReaction,
    materialReaction,
  }
  const testPore =
    1 / conductivity(poreSolution({ ...shared, replacement: pair.replacement, bound: testBound }))
  const controlPore =
    1 /
    conductivity(
      poreSolution({
        ...shared,
        waterToCementitious: pair.controlWaterToCementitious ?? pair.waterToCementitious,
        replacement: 0,
        bound: controlBound,
      }),
    )
  return {
    testPore,
    controlPore,
    testFormation: formationFactor(pair.testOhmMetre, testPore),
    controlFormation: formationFactor(pair.controlOhmMetre, controlPore),
  }
}

/**
 * Apparent formation factor: bulk over pore resistivity.
 * @param bulkOhmMetre,poreOhmMetre ohm m; the pore solution's above zero
 * @returns dimensionless
 * Source: Snyder and others 2003, equation (1), there as pore over bulk conductivity.
 */
export function formationFactor(bulkOhmMetre: number, poreOhmMetre: number): number {
  // Snyder and others 2003, equation (1).
  return bulkOhmMetre / poreOhmMetre
}
