/**
 * Typical values of the scenario's materials: mean, scatter within a lot (sampling and testing), scatter of
 * true lot values of one source. All INVENTED for the demo, of plausible size: they are no data and must
 * never be shown as such. That a ground inert filler at 20 % gives about 75 to 80 % of the control is common
 * practice, no source.
 */

/** Mean, within-lot and between-lot standard deviation, in the stored unit. */
export type Spread = readonly [mean: number, within: number, between: number]

export interface Material {
  readonly CaO: Spread
  readonly oxideSum: Spread
  readonly SO3: Spread
  readonly lossOnIgnition: Spread
  readonly moisture: Spread
  readonly residue45: Spread
  readonly densityKgM3: Spread
  readonly waterRequirement: Spread
  readonly activity7: Spread
  readonly activity28: Spread
  readonly modifiedActivity28: Spread
  /** Ratio of resistivities, test over control, at 23 °C and at 50 °C. */
  readonly resistivityRatio23: Spread
  readonly resistivityRatio50: Spread
  /** Shares of SiO₂, Al₂O₃ and Fe₂O₃ in their sum. */
  readonly shares: readonly [number, number, number]
  readonly MgO: number
  readonly Na2O: number
  readonly K2O: number
  readonly autoclave: number
}

export const LOW_CALCIUM_ASH: Material = {
  CaO: [4.5, 0.15, 0.9],
  oxideSum: [86, 0.6, 2.2],
  SO3: [0.5, 0.05, 0.15],
  lossOnIgnition: [2.8, 0.15, 0.6],
  moisture: [0.15, 0.04, 0.06],
  residue45: [19, 1.2, 1.8],
  densityKgM3: [2330, 15, 28],
  waterRequirement: [96, 1, 1.5],
  activity7: [80, 3, 2.2],
  activity28: [86, 3, 2.2],
  modifiedActivity28: [79, 2.6, 2.6],
  resistivityRatio23: [1.3, 0.05, 0.09],
  resistivityRatio50: [4.4, 0.2, 0.5],
  shares: [0.62, 0.29, 0.09],
  MgO: 1.4,
  Na2O: 0.7,
  K2O: 2.1,
  autoclave: 0.02,
}

export const HIGH_CALCIUM_ASH: Material = {
  CaO: [25, 0.3, 1.3],
  oxideSum: [61, 0.6, 1.8],
  SO3: [2, 0.08, 0.35],
  lossOnIgnition: [0.5, 0.06, 0.12],
  moisture: [0.08, 0.03, 0.02],
  residue45: [14, 1, 1.5],
  densityKgM3: [2640, 15, 28],
  waterRequirement: [93, 0.9, 1.2],
  activity7: [95, 3, 2.2],
  activity28: [100, 3, 2.2],
  modifiedActivity28: [88, 2.6, 2.6],
  resistivityRatio23: [1.25, 0.05, 0.09],
  resistivityRatio50: [2.9, 0.15, 0.35],
  shares: [0.6, 0.3, 0.1],
  MgO: 4.9,
  Na2O: 1.6,
  K2O: 0.5,
  autoclave: 0.06,
}

export const NATURAL_POZZOLAN: Material = {
  CaO: [3.5, 0.15, 0.6],
  oxideSum: [85, 0.6, 1.8],
  SO3: [0.1, 0.02, 0.03],
  lossOnIgnition: [5, 0.2, 0.7],
  moisture: [1, 0.12, 0.3],
  residue45: [8, 0.7, 1.3],
  densityKgM3: [2430, 14, 24],
  waterRequirement: [104, 1.1, 1.4],
  activity7: [79, 3, 2.2],
  activity28: [86, 3, 2.2],
  modifiedActivity28: [76, 2.6, 2.4],
  resistivityRatio23: [1.5, 0.06, 0.1],
  resistivityRatio50: [4.9, 0.22, 0.5],
  shares: [0.76, 0.19, 0.05],
  MgO: 1.1,
  Na2O: 2.9,
  K2O: 3.3,
  autoclave: 0.03,
}

export const HARVESTED_ASH: Material = {
  CaO: [5, 0.2, 1.2],
  oxideSum: [84, 0.8, 2.6],
  SO3: [0.8, 0.08, 0.3],
  lossOnIgnition: [3.5, 0.2, 0.9],
  moisture: [0.4, 0.08, 0.18],
  residue45: [17, 1.3, 2.3],
  densityKgM3: [2300, 18, 36],
  waterRequirement: [98.5, 1.1, 1.9],
  activity7: [78, 3.1, 3.2],
  activity28: [84, 3.1, 3.2],
  modifiedActivity28: [75, 2.8, 3.4],
  resistivityRatio23: [1.25, 0.05, 0.12],
  resistivityRatio50: [3.8, 0.2, 0.65],
  shares: [0.61, 0.3, 0.09],
  MgO: 1.6,
  Na2O: 0.8,
  K2O: 2,
  autoclave: 0.03,
}

export const LIMESTONE_FILLER: Material = {
  CaO: [54, 0.2, 0.4],
  oxideSum: [2, 0.15, 0.4],
  SO3: [0.05, 0.02, 0.01],
  lossOnIgnition: [43, 0.2, 0.4],
  moisture: [0.2, 0.05, 0.05],
  residue45: [10, 0.7, 1.2],
  densityKgM3: [2710, 9, 9],
  waterRequirement: [98, 0.9, 0.9],
  activity7: [80, 2.8, 1.4],
  activity28: [78, 2.8, 1.4],
  modifiedActivity28: [45, 2, 1.4],
  resistivityRatio23: [0.9, 0.04, 0.03],
  resistivityRatio50: [0.8, 0.035, 0.04],
  shares: [0.7, 0.2, 0.1],
  MgO: 0.6,
  Na2O: 0.05,
  K2O: 0.08,
  autoclave: 0.01,
}
