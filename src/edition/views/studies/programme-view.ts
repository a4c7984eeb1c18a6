/** What a study's page shows of its programme: how much is cast, what is left out, what the design can resolve. */
import { mixedUpWith } from '../../../core/studies/programme/fraction.ts'
import { crossedCount } from '../../../core/studies/programme/crossed.ts'
import { designResolution } from '../../../core/studies/programme/design-resolution.ts'
import { NO_CEMENT } from '../../../core/studies/programme/programme-totals.ts'
import type { MaterialClass } from '../../../core/studies/screening/material-means.ts'
import type { StudyIndexProperty } from '../../../core/studies/study-reading.ts'
import {
  crossedFactors,
  definingWords,
  writtenConditions,
} from '../../../records/studies/crossed-conditions.ts'
import { laidOut, type LaidOut } from '../../../records/studies/programme-of.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import { countWords, number, plural } from '../../../words/numbers.ts'
import {
  dayText,
  effectText,
  hoursText,
  NO_READING_YET,
  peakText,
  resolutionSentences,
  totalMassText,
} from '../../../words/programme.ts'
import { fullSentence, listWords, sentence } from '../../../words/sentences.ts'
import { conditionName } from '../../../words/studies.ts'
import type { Edition } from '../../shape/edition.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

type Facts = readonly (readonly [string, string])[]

export interface ProgrammeView {
  readonly lead: string
  readonly totals: Facts
  readonly masses: Facts
  readonly controls: string
  /** Each factor with the effects that cannot be told from its own; empty where all conditions are cast. */
  readonly fraction: { readonly words: string; readonly mixed: Facts } | null
  readonly leftOut: readonly string[]
  readonly resolution: readonly string[]
}

/** Where a programme states no power. */
const POWER = 0.8

/** null for a study without a programme. */
export function programmeView(edition: Pick<Edition, 'conditions'>, study: StudyEntry): ProgrammeView | null {
  const laid = laidOut(study.record, edition.conditions)
  return laid === null
    ? null
    : {
        lead: leadSentence(study, laid),
        totals: totalLines(laid),
        masses: massLines(laid, study),
        controls: controlSentence(laid),
        fraction: fractionView(study),
        leftOut: leftOutLines(study),
        resolution: resolutionSentences(
          designResolution(laid.programme, asked(study)),
          study.record.programme?.assumed?.from,
        ),
      }
}

function leadSentence({ readings }: StudyEntry, { totals }: LaidOut): string {
  const state = readings === 0 ? `${sentence(NO_READING_YET)}. ` : ''
  return `${state}${countWords(totals.testMortars, 'test mortar')} with ${plural(totals.controlMortars, 'control batch', 'control batches')}, to be cast from ${dayText(totals.firstCast)} to ${dayText(totals.lastCast)}; last test on ${dayText(totals.lastTest)}.`
}

function totalLines({ programme, totals }: LaidOut): Facts {
  const { materials, conditions, batches, laboratories } = programme
  const where = laboratories.length === 1 ? '' : ' in a laboratory'
  return [
    ['Materials', number(materials.length, 0)],
    ['Conditions', number(conditions.length, 0)],
    ['Batches of each', number(batches, 0)],
    ['Laboratories', number(laboratories.length, 0)],
    ['Mortars', number(totals.testMortars + totals.controlMortars, 0)],
    ['Specimens cast', number(totals.specimens, 0)],
    ['Crushed', number(totals.strengthTests, 0)],
    ['Resistances read', number(totals.resistivityReadings, 0)],
    ['Casting days', number(totals.castingDays, 0)],
    [
      `In moulds at once${where}, at most (${hoursText(programme.inMouldHours)} each)`,
      peakText(totals.moulds),
    ],
    [`Tests on a day${where}, at most (a reading and a crushing are two)`, peakText(totals.tests)],
    ['On Saturdays and Sundays', number(totals.weekendTests, 0)],
  ]
}

function massLines({ totals }: LaidOut, { record }: StudyEntry): Facts {
  return [
    ...[...totals.cementG].map(
      ([code, mass]) => [code === NO_CEMENT ? 'Cement' : `Cement ${code}`, totalMassText(mass)] as const,
    ),
    ...[...totals.materialG].map(
      ([code, mass]) => [`${code}, ${record.materials[code]?.title ?? ''}`, totalMassText(mass)] as const,
    ),
    ['Sand', totalMassText(totals.sandG)],
  ]
}

function controlSentence({ programme, groups }: LaidOut): string {
  const most = Math.max(...groups.map(({ materials }) => materials.length))
  const own =
    programme.control === 'each' || most === 1
      ? 'Each test batch has a control batch of its own, of the same condition, cement, laboratory and day.'
      : `One control batch of the same condition, cement, laboratory and day serves up to ${most} test batches: their indices rise and fall together with it, so that materials of a day can be compared more closely than they are known.`
  return `${own} Conditions are cast in the order in which they are listed, the same in every batch: what drifts over the weeks of casting goes with them.`
}

function fractionView({ record }: StudyEntry): ProgrammeView['fraction'] {
  const { programme } = record
  if (programme?.fraction === undefined) return null
  const factors = crossedFactors(programme)
  const words = definingWords(programme)
  const full = crossedCount(factors)
  const effects = [
    ...factors.map(({ name }) => [name]),
    ...(programme.fraction.asked ?? []).filter(({ length }) => 1 < length),
  ]
  return {
    words: `${full / 2 ** words.length} of ${full} crossed conditions: ${listWords(
      words.map(
        ([factor, ...by]) => `the level of ${factor} is the product of those of ${listWords(by, 'and')}`,
      ),
      'and',
    )}. What stands in one line cannot be told apart.`,
    mixed: effects.map((effect) => [
      effectText(effect),
      listWords(
        mixedUpWith(effect, words).map((mixed) =>
          effectText(factors.map(({ name }) => name).filter((name) => mixed.includes(name))),
        ),
        'and',
      ),
    ]),
  }
}

function leftOutLines({ record }: StudyEntry): string[] {
  return (record.programme?.['left-out'] ?? []).map(({ materials, conditions, why }) => {
    const names = conditions.map((code) => conditionName(record.conditions, code))
    const where =
      new Set(names).size === 1
        ? `${names[0]} (${listWords(conditions, 'and')})`
        : listWords(conditions, 'and')
    return `${listWords(materials, 'and')} at ${where}.${why === undefined ? '' : ` ${fullSentence(why)}`}`
  })
}

/** Whether what is cast is the crossing and nothing beside it, so that its factors are balanced. */
function castsAllCrossed(record: StudyEntry['record']): boolean {
  return record.programme?.conditions === undefined && Object.keys(writtenConditions(record)).length === 0
}

function asked({ record, kind }: StudyEntry): Parameters<typeof designResolution>[1] {
  const { programme, materials } = record
  const assumed = (['strength-activity-index', 'resistivity-index'] as const).flatMap((property) => {
    const cv = programme?.assumed?.[property]
    return cv === undefined ? [] : [[property, cv.value / 100] as [StudyIndexProperty, number]]
  })
  const twoLevels = Object.values(programme?.crossed ?? {}).some((levels) => Object.keys(levels).length === 2)
  return {
    classes: new Map(
      Object.entries(materials).flatMap(([code, one]) =>
        one.class === undefined ? [] : [[code, one.class] as [string, MaterialClass]],
      ),
    ),
    assumed: new Map(assumed),
    level: STUDY_LEVEL,
    power: programme?.assumed?.power === undefined ? POWER : programme.assumed.power.value / 100,
    hasTwoLevels: kind === 'ruggedness' || (twoLevels && castsAllCrossed(record)),
  }
}
