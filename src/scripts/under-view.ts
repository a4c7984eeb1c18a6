/**
 * What a set says of one lot or of every lot of a source, as elements. Loaded only when a reader chooses a
 * set.
 */
import type { Criterion } from '../core/criteria/criterion.ts'
import { shortDate } from '../words/dates.ts'
import { limitText } from '../words/limits.ts'
import { plural } from '../words/numbers.ts'
import type { UnitSystem } from '../words/unit-systems.ts'
import { fullSentence, sentence, unbroken } from '../words/sentences.ts'
import { standingCounts } from '../words/standing.ts'
import { scopeWords, setOfVerdict, TRIAL_HEADING } from '../words/outcomes.ts'
import type { Verdict } from '../core/criteria/verdict.ts'
import { decidedByWords, type WordedClause, wordedVerdict } from '../words/worded-verdict.ts'
import { anchor, briefElement, element, marked, outcomeElement, tableOf } from './elements.ts'
import {
  bestClassOf,
  briefStanding,
  type ReadSource,
  readCriteria,
  readSource,
  verdictOf,
} from './judge-source.ts'

/** @throws Error when a file cannot be fetched */
export async function viewUnder(id: string, place: HTMLElement): Promise<Node[]> {
  const [source, criteria] = await Promise.all([
    readSource(place.dataset['evidence'] ?? ''),
    readCriteria(place.dataset['criteria'] ?? ''),
  ])
  const criterion = criteria.get(id)
  return criterion === undefined
    ? [element('p', ['This specification is no longer on record.'])]
    : judged(source, criterion, place)
}

function judged(source: ReadSource, criterion: Criterion, place: HTMLElement): Node[] {
  const lot = place.dataset['lot']
  const lines =
    lot === undefined
      ? everyLot(source, criterion, place)
      : oneLot(
          source,
          source.lots.findIndex(({ id }) => id === lot),
          criterion,
          place.dataset['units'] === 'US' ? 'US' : 'SI',
        )
  const link = anchor(`${place.dataset['sets'] ?? ''}${criterion.id}/`, 'The clauses of this specification')
  return [...lines, ...unpublishedLines(source), element('p', [link], 'small')]
}

function unpublishedLines({ unpublished }: ReadSource): Node[] {
  if (unpublished === 0) return []
  const missing = `${unpublished} lots of the source are not published and do not count here`
  const effect = 'a mean of preceding results may differ from the register’s'
  return [element('p', [`${missing}; ${effect}.`], 'small soft')]
}

function oneLot(source: ReadSource, index: number, criterion: Criterion, units: UnitSystem): Node[] {
  const verdict = index < 0 ? undefined : verdictOf(source, index, criterion)
  if (verdict === undefined) return [element('p', ['This specification is not for this material.'])]
  const scope = scopeWords(criterion)
  const best = bestClassOf(source, index, criterion)
  const stands = briefStanding(source, index, verdict)
  const worded = wordedVerdict(verdict, criterion, source.conditionTitle, units)
  return [
    element(
      'div',
      [
        ...(verdict.trial ? [element('p', [TRIAL_HEADING], 'trial')] : []),
        element('p', [marked(stands.mark, [sentence(stands.brief)])], 'headline'),
        element('p', [setOfVerdict(verdict, criterion)]),
        ...(scope === null ? [] : [element('p', [sentence(scope)], 'small')]),
        ...worded.reasons.map((reason) => element('p', [said(reason)])),
        ...(best === undefined ? [] : [element('p', [said(best)])]),
      ],
      `verdict verdict-${stands.mark ?? 'none'}`,
    ),
    tableOf(
      'Every clause of the specification',
      ['Clause', 'Limit', 'Outcome', 'Reason'],
      worded.clauses.flatMap((clause) => clauseRows(clause, 0)),
    ),
  ]
}

function clauseRows(clause: WordedClause, depth: number): (string | Node)[][] {
  const title = element('span', [
    `${'– '.repeat(depth)}${clause.title}`,
    ...(clause.information ? [element('span', [' for information'], 'small soft')] : []),
  ])
  const relaxed =
    clause.relaxed === undefined
      ? ''
      : ` ${unbroken(`Relaxed by ${clause.relaxed.by}; before: ${clause.relaxed.was}.`)}`
  return [
    [
      title,
      clause.limit === null ? '—' : limitText(clause.limit),
      outcomeElement(clause.outcome),
      `${said(clause.reason)}${relaxed}`,
    ],
    ...(clause.clauses ?? []).flatMap((member) => clauseRows(member, depth + 1)),
  ]
}

function said(text: string): string {
  return unbroken(fullSentence(text))
}

function everyLot(source: ReadSource, criterion: Criterion, place: HTMLElement): Node[] {
  const verdicts = source.lots
    .map((lot, index) => ({ lot, verdict: verdictOf(source, index, criterion), index }))
    .filter((entry): entry is typeof entry & { verdict: Verdict } => entry.verdict !== undefined)
    .map((entry) => ({ ...entry, standing: briefStanding(source, entry.index, entry.verdict) }))
  if (verdicts.length === 0) return [element('p', ['This specification is not for this material.'])]
  const counts = standingCounts(verdicts.map(({ standing }) => standing))
  const tally = element(
    'p',
    counts.flatMap(({ standing, count }, index) => [
      index === 0 ? '' : ', ',
      `${count} `,
      briefElement(standing),
    ]),
    'counts',
  )
  const rows = verdicts
    .toReversed()
    .map(({ lot, verdict, standing, index }) => [
      anchor(
        `${place.dataset['lots'] ?? ''}${lot.id}/?under=${encodeURIComponent(criterion.id)}`,
        lot.number,
      ),
      shortDate(lot.sampled),
      briefElement(standing),
      verdict.outcome === 'meets'
        ? (bestClassOf(source, index, criterion) ?? '')
        : decidedByWords(verdict, criterion, source.conditionTitle),
    ])
  return [
    tally,
    tableOf(
      `${plural(verdicts.length, 'lot', 'lots')}, newest first`,
      ['Lot', 'Sampled', 'State and verdict', 'Decided by'],
      rows,
    ),
  ]
}
