/** Programmes of studies in words: days, windows, masses, what a fraction mixes up, what a design can resolve. */
import type { DesignResolution, RouteResolution } from '../core/studies/programme/design-resolution.ts'
import type { FactorsOf } from '../core/studies/programme/fraction.ts'
import { weekdayOf } from '../core/studies/programme/planned-mortars.ts'
import type { Peak } from '../core/studies/programme/programme-totals.ts'
import type { NumberRange } from '../core/studies/programme/specimen-numbers.ts'
import type { TestWindow } from '../core/studies/programme/test-windows.ts'
import { momentOfDay } from '../core/measure/moment.ts'
import { clockTime, date } from './dates.ts'
import { countWords, number, plainNumber } from './numbers.ts'
import { listWords } from './sentences.ts'
import { shareText, STUDY_ROUTES } from './studies.ts'
import { quantity } from './units.ts'

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

/** What stands where a plan has no reading yet. */
export const NO_READING_YET = 'planned: no reading yet'

/** "Tuesday 7 April 2026". @param day days since 1970-01-01 */
export function dayText(day: number): string {
  return `${WEEKDAYS[weekdayOf(day)]} ${date(momentOfDay(day))}`
}

/**
 * "14 April 2026, 07:00 to 13:00"; where the hour of casting is not planned, the day or days with the tolerance.
 * @param window of a test
 */
export function windowText({ opens, closes, planned }: TestWindow): string {
  if (opens.minute === null) {
    const days =
      opens.day === closes.day
        ? dayText(opens.day)
        : `${date(momentOfDay(opens.day))} to ${date(momentOfDay(closes.day))}`
    return `${days}, ± ${hoursText(planned.withinHours)}`
  }
  return opens.day === closes.day
    ? `${date(opens)} to ${clockTime(closes)}`
    : `${date(opens)} to ${date(closes)}`
}

/** "12 h". */
export function hoursText(hours: number): string {
  return quantity(hours, Number.isInteger(hours) ? 0 : 1, 'h')
}

/** "1 to 3", "4", or a dash for none. */
export function rangeText(range: NumberRange): string {
  if (range === null) return '–'
  return range[0] === range[1] ? String(range[0]) : `${range[0]} to ${range[1]}`
}

/** Mass of a batch to a tenth of a gram; empty where it is found at the mixer. */
export function batchMassText(massG: number | null): string {
  return massG === null ? '' : number(massG, 1)
}

/** "12.3 kg"; what is not known is said. */
export function totalMassText(massG: number | null): string {
  return massG === null ? 'not stated by every condition' : quantity(massG / 1000, 1, 'kg')
}

/** "90, first on Tuesday 7 April 2026". */
export function peakText({ count, day }: Peak): string {
  return count === 0 ? '0' : `${number(count, 0)}, first on ${dayText(day)}`
}

/** "replacement × cement"; an effect of no factor is the mean. */
export function effectText(effect: FactorsOf): string {
  return effect.length === 0 ? 'the mean of all' : effect.join(' × ')
}

/** What a design can resolve, a sentence each. @param from what the scatter is taken from */
export function resolutionSentences(found: DesignResolution, from: string | undefined): string[] {
  return [
    ...(found.routes.length === 0
      ? [noScatterSentence(found)]
      : [
          `Assumed scatter of an index between batches, each with its control: ${listWords(found.routes.map(assumedText), 'and')}${from === undefined ? '' : ` (${from})`}. The pooled scatter of a condition has ${found.df} degrees of freedom.`,
          ...found.routes.map((route) => routeSentence(route, found)),
        ]),
    ...found.noErrors.map(
      (one) =>
        `${countWords(one.n, `${one.class} material`)} without an error would still allow that ${shareText(one.share)} of new ones fall on the wrong side (one-sided ${shareText(found.level)} bound).`,
    ),
    ...(found.laboratories === null ? [] : [laboratoriesSentence(found.laboratories, found.level)]),
  ]
}

function noScatterSentence({ batches }: DesignResolution): string {
  return batches < 2
    ? 'One batch of each material and condition shows no scatter between batches, so that what it would see is not reckoned.'
    : 'The programme assumes no scatter between batches, so that the smallest difference it would see is not reckoned.'
}

function assumedText({ property, share }: RouteResolution): string {
  return `${plainNumber(100 * share, 1)} % of the ${STUDY_ROUTES[property]}`
}

function routeSentence(route: RouteResolution, { power, level, effect }: DesignResolution): string {
  const { property, smallestRatio, meanRatio, effectRatio } = route
  const effects =
    effectRatio === null || effect === null
      ? ''
      : ` The effect of a factor of two levels on a material cast under all conditions comes within ${percentText(effectRatio)} (${effect.results} batches, ${effect.df} degrees of freedom).`
  return `By ${STUDY_ROUTES[property]}, a true difference of ${percentText(smallestRatio)} between the means of two materials under one condition is seen in ${shareText(power)} of cases; the ${shareText(level)} interval of a mean reaches ${percentText(meanRatio)} either way.${effects}`
}

/** A ratio above 1 as what it adds: "6.2 %". */
function percentText(ratio: number): string {
  return `${plainNumber(100 * (ratio - 1), 1)} %`
}

function laboratoriesSentence(
  { n, df, factors: [low, high] }: NonNullable<DesignResolution['laboratories']>,
  level: number,
): string {
  return `${n} laboratories leave ${df === 1 ? '1 degree' : `${df} degrees`} of freedom between them: where nearly all the scatter lies there, the ${shareText(level)} interval of s_R reaches from ${plainNumber(low, 2)} to ${plainNumber(high, 2)} times the value found.`
}
