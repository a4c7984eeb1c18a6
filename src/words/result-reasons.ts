/** Why a result does not count, or what was noted about it, in words. */
import type { ResultReason, ResultReasonParams } from '../core/result/reason.ts'
import { printedUnits } from './as-written.ts'
import { date } from './dates.ts'
import { boundsWords } from './bounds.ts'
import { listWords, plainSpaces } from './sentences.ts'
import { shortest } from './shortest.ts'
import { temperatureDifference, type UnitSystem } from './unit-systems.ts'
import { countWords, figureWords, fixedDigits, numberWords, plainNumber } from './numbers.ts'

type Code = keyof ResultReasonParams

/** A sentence without a full stop for each code; a code that is missing here does not compile. */
const SENTENCES: { readonly [C in Code]: (params: ResultReasonParams[C], units: UnitSystem) => string } = {
  'only-mean-on-record': () => 'only the mean is on record',
  'number-not-stated': () => 'how many specimens the mean is of is not stated',
  'mould-assumed': () =>
    'loads are in lbf and the size of the mould is not on record, so cubes of 2 in (4.00 in²) are assumed',
  'specimen-excluded': ({ mark, why }) => `specimen ${mark} excluded: ${why}`,
  'no-specimen-counts': () => 'no specimen counts',
  'loaded-area-unknown': () => 'the loaded area is not known',
  'geometry-unknown': () => 'the size of a specimen is not known',
  'end-contacts-exceed-reading': () =>
    'the end contacts are as large as a reading, or larger, so no resistivity follows from it',
  'specimen-dropped': ({ mark, ...spread }) =>
    `${beyond(spread)}; specimen ${mark}, farthest from the mean, is dropped`,
  'range-beyond': (spread) =>
    `${beyond(spread)}, and dropping one specimen does not bring it within the limit: repeat the test`,
  'range-not-checked': ({ of }) => `range not checked: no rule for ${countWords(of, 'specimen')}`,
  'fewer-specimens': ({ n, planned }) => `${countWords(n, 'specimen')} of ${planned} planned`,
  'too-few-specimens': ({ n, atLeast }) =>
    `${countWords(n, 'specimen')}, fewer than the ${atLeast} that the condition requires`,
  'interval-too-narrow': ({ levelPercent }) =>
    `the interval is too narrow, since a specimen was dropped: by simulation it holds the ratio in 80 to 93 % of such cases, not in ${levelPercent} %`,

  'age-cannot-be-verified': () => 'the age cannot be verified to the hour: a clock time is missing',
  'age-outside': ({ testedHours, age, writtenTolerance }) =>
    `tested at ${spanWords(testedHours)}, outside ${age} ± ${printedUnits(writtenTolerance)}`,
  'replaced-by-retest': ({ retested }) => `replaced by the retest of ${date(retested)}`,

  'reading-not-described': () =>
    'the condition describes no resistivity reading, so its geometry and temperature are not known',
  'conditioning-not-on-record': () => 'the conditioning when read is not on record',
  'conditioning-differs': ({ read, asked }) =>
    `read ${medium(read)}; the condition requires specimens to be read ${medium(asked)}`,
  'temperature-not-on-record': () => 'the temperature of the specimens when read is not on record',
  'temperature-outside': ({ readCelsius, askedCelsius, withinCelsius }, units) =>
    `read at ${temperature(readCelsius, units)}, outside ${temperature(askedCelsius, units)} ± ${difference(withinCelsius, units)}`,
  'end-contacts-beyond': ({ percent, writtenLimit }) =>
    `the end-contact resistance is ${plainNumber(percent, 1)} % of a reading, more than ${printedUnits(writtenLimit)}`,
  'meter-not-verified': () => 'no reading on a known resistor is on record',
  'meter-off': ({ writtenRead, writtenKnown, writtenLimit }) =>
    `the meter read ${printedUnits(writtenRead)} on a resistor of ${printedUnits(writtenKnown)}, off by more than ${printedUnits(writtenLimit)}`,
  'saturation-not-stated': () => 'the saturation of the specimens when read is not stated',
  'core-temperature-outside': ({ readCelsius, askedCelsius, withinCelsius }, units) =>
    `the core of the dummy specimen was at ${temperature(readCelsius, units)} when read, outside ${temperature(askedCelsius, units)} ± ${difference(withinCelsius, units)}`,
  'out-of-liquid-too-long': ({ written, writtenLimit }) =>
    `a specimen was out of the liquid for ${printedUnits(written)} until it was read, longer than ${printedUnits(writtenLimit)}`,
  'cooled-too-short': ({ cooledHours, writtenLimit }) =>
    `read ${spanWords(cooledHours)} after leaving the bath, sooner than ${printedUnits(writtenLimit)}`,
  'directions-differ': ({ read, asked }) =>
    `specimens were read in ${listWords(read.map(String), 'and')} ${read.length === 1 && read[0] === 1 ? 'direction' : 'directions'}; the condition requires ${asked}`,
  'beyond-check-resistors': ({ written, writtenSmallest, writtenLargest }) =>
    `a reading of ${printedUnits(written)} lies beyond the check resistors, ${printedUnits(writtenSmallest)} to ${printedUnits(writtenLargest)}`,
  'above-ceiling': ({ written }) =>
    `a specimen read ${printedUnits(written)}, beyond the meter, so the mean is known only from below`,
  'read-before': ({ marks, age }) =>
    `${specimensWords(marks)} already read at ${age}; the condition requires specimens to be read once, since one that returns to the bath has another history`,
  'not-read-before': ({ marks, age }) =>
    `${specimensWords(marks)} not read at ${age}; the condition requires specimens to be returned to the bath and read again, and one read for the first time has another history`,

  'control-fault': ({ control, reason }, units) => `control ${control}: ${resultReasonIn(reason, units)}`,
  'control-stated': ({ written }) => `control known by its stated strength alone, ${printedUnits(written)}`,
  'mean-not-above-zero': () => 'its mean is not above zero, so no index can be taken against it',
  'control-of-another-condition': ({ control, fields }) =>
    `the control ${control} was made under another condition${fields === undefined ? '' : `, which differs in ${fields.join(', ')}`}`,
  'specimen-sizes-differ': ({ testMm2, controlMm2 }) =>
    `the specimens differ in size: ${shortest(testMm2, 0, 'mm2')} loaded for the test mortar, ${shortest(controlMm2, 0, 'mm2')} for the control`,
  'stated-with-computed': ({ stated }) =>
    stated === 'test'
      ? 'the strength of the test mortar is stated by the laboratory, but that of the control is computed from loads'
      : 'the strength of the control is stated by the laboratory, but that of the test mortar is computed from loads',
  'control-of-another-laboratory': ({ laboratory }) =>
    `the control was made by another laboratory, ${laboratory}`,
  'control-cast-apart': ({ daysBefore }) => `the control was ${castApart(daysBefore)}`,
  'not-cast-together': ({ daysBefore }) => `${castApart(daysBefore)}; both must be cast on the same day`,
  'cement-alkalis-not-on-record': () => 'the alkalis of the control cement are not on record',
  'cement-alkalis-low': ({ written, writtenLimit }) =>
    `its cement has ${printedUnits(written)} alkalis, less than ${printedUnits(writtenLimit)}`,
  'cement-alkalis-high': ({ written, writtenLimit }) =>
    `its cement has ${printedUnits(written)} alkalis, more than ${printedUnits(writtenLimit)}`,
  'control-strength-low': ({ age, strengthMPa, writtenLimit }, units) =>
    `its strength at ${age} is ${numberWords(strengthMPa, 1, 'MPa', units)}, less than ${printedUnits(writtenLimit)}`,
  'flows-apart': ({ writtenTest, writtenControl, writtenLimit }) =>
    `flow ${printedUnits(writtenTest)} against the control’s ${printedUnits(writtenControl)}, more than ${printedUnits(writtenLimit)} apart`,
  'flow-not-on-record': ({ of, writtenLimit }) =>
    `${FLOWS[of]} not on record, so it cannot be verified that the flows agree within ${printedUnits(writtenLimit)}`,
  'cooled-apart': ({ testHours, controlHours, writtenLimit }) =>
    `test read ${spanWords(testHours)} after leaving the bath and control ${spanWords(controlHours)} after it, more than ${printedUnits(writtenLimit)} apart`,
  'out-of-liquid-apart': ({ writtenTest, writtenControl, writtenLimit }) =>
    `test out of the liquid for ${printedUnits(writtenTest)} and control for ${printedUnits(writtenControl)}, more than ${printedUnits(writtenLimit)} apart`,
  'temperatures-apart': ({ testCelsius, controlCelsius, withinCelsius }, units) =>
    `test read at ${temperature(testCelsius, units)} and control at ${temperature(controlCelsius, units)}, more than ${difference(withinCelsius, units)} apart`,

  'readings-stand': ({ recomputed, bounds, unit, decimals }, units) =>
    recomputed === null
      ? 'the readings of this test are on record and give no valid value, so the laboratory’s own figure does not count'
      : `the readings of this test are on record, so the value recomputed from them counts instead: ${bounds === undefined ? figureWords({ value: recomputed, decimals, unit }, units) : plainSpaces(boundsWords(bounds, decimals, unit, units))}`,

  'value-excluded': ({ why }) => `excluded: ${why}`,
  'enters-with-bound': ({ property, written }) =>
    `${property} is reported as ${written === null ? 'below a bound' : printedUnits(written)}, so the sum is known only within bounds`,
  'bases-differ': ({ members }) =>
    `the oxides are on different bases: ${members.map(({ property, basis }) => `${property} ${basis ?? 'not stated'}`).join(', ')}`,
}

/** What is said of a figure whose readings are not on record. */
export const AS_REPORTED = 'as reported by the laboratory, not recomputed'

/** One sentence without a full stop, with figures in the units that they are stored in. */
export function resultReasonWords(reason: ResultReason): string {
  return resultReasonIn(reason, 'SI')
}

/** The same with its figures in the units of a site. */
export function resultReasonIn(reason: ResultReason, units: UnitSystem): string {
  // The table gives each code the sentence of its own parameters; only the pairing is lost on the compiler.
  const sentence = SENTENCES[reason.code] as (params: ResultReason['params'], units: UnitSystem) => string
  return sentence(reason.params, units)
}

/** Every code, in the order of the table. */
export const RESULT_REASON_CODES = Object.keys(SENTENCES) as readonly Code[]

const FLOWS: Readonly<Record<ResultReasonParams['flow-not-on-record']['of'], string>> = {
  test: 'the flow of the test mortar is',
  control: 'the flow of the control is',
  both: 'the flows of both mortars are',
}

function beyond({ measure, of, percent, limitPercent }: ResultReasonParams['range-beyond']): string {
  const what = measure === 'range' ? 'range' : 'largest distance from the mean'
  return `the ${what} of ${of} specimens is ${over(percent, limitPercent)} % of the mean, over ${limitPercent} %`
}

/** One decimal, or as many as show that the value lies over the limit: "8.74" over 8.7. */
function over(value: number, limit: number): string {
  const decimals = [1, 2, 3, 4].find((many) => limit < Number(fixedDigits(value, many)))
  return decimals === undefined ? String(value) : fixedDigits(value, decimals)
}

/** Days, hours and minutes, so that a minute over the tolerance is seen: "28 d 12 h 1 min". */
function spanWords(hours: number): string {
  const minutes = Math.round(60 * hours)
  const parts = [
    [Math.floor(minutes / 1440), 'd'],
    [Math.floor((minutes % 1440) / 60), 'h'],
    [minutes % 60, 'min'],
  ] as const
  const said = parts.filter(([count]) => count !== 0).map(([count, unit]) => `${count} ${unit}`)
  return said.length === 0 ? '0 d' : said.join(' ')
}

/** "specimen a was", "specimens a and b were". */
function specimensWords(marks: readonly string[]): string {
  return marks.length === 1 ? `specimen ${marks.join()} was` : `specimens ${listWords(marks, 'and')} were`
}

/** Negative days: after. */
function castApart(daysBefore: number): string {
  return `cast ${Math.abs(daysBefore)} d ${0 < daysBefore ? 'before' : 'after'} the test mortar`
}

function temperature(celsius: number, units: UnitSystem): string {
  return shortest(celsius, 1, 'degC', units)
}

function difference(celsius: number, units: UnitSystem): string {
  const { value, unit } = temperatureDifference(celsius, units)
  return shortest(value, 1, unit)
}

/** How specimens are read: "from saturated lime water", or "sealed". */
function medium(name: string): string {
  return name === 'sealed' ? name : `from ${name.replaceAll('-', ' ')}`
}
