/** What the checks of a lot found, in words. */
import type { LotFindingParams, OutcomeChange, RecordChange } from '../core/checks/lot-findings.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import { readMoment } from '../core/measure/moment.ts'
import type { PlannedTest } from '../core/result/result.ts'
import { boundsWords } from './bounds.ts'
import { outcomeOfClause } from './outcomes.ts'
import type { WordsOf } from './reason-words.ts'
import type { FindingNames } from './finding-names.ts'
import { UNISSUED_LOT } from './withheld.ts'
import { TOTAL_DECIMALS } from '../core/checks/plausible-results.ts'
import { limitWords } from './limits.ts'
import { outcomeOfLot } from './lot-outcomes.ts'
import { firstLots, testWords } from './named-tests.ts'
import { figureWords, numberWords } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import { listWords } from './sentences.ts'
import { dueWords, overdueWords, testName } from './standing.ts'
import { quantity, signed, writtenText } from './units.ts'

export const LOT_SENTENCES: WordsOf<LotFindingParams, [FindingNames]> = {
  'changed-after-issue': ({ lot, revision, places }, names) =>
    `The record of ${names.lot(lot)} differs from revision ${revision} as issued in ${places === 1 ? 'one place' : `${places} places`}`,
  'would-now-be-judged-otherwise': ({ lot, revision }, names) =>
    `${names.lot(lot)} would now be judged differently from revision ${revision}`,
  'result-overdue': ({ lot, since, condition, ...test }, names) =>
    `The ${testName({ ...test, conditionName: null })} (${names.condition(condition)}) of ${names.lot(lot)} has been ${overdueWords(readMoment(since))}`,
  'other-sample-fails': ({ lot, property: key, sample, sampleKind, clauses, ...figure }, names) =>
    `${sampleKind} ${sample} of ${names.lot(lot)} gave ${figureWords(figure, names.units)} for ${propertyWords({ property: key })}, which would not meet ${
      ownClauses(clauses).length === 1 ? 'the limit' : `the limits of ${ownClauses(clauses).length} clauses`
    }; the lot is judged on another sample`,
  'result-implausible': ({ lot, laboratory, sample, value, decimals, low, high, unit, ...test }, names) =>
    `The ${testWords(test, names)} of ${names.lot(lot)} is ${figureWords({ value, decimals, unit }, names.units)} (sample ${sample}, ${names.laboratory(laboratory)}), outside the plausible range of ${spanWords(low, high, unit, names)}`,
  'test-and-control-swapped': (
    { lot, laboratory, sample, value, decimals, inverse, control, ...test },
    names,
  ) =>
    `Test and control may be swapped: the ${testWords(test, names)} of ${names.lot(lot)} is ${figureWords({ value, decimals, unit: '%' })} (sample ${sample}, ${names.laboratory(laboratory)}), and the control ${control} over the test would be ${figureWords({ value: inverse, decimals, unit: '%' })}`,
  'oxide-total': ({ lot, laboratory, sample, total, low, high }, names) =>
    `The oxides and loss on ignition that ${names.laboratory(laboratory)} reports for sample ${sample} of ${names.lot(lot)} add up to ${figureWords({ value: total, decimals: 1, unit: '%' })}, outside the plausible range of ${spanWords(low, high, '%', names)}`,
  'alkalis-above-total': ({ lot, sample, available, total }, names) =>
    `The available alkalis of sample ${sample} of ${names.lot(lot)}, ${alkaliWords(available)}, are above its total alkalis, ${alkaliWords(total)}`,
  'loss-too-small': ({ lot, sample, laboratory, value, decimals, moisture }, names) =>
    `The loss on ignition that ${names.laboratory(laboratory)} reports for sample ${sample} of ${names.lot(lot)}, ${figureWords({ value, decimals, unit: '%' })}${moisture === null ? '' : ' as received'}, is below ${moisture === null ? 'zero' : `its moisture, ${figureWords({ ...moisture, unit: '%' })}`}`,
  'far-from-history': ({ lot, sample, value, decimals, unit, median, n, ...test }, names) =>
    `The ${testWords(test, names)} of ${names.lot(lot)} is ${figureWords({ value, decimals, unit }, names.units)} (sample ${sample}), far from ${figureWords({ value: median, decimals, unit }, names.units)}, the median of the ${n} results before it`,
  'shipment-mass': ({ lot, bill, written, low, high, unit }, names) =>
    `Bill ${bill} of ${materialWords(lot, names)} is for ${writtenText(written)}, outside the plausible range of one bill, ${spanWords(low, high, unit, asWritten(written))}`,
  'shipped-above-quantity': ({ lot, shippedTonnes, quantityTonnes }, names) =>
    `More of ${names.lot(lot)} was shipped, ${tonnes(shippedTonnes, names)}, than the lot holds, ${tonnes(quantityTonnes, names)}`,
  'bill-twice': ({ lot, bill, others }, names) =>
    others.length === 1 && others[0] === lot
      ? `Bill ${bill} is listed more than once among the shipments of ${materialWords(lot, names)}`
      : `Bill ${bill} of ${materialWords(lot, names)} is listed again under ${otherLots(others, names)}`,
  'readings-alike': ({ lot, of, sample, values, others }, names) =>
    `All ${values} ${ALIKE[of]} ${sample} of ${names.lot(lot)} are the same, to the last digit, in ${otherLots(others, names)}`,
  'specimens-equal': ({ lot, laboratory, sample, specimens, written, ...set }, names) =>
    `All ${specimens} specimens of the ${testWords(readTest(set), names)} of ${names.lot(lot)} read ${writtenText(written)} (sample ${sample}, ${names.laboratory(laboratory)})`,
  'readings-of-control': ({ lot, laboratory, sample, specimens, control, ...set }, names) =>
    `The ${specimens} readings of the ${testWords(readTest(set), names)} of ${names.lot(lot)} are the same, to the last digit, as those of its control ${control} (sample ${sample}, ${names.laboratory(laboratory)})`,
  'number-off-pattern': ({ lot, number, pattern }, names) =>
    `The number ${number} of a lot of ${names.source(sourceOf(lot))} does not have the form that its source states, ${pattern}`,
  'lot-quantity': ({ lot, written, low, high, unit }, names) =>
    `The quantity of ${names.lot(lot)} is ${writtenText(written)}, outside the plausible range of a lot, ${spanWords(low, high, unit, asWritten(written))}`,
  'water-out-of-proportion': ({ lot, condition, control, percent, low, high }, names) =>
    `The mixing water of a mortar of ${names.lot(lot)} (${names.condition(condition)}) is ${figureWords({ value: percent, decimals: 0, unit: '%' })} of that of its control ${control}, outside the plausible range of ${spanWords(low, high, '%', names)}`,
  'finished-beside-readings': ({ lot, laboratory, sample, ...test }, names) =>
    `${names.laboratory(laboratory)} reports ${figureWords({ value: test.finished, decimals: test.finishedDecimals, unit: test.unit }, names.units)} for the ${testWords(test, names)} of sample ${sample} of ${names.lot(lot)}, and ${
      test.recomputed === null
        ? 'the readings of that test, which are on record, give no valid value'
        : `the readings of that test give ${test.bounds === undefined ? quantity(test.recomputed, test.decimals, test.unit, names.units) : boundsWords(test.bounds, test.decimals, test.unit, names.units)}, which is the value judged`
    }`,
}

/** The property that specimens were read for. */
function readTest({
  of,
  condition,
  age,
}: Pick<LotFindingParams['specimens-equal'], 'of' | 'condition' | 'age'>): Parameters<typeof testWords>[0] {
  return { property: of === 'strength' ? 'compressive-strength' : 'bulk-resistivity', condition, age }
}

/** A shipment is listed under a lot, or under its source where it came from one of several lots. */
function materialWords(id: string, names: FindingNames): string {
  return id.includes('/') ? names.lot(id) : names.source(id)
}

/** A range beside a mass as somebody wrote it, whatever units the site prints: one system in a sentence. */
function asWritten(mass: string): Pick<FindingNames, 'units'> {
  return { units: /lb|short|US ton/.test(mass) ? 'US' : 'SI' }
}

function spanWords(low: number, high: number, unit: string, { units }: Pick<FindingNames, 'units'>): string {
  const digits = (value: number) => numberWords(value, Number.isInteger(value) ? 0 : 1, unit, units)
  // The unit stands once, behind the second figure.
  return `${digits(low).split(' ')[0]} to ${digits(high)}`
}

function alkaliWords(value: number): string {
  return figureWords({ value, decimals: TOTAL_DECIMALS, unit: '%' })
}

function tonnes(value: number, { units }: FindingNames): string {
  return numberWords(value, 1, 't', units)
}

const ALIKE: Readonly<Record<LotFindingParams['readings-alike']['of'], string>> = {
  oxides: 'oxides of sample',
  analysis: 'values of the analysis of sample',
  mortar: 'readings of the mortar of sample',
}

/** Lots named in a sentence: own choice. */
const NAMED = 3

/** Lots and sources by id; one that is not published is not named. Of many, the first are. */
function otherLots(others: readonly (string | null)[], names: FindingNames): string {
  const [first] = others
  const source = typeof first === 'string' && first.includes('/') ? sourceOf(first) : null
  const areOfOne = others.every((id) => id?.includes('/') === true && sourceOf(id) === source)
  if (source !== null && areOfOne && 1 < others.length)
    return `lots ${firstLots(others.slice(0, NAMED), others.length, names)} of ${names.source(source)}`
  const named = others.slice(0, NAMED).map((id) => (id === null ? UNISSUED_LOT : materialWords(id, names)))
  const more = others.length - named.length
  return listWords(more === 0 ? named : [...named, `${more} more`], 'and')
}

const OWN_CHOICE = 'the range is this program’s own choice; check the record and, if it is right, leave it'

export const LOT_EVIDENCE: WordsOf<LotFindingParams, [FindingNames], string[]> = {
  'changed-after-issue': ({ places, changes }) => [
    ...changes.map(recordChangeWords),
    ...(changes.length < places ? [`and ${places - changes.length} more`] : []),
  ],
  'would-now-be-judged-otherwise': ({ changes }, names) =>
    changes.map((change) => outcomeChangeWords(change, names)),
  'result-implausible': () => [OWN_CHOICE],
  'oxide-total': ({ members }) => [
    members
      .map(
        ({ property: key, value, decimals }) =>
          `${propertyWords({ property: key })} ${figureWords({ value, decimals, unit: '%' })}`,
      )
      .join(', '),
    'an analysis of the ignited material says so under basis, and its loss on ignition is then left out',
  ],
  'test-and-control-swapped': ({ above }) => [
    `asked above ${above} %, which is this program’s own choice; check which of the two bench sheets is the control’s`,
  ],
  'alkalis-above-total': () => ['what is available is a part of the whole; check both figures'],
  'loss-too-small': ({ moisture }) => [
    moisture === null
      ? 'check both weighings and the sign: only a material with sulfide, such as slag, gains mass on ignition'
      : 'what the material as received loses on ignition includes its moisture: check both figures and the basis',
  ],
  'far-from-history': () => ['check the decimal point and the unit'],
  'shipment-mass': () => [OWN_CHOICE],
  'shipped-above-quantity': () => ['check the masses of the bills and the quantity of the lot'],
  'bill-twice': () => ['check whether an entry was made twice, or a number mistyped'],
  'readings-alike': () => ['so many readings seldom agree by chance: was one record made from the other?'],
  'specimens-equal': () => ['specimens of one batch seldom agree: was one reading written for all?'],
  'readings-of-control': () => [
    'so many readings seldom agree by chance: was one bench sheet used for both?',
  ],
  'number-off-pattern': () => ['YYYY stands for the year, # for a digit'],
  'lot-quantity': () => [OWN_CHOICE],
  'water-out-of-proportion': ({ writtenTest, writtenControl }) => [
    `${writtenText(writtenTest)} beside ${writtenText(writtenControl)}`,
    OWN_CHOICE,
  ],
  'finished-beside-readings': ({ finished, recomputed, bounds, decimals, unit }, { units }) =>
    recomputed === null
      ? ['no value of the readings counts, and the finished figure does not stand in for it']
      : bounds !== undefined
        ? ['a reading lies beyond the meter, so no difference can be stated']
        : [`difference ${signed(finished - recomputed, decimals, unit === '%' ? 'points' : unit, units)}`],
  'other-sample-fails': ({ clauses }, names) =>
    ownClauses(clauses).map(({ criterion, clause, limit }) => {
      const sets = clauses.flatMap((one) =>
        one.from === criterion && one.clause === clause ? [names.criterion(one.criterion)] : [],
      )
      const also = sets.length === 0 ? '' : `; so in ${listWords(sets, 'and')}`
      return `${names.criterion(criterion)}: ${names.clause(criterion, clause)}, ${limitWords(limit)}${also}`
    }),
  'result-overdue': ({ due, unread }) => [`${dueWords(readMoment(due))}; ${UNREAD[unread]}`],
}

type ClauseOfSet = LotFindingParams['other-sample-fails']['clauses'][number]

/** Without those that a set takes from another of the list. */
function ownClauses(clauses: readonly ClauseOfSet[]): ClauseOfSet[] {
  return clauses.filter(({ from }) => from === undefined)
}

const UNREAD: Readonly<Record<PlannedTest['unread'], string>> = {
  lot: 'the lot’s reading is missing; that of its control is on record',
  control: 'the control’s reading is missing; that of the lot is on record',
  both: 'the readings of the lot and of its control are missing',
  result: 'no result is on record, neither by readings nor as a figure of the laboratory',
}

/** One difference of a record, without a full stop: names and values as the record writes them. */
export function recordChangeWords({ path, issued, today, withheld }: RecordChange): string {
  if (withheld) return `${placeWords(path)}: differs; what stands there is not published`
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
export function outcomeChangeWords(
  change: OutcomeChange,
  names: Pick<FindingNames, 'criterion' | 'clause'>,
): string {
  const { criterion, clause, issued, today, issuedStanding, todayStanding } = change
  const words = clause === undefined ? outcomeOfLot : outcomeOfClause
  const nothing = clause === undefined ? 'not judged under it' : 'no such clause'
  const set = names.criterion(criterion)
  const what = clause === undefined ? set : `${set}, ${names.clause(criterion, clause)}`
  return `${what}: issued as "${words(issued, issuedStanding)}", today ${today === null ? nothing : `"${words(today, todayStanding)}"`}`
}
