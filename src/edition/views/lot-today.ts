/** What the records say of a lot today, kept apart from its certificate. */
import { type Moment, yearOf } from '../../core/measure/moment.ts'
import { sum } from '../../core/statistics/descriptive.ts'
import { plural } from '../../words/numbers.ts'
import { upToMore } from '../../words/possible-lots.ts'
import { propertyWords } from '../../words/property-names.ts'
import { sentence } from '../../words/sentences.ts'
import { type LotStanding, testName } from '../../words/standing.ts'
import { laterResultSentence } from '../../words/outstanding.ts'
import { massText, quantity, resultText } from '../../words/units.ts'
import { paths } from '../shape/addresses.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import { dayBeside } from '../shape/due.ts'
import type { ChangedValue, Edition, LotEntry, Revision, ShipmentEntry } from '../shape/edition.ts'
import { resultsSince } from '../shape/due.ts'
import { listedLot } from '../shape/listing.ts'
import { replacedLots } from '../shape/replaced-lots.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import { standingOf } from '../shape/standing.ts'
import { type AgencyOfLot, agencyOfLot } from './agency-of-lot.ts'
import { type ListedFinding, listedFindings } from './findings.ts'
import { type HistoryCharts, historyCharts } from './history-charts.ts'
import { type JudgeUnderView, judgeUnderView } from './judge-under.ts'
import { type Linked, linked } from './linked.ts'
import { overdueLines } from './overdue.ts'
import { shipmentStandings } from './shipments.ts'

export interface LotTodayView {
  readonly id: string
  readonly source: string
  /** Calendar year of sampling. */
  readonly year: string
  /** Day of the records; null where nothing is awaited, so that it says the same on any later day. */
  readonly asOf: Moment | null
  /** State and governing verdict today. */
  readonly standing: LotStanding
  /** What the certificate prints otherwise than it is today, a sentence each. */
  readonly changed: readonly string[]
  /** Valid results that came since the newest revision, a sentence each. */
  readonly later: readonly string[]
  /** Withdrawn lots that it replaces, in the order of the lots. */
  readonly replaces: readonly Linked[]
  /** What is overdue, a line each. */
  readonly overdue: readonly string[]
  /** null where nothing was shipped. */
  readonly shipments: ShipmentsOfLot | null
  /** The newest first, each with the path of its page. */
  readonly revisions: readonly (Revision & { readonly path: string })[]
  /** How many mortars its record has. */
  readonly mortars: number
  /** An agency's results beside the producer's; null where there are none to show. */
  readonly agency: AgencyOfLot | null
  readonly findings: readonly ListedFinding[]
  readonly judgeUnder: JudgeUnderView
  /** The lot among those before it; null where there is nothing to compare. */
  readonly history: HistoryCharts | null
}

export interface ShipmentsOfLot {
  /** How many, and how much of the lot. */
  readonly summary: string
  /** The first ones, as many as a page has room for, and how many more there are. */
  readonly shown: readonly (ShipmentEntry &
    ReturnType<ReturnType<typeof shipmentStandings>> & { readonly to: string; readonly mass: string })[]
  readonly more: number
  /** Whether any shipment tells where it went. */
  readonly named: boolean
}

const SHOWN = 40

export function lotTodayView(edition: Edition, lot: LotEntry): LotTodayView {
  const row = listedLot(lot)
  return {
    id: lot.id,
    source: lot.source,
    year: yearOf(lot.sampled),
    asOf: dayBeside(edition, row),
    standing: standingOf(edition, row),
    changed: changedSentences(edition, lot),
    later: laterSentences(edition, lot),
    replaces: replacedLots(edition, lot.id).map(({ id, number }) =>
      linked(edition, number, paths.certificate(id)),
    ),
    overdue: overdueLines(edition, [row]).map(({ text }) => sentence(text)),
    shipments: shipmentsOfLot(edition, lot),
    revisions: revisionsOf(lot),
    mortars: lot.record.tests?.length ?? 0,
    agency: agencyOfLot(edition, lot),
    findings: listedFindings(edition, lot.findings),
    judgeUnder: judgeUnderView(edition, { source: lot.source, lot: lot.id }),
    history: historyCharts(edition, lot),
  }
}

function changedSentences(edition: Edition, { changedValues, revisions }: LotEntry): string[] {
  const number = revisions.at(-1)?.number
  return changedValues.map((changed) => {
    const { issued, today } = changed
    const now = today === null ? 'no result of it counts' : `it is ${today}`
    return `Revision ${number} prints ${issued} for ${testTitle(edition, changed)}; as known today, ${now}.`
  })
}

/** Without those that stand in place of a value that the revision prints. */
function laterSentences(edition: Edition, lot: LotEntry): string[] {
  const number = lot.revisions.at(-1)?.number
  if (number === undefined) return []
  const told = new Set(lot.changedValues.map((changed) => testTitle(edition, changed)))
  return resultsSince(lot)
    .filter(({ valid }) => valid)
    .map((result) => ({ result, test: testTitle(edition, { ...result, age: result.age?.text }) }))
    .filter(({ test }) => !told.has(test))
    .map(({ result, test }) =>
      laterResultSentence(number, {
        test,
        result: resultText(result, edition.site.units),
        tested: result.tested,
      }),
    )
}

/** "7 d strength activity index (20 %, 23 °C)". */
function testTitle(
  edition: Edition,
  {
    property,
    condition,
    age,
  }: Pick<ChangedValue, 'property' | 'age'> & { readonly condition?: string | undefined },
): string {
  const name =
    age === undefined ? propertyWords({ property }) : testName({ property, age, conditionName: null })
  return condition === undefined ? name : `${name} (${conditionTitle(edition, condition)})`
}

function shipmentsOfLot(edition: Edition, lot: LotEntry): ShipmentsOfLot | null {
  const { shipments, sharedShipments } = lot
  const all = [...shipments, ...sharedShipments].sort(byDateAndBill)
  if (all.length === 0) return null
  const standing = shipmentStandings(edition)
  return {
    summary: shippedSummary(edition, lot),
    shown: all.slice(0, SHOWN).map((shipment) => ({
      ...shipment,
      to: destination(shipment),
      mass: quantity(shipment.massT, 1, 't', edition.site.units),
      ...standing(shipment),
    })),
    more: Math.max(0, all.length - SHOWN),
    named: all.some((shipment) => destination(shipment) !== ''),
  }
}

/** "3 shipments, 74 t of 1450 t, and up to 25.2 t more, from shipments not resolvable to one lot." */
function shippedSummary({ site }: Edition, { shipments, sharedShipments, record }: LotEntry): string {
  const tonnes = (all: readonly ShipmentEntry[]) => sum(all.map(({ massT }) => massT))
  const count = sentence(plural(shipments.length, 'shipment', 'shipments'))
  const [shipped, whole] = [
    massText(tonnes(shipments), site.units),
    massText(record.quantity.value, site.units),
  ]
  const more =
    sharedShipments.length === 0 ? '' : `, ${upToMore(quantity(tonnes(sharedShipments), 1, 't', site.units))}`
  return `${count}, ${shipped} of ${whole}${more}.`
}

function destination({ consignee, project, purchaseOrder }: ShipmentEntry): string {
  const order = purchaseOrder === undefined ? undefined : `purchase order ${purchaseOrder}`
  return [consignee, project, order].filter((part) => part !== undefined).join(', ')
}

/** The revision in force is the certificate's own page. */
function revisionsOf({ id, revisions }: LotEntry): LotTodayView['revisions'] {
  return revisions
    .map((revision, place) => ({
      ...revision,
      path: place === revisions.length - 1 ? paths.certificate(id) : paths.revision(id, revision.number),
    }))
    .reverse()
}
