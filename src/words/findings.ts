/** What an audit check found, in words. */
import type {
  Finding,
  FindingParams,
  FindingReason,
  OutcomeChange,
  RecordChange,
} from '../core/checks/finding.ts'
import { property } from '../core/measure/properties.ts'
import { readMoment } from '../core/measure/moment.ts'
import type { PlannedTest } from '../core/result/result.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { limitWords } from './limits.ts'
import { figureWords } from './numbers.ts'
import { sentence } from './sentences.ts'
import { dueWords, overdueWords, testName } from './standing.ts'
import { quantity, signed } from './units.ts'

/** A finding with its sentence and the evidence for it. */
export interface WordedFinding extends Omit<Finding, 'reason'> {
  readonly check: FindingReason['code']
  /** One sentence without a full stop. */
  readonly sentence: string
  /** A line each, without a full stop. */
  readonly evidence: readonly string[]
}

export function wordedFinding({ reason, ...finding }: Finding): WordedFinding {
  const { id, ...rest } = finding
  const [sentence, evidence] = [wordsOf(SENTENCES, reason), wordsOf(EVIDENCE, reason)]
  return { id, check: reason.code, ...rest, sentence, evidence }
}

const SENTENCES: WordsOf<FindingParams> = {
  'changed-after-issue': ({ lot, revision, places }) =>
    `The record of ${lot} differs from revision ${revision} as issued in ${places === 1 ? 'one place' : `${places} places`}`,
  'would-now-be-judged-otherwise': ({ lot, revision }) =>
    `${lot} would now be judged otherwise than in revision ${revision}`,
  'result-overdue': ({ lot, since, condition, ...test }) =>
    `${testName({ ...test, conditionName: null })} (condition ${condition}) of ${lot} has been ${overdueWords(readMoment(since))}`,
  'other-sample-fails': ({ lot, property: key, sample, sampleKind, clauses, ...figure }) =>
    `${sentence(sampleKind)} ${sample} of ${lot} has a ${property(key).title.toLowerCase()} of ${figureWords(figure)}, which would not meet ${
      clauses.length === 1 ? 'the limit' : `${clauses.length} limits`
    }; the lot is judged on another sample`,
  'finished-beside-readings': ({ lot, laboratory, sample, ...test }) =>
    `${laboratory} reports ${finishedWords(test)} for sample ${sample} of ${lot}, and ${
      test.recomputed === null
        ? 'the readings of that test, which are on record, give no valid value'
        : `the readings of that test give ${quantity(test.recomputed, test.decimals, test.unit)}, which is the value judged`
    }`,
}

type Finished = Omit<FindingParams['finished-beside-readings'], 'lot' | 'laboratory' | 'sample'>

function finishedWords({
  property: key,
  condition,
  age,
  finished,
  finishedDecimals,
  unit,
}: Finished): string {
  const name = [age, property(key).title.toLowerCase()].filter((part) => part !== null).join(' ')
  const at = condition === null ? '' : ` (condition ${condition})`
  return `a ${name}${at} of ${quantity(finished, finishedDecimals, unit)}`
}

const EVIDENCE: WordsOf<FindingParams, [], string[]> = {
  'changed-after-issue': ({ places, changes }) => [
    ...changes.map(recordChangeWords),
    ...(changes.length < places ? [`and ${places - changes.length} more`] : []),
  ],
  'would-now-be-judged-otherwise': ({ changes }) => changes.map(outcomeChangeWords),
  'finished-beside-readings': ({ finished, recomputed, decimals, unit }) =>
    recomputed === null
      ? ['no value of the readings counts, and the finished figure does not stand in for it']
      : [`difference ${signed(finished - recomputed, decimals, unit === '%' ? 'points' : unit)}`],
  'other-sample-fails': ({ clauses }) =>
    clauses.map(({ criterion, clause, limit }) => `${criterion}, clause ${clause}: ${limitWords(limit)}`),
  'result-overdue': ({ due, unread }) => [`${dueWords(readMoment(due))}; ${UNREAD[unread]}`],
}

const UNREAD: Readonly<Record<PlannedTest['unread'], string>> = {
  lot: 'the lot’s reading is missing, its control’s is on record',
  control: 'the control’s reading is missing, the lot’s is on record',
  both: 'the readings of the lot and of its control are missing',
}

/** One difference of a record, without a full stop: names and values as the record writes them. */
export function recordChangeWords({ path, issued, today }: RecordChange): string {
  return `${placeWords(path)}: issued ${issued ?? 'nothing'}, today ${today ?? 'nothing'}`
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
  return `${what}: issued ${issued}, today ${today ?? nothing}`
}
