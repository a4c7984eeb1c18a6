/** Compressive strength of mortar specimens: load over area. */
import { crossSectionMm2 } from '../mortar/cross-section.ts'
import type { MortarMeasurement, SpecimenValue } from '../mortar/mortar-measurement.ts'
import {
  type CrushedSpecimen,
  isQuantity,
  type SpecimenShape,
  type StrengthReading,
  type StrengthSpecimen,
} from '../mortar/mortar.ts'
import { assumedCube } from '../mortar/moulds.ts'
import type { Quantity } from '../measure/units.ts'
import type { ResultReason } from '../result/reason.ts'
import { strengthInterval } from '../statistics/ratio-interval.ts'
import { activityIndex } from './activity-index.ts'

/**
 * Compressive strength: load over area.
 * @param loadKN largest load, kN
 * @param areaMm2 loaded area, mm², above zero
 * @returns MPa, unrounded
 * Source: definition (also of ASTM C109, from memory).
 */
export function strengthMPa(loadKN: number, areaMm2: number): number {
  // 1 MPa = 1 N/mm².
  return (1000 * loadKN) / areaMm2
}

/** The test that gives the strength activity index. */
export const COMPRESSIVE_STRENGTH: MortarMeasurement<StrengthReading> = {
  property: 'compressive-strength',
  index: 'strength-activity-index',
  workingDecimals: 2,
  readingsOf: ({ strength }) => strength,
  specimenOf: (specimen, _reading, { strength }) => specimenStrength(specimen, strength?.specimen),
  valueUnknown: { code: 'loaded-area-unknown', params: {} },
  rangeRulesOf: ({ strength }) => strength?.['batch-range'] ?? [],
  specimenCountOf: ({ strength }) => strength?.specimens,
  ratioOf: activityIndex,
  ratioSource: 'ASTM C311, index = 100 A/B (from memory)',
  intervalOf: strengthInterval,
}

/**
 * What one specimen's reading gives.
 * @param shape nominal shape of the condition, or of the laboratory's moulds; sizes measured on the specimen go
 * before it, and a cube of 2 in is assumed for pounds-force without either
 * @returns MPa: a stated strength as it is, else load over area; null without a reading or an area
 */
export function specimenStrength(
  specimen: StrengthSpecimen,
  shape: SpecimenShape | undefined,
): SpecimenValue {
  const { load, strength, ...sizes }: CrushedSpecimen = isQuantity(specimen) ? byUnit(specimen) : specimen
  if (load === undefined)
    return { value: strength?.value ?? null, written: strength?.written ?? null, terms: [] }
  const cube = Object.values(sizes).some(isSize) ? undefined : assumedCube(load, shape)
  const areaMm2 = crossSectionMm2(cube ?? shape, sizes)
  if (areaMm2 === null) return { value: null, written: load.written, terms: [] }
  return {
    value: strengthMPa(load.value, areaMm2),
    written: load.written,
    areaMm2,
    ...(cube === undefined ? {} : { note: MOULD_ASSUMED }),
    terms: [
      {
        does: 'divided-by',
        value: areaMm2,
        unit: 'mm2',
        ...(cube === undefined ? {} : { assumed: { written: '4.00 in2', of: '2 in' } }),
      },
    ],
  }
}

function isSize(member: unknown): boolean {
  return typeof member === 'object' && member !== null && 'kind' in member
}

const MOULD_ASSUMED: ResultReason = { code: 'mould-assumed', params: {} }

function byUnit(quantity: Quantity): CrushedSpecimen {
  return quantity.kind === 'force' ? { load: quantity } : { strength: quantity }
}
