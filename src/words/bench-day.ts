/** The bench's day of a resistivity test: what its condition records, and what it does not. */
import type { Quantity } from '../core/measure/units.ts'
import type { BenchCondition, BenchEntry, Evaporation, Surface } from '../core/resistivity/bench-condition.ts'
import type { BenchDetail, BenchStage } from '../core/resistivity/bench-day.ts'
import { written } from './as-written.ts'
import { countWords, plural } from './numbers.ts'
import { listWords } from './sentences.ts'
import { shortest } from './shortest.ts'
import { temperatureDifference, type UnitSystem } from './unit-systems.ts'

export const BENCH_STAGES: Readonly<Record<BenchStage, string>> = {
  'first-day': 'First day',
  entry: 'Into the bath',
  bath: 'Bath',
  cooling: 'Cooling',
  handling: 'To the meter',
  specimens: 'Specimens',
  meter: 'Meter',
  'after-reading': 'After the reading',
  control: 'Control',
}

/** What is said where a detail is missing: "not recorded: renewal of the liquid". */
export const BENCH_DETAILS: Readonly<Record<BenchDetail, string>> = {
  mould: 'mould of the first day',
  'first-temperature': 'temperature of the first day with its tolerance',
  'first-hours': 'length of the first day',
  entry: 'entry to the bath (step or ramp)',
  'bath-temperature': 'tolerance of the bath’s temperature',
  'bath-log': 'log of the bath',
  'core-log': 'log of a core',
  vessel: 'vessel',
  'liquid-to-specimens': 'ratio of liquid to specimens',
  'solid-lime': 'solid lime',
  renewal: 'renewal of the liquid',
  'materials-per-vessel': 'materials in a vessel',
  evaporation: 'what is done against evaporation',
  'control-cured': 'control cured together or apart',
  'cooled-in': 'what specimens are cooled in',
  'cooled-for': 'length of cooling',
  'cooled-to': 'temperature after cooling with its tolerance',
  'core-when-read': 'core temperature when read',
  'cooled-alike': 'control and test cooled alike',
  'out-of-liquid': 'time out of the liquid',
  surface: 'surface when read',
  faces: 'faces',
  directions: 'directions',
  sides: 'sides (measured or nominal)',
  mass: 'mass',
  frequency: 'frequency',
  phase: 'phase angle',
  'contact-medium': 'contact medium',
  'contact-pressure': 'contact pressure',
  'contact-resistance': 'contact resistance',
  'check-resistors': 'check resistors',
  ceiling: 'the meter’s ceiling',
  'after-reading': 'specimens read once or returned',
  'cement-type': 'type of cement',
  'cement-alkalis': 'alkalis of the cement',
}

const EVAPORATION: Readonly<Record<Evaporation, string>> = {
  covered: 'covered',
  'topped-up': 'topped up',
  'covered-and-topped-up': 'covered and topped up',
  'not-controlled': 'evaporation not controlled',
}

const SURFACES: Readonly<Record<Surface, string>> = {
  'surface-dry': 'surface-dry: wiped until no film of water is left',
  damp: 'wiped but damp',
  'rinsed-and-surface-dry': 'rinsed with water, then surface-dry',
}

const DIRECTIONS: Readonly<Record<number, string>> = {
  1: 'in 1 direction',
  2: 'in 2 directions, averaged into one value of the specimen',
  3: 'in 3 directions, averaged into one value of the specimen',
}

type Said = string | undefined

/** Each detail as the condition records it; undefined where it does not. */
const SAID: Readonly<Record<BenchDetail, (condition: BenchCondition, units: UnitSystem) => Said>> = {
  mould: ({ 'first-day': first }) => first?.in && (first.moist === 'yes' ? `${first.in}, moist` : first.in),
  'first-temperature': ({ 'first-day': first }, units) =>
    first && withTolerance(first.temperature, first.within, units),
  'first-hours': ({ 'first-day': first }) => first?.for && `for ${written(first.for)}`,
  entry: ({ curing: { entry } }) => entry && entryWords(entry),
  'bath-temperature': ({ curing }, units) =>
    `${plain(curing.medium)} at ${withTolerance(curing.temperature, curing.within, units)}`,
  'bath-log': ({ curing: { bath } }) => logWords('bath', bath?.log?.['bath-every']),
  'core-log': ({ curing: { bath } }) => logWords('core of a specimen', bath?.log?.['core-every']),
  vessel: ({ curing: { bath } }) => bath?.vessel,
  'liquid-to-specimens': ({ curing: { bath } }) => {
    const volumes = bath?.['liquid-to-specimens']
    return volumes === undefined
      ? undefined
      : `${plural(volumes, 'volume', 'volumes')} of liquid to 1 of specimens`
  },
  'solid-lime': ({ curing: { bath } }) =>
    bath?.['solid-lime'] && (bath['solid-lime'] === 'kept' ? 'solid lime throughout' : 'no solid lime'),
  renewal: ({ curing: { bath } }) => bath?.renewal && renewalWords(bath.renewal),
  'materials-per-vessel': ({ curing: { bath } }) => {
    const many = bath?.['materials-per-vessel']
    if (many === undefined) return undefined
    return many === 1 ? 'each material in a vessel of its own' : `at most ${many} materials in a vessel`
  },
  evaporation: ({ curing: { bath } }) => bath?.evaporation && EVAPORATION[bath.evaporation],
  'control-cured': ({ curing: { 'control-and-test': cured } }) =>
    cured && (cured === 'together' ? 'control and test together' : 'control and test apart'),
  'cooled-in': ({ 'before-test': before }) => before?.['cool-in'] && `in ${plain(before['cool-in'])}`,
  'cooled-for': ({ 'before-test': before }) => before?.for && `for ${written(before.for)}`,
  'cooled-to': ({ 'before-test': before }, units) =>
    before && `to ${withTolerance(before.to, before.within, units)}`,
  'core-when-read': ({ 'before-test': before }) =>
    before?.['core-by'] &&
    (before['core-by'] === 'dummy-specimen'
      ? 'core temperature by a dummy specimen'
      : 'core temperature not measured'),
  'cooled-alike': ({ 'before-test': before }) =>
    before?.['control-and-test-within'] &&
    `control and test cooled alike, within ${written(before['control-and-test-within'])}`,
  'out-of-liquid': ({ resistivity }) => outWords(resistivity?.handling),
  surface: ({ resistivity }) => resistivity?.handling?.surface && SURFACES[resistivity.handling.surface],
  faces: ({ resistivity }) =>
    resistivity?.faces &&
    (resistivity.faces === 'moulded-only'
      ? 'read across moulded faces only'
      : 'read across the trowelled face too'),
  directions: ({ resistivity }) =>
    resistivity?.directions === undefined ? undefined : DIRECTIONS[resistivity.directions],
  sides: ({ resistivity }) =>
    resistivity?.measured?.sides &&
    (resistivity.measured.sides === 'yes' ? 'sides measured' : 'nominal sides'),
  mass: ({ resistivity }) =>
    resistivity?.measured?.mass && (resistivity.measured.mass === 'yes' ? 'weighed' : 'not weighed'),
  frequency: ({ resistivity }) => resistivity?.frequency && written(resistivity.frequency),
  phase: ({ resistivity }) =>
    resistivity?.meter?.['phase-at-most'] &&
    `phase angle at most ${shortest(resistivity.meter['phase-at-most'].value, 1, '')}°`,
  'contact-medium': ({ resistivity }) =>
    resistivity?.meter?.['contact-medium'] && `contact by ${plain(resistivity.meter['contact-medium'])}`,
  'contact-pressure': ({ resistivity }, units) =>
    resistivity?.meter?.['contact-pressure'] &&
    `under ${shortest(resistivity.meter['contact-pressure'].value, 1, 'kPa', units)}`,
  'contact-resistance': ({ resistivity }) =>
    resistivity?.reading['end-contact-at-most'] &&
    `end contacts at most ${written(resistivity.reading['end-contact-at-most'])} of a reading`,
  'check-resistors': ({ resistivity }) =>
    resistivity?.meter?.['check-resistors'] &&
    `checked on ${listWords(resistivity.meter['check-resistors'].map(written), 'and')}`,
  ceiling: ({ resistivity }) =>
    resistivity?.meter?.ceiling &&
    `ceiling ${written(resistivity.meter.ceiling)}, above which a reading is written > ${written(resistivity.meter.ceiling)}`,
  'after-reading': ({ resistivity }) =>
    resistivity?.handling?.['after-reading'] &&
    (resistivity.handling['after-reading'] === 'read-once'
      ? 'each specimen is read once'
      : 'specimens return to the bath and are read again at later ages'),
  'cement-type': ({ control }) => control?.cement?.type,
  'cement-alkalis': ({ control }) => control?.['cement-alkalis'] && alkaliWords(control['cement-alkalis']),
}

/** One recorded detail, a part of a sentence. @returns undefined where the condition does not record it */
export function benchDetailWords(
  detail: BenchDetail,
  condition: BenchCondition,
  units: UnitSystem,
): string | undefined {
  return SAID[detail](condition, units)
}

/**
 * How many of the details are recorded, and which are not.
 * @param lines of the bench's day, one at least
 */
export function completenessWords(
  lines: readonly { readonly detail: BenchDetail; readonly recorded: boolean }[],
): string {
  const missing = lines.filter(({ recorded }) => !recorded).map(({ detail }) => BENCH_DETAILS[detail])
  return missing.length === 0
    ? `all ${countWords(lines.length, 'detail')} that reproduce the test are recorded`
    : `${lines.length - missing.length} of ${countWords(lines.length, 'detail')} that reproduce the test are recorded; not recorded: ${missing.join(', ')}`
}

/** Behind the name of a condition that a set of criteria judges by. */
export function reproductionWords(recorded: number, of: number): string {
  return `${recorded} of ${countWords(of, 'detail')} that reproduce the resistivity test are recorded`
}

/** "in one step", "in a ramp over 6 h". */
export function entryWords({ by, over }: BenchEntry): string {
  return by === 'step' ? 'in one step' : `in a ramp${over === undefined ? '' : ` over ${written(over)}`}`
}

function withTolerance(at: Quantity, tolerance: Quantity | undefined, units: UnitSystem): string {
  const text = shortest(at.value, 1, 'degC', units)
  if (tolerance === undefined) return text
  const { value, unit } = temperatureDifference(tolerance.value, units)
  return `${text} ± ${shortest(value, 1, unit)}`
}

function logWords(of: string, every: Quantity | undefined): Said {
  return every && `temperature of the ${of} logged every ${written(every)}`
}

function renewalWords({ at, every }: { readonly at: string; readonly every?: Quantity }): string {
  if (at === 'never') return 'liquid never renewed'
  return every === undefined ? 'liquid renewed after each age' : `liquid renewed every ${written(every)}`
}

function outWords(handling: NonNullable<BenchCondition['resistivity']>['handling']): Said {
  const most = handling?.['out-of-liquid-at-most']
  const alike = handling?.['control-and-test-within']
  return (
    most &&
    `out of the liquid for at most ${written(most)}${alike === undefined ? '' : `, control and test within ${written(alike)}`}`
  )
}

function alkaliWords({
  'at-least': least,
  'at-most': most,
}: {
  'at-least'?: Quantity
  'at-most'?: Quantity
}): string {
  const ends = [least && `at least ${written(least)}`, most && `at most ${written(most)}`].filter(Boolean)
  return `alkalis ${ends.join(' and ')} as Na₂O`
}

function plain(term: string): string {
  return term.replaceAll('-', ' ')
}
