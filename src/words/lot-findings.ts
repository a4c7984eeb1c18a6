/** What the checks of a lot found, in words. */
import type { LotFindingParams, OutcomeChange, RecordChange } from '../core/checks/lot-findings.ts'
import { property } from '../core/measure/properties.ts'
import { readMoment } from '../core/measure/moment.ts'
import type { PlannedTest } from '../core/result/result.ts'
import { outcomeWords } from './outcomes.ts'
import type { WordsOf } from './reason-words.ts'
import { printedUnits } from './as-written.ts'
import { UNISSUED_LOT } from './withheld.ts'
import { TOTAL_DECIMALS } from '../core/checks/plausible-results.ts'
import { limitWords } from './limits.ts'
import { figureWords, number } from './numbers.ts'
import { listWords, sentence } from './sentences.ts'
import { dueWords, overdueWords, testName } from './standing.ts'
import { quantity, signed } from './units.ts'

export const LOT_SENTENCES: WordsOf<LotFindingParams> = {
  'changed-after-issue': ({ lot, revision, places }) =>
    `The record of ${lot} differs from revision ${revision} as issued in ${places === 1 ? 'one place' : `${places} places`}`,
  'would-now-be-judged-otherwise': ({ lot, revision }) =>
    `${lot} would now be judged differently from revision ${revision}`,
  'result-overdue': ({ lot, since, condition, ...test }) =>
    `${testName({ ...test, conditionName: null })} (condition ${condition}) of ${lot} has been ${overdueWords(readMoment(since))}`,
  'other-sample-fails': ({ lot, property: key, sample, sampleKind, clauses, ...figure }) =>
    `${sentence(sampleKind)} ${sample} of ${lot} gave ${figureWords(figure)} (${property(key).title.toLowerCase()}), which would not meet ${
      clauses.length === 1 ? 'the limit' : `the limits of ${clauses.length} clauses`
    }; the lot is judged on another sample`,
  'result-implausible': ({ lot, laboratory, sample, value, decimals, low, high, unit, ...test }) =>
    `${sentence(testOf(test))} of ${lot} is ${figureWords({ value, decimals, unit })} (sample ${sample}, ${laboratory}), outside the ${spanWords(low, high, unit)} that is plausible`,
  'oxide-total': ({ lot, laboratory, sample, total, low, high }) =>
    `The oxides and loss on ignition that ${laboratory} reports for sample ${sample} of ${lot} add up to ${figureWords({ value: total, decimals: 1, unit: '%' })}, outside the ${spanWords(low, high, '%')} that is plausible`,
  'alkalis-above-total': ({ lot, sample, available, total }) =>
    `The available alkalis of sample ${sample} of ${lot}, ${alkaliWords(available)}, are above its total alkalis, ${alkaliWords(total)}`,
  'far-from-history': ({ lot, sample, value, decimals, unit, median, n, ...test }) =>
    `${sentence(testOf(test))} of ${lot} is ${figureWords({ value, decimals, unit })} (sample ${sample}), far from the ${figureWords({ value: median, decimals, unit })} that is the median of the ${n} results before it`,
  'shipment-mass': ({ lot, bill, written, low, high, unit }) =>
    `Bill ${bill} of ${lot} is for ${printedUnits(written)}, outside the ${spanWords(low, high, unit)} that one bill plausibly covers`,
  'shipped-above-quantity': ({ lot, shippedTonnes, quantityTonnes }) =>
    `More of ${lot} was shipped, ${tonnes(shippedTonnes)}, than the lot holds, ${tonnes(quantityTonnes)}`,
  'bill-twice': ({ lot, bill, others }) =>
    others.length === 1 && others[0] === lot
      ? `Bill ${bill} is listed more than once among the shipments of ${lot}`
      : `Bill ${bill} of ${lot} is listed again in ${otherLots(others)}`,
  'readings-alike': ({ lot, of, sample, values, others }) =>
    `All ${values} ${ALIKE[of]} of ${lot}, sample ${sample}, stand alike in ${otherLots(others)}`,
  'number-off-pattern': ({ lot, number, pattern }) =>
    `The number ${number} of ${lot} does not have the form that its source states, ${pattern}`,
  'lot-quantity': ({ lot, written, low, high, unit }) =>
    `The quantity of ${lot} is ${printedUnits(written)}, outside the ${spanWords(low, high, unit)} that is plausible of a lot`,
  'water-out-of-proportion': ({ lot, condition, control, percent, low, high }) =>
    `The mixing water of a mortar of ${lot} (condition ${condition}) is ${figureWords({ value: percent, decimals: 0, unit: '%' })} of that of its control ${control}, outside the ${spanWords(low, high, '%')} that is plausible`,
  'finished-beside-readings': ({ lot, laboratory, sample, ...test }) =>
    `${laboratory} reports a ${testOf(test)} of ${figureWords({ value: test.finished, decimals: test.finishedDecimals, unit: test.unit })} for sample ${sample} of ${lot}, and ${
      test.recomputed === null
        ? 'the readings of that test, which are on record, give no valid value'
        : `the readings of that test give ${quantity(test.recomputed, test.decimals, test.unit)}, which is the value judged`
    }`,
}

/** "28 d strength activity index (condition c311)". */
function testOf({
  property: key,
  condition,
  age,
}: Pick<LotFindingParams['result-implausible'], 'property' | 'condition' | 'age'>): string {
  const name = [age, property(key).title.toLowerCase()].filter((part) => part !== null).join(' ')
  return condition === null ? name : `${name} (condition ${condition})`
}

function spanWords(low: number, high: number, unit: string): string {
  return `${number(low, Number.isInteger(low) ? 0 : 1)} to ${number(high, 0)} ${unit}`
}

function alkaliWords(value: number): string {
  return figureWords({ value, decimals: TOTAL_DECIMALS, unit: '%' })
}

function tonnes(value: number): string {
  return `${number(value, 1)} t`
}

const ALIKE: Readonly<Record<LotFindingParams['readings-alike']['of'], string>> = {
  oxides: 'oxides of an analysis',
  analysis: 'values of an analysis',
  mortar: 'readings of a mortar',
}

/** Lots by id; one that is not published is not named. */
function otherLots(others: readonly (string | null)[]): string {
  return listWords(
    others.map((lot) => lot ?? UNISSUED_LOT),
    'and',
  )
}

const OWN_CHOICE = 'the range is this program’s own choice; check the record and, if it is right, leave it'

export const LOT_EVIDENCE: WordsOf<LotFindingParams, [], string[]> = {
  'changed-after-issue': ({ places, changes }) => [
    ...changes.map(recordChangeWords),
    ...(changes.length < places ? [`and ${places - changes.length} more`] : []),
  ],
  'would-now-be-judged-otherwise': ({ changes }) => changes.map(outcomeChangeWords),
  'result-implausible': () => [OWN_CHOICE],
  'oxide-total': ({ members }) => [
    members
      .map(({ property: key, value, decimals }) => `${key} ${figureWords({ value, decimals, unit: '%' })}`)
      .join(', '),
    'an analysis of the ignited material says so under basis, and its loss on ignition is then left out',
  ],
  'alkalis-above-total': () => ['what is available is a part of the whole; check both figures'],
  'far-from-history': () => ['check the decimal point and the unit'],
  'shipment-mass': () => [OWN_CHOICE],
  'shipped-above-quantity': () => ['check the masses of the bills and the quantity of the lot'],
  'bill-twice': () => ['check whether an entry was made twice, or a number mistyped'],
  'readings-alike': () => ['so many readings seldom agree by chance: was one record made from the other?'],
  'number-off-pattern': () => ['YYYY stands for the year, # for a digit'],
  'lot-quantity': () => [OWN_CHOICE],
  'water-out-of-proportion': ({ writtenTest, writtenControl }) => [
    `${printedUnits(writtenTest)} beside ${printedUnits(writtenControl)}`,
    OWN_CHOICE,
  ],
  'finished-beside-readings': ({ finished, recomputed, decimals, unit }) =>
    recomputed === null
      ? ['no value of the readings counts, and the finished figure does not stand in for it']
      : [`difference ${signed(finished - recomputed, decimals, unit === '%' ? 'points' : unit)}`],
  'other-sample-fails': ({ clauses }) =>
    clauses.map(({ criterion, clause, limit }) => `${criterion}, clause ${clause}: ${limitWords(limit)}`),
  'result-overdue': ({ due, unread }) => [`${dueWords(readMoment(due))}; ${UNREAD[unread]}`],
}

const UNREAD: Readonly<Record<PlannedTest['unread'], string>> = {
  lot: 'the lot’s reading is missing; that of its control is on record',
  control: 'the control’s reading is missing; that of the lot is on record',
  both: 'the readings of the lot and of its control are missing',
}

/** One difference of a record, without a full stop: names and values as the record writes them. */
export function recordChangeWords({ path, issued, today }: RecordChange): string {
  return `${placeWords(path)}: ${issued ?? 'absent'} when issued, ${today ?? 'absent'} today`
}

/** What an entry of a list is called; keys elsewhere are marks and ids, even where they are numbers. */
const ENTRIES: Readonly<Record<string, string>> = {
  analyses: 'analysis',
  blend: 'constituent',
  documents: 'document',
  resistivity: 'resistivity',
  samples: 'sample',
  seals: 'seal',
  strength: 'strength',
  tests: 'test',
}

/** The lot goes without saying; entries of a list are counted from one: "test 1 › strength 2 › specimens › d". */
function placeWords(path: RecordChange['path']): string {
  const keys = path[0] === 'lot' ? path.slice(1) : path
  const counted = (at: number) => ENTRIES[keys[at] ?? ''] !== undefined && /^\d+$/.test(keys[at + 1] ?? '')
  return keys
    .flatMap((key, at) => {
      if (counted(at - 1)) return []
      return counted(at) ? [`${ENTRIES[key]} ${Number(keys[at + 1]) + 1}`] : [key]
    })
    .join(' › ')
}

/** One difference of an outcome, without a full stop. */
export function outcomeChangeWords({ criterion, clause, issued, today }: OutcomeChange): string {
  const nothing = clause === undefined ? 'not judged under it' : 'no such clause'
  const what = clause === undefined ? criterion : `${criterion}, clause ${clause}`
  return `${what}: issued as "${outcomeWords(issued)}", today ${today === null ? nothing : `"${outcomeWords(today)}"`}`
}
