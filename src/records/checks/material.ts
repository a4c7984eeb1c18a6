/** Where the material of a source went: balance by month and silo, what was diverted, shipments of several lots. */
import { dateOf, type Moment } from '../../core/measure/moment.ts'
import { once } from '../../core/measure/once.ts'
import { presentId } from '../../core/measure/lot-id.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Source } from '../schema/loaded-records.ts'
import { checkDate, checkExclusions, checkMonth, checkOrder } from './dates.ts'
import { checkFinished } from './finished-results.ts'
import { checkOxides } from './oxides.ts'
import { type AllRecords, checkReference } from './references.ts'

/** @param id of the source */
export function checkMaterial(id: string, source: Source, all: AllRecords, report: FileReport): void {
  checkBalance(source.balance ?? [], report)
  const lots = lotsOfSource(id, all)
  for (const [index, entry] of (source.diverted ?? []).entries())
    checkDiverted(entry, `/diverted/${index}`, { lots, all, report })
  for (const [index, shipment] of (source.shipments ?? []).entries())
    checkShipment(shipment, `/shipments/${index}`, { lots, all, report })
}

interface Against {
  readonly lots: LotsOfSource
  readonly all: AllRecords
  readonly report: FileReport
}

/** A month and silo has one line, else nobody knows which of two counts. */
function checkBalance(balance: NonNullable<Source['balance']>, report: FileReport): void {
  const lines = new Map<string, number>()
  const whole = new Set(balance.flatMap(({ month, silo }) => (silo === undefined ? [month] : [])))
  for (const [index, { month, silo }] of balance.entries()) {
    checkMonth(month, `/balance/${index}/month`, report)
    const key = JSON.stringify([month, silo ?? null])
    const first = lines.get(key)
    if (first === undefined) lines.set(key, index)
    else
      report.at(
        `/balance/${index}/month`,
        'duplicate-id',
        `two lines are for ${month}${silo === undefined ? '' : `, silo ${silo}`}`,
        'write one line for each month and silo',
        [report.place(`/balance/${first}/month`, 'the first line of this month')],
      )
    if (silo !== undefined && whole.has(month))
      report.at(
        `/balance/${index}/silo`,
        'duplicate-id',
        `${month} has a line for silo ${silo} and one for all silos together`,
        'write the month by silo or as a whole, so that no mass counts twice',
      )
  }
}

type Diverted = NonNullable<Source['diverted']>[number]

function checkDiverted(entry: Diverted, at: string, { lots, all, report }: Against): void {
  const { on, tested, results, lot, laboratory } = entry
  checkReference('laboratory', laboratory, `${at}/laboratory`, all, report)
  checkDate(tested, `${at}/tested`, report)
  if (results !== undefined && tested === undefined)
    report.atKey(
      `${at}/results`,
      'key-missing',
      '"tested" is missing beside "results"',
      'add tested: with the day of the test',
    )
  checkResults(entry, `${at}/results`, all, report)
  const isDated = checkDate(on, `${at}/on`, report)
  if (lot === undefined) return
  lots.check(lot, `${at}/lot`, report)
  if (isDated) checkProduced(lots.producedFrom(lot), on, `${at}/on`, { what: `diverted from ${lot}`, report })
}

/** What a laboratory reported of it, as of any other analysis. */
function checkResults({ results, tested }: Diverted, at: string, all: AllRecords, report: FileReport): void {
  if (results === undefined) return
  checkExclusions(results, tested, at, report)
  checkOxides(results, at, report)
  checkFinished(results, at, all, report)
}

type Shipment = NonNullable<Source['shipments']>[number]

function checkShipment({ date, lots: names }: Shipment, at: string, { lots, report }: Against): void {
  const isDated = checkDate(date, `${at}/date`, report)
  for (const [index, lot] of names.entries()) {
    lots.check(lot, `${at}/lots/${index}`, report)
    if (isDated)
      checkProduced(lots.producedFrom(lot), date, `${at}/date`, { what: `shipped from ${lot}`, report })
  }
}

function checkProduced(
  earlier: Moment | undefined,
  later: Moment,
  pointer: string,
  { what, report }: { readonly what: string; readonly report: FileReport },
): void {
  checkOrder(
    {
      earlier: earlier && dateOf(earlier),
      later,
      pointer,
      sentence: `${what} before its production began`,
    },
    report,
  )
}

interface LotsOfSource {
  readonly producedFrom: (name: string) => Moment | undefined
  /** Reports a lot that this source does not have; one whose file has a fault of its own is there. */
  readonly check: (name: string, pointer: string, report: FileReport) => void
}

function lotsOfSource(source: string, all: AllRecords): LotsOfSource {
  const idOf = (name: string) => `${source}/${name}`
  const own = once(
    () =>
      new Set(
        [...all.names('lot')].flatMap((id) =>
          id.startsWith(`${source}/`) ? [id.slice(source.length + 1)] : [],
        ),
      ),
  )
  return {
    producedFrom: (name) => all.lots.get(presentId(all.lots, idOf(name)) ?? '')?.produced.from,
    check: (name, pointer, report) => {
      if (all.has('lot', idOf(name))) return
      report.at(
        pointer,
        'reference-unknown',
        `this source has no lot "${name}"`,
        nearNames(name, own()) || 'write the lot’s record first, or use the id of one that exists',
      )
    },
  }
}
