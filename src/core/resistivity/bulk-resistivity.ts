/** Bulk resistivity of mortar specimens between two plates. */
import { crossSectionMm2, electrodeDistanceMm } from '../mortar/cross-section.ts'
import {
  isQuantity,
  type ResistivityReading,
  type ResistivitySpecimen,
  type SpecimenShape,
} from '../mortar/mortar.ts'
import { mean } from '../statistics/descriptive.ts'

/**
 * Resistivity in ohm m from a uniaxial reading.
 * @param resistanceOhm reading, ohm
 * @param endContactOhm both end contacts together, in series with the specimen, ohm
 * @param areaMm2 section between the electrodes, mm²
 * @param lengthMm distance of the electrodes, mm
 * Source: definition, resistance of a uniform conductor R = ρ L / A.
 */
export function bulkResistivityOhmMetre(
  resistanceOhm: number,
  endContactOhm: number,
  areaMm2: number,
  lengthMm: number,
): number {
  return ((resistanceOhm - endContactOhm) * areaMm2) / (1000 * lengthMm)
}

/** Molar gas constant, J/(mol K): CODATA 2018, exact. */
const GAS_CONSTANT = 8.314462618
/** 0 °C in kelvin, exact by definition (SI brochure, 9th edition, 2.3.1). */
const ZERO_CELSIUS = 273.15
/**
 * Activation energy of conduction, kJ/mol, where a condition gives none: usual range 15 to 25, common
 * practice, no source.
 */
export const USUAL_ACTIVATION_ENERGY = 20

/**
 * What the resistivity read at one temperature would be at another, for information only.
 * @param resistivityOhmMetre as read
 * @param readAt,wanted temperatures, °C
 * @param activationEnergy kJ/mol
 * Source: Arrhenius law of conduction; ln(ρ2/ρ1) = E/R (1/T2 − 1/T1).
 */
export function atTemperature(
  resistivityOhmMetre: number,
  { readAt, wanted, activationEnergy }: { readAt: number; wanted: number; activationEnergy: number },
): number {
  const exponent =
    ((1000 * activationEnergy) / GAS_CONSTANT) * (1 / (wanted + ZERO_CELSIUS) - 1 / (readAt + ZERO_CELSIUS))
  return resistivityOhmMetre * Math.exp(exponent)
}

export interface SpecimenResistivity {
  readonly mark: string
  readonly resistivityOhmMetre: number | null
  readonly reading: string
  readonly areaMm2: number | null
  readonly lengthMm: number | null
  readonly excluded?: string
}

export interface BatchResistivity {
  readonly specimens: readonly SpecimenResistivity[]
  readonly meanOhmMetre: number | null
  readonly n: number
  readonly endContactOhm: number
  readonly summaryOnly: boolean
  readonly valid: boolean
  readonly reasons: readonly string[]
}

/**
 * Resistivities of the specimens of one reading; not valid without a size or where the end contacts exceed
 * the reading.
 */
export function batchResistivity(
  reading: ResistivityReading,
  shape: SpecimenShape | undefined,
): BatchResistivity {
  const endContactOhm = reading['end-contact']?.value ?? 0
  if (reading.mean !== undefined) {
    return {
      specimens: [],
      meanOhmMetre: reading.mean.value,
      n: reading.of ?? 1,
      endContactOhm,
      summaryOnly: true,
      valid: true,
      reasons: ['only the mean is on record'],
    }
  }
  const specimens = Object.entries(reading.specimens ?? {}).map(([mark, specimen]) =>
    specimenResistivity(mark, specimen, shape, endContactOhm),
  )
  const counted = specimens.filter((specimen) => specimen.excluded === undefined)
  const values = counted.map((specimen) => specimen.resistivityOhmMetre).filter((value) => value !== null)
  const faults = [
    ...(counted.length === 0 ? ['no specimen counts'] : []),
    ...(values.length < counted.length ? ['the geometry of a specimen is not known'] : []),
    ...(values.some((value) => value <= 0) ? ['the end contacts are as large as the reading itself'] : []),
  ]
  const excluded = specimens
    .filter((specimen) => specimen.excluded !== undefined)
    .map((specimen) => `specimen ${specimen.mark} excluded: ${specimen.excluded}`)
  return {
    specimens,
    meanOhmMetre: values.length === 0 || values.length < counted.length ? null : mean(values),
    n: values.length,
    endContactOhm,
    summaryOnly: false,
    valid: faults.length === 0,
    reasons: [...excluded, ...faults],
  }
}

/** Resistivities of the specimens that count, ohm m; none where only a mean is on record. */
export function countedOhmMetre(batch: BatchResistivity): number[] {
  return batch.specimens
    .filter(({ excluded }) => excluded === undefined)
    .flatMap(({ resistivityOhmMetre }) => resistivityOhmMetre ?? [])
}

function specimenResistivity(
  mark: string,
  specimen: ResistivitySpecimen,
  shape: SpecimenShape | undefined,
  endContactOhm: number,
): SpecimenResistivity {
  if (isQuantity(specimen))
    return specimenResistivity(
      mark,
      specimen.kind === 'resistance' ? { resistance: specimen } : { resistivity: specimen },
      shape,
      endContactOhm,
    )
  const excluded = specimen.excluded === undefined ? {} : { excluded: specimen.excluded }
  if (specimen.resistance === undefined) {
    return {
      mark,
      resistivityOhmMetre: specimen.resistivity?.value ?? null,
      reading: specimen.resistivity?.written ?? 'no reading',
      areaMm2: null,
      lengthMm: null,
      ...excluded,
    }
  }
  const areaMm2 = crossSectionMm2(shape, specimen)
  const lengthMm = electrodeDistanceMm(shape, specimen)
  const resistivityOhmMetre =
    areaMm2 === null || lengthMm === null
      ? null
      : bulkResistivityOhmMetre(specimen.resistance.value, endContactOhm, areaMm2, lengthMm)
  return { mark, resistivityOhmMetre, reading: specimen.resistance.written, areaMm2, lengthMm, ...excluded }
}
