/** Compressive strength of mortar specimens: load over area. */
import { type BatchJudgement, judgeBatch } from './batch-range.ts'
import { crossSectionMm2 } from '../mortar/cross-section.ts'
import {
  isQuantity,
  type BatchRangeRule,
  type SpecimenShape,
  type StrengthReading,
  type StrengthSpecimen,
} from '../mortar/mortar.ts'

/** Stress in MPa from load in kN and area in mm² (1 MPa = 1 N/mm²). */
export function strengthMPa(loadKN: number, areaMm2: number): number {
  return (1000 * loadKN) / areaMm2
}

export interface SpecimenStrength {
  readonly mark: string
  readonly strengthMPa: number | null
  readonly areaMm2: number | null
  readonly reading: string
  readonly excluded?: string
}

export interface BatchStrength {
  readonly specimens: readonly SpecimenStrength[]
  /** Marks of the specimens that count, in order. */
  readonly counted: readonly string[]
  /** Mean of those, MPa; null where none can be computed. */
  readonly meanMPa: number | null
  readonly n: number
  readonly judgement: BatchJudgement | null
  readonly summaryOnly: boolean
  readonly reasons: readonly string[]
  readonly valid: boolean
}

/**
 * Strength of the specimens of one reading; not valid where the range rule leaves fewer than two or a size is
 * missing.
 */
export function batchStrength(
  reading: StrengthReading,
  shape: SpecimenShape | undefined,
  rules: readonly BatchRangeRule[] = [],
): BatchStrength {
  if (reading.mean !== undefined) return summary(reading)
  const specimens = Object.entries(reading.specimens ?? {}).map(([mark, specimen]) =>
    specimenStrength(mark, specimen, shape),
  )
  const counted = specimens.filter((specimen) => specimen.excluded === undefined)
  const unsized = counted.filter((specimen) => specimen.strengthMPa === null)
  const excluded = specimens
    .filter((specimen) => specimen.excluded !== undefined)
    .map((specimen) => `specimen ${specimen.mark} excluded: ${specimen.excluded}`)
  if (counted.length === 0)
    return {
      specimens,
      counted: [],
      meanMPa: null,
      n: 0,
      judgement: null,
      summaryOnly: false,
      valid: false,
      reasons: [...excluded, 'no specimen counts'],
    }
  if (unsized.length > 0)
    return {
      specimens,
      counted: [],
      meanMPa: null,
      n: 0,
      judgement: null,
      summaryOnly: false,
      valid: false,
      reasons: [...excluded, 'the loaded area is not known'],
    }
  const judgement = judgeBatch(
    counted.map((specimen) => specimen.strengthMPa ?? 0),
    rules.map((rule) => ({
      of: rule.of,
      rangePercent: rule['at-most']?.value,
      withinPercent: rule.within?.value,
    })),
  )
  return {
    specimens,
    counted: judgement.kept.map((index) => counted[index]?.mark ?? ''),
    meanMPa: judgement.mean,
    n: judgement.kept.length,
    judgement,
    summaryOnly: false,
    valid: judgement.valid,
    reasons: [...excluded, ...batchReasons(judgement, counted)],
  }
}

/** Strengths of the specimens that count, MPa; none where only a mean is on record. */
export function countedStrengthsMPa(batch: BatchStrength): number[] {
  return batch.specimens
    .filter(({ mark }) => batch.counted.includes(mark))
    .flatMap(({ strengthMPa }) => strengthMPa ?? [])
}

function summary(reading: StrengthReading): BatchStrength {
  return {
    specimens: [],
    counted: [],
    meanMPa: reading.mean?.value ?? null,
    n: reading.of ?? 1,
    judgement: null,
    summaryOnly: true,
    valid: true,
    reasons: ['only the mean is on record'],
  }
}

function specimenStrength(
  mark: string,
  specimen: StrengthSpecimen,
  shape: SpecimenShape | undefined,
): SpecimenStrength {
  if (isQuantity(specimen))
    return specimenStrength(
      mark,
      specimen.kind === 'force' ? { load: specimen } : { strength: specimen },
      shape,
    )
  const excluded = specimen.excluded === undefined ? {} : { excluded: specimen.excluded }
  if (specimen.load === undefined)
    return {
      mark,
      strengthMPa: specimen.strength?.value ?? null,
      areaMm2: null,
      reading: specimen.strength?.written ?? 'no reading',
      ...excluded,
    }
  const areaMm2 = crossSectionMm2(shape, specimen)
  return {
    mark,
    strengthMPa: areaMm2 === null ? null : strengthMPa(specimen.load.value, areaMm2),
    areaMm2,
    reading: specimen.load.written,
    ...excluded,
  }
}

function batchReasons(judgement: BatchJudgement, counted: readonly SpecimenStrength[]): string[] {
  const first = judgement.steps[0]
  if (first === undefined || first.kept) return []
  const beyond = `the ${first.measure === 'range' ? 'range' : 'largest distance from the mean'} of ${first.of} specimens is ${first.percent.toFixed(1)} % of the mean, over ${first.limit} %`
  if (!judgement.valid) return [`${beyond}, and no specimen can be dropped to mend it: repeat the test`]
  return [
    `${beyond}; specimen ${judgement.dropped.map((index) => counted[index]?.mark).join(', ')}, farthest from the mean, is dropped`,
  ]
}
