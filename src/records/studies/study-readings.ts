/** The readings of a study: those of its own file, and what any reading must say, with every fault of theirs. */
import { type Age, ageIn } from '../../core/measure/age.ts'
import { isInCalendar, type Moment, momentIn } from '../../core/measure/moment.ts'
import { isFault, readQuantity } from '../../core/measure/units.ts'
import { CONTROL, type Measure, MEASURES, type StudyReading } from '../../core/studies/study-reading.ts'
import { BOUNDS, rangeWords, within } from '../checks/physical.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { quantityFault } from '../schema/quantity-faults.ts'
import type { Study } from '../schema/loaded-records.ts'
import { shortened } from '../schema/schema-words.ts'

/** Reports a fault of a value: where it stands, only the reader of that place knows. */
export type Tell = (
  code: 'quantity' | 'key-missing' | 'schema' | Parameters<FileReport['at']>[1],
  message: string,
  mend: string,
) => void

/** One reading as text, its places filled from what holds for all. */
export interface WrittenReading {
  readonly texts: Readonly<Partial<Record<PlaceName, string>>>
  readonly measure: Measure
  readonly text: string
  readonly tell: (name: PlaceName | null) => Tell
}

export const PLACES = ['material', 'condition', 'laboratory', 'batch', 'age', 'tested'] as const
export type PlaceName = (typeof PLACES)[number]

export const MEASURE_NAMES = Object.keys(MEASURES) as Measure[]

/** Where a reading says no laboratory or batch, or a study has one condition alone. */
const ONE = '1'

/**
 * Readings of a study's own file.
 * @param study with `readings`
 * @param report takes the faults
 */
export function ownReadings(study: Study, report: FileReport): StudyReading[] {
  return (study.readings ?? []).flatMap((entry, index) =>
    MEASURE_NAMES.flatMap((measure) =>
      (entry[measure] ?? []).flatMap((text, specimen) =>
        readingOf(study, {
          texts: {
            ...entryTexts(entry),
          },
          measure,
          text,
          tell: (name) => (code, message, mend) =>
            report.at(
              name === null ? `/readings/${index}/${measure}/${specimen}` : `/readings/${index}/${name}`,
              code,
              message,
              mend,
            ),
        }),
      ),
    ),
  )
}

function entryTexts(entry: NonNullable<Study['readings']>[number]): WrittenReading['texts'] {
  return Object.fromEntries(
    PLACES.flatMap((name) => (entry[name] === undefined ? [] : [[name, String(entry[name])]])),
  )
}

/** A reading from its texts; none where one of them is at fault. */
export function readingOf(study: Study, { texts, measure, text, tell }: WrittenReading): StudyReading[] {
  const material = known(
    { name: 'material' },
    texts.material,
    [...Object.keys(study.materials), CONTROL],
    tell,
  )
  const conditions = study.kind === 'ruggedness' ? study.runs : study.conditions
  const word = study.kind === 'ruggedness' ? 'run' : 'condition'
  const condition = known({ name: 'condition', word }, texts.condition, Object.keys(conditions ?? {}), tell)
  const laboratories = Object.keys(study.laboratories ?? { [ONE]: {} })
  const laboratory = known({ name: 'laboratory' }, texts.laboratory, laboratories, tell)
  const batch = batchOf(texts.batch, tell)
  const age = ageOf(texts.age, tell)
  const tested = dayOf(texts.tested, tell)
  const value = readValue(text, measure, tell)
  if (material === null || condition === null || laboratory === null || batch === null) return []
  if (age === null || tested === null || value === null) return []
  if (material === CONTROL && (measure === 'strength-activity-index' || measure === 'resistivity-index')) {
    tell(null)(
      'schema',
      'the control mortar has no index: indices are relative to it',
      'take the reading out',
    )
    return []
  }
  return [
    {
      ...{ material, condition, laboratory, batch, age, measure, ...value },
      ...(tested === undefined ? {} : { tested }),
    },
  ]
}

/** A code that the study lists; where it lists only one, a reading need not say it. */
function known(
  { name, word = name }: { readonly name: PlaceName; readonly word?: string },
  text: string | undefined,
  codes: readonly string[],
  tell: WrittenReading['tell'],
): string | null {
  const only = codes.length === 1 ? codes[0] : undefined
  const code = text ?? only
  if (code === undefined) {
    tell(name)(
      'key-missing',
      `this reading does not say its ${word}`,
      codes.length === 0
        ? `list a ${word} in the study first`
        : `add the ${word}: ${codes.slice(0, 12).join(', ')}`,
    )
    return null
  }
  if (codes.includes(code)) return code
  tell(name)(
    'reference-unknown',
    `the study lists no ${word} "${shortened(code)}"`,
    nearNames(code, codes) || 'list it in the study',
  )
  return null
}

const CODE = /^[A-Za-z0-9][A-Za-z0-9-]{0,15}$/

function batchOf(text: string | undefined, tell: WrittenReading['tell']): string | null {
  if (text === undefined) return ONE
  if (CODE.test(text)) return text
  tell('batch')(
    'schema',
    `"${shortened(text)}" is not a code of a batch`,
    'write at most 16 letters, digits and hyphens, a letter or digit first: 2a',
  )
  return null
}

/** Nobody keeps mortar for longer, and beyond it a number is a slip. */
const OLDEST_HOURS = 50 * 366 * 24

function ageOf(text: string | undefined, tell: WrittenReading['tell']): Age | null {
  if (text === undefined) {
    tell('age')('key-missing', 'this reading does not say its age', 'add the age, such as 28 d')
    return null
  }
  // A column of plain numbers is days, as nearly every table of strengths has it.
  const age = ageIn(/^\d+$/.test(text) ? `${Number(text)} d` : text)
  if (age !== null && 0 < age.hours && age.hours <= OLDEST_HOURS) return age
  tell('age')('age-unknown', `"${shortened(text)}" is not an age`, 'write days or hours: 28 d, 72 h')
  return null
}

function dayOf(text: string | undefined, tell: WrittenReading['tell']): Moment | undefined | null {
  if (text === undefined) return undefined
  const day = /^(19|2\d)\d{2}-\d{2}-\d{2}$/.test(text) ? momentIn(text) : null
  if (day !== null && isInCalendar(day)) return day
  tell('tested')('date', `"${shortened(text)}" is not a calendar date`, 'write year-month-day: 2026-03-11')
  return null
}

/** Measures that a meter takes, which has a ceiling. */
const HAS_CEILING: ReadonlySet<Measure> = new Set(['resistance', 'resistivity', 'resistivity-index'])

function readValue(
  text: string,
  measure: Measure,
  tell: WrittenReading['tell'],
): { readonly value: number; readonly above: boolean } | null {
  const [, sign = '', rest = text] = /^\s*(>|above\b)?\s*(.*)$/.exec(text) ?? []
  const read = readQuantity(rest, MEASURES[measure])
  if (isFault(read)) {
    const { code, message, mend } = quantityFault(read, [MEASURES[measure]])
    tell(null)(code, message, mend)
    return null
  }
  if (read.censored !== undefined) {
    tell(null)(
      'quantity-bound',
      `"${text}" is a bound, and a study computes with its readings`,
      'write the reading itself',
    )
    return null
  }
  if (read.value <= 0) {
    tell(null)('quantity-range', `"${text}" is not above zero`, 'check the reading')
    return null
  }
  if (sign !== '' && !HAS_CEILING.has(measure)) {
    tell(null)(
      'quantity-bound',
      `"${shortened(text)}" is a bound, and only a meter of resistance has a ceiling to read above`,
      'write the reading itself',
    )
    return null
  }
  const bounds = BOUNDS[MEASURES[measure]]
  if (bounds !== undefined && !within(read.value, bounds)) {
    tell(null)('quantity-range', ...rangeWords(`"${shortened(text)}"`, MEASURES[measure], bounds))
    return null
  }
  return { value: read.value, above: sign !== '' }
}
