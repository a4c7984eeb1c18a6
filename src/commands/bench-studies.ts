/** Time of the largest studies that one would make: from readings to every figure of the page. */
import { performance } from 'node:perf_hooks'
import { readAge } from '../core/measure/age.ts'
import { batchIndices } from '../core/studies/batch-indices.ts'
import { roundRobin } from '../core/studies/interlaboratory/round-robin.ts'
import { screening } from '../core/studies/screening/screening.ts'
import { CONTROL, type StudyReading } from '../core/studies/study-reading.ts'
import { seededUniform } from '../edition/passes/seeded-uniform.ts'
import { STUDY_LEVEL } from '../records/studies/screening-asked.ts'

const AGE = readAge('28 d')
const RESAMPLES = 2000
const REPEATS = 3

/** Seconds, each the median of three runs after one that warms up. */
export function studies(): Record<string, number> {
  return { roundRobinSeconds: seconds(roundRobinOfTwenty), screeningSeconds: seconds(screeningOfSixty) }
}

function seconds(work: () => void): number {
  work()
  const times = Array.from({ length: REPEATS }, () => {
    const started = performance.now()
    work()
    return (performance.now() - started) / 1000
  })
  return times.toSorted((a, b) => a - b)[(REPEATS - 1) / 2] ?? 0
}

/** 20 laboratories, 30 materials, 4 replicates, each with its control batch of three cubes. */
function roundRobinOfTwenty(): void {
  const chance = seededUniform(1)
  const materials = codes('M', 30)
  const readings = codes('L', 20).flatMap((laboratory) =>
    codes('', 4).flatMap((batch) =>
      [CONTROL, ...materials].flatMap((material, place) =>
        cubes({ material, condition: 'R', laboratory, batch }, 30 + place / 4, chance),
      ),
    ),
  )
  roundRobin(batchIndices(readings).indices, materials, STUDY_LEVEL)
}

/** 60 materials, 12 conditions, 3 batches of three cubes, 2,000 draws of the materials. */
function screeningOfSixty(): void {
  const chance = seededUniform(2)
  const materials = codes('M', 60)
  const readings = codes('C', 12).flatMap((condition, heat) =>
    codes('', 3).flatMap((batch) =>
      [CONTROL, ...materials].flatMap((material, place) =>
        cubes({ material, condition, laboratory: '1', batch }, 30 + (place * heat) / 60, chance),
      ),
    ),
  )
  screening(batchIndices(readings).indices, {
    materials: materials.map((code, place) => ({ code, class: place < 30 ? 'inert' : 'reactive' })),
    steps: { 'strength-activity-index': 5 },
    ...{ batches: 3, level: STUDY_LEVEL, resamples: RESAMPLES, chance },
  })
}

function codes(letter: string, count: number): string[] {
  return Array.from({ length: count }, (_, place) => `${letter}${place + 1}`)
}

function cubes(
  place: Pick<StudyReading, 'material' | 'condition' | 'laboratory' | 'batch'>,
  strength: number,
  chance: () => number,
): StudyReading[] {
  return [1, 2, 3].map(() => ({
    ...place,
    ...{ age: AGE, measure: 'strength' as const, value: strength * (1 + chance() / 10), above: false },
  }))
}
