/** The pozzolanicity test's point against the solubility curve of calcium hydroxide at 40 °C. */

export interface PozzolanicityTest {
  readonly aliquotMl: number
  /** Acid for the hydroxide: one to one. */
  readonly acidMmolPerL: number
  readonly acidMl: number
  /** Complexing agent for the calcium: one to one. */
  readonly complexMmolPerL: number
  readonly complexMl: number
  /** Greatest error of a titrated volume, mL. */
  readonly errorMl: number
}

/** `too-near`: the errors of the volumes reach the curve. `off-curve`: outside the hydroxide that it holds for. */
export type CurveSide = 'below' | 'above' | 'too-near' | 'off-curve'

export interface Pozzolanicity {
  /** mmol/L. */
  readonly hydroxide: number
  readonly lime: number
  /** CaO at saturation for this hydroxide, mmol/L; null where the curve does not hold. */
  readonly saturated: number | null
  /** How far the errors of both volumes can move the point towards the curve, mmol/L of CaO. */
  readonly error: number | null
  readonly side: CurveSide
}

/** Hydroxide that the curve holds for, mmol/L. Source: EN 196-5 (from memory). */
export const CURVE_RANGE = { from: 45, to: 90 } as const

/**
 * Saturation concentration of lime at 40 °C.
 * @param hydroxide mmol/L
 * @returns CaO, mmol/L; null outside 45 to 90 mmol/L
 * Source: EN 196-5, [CaO] = 350/([OH⁻] − 15) (from memory).
 */
export function saturatedLime(hydroxide: number): number | null {
  if (hydroxide < CURVE_RANGE.from || CURVE_RANGE.to < hydroxide) return null
  // EN 196-5: 350/([OH⁻] − 15) (from memory).
  return 350 / (hydroxide - 15)
}

/**
 * The point, and on which side of the curve it lies.
 * @param test one solution, both titrations of aliquots of the same volume
 * Note: the errors of both volumes are taken at their greatest and together, so "too near" is said rather too often.
 * Source: EN 196-5 (from memory); the error's way by the curve's slope, own derivation.
 */
export function pozzolanicity({
  aliquotMl,
  acidMmolPerL,
  acidMl,
  complexMmolPerL,
  complexMl,
  errorMl,
}: PozzolanicityTest): Pozzolanicity {
  // c V / V_aliquot.
  const hydroxide = (acidMmolPerL * acidMl) / aliquotMl
  const lime = (complexMmolPerL * complexMl) / aliquotMl
  const saturated = saturatedLime(hydroxide)
  if (saturated === null) return { hydroxide, lime, saturated, error: null, side: 'off-curve' }
  // δ[CaO] + |d[CaO]/d[OH⁻]| δ[OH⁻], with 350/([OH⁻] − 15)² for the slope.
  const error =
    (complexMmolPerL * errorMl) / aliquotMl +
    ((350 / (hydroxide - 15) ** 2) * acidMmolPerL * errorMl) / aliquotMl
  const side = Math.abs(lime - saturated) <= error ? 'too-near' : lime < saturated ? 'below' : 'above'
  return { hydroxide, lime, saturated, error, side }
}
