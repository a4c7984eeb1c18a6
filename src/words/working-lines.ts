/** The lines of a working that test and control share: readings to specimens to mean. */
import {
  atTemperature,
  type BatchResistivity,
  USUAL_ACTIVATION_ENERGY,
} from '../core/resistivity/bulk-resistivity.ts'
import type { BatchStrength } from '../core/strength/compressive-strength.ts'
import type { MortarCondition, ResistivityReading } from '../core/mortar/mortar.ts'
import type { WorkingLine } from '../core/result/result.ts'

/** Decimals that a strength in MPa and a resistivity in ohm m are printed with in a working. */
const STRENGTH_DECIMALS = 2
const RESISTIVITY_DECIMALS = 2

export function strengthLines(of: 'test' | 'control', batch: BatchStrength): WorkingLine[] {
  if (batch.summaryOnly)
    return [
      {
        label: `${of} mortar`,
        expression: `mean of ${batch.n} as reported, no specimen on record`,
        value: batch.meanMPa ?? 0,
        unit: 'MPa',
        decimals: STRENGTH_DECIMALS,
      },
    ]
  const lines: WorkingLine[] = batch.specimens.map((specimen) => ({
    label: `${of} ${specimen.mark}`,
    expression: specimenText(
      specimen.reading,
      specimen.areaMm2 === null ? null : `${trimmed(specimen.areaMm2)} mm²`,
      specimen.excluded,
    ),
    ...(specimen.strengthMPa === null
      ? {}
      : { value: specimen.strengthMPa, unit: 'MPa', decimals: STRENGTH_DECIMALS }),
  }))
  for (const step of batch.judgement?.steps ?? []) {
    lines.push({
      label: 'range',
      expression: `${step.measure === 'range' ? 'largest less smallest' : 'largest distance from the mean'} of ${step.of}, limit ${step.limit} % of the mean: ${step.kept ? 'within' : 'beyond'}`,
      value: step.percent,
      unit: '%',
      decimals: 1,
      source: 'permissible range of the condition',
    })
  }
  if (batch.meanMPa !== null)
    lines.push({
      label: `${of} mean`,
      expression: `mean of ${batch.counted.join(', ')}`,
      value: batch.meanMPa,
      unit: 'MPa',
      decimals: STRENGTH_DECIMALS,
    })
  return lines
}

export function resistivityLines(of: 'test' | 'control', batch: BatchResistivity): WorkingLine[] {
  if (batch.summaryOnly)
    return [
      {
        label: `${of} mortar`,
        expression: `mean of ${batch.n} as reported, no specimen on record`,
        value: batch.meanOhmMetre ?? 0,
        unit: 'ohm m',
        decimals: RESISTIVITY_DECIMALS,
      },
    ]
  const contact = batch.endContactOhm === 0 ? '' : ` less ${trimmed(batch.endContactOhm)} Ω end contact`
  const lines: WorkingLine[] = batch.specimens.map((specimen) => ({
    label: `${of} ${specimen.mark}`,
    expression: specimenText(
      specimen.reading.replace(/\bk?ohm\b/, (unit) => (unit === 'ohm' ? 'Ω' : 'kΩ')) +
        (specimen.areaMm2 === null ? '' : contact),
      specimen.areaMm2 === null
        ? null
        : `${trimmed(specimen.areaMm2)} mm² / ${trimmed(specimen.lengthMm ?? 0)} mm`,
      specimen.excluded,
      '×',
    ),
    ...(specimen.resistivityOhmMetre === null
      ? {}
      : { value: specimen.resistivityOhmMetre, unit: 'ohm m', decimals: RESISTIVITY_DECIMALS }),
  }))
  if (batch.meanOhmMetre !== null)
    lines.push({
      label: `${of} mean`,
      expression: `mean of ${batch.n}`,
      value: batch.meanOhmMetre,
      unit: 'ohm m',
      decimals: RESISTIVITY_DECIMALS,
    })
  return lines
}

/**
 * What the mean would be at the condition's temperature; only where it was read elsewhere. Information, never
 * judged.
 */
export function correctedLine(
  reading: ResistivityReading,
  batch: BatchResistivity,
  condition: MortarCondition,
): WorkingLine[] {
  const asked = condition.resistivity
  if (asked === undefined || reading.temperature === undefined || batch.meanOhmMetre === null) return []
  const readAt = reading.temperature.value
  const wanted = asked.reading.temperature.value
  if (Math.abs(readAt - wanted) < 0.05) return []
  const activationEnergy = asked['activation-energy'] ?? USUAL_ACTIVATION_ENERGY
  return [
    {
      label: 'for information',
      expression: `read at ${trimmed(readAt)} °C; at ${trimmed(wanted)} °C it would be about (${activationEnergy} kJ/mol; the published range is wide)`,
      value: atTemperature(batch.meanOhmMetre, { readAt, wanted, activationEnergy }),
      unit: 'ohm m',
      decimals: 1,
      source: 'Arrhenius law; activation energy: common practice, no source',
    },
  ]
}

function specimenText(
  reading: string,
  size: string | null,
  excluded: string | undefined,
  operator = '/',
): string {
  const calculation = size === null ? `${reading} as reported` : `${reading} ${operator} ${size}`
  return excluded === undefined ? calculation : `${calculation}, excluded: ${excluded}`
}

function trimmed(value: number): string {
  return String(Number(value.toFixed(2)))
}
