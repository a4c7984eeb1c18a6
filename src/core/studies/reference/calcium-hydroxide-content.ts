/** Calcium hydroxide in a paste, from its thermogravimetric losses. */
import { MOLAR_MASS } from './molar-masses.ts'
import { tableFault, type TablePoint } from './reading-table.ts'
import type { ReferenceFault } from './reference-fault.ts'
import {
  type StepLoss,
  stepLoss,
  type Tangents,
  tangentLoss,
  type TemperatureRange,
} from './thermogravimetric-loss.ts'

export interface Thermogram {
  /** x in °C, y in mg; increasing in x. */
  readonly curve: readonly TablePoint[]
  /** The loss of the hydroxide's water: a plain step, or between tangents. */
  readonly water: TemperatureRange | Tangents
  /** Where carbon dioxide leaves; null where none is turned back into hydroxide. */
  readonly carbonate: TemperatureRange | null
  /** What the content is referred to: the first row's mass, or the last row's. */
  readonly basis: 'initial' | 'ignited'
}

export interface CalciumHydroxideContent {
  readonly value: number
  readonly water: StepLoss
  /** null without a carbonation correction. */
  readonly carbonate: StepLoss | null
  readonly hydroxideMg: number
  readonly basisMg: number
}

/**
 * Calcium hydroxide of a paste.
 * @returns g per 100 g of the basis, with its steps; a fault of the table or of a step
 * Note: the correction takes all carbon dioxide of its range as carbonated hydroxide; a paste that was given carbonate holds more.
 * Source: Ca(OH)₂ → CaO + H₂O, CaCO₃ → CaO + CO₂; the practice of Lothenbach and others (2016), chapter 5 (from memory).
 */
export function calciumHydroxideContent({
  curve,
  water,
  carbonate,
  basis,
}: Thermogram): CalciumHydroxideContent | ReferenceFault {
  const unsound = tableFault(curve, 'temperature')
  if (unsound !== null) return unsound
  const lost = 'before' in water ? tangentLoss(curve, water) : stepLoss(curve, water, 'water')
  if ('fault' in lost) return lost
  const carbonated = carbonate === null ? null : stepLoss(curve, carbonate, 'carbonate')
  if (carbonated !== null && 'fault' in carbonated) return carbonated
  // m(Ca(OH)₂) = Δm(H₂O) · 74.093/18.015 + Δm(CO₂) · 74.093/44.009.
  const hydroxideMg =
    (lost.lossMg * MOLAR_MASS.calciumHydroxide) / MOLAR_MASS.water +
    ((carbonated?.lossMg ?? 0) * MOLAR_MASS.calciumHydroxide) / MOLAR_MASS.carbonDioxide
  const basisMg = (basis === 'initial' ? curve[0] : curve.at(-1))?.y ?? Number.NaN
  // 100 m(Ca(OH)₂) / m(basis).
  return { value: (100 * hydroxideMg) / basisMg, water: lost, carbonate: carbonated, hydroxideMg, basisMg }
}
