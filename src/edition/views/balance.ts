/** The material balance of a source, with what was diverted and why. */
import type { BalanceRow } from '../../core/checks/material-balance.ts'
import { isPropertyKey, property } from '../../core/measure/properties.ts'
import { figuresOf } from '../../core/mortar/mortar.ts'
import { shortDate } from '../../words/dates.ts'
import { signed, quantity } from '../../words/units.ts'
import { balanceRows } from '../shape/balance.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { type Linked, linked } from './linked.ts'

export interface BalanceView {
  readonly rows: readonly BalanceRowView[]
  /** The latest first. */
  readonly diverted: readonly DivertedView[]
  /** Why no difference is given; null where it is. */
  readonly note: string | null
}

export interface BalanceRowView {
  /** "2026-03" */
  readonly month: string
  /** null for all silos together. */
  readonly silo: string | null
  /** With their units; null where not recorded. */
  readonly produced: string
  readonly certified: string
  readonly diverted: string
  readonly rejected: string
  readonly stockChange: string | null
  readonly difference: string | null
}

export interface DivertedView {
  readonly on: string
  readonly mass: string
  readonly silo: string | null
  readonly reason: string
  readonly where: string | null
  /** Lot that it was taken from. */
  readonly lot: Linked | null
  /** "Strength activity index, 7 d: 73.8 %", with the laboratory and the day. */
  readonly results: readonly string[]
  readonly tested: string | null
}

/** @returns null for a source that keeps neither balance nor ledger @throws RangeError for one not in the edition */
export function balanceView(edition: Edition, id: string): BalanceView | null {
  const source = edition.source(id)
  const { balance = [], diverted = [] } = source.record
  if (balance.length === 0 && diverted.length === 0) return null
  const hidden = 0 < source.unpublished
  return {
    rows: rowViews(edition, source, hidden ? 'hidden-lots' : 'all-lots'),
    diverted: diverted.map((entry) => divertedView(edition, id, entry)).reverse(),
    note: hidden ? 'Lots that are not shown are not counted, so no difference is given.' : null,
  }
}

/** The balance of a source with its lots, line by line. */
export function balanceOf(edition: Edition, { id, record }: SourceEntry): BalanceRow[] {
  const lots = edition.lotsOf(id).map((row) => ({ ...row, record: edition.lot(row.id).record }))
  return balanceRows(record, lots)
}

function rowViews(edition: Edition, source: SourceEntry, lots: 'all-lots' | 'hidden-lots'): BalanceRowView[] {
  const { units } = edition.site
  const mass = (tonnes: number) => quantity(tonnes, 0, 't', units)
  return balanceOf(edition, source).map((row) => ({
    month: row.month,
    silo: row.silo ?? null,
    produced: mass(row.produced),
    certified: mass(row.certified),
    diverted: mass(row.diverted),
    rejected: mass(row.rejected),
    stockChange: row.stockChange === null ? null : signed(row.stockChange, 0, 't', units),
    difference:
      row.difference === null || lots === 'hidden-lots' ? null : signed(row.difference, 0, 't', units),
  }))
}

type Entry = NonNullable<SourceEntry['record']['diverted']>[number]

function divertedView(edition: Edition, source: string, entry: Entry): DivertedView {
  const laboratory =
    entry.laboratory && (edition.laboratories.get(entry.laboratory)?.name ?? entry.laboratory)
  const tested = [laboratory, entry.tested && shortDate(entry.tested)].filter((part) => part !== undefined)
  return {
    on: shortDate(entry.on),
    mass: quantity(entry.mass.value, 0, 't', edition.site.units),
    silo: entry.silo ?? null,
    reason: entry.reason,
    where: entry.where ?? null,
    lot:
      entry.lot === undefined
        ? null
        : linked(edition, entry.lot, paths.certificate(`${source}/${entry.lot}`)),
    results: resultLines(entry),
    tested: tested.length === 0 ? null : tested.join(', '),
  }
}

function resultLines({ results = {} }: Entry): string[] {
  return Object.entries(results).flatMap(([key, value]) =>
    value === undefined || !isPropertyKey(key)
      ? []
      : figuresOf(value).map((figure) => {
          const age = 'age' in figure && figure.age !== undefined ? `, ${figure.age}` : ''
          return `${property(key).title}${age}: ${figure.value.written}`
        }),
  )
}
