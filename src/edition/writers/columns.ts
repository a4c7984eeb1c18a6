/**
 * The column files behind the register's filter and the look-up: one array a column, so that ten thousand
 * lots stay small.
 */
import { dateOf } from '../../core/measure/moment.ts'
import { OUTCOMES } from '../../core/criteria/outcome.ts'
import { isUnconfirmed, setName } from '../../core/criteria/criterion.ts'
import { TRIAL_HEADING } from '../../words/outcomes.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, ShipmentEntry } from '../shape/edition.ts'
import { lotOfShipment, notOneLotOf, standingOfShipment } from '../shape/possible-lots.ts'
import { shipmentsInOrder } from '../shape/shipments-of-sources.ts'
import { standingData, standingOf } from '../shape/standing.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { shortfallInWords } from '../shape/verdict-words.ts'
import { toSignificant } from '../../core/measure/rounding.ts'
import { partOfSource } from '../shape/part-of-source.ts'

/** Digits of a value in a column, enough to sort and to draw by. */
const DIGITS = 6

/** data/index.json: lots in order of source and sampling. */
export function lotColumns(edition: Edition): object {
  const lots = [...edition.lots.values()]
  const criteria = [...new Set(lots.flatMap((lot) => lot.outcomes.map(({ criterion }) => criterion)))].sort()
  const sources = placesOf(edition.sources)
  const standings = standingColumns(edition, lots, criteria)
  const data = lots.map((lot) => standingData(edition, lot))
  const sets = sharedTexts(lots.map((lot) => governingSet(edition, lot)))
  const shortfalls = new Map([...edition.sources.keys()].flatMap((id) => shortfallsOf(edition, id)))
  return {
    format: 1,
    asOf: edition.asOf.text,
    criteria,
    sources: [...sources.keys()],
    outcomes: OUTCOMES,
    standings: standings.texts,
    sets: sets.texts,
    columns: {
      lot: lots.map((lot) => lot.id),
      number: lots.map((lot) => lot.number),
      source: lots.map((lot) => sources.get(lot.source) ?? -1),
      sampled: lots.map((lot) => dateOf(lot.sampled).text),
      issued: lots.map((lot) => lot.issued?.date.text ?? null),
      state: lots.map((lot) => lot.state),
      class: lots.map((lot) => lot.class ?? null),
      outcome: outcomeColumns(lots, criteria),
      standing: standings.columns,
      governingStanding: standings.governing,
      governingSet: sets.places,
      governingShortfall: lots.map((lot) => shortfalls.get(lot.id) ?? null),
      due: data.map(({ due }) => due),
      overdueSince: data.map(({ overdueSince }) => overdueSince),
      values: valueColumns(edition),
    },
    formerly: Object.fromEntries(lots.flatMap((lot, index) => lot.formerly.map((id) => [id, index]))),
  }
}

/** The set that governs a lot with its class; null for a lot that is not judged. */
function governingSet({ criteria }: Pick<Edition, 'criteria'>, lot: ListedLot): string | null {
  const set = criteria.get(lot.outcomes[0]?.criterion ?? '')
  if (set === undefined) return null
  const trial = isUnconfirmed(set) ? ` (${TRIAL_HEADING.toLowerCase()})` : ''
  return `${setName(set)}${lot.class === undefined ? '' : `, class ${lot.class}`}${trial}`
}

/** Texts that many share, each once, and the place of each item's own; −1 where it has none. */
function sharedTexts(items: readonly (string | null)[]): {
  readonly texts: readonly string[]
  readonly places: readonly number[]
} {
  const places = new Map<string, number>()
  for (const text of items) if (text !== null && !places.has(text)) places.set(text, places.size)
  return {
    texts: [...places.keys()],
    places: items.map((text) => (text === null ? -1 : (places.get(text) ?? -1))),
  }
}

/** Of the lots of a source that have one. */
const shortfallsOf = partOfSource(
  'shortfalls',
  (edition: Edition, source): readonly (readonly [lot: string, text: string])[] =>
    edition.lotsOf(source).flatMap((lot): [string, string][] => {
      const text = shortfallOf(edition, lot)
      return text === null ? [] : [[lot.id, text]]
    }),
)

/** Which clause of the governing set is not met and by how much; null where it is met or open. */
function shortfallOf(edition: Edition, { id, outcomes }: ListedLot): string | null {
  if (outcomes[0]?.outcome !== 'does-not-meet') return null
  const [verdict] = edition.lot(id).verdicts
  if (verdict === undefined || !edition.criteria.has(verdict.criterion)) return null
  return plainSpaces(shortfallInWords(edition, verdict))
}

/** Each id's place in the order of a map. */
function placesOf(map: ReadonlyMap<string, unknown>): Map<string, number> {
  return new Map([...map.keys()].map((id, place) => [id, place]))
}

/** By criterion, each lot's outcome as its place among the outcomes; −1 where the lot is not judged under it. */
function outcomeColumns(
  lots: readonly ListedLot[],
  criteria: readonly string[],
): Record<string, readonly number[]> {
  const places = new Map(OUTCOMES.map((outcome, place) => [outcome, place]))
  const columns = new Map(criteria.map((id) => [id, new Array<number>(lots.length).fill(-1)]))
  for (const [index, lot] of lots.entries())
    for (const { criterion, outcome } of lot.outcomes) {
      const column = columns.get(criterion)
      if (column !== undefined) column[index] = places.get(outcome) ?? -1
    }
  return Object.fromEntries(columns)
}

/**
 * By criterion and under the governing one, each lot's state and outcome in words as their place among `texts`, which many lots share; under a
 * set that does not judge the lot they say so.
 */
function standingColumns(
  edition: Edition,
  lots: readonly ListedLot[],
  criteria: readonly string[],
): {
  readonly texts: readonly Pick<LotStanding, 'mark' | 'text'>[]
  readonly columns: Readonly<Record<string, readonly number[]>>
  readonly governing: readonly number[]
} {
  const places = new Map<string, number>()
  const texts: Pick<LotStanding, 'mark' | 'text'>[] = []
  const placeOf = ({ mark, text }: LotStanding): number => {
    const known = places.get(text)
    if (known !== undefined) return known
    places.set(text, texts.length)
    return texts.push({ mark, text }) - 1
  }
  const columns = criteria.map(
    (id) => [id, lots.map((lot) => placeOf(standingOf(edition, lot, id)))] as const,
  )
  const governing = lots.map((lot) => placeOf(standingOf(edition, lot)))
  return { texts, columns: Object.fromEntries(columns), governing }
}

type ValueColumn = (number | null)[]

function valueColumns(edition: Edition): Record<string, ValueColumn> {
  const places = placesOf(edition.lots)
  const columns = new Map<string, ValueColumn>()
  for (const id of edition.sources.keys())
    for (const { name, values } of valuesOf(edition, id)) {
      const column = columns.get(name) ?? new Array<number | null>(places.size).fill(null)
      columns.set(name, column)
      for (const [lot, value] of values) {
        const index = places.get(lot)
        if (index !== undefined) column[index] = value
      }
    }
  return Object.fromEntries(columns)
}

interface NamedValues {
  readonly name: string
  /** Of the lots that have one. */
  readonly values: readonly (readonly [lot: string, value: number])[]
}

/** Every series of a source, also where no lot has a value. */
const valuesOf = partOfSource('values', (edition: Edition, source): readonly NamedValues[] =>
  edition.source(source).series.map(({ property, condition, age, points }) => ({
    name: `${property}|${condition ?? ''}|${age?.text ?? ''}`,
    values: points.flatMap(({ lot, status, value }): [string, number][] =>
      status === 'valid' && value !== null ? [[lot, toSignificant(value, DIGITS)]] : [],
    ),
  })),
)

/**
 * data/shipments.json: bills of lading with the lot's place in data/index.json; −1 for a shipment of no one lot,
 * which `several` tells of.
 */
export function shipmentColumns(edition: Edition): object {
  const inOrder = shipmentsInOrder(edition)
  const shipments = inOrder.map(({ shipment }) => shipment)
  const places = placesOf(edition.lots)
  const left = sharedTexts(inOrder.map(({ left }) => plainSpaces(left.join('; ')) || null))
  return {
    format: 1,
    left: left.texts,
    columns: {
      bill: shipments.map((shipment) => shipment.bill),
      date: shipments.map((shipment) => shipment.date.text),
      mass: shipments.map((shipment) => toSignificant(shipment.massT, DIGITS)),
      lot: shipments.map((shipment) => places.get(lotOfShipment(shipment) ?? '') ?? -1),
      left: left.places,
    },
    several: shipments.flatMap((shipment, index) =>
      lotOfShipment(shipment) === null ? [severalLots(edition, shipment, { index, places })] : [],
    ),
  }
}

/** The places of a shipment and of the lots that it may be of, with the worst of how they stand. */
function severalLots(
  edition: Edition,
  shipment: ShipmentEntry,
  { index, places }: { readonly index: number; readonly places: ReadonlyMap<string, number> },
): object {
  const standing = standingOfShipment(edition, shipment)
  return {
    shipment: index,
    lots: shipment.lots.flatMap((id) => places.get(id) ?? []),
    mark: standing?.mark ?? null,
    standing: standing?.text ?? '',
    note: notOneLotOf(edition, shipment) ?? '',
  }
}
