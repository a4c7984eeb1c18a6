/** What the checks found that read the history of a source or a laboratory, in words. */
import type {
  ChangeOf,
  EventOrChange,
  HistoryParams,
  OfSegment,
  OfSeries,
  OnChart,
} from '../core/checks/history-findings.ts'
import { chanceWords, differenceWords, spreadWords } from './agency.ts'
import { date, monthName } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { limitWords } from './limits.ts'
import { firstLots, testWords } from './named-tests.ts'
import { countWords, fixedDigits, number, plural, shortNumber } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import { propertyWords } from './property-names.ts'
import { listWords } from './sentences.ts'
import { quantity } from './units.ts'
import { UNISSUED_LOT } from './withheld.ts'

export const HISTORY_SENTENCES: WordsOf<HistoryParams, [FindingNames]> = {
  'out-of-control': (found, names) =>
    `${found.held} of ${segmentWords(found, names)} ${found.held === 1 ? 'lies' : 'lie'} beyond three standard deviations of ${found.held === 1 ? 'its' : 'their'} control chart`,
  'run-on-one-side': (found, names) =>
    `Results of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} stay on one side of their centre: ${plural(found.held, 'point ends', 'points end')} a run of eight or more`,
  'steady-rise-or-fall': (found, names) =>
    `Results of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} rise or fall steadily: ${plural(found.held, 'point ends', 'points end')} six or more in one direction`,
  'weighted-average-off': (found, names) =>
    `The weighted average of the results of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} lies beyond its limits at ${plural(found.held, 'point', 'points')} of ${found.n}`,
  'results-drift': (found, names) =>
    `Results of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} ${found.perTenLots < 0 ? 'fall' : 'rise'}: ${changeWords(found, found.perTenLots)} ± ${spread(found, (found.high - found.low) / 2)} per 10 lots${found.since === null ? '' : ` since ${date(found.since.day)}`}`,
  'step-at-event': (found, names) =>
    `Results of ${ofWords(found, names)} ${found.difference < 0 ? 'fell' : 'rose'} ${atWords(found, names)}: ${apartWords(found, found)}${besideWords(found.beside, names)}`,
  'month-effect': (found, names) =>
    `Results of ${ofWords(found, names)} differ by month: ${listWords(
      found.months.map((one) => `${monthName(one.month)} ${apartWords(found, one)}`),
      'and',
    )}`,
  'margin-shrinking': (found, names) =>
    `More results of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} lie close to ${limitWords(found.limit)} than before: ${found.before.near} of ${found.before.n}, then ${found.after.near} of ${found.after.n}`,
  'period-estimate-beyond': ({ source, lot, value, decimals, unit, limit, mean, ...found }, names) =>
    `The ${testWords(found, names)} of ${names.source(source)} over the control period up to ${lot === null ? UNISSUED_LOT : names.number(lot)}, estimated at ${quantity(value, Math.max(decimals, mean.decimals), unit, names.units)}, does not meet ${limitWords(limit)}`,
  'uniformity-exceeded': ({ source, property: key, half, unit, outside, judged }, names) =>
    `The ${propertyWords({ property: key })} of ${judged === 1 ? `the one lot of ${names.source(source)} that could be judged` : `${outside} of ${judged} lots of ${names.source(source)}`} lies more than ${bandWords(half, unit)} from the mean of the lots before`,
  'index-follows-control': (found, names) =>
    `The ${ofWords(found, names)} at ${names.laboratory(found.laboratory)} is high where its control is low: r = ${number(found.r, 2)}, ${chanceWords(found.p)}, over ${plural(found.batches, 'control batch', 'control batches')}`,
  'control-drift': ({ laboratory, batches, held, percent, ...test }, names) =>
    `The ${testWords(test, names)} of control mortar at ${names.laboratory(laboratory)} drifts: its cumulative sum lies beyond the decision limit at ${held} of ${plural(batches, 'batch', 'batches')}${percent === null ? '' : `, the newest five average ${number(Math.abs(percent), 1)} % ${percent < 0 ? 'below' : 'above'} the centre`}`,
}

export const HISTORY_EVIDENCE: WordsOf<HistoryParams, [FindingNames], string[]> = {
  'out-of-control': chartEvidence,
  'run-on-one-side': chartEvidence,
  'steady-rise-or-fall': chartEvidence,
  'weighted-average-off': (found, names) =>
    chartEvidence(
      found,
      names,
      `it goes ${number(found.extent, 1)} of its standard deviations from the centre; ${chanceOfMany(found, '')}`,
    ),
  'results-drift': (found) => [
    `slope of the newest ${countWords(found.n, 'result')}, with the 95 % interval, widened for results that resemble their neighbours`,
    found.limit === null
      ? 'the line meets no limit within half of the span that it was fitted to'
      : `if it went on, the line would meet ${quantity(found.limit.end, found.decimals + 1, found.unit)}, where the outcome changes, after ${plural(Math.ceil(found.limit.lotsAhead), 'lot', 'lots')}`,
    'ask what changed since, and compare with the control mortar',
  ],
  'step-at-event': (found) => [
    `mean of ${countWords(found.before.n, 'result')} before ${quantity(found.before.mean, found.decimals, found.unit)}, of ${found.after.n} after ${quantity(found.after.mean, found.decimals, found.unit)}; 95 % interval`,
    ...(found.alsoChanged.length === 0
      ? []
      : [
          `${listWords(
            found.alsoChanged.map((one) => CHANGED[one]),
            'and',
          )} changed between the two as well`,
        ]),
    'a step beside an event does not say that the event caused it',
  ],
  'month-effect': ({ months }) => [
    ...months.map(({ month, n }) => `${monthName(month)}: ${countWords(n, 'result')}`),
    'intervals hold for all twelve months at once; ask for season, fuel and load of the plant',
  ],
  'margin-shrinking': ({ before, after, p }) => [
    `within one standard deviation of the limit, or beyond it, in the older and the newer half: ${fixedDigits((100 * before.near) / before.n, 0)} % and ${fixedDigits((100 * after.near) / after.n, 0)} %; ${chanceWords(p)}, one-sided`,
    'lots that share a control batch count as one',
  ],
  'period-estimate-beyond': ({ value, n, mean, standardDeviation, factor }, { units }) => [
    `mean of ${countWords(n, 'result')} ${quantity(mean.value, mean.decimals, mean.unit, units)}, ${value < mean.value ? 'less' : 'plus'} ${fixedDigits(factor, 2)} standard deviations of ${quantity(standardDeviation.value, standardDeviation.decimals, standardDeviation.unit === '%' ? 'points' : standardDeviation.unit, units)}`,
    'single lots may all meet their limit: ask what changed in level or in scatter over the period',
  ],
  'uniformity-exceeded': ({ lots, outside }, names) => [
    firstLots(lots, outside, names),
    'lots certified, blends and silos may differ: ask what was changed',
  ],
  'index-follows-control': () => [
    'a weak control raises the index of every mortar beside it',
    'an index is a quotient by its control, so that chance in the test of the control alone makes part of such a relation',
  ],
  'control-drift': ({ batches, extent, centre, decimals, unit, ...chance }, names) => [
    `the largest sum is ${number(extent, 1)} standard deviations; ${chanceOfMany({ ...chance, n: batches }, '')}`,
    `centre ${quantity(centre, decimals, unit, names.units)}; every index taken against these batches moves the other way`,
  ],
}

function chartEvidence(found: OnChart, names: FindingNames, reaches = chanceOfMany(found, '')): string[] {
  const { centre, low, high, baseline, decimals, unit, lots, ofLots } = found
  return [
    `centre ${quantity(centre, decimals, unit)}, limits ${quantity(low, decimals, unit)} and ${quantity(high, decimals, unit)}, from ${countWords(baseline, 'result')}`,
    reaches,
    `${firstLots(lots, ofLots, names)}: ask what was different`,
  ]
}

/** What chance alone does in a series like the one at hand. */
function chanceOfMany(
  { limit, share, correlation, n }: Pick<OnChart, 'limit' | 'share' | 'correlation' | 'n'>,
  reaches: string,
): string {
  return `chance alone reaches ${shortNumber(limit, 1)}${reaches} or more in ${shortNumber(100 * share, 1)} % of series of ${n} whose neighbours ${correlation === 0 ? 'do not correlate' : `correlate by ${number(correlation, 1)}`} (simulated)`
}

/** "28 d strength activity index (20 %, 23 °C, constant flow) of Vale fly ash". */
function ofWords(found: OfSeries, names: FindingNames): string {
  return `${testWords(found, names)} of ${names.source(found.source)}`
}

/** "40 results of ... at Vale works laboratory". */
function segmentWords(found: OfSegment, names: FindingNames): string {
  return `${countWords(found.n, 'result')} of ${ofWords(found, names)} at ${names.laboratory(found.laboratory)}`
}

function changeWords({ property: key, decimals }: OfSeries, value: number): string {
  return differenceWords(key, value, Math.max(1, decimals), 'SI')
}

function spread({ property: key, decimals }: OfSeries, value: number): string {
  return spreadWords(key, value, Math.max(1, decimals), 'SI')
}

function apartWords(
  of: OfSeries,
  { difference, low, high }: { readonly difference: number; readonly low: number; readonly high: number },
): string {
  return `${changeWords(of, difference)} ± ${spread(of, (high - low) / 2)}`
}

const CHANGED: Readonly<Record<ChangeOf, string>> = {
  laboratory: 'the laboratory',
  'control-cement': 'the control cement',
}

/** What lies so close that the step may as well be its. */
function besideWords(beside: readonly EventOrChange[], names: FindingNames): string {
  if (beside.length === 0) return ''
  const said = beside.map(({ event, change }) => {
    if (event !== null) return `“${event.title}”, ${date(event.date)}`
    return change === null ? 'a change of laboratory or control cement' : changedWords(change, names)
  })
  return `; beside it lies ${listWords(said, 'and')}, and these results cannot tell them apart`
}

function changedWords(change: NonNullable<EventOrChange['change']>, names: FindingNames): string {
  const nameOf = (id: string) => (change.by === 'laboratory' ? names.laboratory(id) : id)
  const what = change.by === 'laboratory' ? 'a change of laboratory' : 'a change of control cement'
  return `${what} from ${nameOf(change.from)} to ${nameOf(change.to)}, ${date(change.day)}`
}

function atWords({ event, change }: EventOrChange, names: FindingNames): string {
  if (event !== null) return `at “${event.title}”, ${date(event.date)}`
  const nameOf = (id: string) => (change?.by === 'laboratory' ? names.laboratory(id) : id)
  return change === null
    ? 'where the laboratory or the control cement changed'
    : `where ${CHANGED[change.by]} changed from ${nameOf(change.from)} to ${nameOf(change.to)}, ${date(change.day)}`
}

/** "5 %" of the mean, or "5 percentage points". */
function bandWords(half: number, unit: string): string {
  return quantity(half, Number.isInteger(half) ? 0 : 1, unit)
}
