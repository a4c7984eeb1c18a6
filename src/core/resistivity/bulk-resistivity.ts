/** Bulk resistivity of mortar specimens between two plates. */
import { crossSectionMm2, electrodeDistanceMm } from '../mortar/cross-section.ts'
import type { SpecimenValue } from '../mortar/mortar-measurement.ts'
import {
  type ConductingSpecimen,
  isQuantity,
  type ResistivitySpecimen,
  type SpecimenShape,
} from '../mortar/mortar.ts'
import type { Quantity } from '../measure/units.ts'
import type { ResultReason } from '../result/reason.ts'
import { mean } from '../statistics/descriptive.ts'

/**
 * Resistivity from a uniaxial reading.
 * @param resistanceOhm reading, ohm
 * @param endContactOhm both end contacts together, in series with the specimen, ohm
 * @param areaMm2 section between the electrodes, mm²
 * @param lengthMm distance of the electrodes, mm, above zero
 * @returns ohm m, unrounded; zero or less where the contacts resist as much as was read
 * Source: resistance of a uniform conductor, R = ρ L/A, as a meter's manual gives it (ASTM C1876, clause not
 * seen).
 */
export function bulkResistivityOhmMetre(
  resistanceOhm: number,
  endContactOhm: number,
  areaMm2: number,
  lengthMm: number,
): number {
  // ρ = R A / L, with A in mm² and L in mm; end contacts lie in series.
  return ((resistanceOhm - endContactOhm) * areaMm2) / (1000 * lengthMm)
}

/**
 * Molar gas constant, J/(mol K): the first ten digits of N_A k = 8.31446261815324, exact since 2019 (SI
 * Brochure, 9th edition).
 */
const GAS_CONSTANT = 8.314462618
/** 0 °C in kelvin, exact by definition: SI Brochure, 9th edition, 2.3.1. */
const ZERO_CELSIUS = 273.15
/**
 * Activation energy of conduction, kJ/mol, where a condition gives none. Own choice within the 16 to 30 that
 * McCarter, Starrs and Chrisp 2000 give for mortars (abstract read).
 */
export const USUAL_ACTIVATION_ENERGY = 20

/**
 * What a resistivity read at one temperature would be at another: for information only, never judged.
 * @param resistivityOhmMetre as read, ohm m
 * @param readAt,wanted temperatures of the specimen, °C, above −273.15
 * @param activationEnergy of conduction, kJ/mol
 * @returns ohm m, unrounded; lower at a higher temperature
 * Note: published energies run from 9 to 39 kJ/mol, so that a correction over many degrees tells little.
 * Source: Arrhenius law of conduction, ln(ρ2/ρ1) = E/R (1/T2 − 1/T1); McCarter, Starrs and Chrisp 2000,
 * Cement and Concrete Research 30, 1395-1400 (abstract read).
 */
export function atTemperature(
  resistivityOhmMetre: number,
  { readAt, wanted, activationEnergy }: { readAt: number; wanted: number; activationEnergy: number },
): number {
  // Arrhenius: ln(ρ2/ρ1) = E/R (1/T2 − 1/T1).
  const exponent =
    ((1000 * activationEnergy) / GAS_CONSTANT) * (1 / (wanted + ZERO_CELSIUS) - 1 / (readAt + ZERO_CELSIUS))
  return resistivityOhmMetre * Math.exp(exponent)
}

/**
 * What one specimen's reading gives.
 * @param shape nominal shape of the condition; sizes measured on the specimen go before it
 * @param endContactOhm taken off a resistance; a stated resistivity holds none
 * @returns ohm m: a stated resistivity as it is, else from resistance, section and length; null without a
 * reading or a size, and where the contacts leave nothing of the reading
 * Notes: 1. resistances of one specimen in several directions are averaged: they give one value; 2. of a reading beyond
 * the meter's ceiling the value is what the ceiling gives, marked as `above`.
 */
export function specimenResistivity(
  specimen: ResistivitySpecimen,
  shape: SpecimenShape | undefined,
  endContactOhm: number,
): SpecimenValue {
  const { resistivity, ...sizes }: ConductingSpecimen = isQuantity(specimen) ? byUnit(specimen) : specimen
  const read = resistancesOf(specimen)
  if (read.length === 0)
    return {
      value: resistivity?.value ?? null,
      written: resistivity?.written ?? null,
      terms: [],
      ...aboveCeiling(resistivity === undefined ? [] : [resistivity]),
    }
  const areaMm2 = crossSectionMm2(shape, sizes)
  const lengthMm = electrodeDistanceMm(shape, sizes)
  const written = meanAsWritten(read)
  const resistanceOhm = mean(read.map(({ value }) => value))
  if (read.some(({ value }) => value <= endContactOhm))
    return { value: null, written, terms: lessContact(endContactOhm), fault: CONTACTS_EXCEED_READING }
  if (areaMm2 === null || lengthMm === null) return { value: null, written, terms: [] }
  return {
    value: bulkResistivityOhmMetre(resistanceOhm, endContactOhm, areaMm2, lengthMm),
    written,
    ...aboveCeiling(read),
    terms: [
      ...lessContact(endContactOhm),
      { does: 'times', value: areaMm2, unit: 'mm2' },
      { does: 'divided-by', value: lengthMm, unit: 'mm' },
    ],
  }
}

/** What was read of one specimen, one for each direction; none where it is stated as a resistivity. */
export function resistancesOf(specimen: ResistivitySpecimen): Quantity[] {
  const { resistance, directions }: ConductingSpecimen = isQuantity(specimen) ? byUnit(specimen) : specimen
  return resistance === undefined ? Object.values(directions ?? {}) : [resistance]
}

/** "812 ohm", or "(812 ohm + 790 ohm)/2". */
function meanAsWritten(read: readonly Quantity[]): string {
  const texts = read.map(({ written }) => written)
  return texts.length === 1 ? texts.join() : `(${texts.join(' + ')})/${texts.length}`
}

function aboveCeiling(read: readonly Quantity[]): Pick<SpecimenValue, 'above' | 'note'> {
  const beyond = read.find(({ above }) => above === true)
  return beyond === undefined
    ? {}
    : { above: true, note: { code: 'above-ceiling', params: { written: beyond.written } } }
}

const CONTACTS_EXCEED_READING: ResultReason = { code: 'end-contacts-exceed-reading', params: {} }

function lessContact(endContactOhm: number): SpecimenValue['terms'] {
  return endContactOhm === 0 ? [] : [{ does: 'less-end-contact', value: endContactOhm, unit: 'ohm' }]
}

function byUnit(quantity: Quantity): ConductingSpecimen {
  return quantity.kind === 'resistance' ? { resistance: quantity } : { resistivity: quantity }
}
