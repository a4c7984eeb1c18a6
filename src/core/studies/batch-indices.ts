/** Readings of a study to indices: a test batch over the control batch that belongs to it. */
import type { Age } from '../measure/age.ts'
import { bulkResistivityOhmMetre } from '../resistivity/bulk-resistivity.ts'
import { resistivityIndex } from '../resistivity/resistivity-index.ts'
import { mean } from '../statistics/descriptive.ts'
import { activityIndex } from '../strength/activity-index.ts'
import { strengthMPa } from '../strength/compressive-strength.ts'
import { CONTROL, type StudyIndexProperty, type StudyReading } from './study-reading.ts'

/** What a reading is of, but for the material. */
interface Place {
  readonly condition: string
  readonly laboratory: string
  readonly batch: string
  readonly age: Age
}

/** Mean of a batch's specimens, MPa or ohm m. */
export interface BatchMean extends Place {
  readonly material: string
  readonly property: StudyIndexProperty
  readonly value: number
  /** Some of its specimens are known only as above a ceiling: the mean lies above `value`. */
  readonly above: boolean
  readonly n: number
}

export interface BatchIndex extends Place {
  readonly material: string
  readonly property: StudyIndexProperty
  /** %, or what the index lies above. */
  readonly value: number
  readonly above: boolean
  /** null for an index that the laboratory reports finished. */
  readonly test: BatchMean | null
  readonly control: BatchMean | null
  /** Other batches of the material are compared with the same control batch, so that they are not independent. */
  readonly sharesControl: boolean
}

/** A test batch without an index, and why. */
export interface UnmadeIndex {
  readonly test: BatchMean
  readonly why: 'no-control' | 'several-controls' | 'control-above-ceiling' | 'nothing-left'
}

export interface StudyIndices {
  readonly indices: readonly BatchIndex[]
  readonly unmade: readonly UnmadeIndex[]
  /** Means of the control batches, in the order of the readings. */
  readonly controls: readonly BatchMean[]
}

/** Shape of the specimens, which loads and resistances need. */
export interface StudySpecimens {
  readonly cubeMm: number
  readonly endContactOhm: number
}

/**
 * Indices of all test batches.
 * @param readings in the order of the file
 * @param specimens shape of the specimens; needed for loads and resistances
 * @returns indices in the order in which their batches first appear
 * @throws RangeError for a load or a resistance without a shape; the reader has refused it before
 * Notes: 1. a test batch is compared with the control batch of the same code, condition, laboratory and age; without one,
 * with the only control batch there; 2. where a specimen reads above the ceiling the batch lies above the mean with the
 * ceiling in its place; 3. a control above the ceiling gives no index.
 */
export function batchIndices(readings: readonly StudyReading[], specimens?: StudySpecimens): StudyIndices {
  const means = [...Map.groupBy(readings, keyOf).values()].flatMap((batch) => batchMean(batch, specimens))
  const controls = means.filter(({ material, finished }) => material === CONTROL && !finished)
  const byPlace = Map.groupBy(controls, placeKey)
  const indices: BatchIndex[] = []
  const unmade: UnmadeIndex[] = []
  for (const { finished, ...test } of means) {
    if (test.material === CONTROL) continue
    if (finished) {
      indices.push({ ...placeOf(test), ...indexOf(test), test: null, control: null, sharesControl: false })
      continue
    }
    const found = controlOf(test, byPlace.get(placeKey(test)) ?? [])
    if ('why' in found) unmade.push({ test, why: found.why })
    else if (test.value <= 0) unmade.push({ test, why: 'nothing-left' })
    else {
      const ratio = test.property === 'resistivity-index' ? resistivityIndex : activityIndex
      const value = ratio(test.value, found.control.value)
      indices.push({
        ...placeOf(test),
        ...indexOf({ ...test, value }),
        test,
        control: found.control,
        sharesControl: false,
      })
    }
  }
  return {
    indices: withSharing(indices),
    unmade,
    controls: controls.map(({ finished: _, ...control }) => control),
  }
}

function controlOf(
  test: BatchMean,
  at: readonly BatchMean[],
): { readonly control: BatchMean } | { readonly why: UnmadeIndex['why'] } {
  const own = at.find(({ batch }) => batch === test.batch)
  const control = own ?? (at.length === 1 ? at[0] : undefined)
  if (control === undefined) return { why: at.length === 0 ? 'no-control' : 'several-controls' }
  if (control.above) return { why: 'control-above-ceiling' }
  return control.value <= 0 ? { why: 'nothing-left' } : { control }
}

function withSharing(indices: readonly BatchIndex[]): BatchIndex[] {
  const users = Map.groupBy(indices, ({ material, control }) =>
    control === null ? '' : `${material} ${keyOf(control)}`,
  )
  return indices.map((index) => ({
    ...index,
    sharesControl:
      index.control !== null && 1 < (users.get(`${index.material} ${keyOf(index.control)}`)?.length ?? 0),
  }))
}

function batchMean(
  batch: readonly StudyReading[],
  specimens: StudySpecimens | undefined,
): (BatchMean & { readonly finished: boolean })[] {
  const [first] = batch
  if (first === undefined) return []
  const values = batch.map((reading) => measured(reading, specimens))
  return [
    {
      ...placeOf(first),
      material: first.material,
      property: propertyOf(first),
      value: mean(values),
      above: batch.some(({ above }) => above),
      n: batch.length,
      finished: isFinished(first),
    },
  ]
}

/** MPa, ohm m or %. @throws RangeError for a load or a resistance without a shape, which the reader has refused */
function measured({ measure, value }: StudyReading, specimens: StudySpecimens | undefined): number {
  if (measure !== 'load' && measure !== 'resistance') return value
  if (specimens === undefined)
    throw new RangeError(`batchIndices needs the specimens' shape for a ${measure}, got none`)
  const { cubeMm, endContactOhm } = specimens
  return measure === 'load'
    ? strengthMPa(value, cubeMm * cubeMm)
    : bulkResistivityOhmMetre(value, endContactOhm, cubeMm * cubeMm, cubeMm)
}

function propertyOf({ measure }: StudyReading): StudyIndexProperty {
  return measure === 'resistance' || measure === 'resistivity' || measure === 'resistivity-index'
    ? 'resistivity-index'
    : 'strength-activity-index'
}

function placeOf({ condition, laboratory, batch, age }: Place): Place {
  return { condition, laboratory, batch, age }
}

function indexOf({
  material,
  property,
  value,
  above,
}: BatchMean): Pick<BatchIndex, 'material' | 'property' | 'value' | 'above'> {
  return { material, property, value, above }
}

/** One batch, one property: codes hold no blank. */
function keyOf(
  reading: Place & { readonly material: string } & ({ readonly property: StudyIndexProperty } | StudyReading),
): string {
  const kind = 'measure' in reading ? `${propertyOf(reading)} ${isFinished(reading)}` : reading.property
  return [
    kind,
    reading.material,
    reading.condition,
    reading.laboratory,
    reading.batch,
    reading.age.hours,
  ].join(' ')
}

function isFinished({ measure }: StudyReading): boolean {
  return measure === 'strength-activity-index' || measure === 'resistivity-index'
}

/** Where a control must stand for a test. */
function placeKey({ property, condition, laboratory, age }: BatchMean): string {
  return [property, condition, laboratory, age.hours].join(' ')
}
