/** Readings of a mortar in drafts of lots and control batches: by age, by specimen. */
import { ageIn } from '../../core/measure/age.ts'
import { momentIn, momentOfDay } from '../../core/measure/moment.ts'
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import {
  isMapping,
  isNothing,
  isSame,
  type Mapping,
  pointerOf,
  type RecordDraft,
  type Stated,
} from './draft.ts'
import { CAST_AND_AGE } from './fields.ts'
import type { CellPlace } from './grid.ts'
import type { TellFault } from './import-fault.ts'
import { columnOf } from './import-map.ts'
import { fieldValue, momentOf, rowFault, statedOf } from './row-values.ts'
import type { FieldValue } from './cell-values.ts'
import type { ReadRow } from './table-rows.ts'

type Measure = 'strength' | 'resistivity'

/** Fields that only readings of one kind have. */
const OF_MEASURE: Readonly<Record<string, Measure>> = {
  load: 'strength',
  strength: 'strength',
  'mean-strength': 'strength',
  'control-strength': 'strength',
  resistance: 'resistivity',
  resistivity: 'resistivity',
  'mean-resistivity': 'resistivity',
  temperature: 'resistivity',
  'end-contact': 'resistivity',
  core: 'resistivity',
  'left-bath': 'resistivity',
  'out-of-liquid': 'resistivity',
  frequency: 'resistivity',
  conditioning: 'resistivity',
  saturation: 'resistivity',
  'meter-known': 'resistivity',
  'meter-read': 'resistivity',
}
const READINGS: readonly string[] = ['load', 'strength', 'resistance', 'resistivity']
/** Where a field of an age stands in a record, where it is named otherwise or stands deeper. */
const AGE_PATHS: Readonly<Record<string, Path>> = {
  'mean-strength': ['mean'],
  'mean-resistivity': ['mean'],
  'control-strength': ['control'],
  'meter-known': ['verification', 'known'],
  'meter-read': ['verification', 'read'],
}
/** Where a field of a mortar stands in a record, where it stands deeper. */
const MORTAR_PATHS: Readonly<Record<string, Path>> = {
  'cement-lot': ['cement', 'lot'],
  'cement-type': ['cement', 'type'],
  'cement-Na2O-equivalent': ['cement', 'Na2O-equivalent'],
  'cement-strength': ['cement', 'strength'],
}

/** One specimen as the file gives it. */
interface SpecimenRead {
  readonly value: Plain
  readonly place: CellPlace | null
  readonly reads: FieldValue['field']['reads']
}

/** Specimens of one age that the file does not mark: they are compared with those on record in their order. */
interface Unmarked {
  readonly draft: RecordDraft
  readonly path: Path
  readonly measure: Measure
  readonly specimens: SpecimenRead[]
}

export class MortarDrafts {
  private readonly tell: TellFault
  private readonly unmarked = new Map<RecordDraft, Map<string, Unmarked>>()

  constructor(tell: TellFault) {
    this.tell = tell
  }

  /** The conditions that a row has readings at; undefined where it says none. */
  conditionsOf(row: ReadRow): readonly (string | undefined)[] {
    const whole = fieldValue(row, 'condition')?.written
    const scoped = row.values.flatMap(({ scope }) => scope.condition ?? [])
    const all = new Set(scoped.length === 0 ? [whole] : [...scoped, ...(whole === undefined ? [] : [whole])])
    return [...all]
  }

  /**
   * Puts a row's readings into a mortar.
   * @param at path of the mortar; empty for a control batch, which is one
   */
  add(row: ReadRow, draft: RecordDraft, at: Path, condition?: string): void {
    const own = row.values.filter(({ scope }) => (scope.condition ?? condition) === condition)
    this.addMortar(row, draft, at)
    const readings = own.filter(isReading)
    const groups = Map.groupBy(readings, (value) => `${measureOf(value)} ${ageOf(row, value)?.hours}`)
    for (const values of groups.values()) {
      const [first] = values
      if (first === undefined) continue
      const age = ageOf(row, first)
      if (age === undefined) this.tell(rowFault(row, 'the age of its readings', 'age'))
      else this.addAge(row, { draft, at, measure: measureOf(first), age: age.text, values })
    }
    // A row with an age and without readings says that the test is cast for that age.
    const age = readings.length === 0 ? fieldValue(row, 'age')?.written : undefined
    this.addPlanned(row, draft, at, [...(row.table.planned ?? []), ...(age === undefined ? [] : [age])])
  }

  private addMortar(row: ReadRow, draft: RecordDraft, at: Path): void {
    const seen = new Set<string>()
    for (const value of row.values) {
      const { part, key } = value.field
      if (part !== 'mortar' || seen.has(key) || key === 'cast-time') continue
      if (key === 'control' && at.length === 0) continue
      seen.add(key)
      const path = MORTAR_PATHS[key] ?? [key]
      if (value.scope.condition === undefined && !(key === 'condition' && 0 < at.length))
        draft.state(
          [...at, ...path],
          key === 'cast' ? (momentOf(row, 'cast', 'cast-time') ?? statedOf(value)) : statedOf(value),
        )
    }
  }

  private addAge(row: ReadRow, { draft, at, measure, age, values }: AgeToAdd): void {
    const scope = { age, for: measure }
    const tested = testedOn(momentOf(row, 'tested', 'tested-time', scope), draft.at([...at, 'cast']), age)
    const path = [...at, measure]
    const place = values.find((value) => value.place !== null)?.place ?? row.place
    const retest = fieldValue(row, 'retest-of', scope) !== undefined
    const index = this.ageIndex(draft, path, { age, tested, retest, place })
    const entry = [...path, index]
    if (tested !== undefined) draft.state([...entry, 'tested'], tested)
    for (const name of ['reported', 'of', 'deviations', 'retest-of']) {
      const value = fieldValue(row, name, scope)
      if (value !== undefined) draft.state([...entry, name], statedOf(value))
    }
    for (const value of values)
      if (value.field.part === 'age')
        draft.state([...entry, ...(AGE_PATHS[value.name] ?? [value.name])], statedOf(value))
    const bySpecimen = Map.groupBy(
      values.filter(({ name }) => READINGS.includes(name)),
      ({ scope: { specimen } }) => specimen,
    )
    for (const [mark, readings] of bySpecimen) {
      const own = mark ?? fieldValue(row, 'specimen')?.written
      // Columns without a mark are a specimen each; only one row a specimen has sides of its own.
      if (own === undefined)
        for (const reading of readings)
          this.addUnmarked(specimenOf(row, [reading]), { draft, path: entry, measure })
      else addMarked(specimenOf(row, readings), draft, [...entry, 'specimens', own])
    }
  }

  /** The entry of an age; a retest is another, known by its own moment. */
  private ageIndex(draft: RecordDraft, path: Path, { age, tested, retest, place }: AgeNamed): number {
    const atAge = (one: Mapping) => isSame(one['age'] ?? '', age, { as: 'age' })
    const then = (one: Mapping) =>
      tested !== undefined && isSame(one['tested'] ?? '', tested.written, { as: 'moment' })
    const several = retest || draft.items(path).filter(atAge).some(then)
    return draft.itemOf(
      path,
      (one) => atAge(one) && (several ? then(one) : isNothing(one['retest-of'])),
      () => ({ age, ...(retest && tested !== undefined ? { tested: tested.written } : {}) }),
      place,
    )
  }

  private addUnmarked(specimen: SpecimenRead, { draft, path, measure }: Omit<Unmarked, 'specimens'>): void {
    const ofDraft = this.unmarked.get(draft) ?? new Map<string, Unmarked>()
    this.unmarked.set(draft, ofDraft)
    const pointer = pointerOf(path)
    const batch = ofDraft.get(pointer) ?? { draft, path, measure, specimens: [] }
    ofDraft.set(pointer, batch)
    batch.specimens.push(specimen)
  }

  /** Ages that a test is cast for are awaited from the day that it is on record. */
  private addPlanned({ table, place }: ReadRow, draft: RecordDraft, at: Path, ages: readonly string[]): void {
    for (const measure of measuresIn(table))
      for (const age of ages)
        draft.itemOf(
          [...at, measure],
          (one) => isSame(one['age'] ?? '', age, { as: 'age' }),
          () => ({ age }),
          place,
        )
  }

  /** Puts specimens without a mark where they belong, once all of an age are known. */
  finish(): void {
    for (const ofDraft of this.unmarked.values())
      for (const { draft, path, measure, specimens } of ofDraft.values()) {
        const at = [...path, 'specimens']
        const old = draft.at(at)
        if (isNothing(old)) {
          const marks = freeMarks(draft, path.slice(0, -1), measure)
          for (const { value, place } of specimens)
            draft.state([...at, marks.next().value], { written: value, place })
        } else if (isMapping(old) && !areSame(Object.values(old), specimens))
          draft.differences.push({
            path: at,
            onRecord: old,
            inFile: Object.fromEntries(
              specimens.map(({ value }, index) => [Object.keys(old)[index] ?? `s${index + 1}`, value]),
            ),
            place: specimens[0]?.place ?? null,
          })
      }
  }
}

interface AgeNamed {
  readonly age: string
  readonly tested: Stated | undefined
  readonly retest: boolean
  readonly place: CellPlace
}

interface AgeToAdd {
  readonly draft: RecordDraft
  readonly at: Path
  readonly measure: Measure
  readonly age: string
  readonly values: readonly FieldValue[]
}

/** Whether a row has anything that was measured on a mortar. */
export function hasReadings({ values }: ReadRow): boolean {
  return values.some(isReading)
}

function isReading({ name, field }: FieldValue): boolean {
  return name in OF_MEASURE && field.part !== 'mortar'
}

function measureOf({ name }: FieldValue): Measure {
  return OF_MEASURE[name] ?? 'strength'
}

function ageOf(
  row: ReadRow,
  { scope }: FieldValue,
): { readonly text: string; readonly hours: number } | undefined {
  return ageIn(scope.age ?? fieldValue(row, 'age')?.written ?? '') ?? undefined
}

/** A day counted from casting has no time of day, whatever casting has: nobody read a clock. */
function testedOn(tested: Stated | undefined, cast: Plain | undefined, age: string): Stated | undefined {
  if (tested?.written !== CAST_AND_AGE) return tested
  const [begun, hours] = [momentIn(String(cast)), ageIn(age)?.hours]
  return begun === null || hours === undefined
    ? undefined
    : { ...tested, written: momentOfDay(begun.day + Math.floor(hours / 24)).text }
}

const SIZES: readonly string[] = [
  'side',
  'other-side',
  'length',
  'diameter',
  'mass',
  'excluded',
  'excluded-on',
]

/** A reading alone, or with the sizes that the row measures. */
function specimenOf(row: ReadRow, readings: readonly FieldValue[]): SpecimenRead {
  const sizes = row.values.filter(
    ({ name, scope }) => SIZES.includes(name) && scope.specimen === readings[0]?.scope.specimen,
  )
  const [only] = readings
  const { place = null, field } = only ?? {}
  const reads = field?.reads ?? { as: 'text' }
  if (readings.length === 1 && sizes.length === 0 && only !== undefined)
    return { value: only.written, place, reads }
  return {
    value: Object.fromEntries([...readings, ...sizes].map(({ name, written }) => [name, written])),
    place,
    reads,
  }
}

function addMarked({ value, place, reads }: SpecimenRead, draft: RecordDraft, path: Path): void {
  const old = draft.at(path)
  // A specimen on record may say more, such as its sides.
  if (isMapping(old) && typeof value === 'string') {
    const key = READINGS.find((reading) => reading in old) ?? 'load'
    draft.state([...path, key], { written: value, place, reads })
  } else draft.state(path, { written: value, place, reads })
}

function areSame(old: readonly Plain[], specimens: readonly SpecimenRead[]): boolean {
  return (
    old.length === specimens.length &&
    specimens.every(({ value, reads }, index) => {
      const one = old[index] as Plain
      const reading = isMapping(one)
        ? READINGS.map((key) => one[key]).find((each) => each !== undefined)
        : one
      return isSame(isMapping(value) ? one : (reading ?? one), value, reads)
    })
  )
}

/** Marks in the order of the alphabet. A cube is broken once, so that another age is another cube; it is read again and again. */
function* freeMarks(draft: RecordDraft, ages: Path, measure: Measure): Generator<string, string> {
  const used = new Set(
    measure === 'strength'
      ? draft
          .items(ages)
          .flatMap((entry) => Object.keys(isMapping(entry['specimens']) ? entry['specimens'] : {}))
      : [],
  )
  for (let number = 0; ; number += 1) {
    const round = Math.floor(number / 26)
    const mark = `${String.fromCharCode(97 + (number % 26))}${round === 0 ? '' : round + 1}`
    if (!used.has(mark)) yield mark
  }
}

function measuresIn(table: ReadRow['table']): Measure[] {
  const named = Object.values(table.columns).flatMap((column) => OF_MEASURE[columnOf(column).to] ?? [])
  return [...new Set(named)]
}
