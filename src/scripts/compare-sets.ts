/**
 * Any sets over any choice of lots, judged in the browser: a count of changes for each set, then the lots.
 */
import { liesWithin, type Period, periodOf } from './period.ts'
import type { Moment } from '../core/measure/moment.ts'
import { changesBetween, type ComparedLot, compareLot } from '../core/judging/compare-sets.ts'
import type { Criterion } from '../core/criteria/criterion.ts'
import { listedSetName } from '../words/outcomes.ts'
import type { Verdict } from '../core/criteria/verdict.ts'
import { countWords, plural } from '../words/numbers.ts'
import { shortDate } from '../words/dates.ts'
import { decidedByWords } from '../words/worded-verdict.ts'
import { withdrawnNotCounted } from '../words/standing.ts'
import { anchor, briefElement, element, outcomeElement, tableOf } from './elements.ts'
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
    if (choice.sets.length < 2) {
      state.textContent = 'Choose at least two specifications.'
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
      const sets = choice.sets.flatMap((id) => criteria.get(id) ?? [])
      const lots = sources.flatMap((source) => comparedLots(source, sets, choice))
      const judged = `${countWords(lots.length, 'lot')} judged under ${countWords(sets.length, 'specification')}`
      const changed = lots.filter(({ changes }) => changes).length
      state.textContent = `${judged}; ${plural(changed, 'lot changes', 'lots change')} outcome.`
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
  place.hidden = false
  void show()
}

function choiceOf(form: HTMLFormElement): Choice {
  const data = new FormData(form)
  const text = (name: string) => String(data.get(name) ?? '')
  return {
    sets: data.getAll('set').map(String),
    sources: data.getAll('source').map(String),
    sampled: periodOf(text),
    changed: text('changed') === 'yes',
  }
}

/** A comparison that was sent to somebody opens as it was. */
function takeFromAddress(form: HTMLFormElement): void {
  const given = new URLSearchParams(location.search)
  if (!given.has('set')) return
  for (const field of form.querySelectorAll<HTMLInputElement>('input')) {
    if (field.type === 'checkbox') field.checked = given.getAll(field.name).includes(field.value)
    else field.value = given.get(field.name) ?? ''
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
    verdict.outcome === 'meets' ? [] : [` ${decidedByWords(verdict, criterion, conditionTitle)}`]
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
  const counts = others.map((set, index) =>
    element('li', [
      `${listedSetName(first)} against ${listedSetName(set)}: ${countWords(changesBetween(counted, 0, index + 1).alike, 'lot')} with the same outcome`,
      ...changesBetween(counted, 0, index + 1).changes.flatMap(({ from, to, count }) => [
        `; ${count} from `,
        outcomeElement(from),
        ' to ',
        outcomeElement(to),
      ]),
    ]),
  )
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
