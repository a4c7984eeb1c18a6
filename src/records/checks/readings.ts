/** The readings of one mortar, test or control: ages of the condition, dates in order, readings complete. */
import type { Moment } from '../../core/measure/moment.ts'
import { type Age, isSameAge } from '../../core/measure/age.ts'
import { idleRetests } from '../../core/mortar/retests.ts'
import { checkDate, checkExclusions, checkOrder, checkReported } from './dates.ts'
import { checkHandling } from './resistance-readings.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'
import type { ResistivityTest, StrengthTest } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'

interface Mortar {
  readonly cast: Moment
  readonly strength?: readonly StrengthTest[]
  readonly resistivity?: readonly ResistivityTest[]
}

/** What a specimen is judged by; two of them could disagree. */
const READINGS = ['load', 'strength', 'resistance', 'directions', 'resistivity'] as const

/** @param pointer of the mortar in its record */
export function checkReadings(
  mortar: Mortar,
  pointer: string,
  condition: DescribedCondition | undefined,
  report: FileReport,
): void {
  for (const what of ['strength', 'resistivity'] as const) {
    ;(mortar[what] ?? []).forEach((reading, index) => {
      const at = `${pointer}/${what}/${index}`
      checkAgeListed(reading.age, at, condition, report)
      if (checkDate(reading.tested, `${at}/tested`, report))
        checkOrder(
          {
            earlier: mortar.cast,
            later: reading.tested,
            pointer: `${at}/tested`,
            earlierAt: `${pointer}/cast`,
            sentence: 'tested before it was cast',
          },
          report,
        )
      checkReported(reading, at, report)
      checkExclusions(reading.specimens, reading.tested, `${at}/specimens`, report)
      checkComplete(reading, at, report)
    })
    if (what === 'resistivity') checkHandling(mortar, `${pointer}/${what}`, condition, report)
    checkTwice(mortar[what] ?? [], `${pointer}/${what}`, report)
    checkRetests(mortar[what] ?? [], `${pointer}/${what}`, report)
  }
}

/** Where the details of a condition are still to be entered, nobody knows its ages. */
export function checkAgeListed(
  age: Age,
  at: string,
  condition: DescribedCondition | undefined,
  report: FileReport,
): void {
  if (condition === undefined || condition.ages.some((entry) => isSameAge(entry.age, age))) return
  report.at(
    `${at}/age`,
    'age-unknown',
    `the condition has no age ${age}`,
    `its ages are ${condition.ages.map((entry) => entry.age).join(', ')}; add it there with its tolerance, or correct it here`,
  )
}

function checkComplete(reading: StrengthTest | ResistivityTest, at: string, report: FileReport): void {
  const taken = reading.specimens !== undefined || reading.mean !== undefined
  if (taken && reading.tested === undefined)
    report.at(
      `${at}/age`,
      'key-missing',
      '"tested" is missing beside readings',
      'add tested: 2026-04-08T09:40',
    )
  if (reading.reported !== undefined && reading.tested === undefined)
    report.at(
      `${at}/reported`,
      'key-missing',
      '"tested" is missing beside "reported"',
      'add tested: 2026-04-08T09:40',
    )
  if (!taken && reading.tested !== undefined)
    report.at(
      `${at}/tested`,
      'key-missing',
      'a test that has been done has neither specimens nor a mean',
      'add the readings, or remove "tested": the test is then a planned one',
    )
  for (const [mark, specimen] of Object.entries(reading.specimens ?? {}))
    if (!('written' in specimen)) checkSpecimen(mark, specimen, below(`${at}/specimens`, mark), report)
}

/** One reading, or the reason why there is none. */
function checkSpecimen(mark: string, specimen: object, at: string, report: FileReport): void {
  const members = Object.keys(specimen)
  const stated = READINGS.filter((key) => members.includes(key))
  if (1 < stated.length)
    report.at(
      `${at}/${stated[1]}`,
      'reading-twice',
      `specimen ${mark} states both its ${stated.join(' and its ')}`,
      stated[1] === 'directions'
        ? 'put the resistance among the directions, or remove it'
        : `keep the ${stated[0]}: the ${stated[1]} follows from it and the size`,
    )
  if (stated.length === 0 && members.includes('excluded-on'))
    report.at(
      `${at}/excluded-on`,
      'key-missing',
      `specimen ${mark} has no reading, so it never counted`,
      'add its load or resistance, or remove the date',
    )
  if (stated.length === 0 && !members.includes('excluded'))
    report.at(
      at,
      'key-missing',
      `specimen ${mark} has no reading`,
      'add its load or resistance, or why it is excluded',
    )
}

function checkTwice(
  readings: readonly (StrengthTest | ResistivityTest)[],
  at: string,
  report: FileReport,
): void {
  const first = (reading: StrengthTest | ResistivityTest) => reading['retest-of'] === undefined
  readings.forEach((reading, index) => {
    const before = readings.findIndex((other) => first(other) && isSameAge(other.age, reading.age))
    if (!first(reading) || before === index) return
    report.at(
      `${at}/${index}/age`,
      'duplicate-id',
      `the age ${reading.age} is listed twice`,
      'put the specimens in one entry, or add retest-of: with the time of the test that it replaces',
      [report.place(`${at}/${before}/age`, 'the first entry of this age')],
    )
  })
}

function checkRetests(
  readings: readonly (StrengthTest | ResistivityTest)[],
  at: string,
  report: FileReport,
): void {
  for (const retest of idleRetests(readings)) {
    const earlier = readings
      .filter(
        (reading) => reading !== retest && isSameAge(reading.age, retest.age) && reading.tested !== undefined,
      )
      .map(({ tested }) => tested)
    report.at(
      `${at}/${readings.indexOf(retest)}/retest-of`,
      'reference-unknown',
      `no earlier test at ${retest.age} was made at ${retest['retest-of']}`,
      earlier.length === 0
        ? 'list the replaced test before it, or remove "retest-of"'
        : `name the test that it replaces: ${earlier.join(', ')}`,
    )
  }
}
