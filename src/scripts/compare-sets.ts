/**
 * Any sets over any choice of lots, judged in the browser: a count of changes for each set, then the lots.
 */
import { liesWithin, type Period, periodOf } from './period.ts'
import type { Moment } from '../core/measure/moment.ts'
import { changesBetween, type ComparedLot, compareLot } from '../core/judging/compare-sets.ts'
import { withActivityOf } from '../core/criteria/replace-activity.ts'
import type { Criterion } from '../core/criteria/criterion.ts'
import { listedSetName } from '../words/outcomes.ts'
import type { Verdict } from '../core/criteria/verdict.ts'
import { countWords, plural } from '../words/numbers.ts'
import { shortDate } from '../words/dates.ts'
import { shortfallWords } from '../words/shortfall.ts'
import { oneSidedWords, withdrawnNotCounted } from '../words/standing.ts'
import { anchor, briefElement, element, outcomeElement, tableOf } from './elements.ts'
import { shownAnyway } from './elements.ts'
import { keepInAddress } from './form-address.ts'
import { briefStanding, type ReadSource, readCriteria, readSource, verdictOf } from './judge-source.ts'

/** Rows shown at most; the counts above the table are of all lots. */
const SHOWN = 500

const place = document.querySelector<HTMLElement>('#compare')
const form = place?.querySelector<HTMLFormElement>('form')
const state = place?.querySelector<HTMLElement>('.compare-state')
const result = document.querySelector<HTMLElement>('#compare-result')

interface Choice {
  readonly sets: readonly string[]
  /** The set whose activity clause replaces the first one's; empty text for none. */
  readonly activity: string
  readonly sources: readonly string[]
  readonly sampled: Period
  readonly changed: boolean
}

if (place && form && state && result) {
  const files = new Map<string, Promise<ReadSource>>()
  const sourceFile = (id: string): Promise<ReadSource> => {
    const known = files.get(id) ?? readSource(`${place.dataset['evidence'] ?? ''}${id}.json`)
    files.set(id, known)
    return known
  }
  let run = 0
  const show = async () => {
    const own = ++run
    const choice = choiceOf(form)
    keepInAddress(form)
    const missing = missingWords(choice)
    if (missing !== null) {
      state.textContent = missing
      result.replaceChildren()
      return
    }
    state.textContent = 'Judging …'
    try {
      const [criteria, ...sources] = await Promise.all([
        readCriteria(place.dataset['criteria'] ?? ''),
        ...choice.sources.map(sourceFile),
      ])
      if (own !== run) return
      const sets = chosenSets(choice, criteria)
      const lots = sources.flatMap((source) => comparedLots(source, sets, choice))
      state.textContent = judgedWords(lots, sets)
      result.replaceChildren(...report(lots, sets, choice, place.dataset['lots'] ?? ''))
    } catch {
      files.clear()
      state.textContent = 'The evidence could not be fetched: try again later.'
    }
  }
  takeFromAddress(form)
  form.addEventListener('input', () => {
    void show()
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  shownAnyway(place, result)
  void show()
}

/** Nothing to compare is no result: what must be chosen first; null where enough is. */
function missingWords({ sets, activity, sources }: Choice): string | null {
  if (sources.length === 0) return 'No source is chosen: choose at least one.'
  if (sets.length === 0) return 'No specification is chosen: choose at least one.'
  if (sets.length < 2 && activity === '')
    return 'Choose a second specification, or one whose activity clause stands in for the first one’s.'
  return null
}

/** The first set with its activity clause replaced comes last. */
function chosenSets({ sets, activity }: Choice, criteria: ReadonlyMap<string, Criterion>): Criterion[] {
  const chosen = sets.flatMap((id) => criteria.get(id) ?? [])
  const [first, other] = [chosen[0], criteria.get(activity)]
  const composed = first === undefined || other === undefined ? null : withActivityOf(first, other)
  return composed === null ? chosen : [...chosen, composed]
}

/** How many lots each set judges: one that is not for a lot’s material judges none of it. */
function judgedWords(lots: readonly Row[], sets: readonly Criterion[]): string {
  const each = sets.map((set, place) => {
    const count = lots.filter(({ verdicts }) => verdicts[place] !== null).length
    return `${listedSetName(set)} judges ${countWords(count, 'lot')}`
  })
  const changed = lots.filter(({ changes }) => changes).length
  const composed = sets.some(({ activityOf }) => activityOf !== undefined)
    ? ' With a clause replaced, this is no judgement under any contract.'
    : ''
  return `${each.join('; ')}. ${plural(changed, 'lot changes', 'lots change')} outcome.${composed}`
}

function choiceOf(form: HTMLFormElement): Choice {
  const data = new FormData(form)
  const text = (name: string) => String(data.get(name) ?? '')
  return {
    sets: data.getAll('set').map(String),
    activity: text('activity'),
    sources: data.getAll('source').map(String),
    sampled: periodOf(text),
    changed: text('changed') === 'yes',
  }
}

/** A comparison that was sent to somebody opens as it was; an address that names no source means all of them. */
function takeFromAddress(form: HTMLFormElement): void {
  const given = new URLSearchParams(location.search)
  if (!given.has('set')) return
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')) {
    if (field instanceof HTMLSelectElement || field.type !== 'checkbox')
      field.value = given.get(field.name) ?? ''
    else if (field.name !== 'source' || given.has('source'))
      field.checked = given.getAll(field.name).includes(field.value)
  }
}

type Row = ComparedLot & {
  readonly number: string
  readonly sampled: Moment
  readonly withdrawn: boolean
  readonly conditionTitle: (id: string) => string
  readonly standingOf: (verdict: Verdict) => Parameters<typeof briefElement>[0]
}

function comparedLots(source: ReadSource, sets: readonly Criterion[], { sampled }: Choice): Row[] {
  return source.lots.flatMap((lot, index) => {
    if (!liesWithin(lot.sampled, sampled)) return []
    const verdicts = sets.map((set) => verdictOf(source, index, set) ?? null)
    return verdicts.every((verdict) => verdict === null)
      ? []
      : [
          {
            ...compareLot(lot.id, verdicts),
            number: lot.number,
            sampled: lot.sampled,
            withdrawn: lot.state === 'withdrawn',
            conditionTitle: source.conditionTitle,
            standingOf: (verdict: Verdict) => briefStanding(source, index, verdict),
          },
        ]
  })
}

function judgedCell(
  verdict: Verdict | null,
  criterion: Criterion | undefined,
  { conditionTitle, standingOf }: Pick<Row, 'conditionTitle' | 'standingOf'>,
): string | Node {
  if (verdict === null || criterion === undefined) return 'not for this material'
  const decided =
    verdict.outcome === 'meets' ? [] : [` ${shortfallWords(verdict, criterion, conditionTitle)}`]
  return element('span', [
    briefElement(standingOf(verdict)),
    ...decided.map((text) => element('span', [text], 'small soft')),
  ])
}

function report(
  lots: readonly Row[],
  sets: readonly Criterion[],
  { changed }: Choice,
  address: string,
): Node[] {
  const [first, ...others] = sets
  if (first === undefined) return []
  const counted = lots.filter(({ withdrawn }) => !withdrawn)
  const notCounted = withdrawnNotCounted(lots.length - counted.length)
  const counts = others.map((set, index) => {
    const { alike, changes, oneSided } = changesBetween(counted, 0, index + 1)
    const apart = oneSidedWords(oneSided)
    return element('li', [
      `${listedSetName(first)} against ${listedSetName(set)}: ${countWords(alike, 'lot')} with the same outcome`,
      ...changes.flatMap(({ from, to, count }) => [
        `; ${count} from `,
        outcomeElement(from),
        ' to ',
        outcomeElement(to),
      ]),
      ...(apart === null ? [] : [`; ${apart}`]),
    ])
  })
  // Newest first, those of one day too.
  const listed = lots
    .filter((lot) => lot.changes || !changed)
    .toReversed()
    .toSorted((a, b) => b.sampled.day - a.sampled.day)
  const rows = listed
    .slice(0, SHOWN)
    .map((lot) => [
      anchor(`${address}${lot.lot}/`, lot.number),
      shortDate(lot.sampled),
      ...lot.verdicts.map((verdict, index) => judgedCell(verdict, sets[index], lot)),
    ])
  const caption =
    listed.length > SHOWN
      ? `The newest ${SHOWN} of ${listed.length} lots`
      : `${countWords(listed.length, 'lot')}, newest first`
  const table =
    rows.length === 0
      ? element('p', ['Every lot has the same outcome.'])
      : tableOf(caption, ['Lot', 'Sampled', ...sets.map(listedSetName)], rows)
  return [
    element(
      'section',
      [
        element('h2', ['Result']),
        element('div', [
          element('ul', counts),
          ...(notCounted === null ? [] : [element('p', [notCounted], 'small soft')]),
          table,
        ]),
      ],
      'section',
    ),
  ]
}
