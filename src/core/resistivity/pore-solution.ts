/**
 * Conductivity of a pore solution from its ions, and an estimate of the ions from what a mortar is made of.
 * For information only.
 */

export type Ion = 'OH' | 'Na' | 'K' | 'Ca' | 'SO4'

/** Concentrations in mol/L. */
export type Solution = Readonly<Partial<Record<Ion, number>>>

interface IonConstants {
  readonly charge: number
  readonly limiting: number
  readonly reduction: number
}

/**
 * Charge; equivalent conductivity at infinite dilution, cm² S per equivalent, not per mole;
 * reduction coefficient, (mol/L)^−1/2; all at 25 °C.
 * Source: Snyder, Feng, Keen and Mason 2003, Cement and Concrete Research 33, 793-798, table 1; Ca and SO₄
 * undivided read in a program that cites it.
 */
const IONS: Readonly<Record<Ion, IonConstants>> = {
  OH: { charge: -1, limiting: 198, reduction: 0.353 },
  Na: { charge: 1, limiting: 50.1, reduction: 0.733 },
  K: { charge: 1, limiting: 73.5, reduction: 0.548 },
  Ca: { charge: 2, limiting: 59, reduction: 0.771 },
  SO4: { charge: -2, limiting: 79, reduction: 0.877 },
}

/** mol/L times cm² S/mol is 0.1 S/m. */
const SIEMENS_PER_METRE = 0.1

function entries(solution: Solution): (IonConstants & { readonly molar: number })[] {
  return (Object.keys(IONS) as Ion[]).map((ion) => ({ ...IONS[ion], molar: solution[ion] ?? 0 }))
}

/**
 * Ionic strength of a pore solution.
 * @param solution mol/L of each ion; an ion left out is absent
 * @returns mol/L
 * Source: Snyder and others 2003, equation (4).
 */
export function ionicStrength(solution: Solution): number {
  // Snyder and others 2003, equation (4): I = ½ Σ z² c.
  return entries(solution).reduce((sum, { charge, molar }) => sum + (charge * charge * molar) / 2, 0)
}

/**
 * Conductivity of a pore solution at 25 °C.
 * @param solution mol/L of each ion; hydroxide as given, see `withHydroxide`
 * @returns S/m, unrounded
 * Note: within 8 % of the authors' measurements, for ionic strengths up to 2 mol/L and K:Na from 4:1 to 1:1.
 * Source: Snyder and others 2003, equations (2) and (3).
 */
export function conductivity(solution: Solution): number {
  const root = Math.sqrt(ionicStrength(solution))
  // Snyder and others 2003, equation (2): σ = Σ z c λ, with equation (3): λ = λ° / (1 + G √I).
  return (
    SIEMENS_PER_METRE *
    entries(solution).reduce(
      (sum, { charge, molar, limiting, reduction }) =>
        sum + (Math.abs(charge) * molar * limiting) / (1 + reduction * root),
      0,
    )
  )
}

/**
 * The solution with the hydroxide that balances the other charges, never less than none.
 * @param solution mol/L of each ion but hydroxide
 * Source: electroneutrality.
 */
export function withHydroxide(solution: Omit<Solution, 'OH'>): Solution {
  const balance = entries(solution).reduce((sum, { charge, molar }) => sum + charge * molar, 0)
  return { ...solution, OH: Math.max(0, balance) }
}

/** What a mortar's paste is made of, and what is assumed of it. Shares are fractions of one. */
export interface PasteInputs {
  /** Alkalis of the cement, and of the material, as Na₂O equivalent in per cent by mass. */
  readonly cementAlkalis: number
  readonly materialAlkalis: number
  /** Cement replaced by the material, by mass; 0 for a control. */
  readonly replacement: number
  readonly waterToCementitious: number
  /** Assumed degree of reaction. */
  readonly cementReaction: number
  readonly materialReaction: number
  /** Assumed share of the alkalis set free that hydrates bind again. */
  readonly bound: number
}

/** Na₂O, g/mol: 2 × 22.990 + 15.999, IUPAC abridged standard atomic weights (from memory). */
const SODA = 61.979
/**
 * Chemically bound (non-evaporable) water, g per g of reacted cementitious material: 0.226 and 0.235 for two
 * fully hydrated cements, NIST at the 10th International Congress on the Chemistry of Cement, 1997 (read).
 */
const WATER_TAKEN = 0.23

/**
 * Free water that the reaction leaves.
 * @returns g per g of cementitious material; zero or less where the reaction would take all of it
 * Source: chemically bound water as of `poreSolution`.
 */
export function waterLeft({
  replacement,
  waterToCementitious,
  cementReaction,
  materialReaction,
}: Pick<PasteInputs, 'replacement' | 'waterToCementitious' | 'cementReaction' | 'materialReaction'>): number {
  const reacted = (1 - replacement) * cementReaction + replacement * materialReaction
  return waterToCementitious - WATER_TAKEN * reacted
}

/**
 * Pore solution of a paste from its alkalis, taken as sodium alone with hydroxide beside it: for information
 * only.
 * @returns mol/L of Na and OH
 * @throws RangeError where the reaction takes all water
 * Notes: 1. own simplification: alkalis are set free in step with reaction, a fixed share is bound again, and
 * the free water is what reaction leaves; 2. hydroxide and alkalis alone carry nearly all of the charge in
 * mature paste (common practice, no source); 3. water held in gel counts as free.
 */
export function poreSolution({
  cementAlkalis,
  materialAlkalis,
  replacement,
  waterToCementitious,
  cementReaction,
  materialReaction,
  bound,
}: PasteInputs): Solution {
  const litres = waterLeft({ replacement, waterToCementitious, cementReaction, materialReaction }) / 1000
  if (!(0 < litres))
    throw new RangeError(
      `poreSolution needs water left after reaction, got ${waterToCementitious} g per g of cementitious material`,
    )
  const soda =
    ((1 - replacement) * cementReaction * cementAlkalis + replacement * materialReaction * materialAlkalis) /
    100
  // Own mass balance: two Na for each Na₂O.
  return withHydroxide({ Na: ((1 - bound) * 2 * soda) / SODA / litres })
}
