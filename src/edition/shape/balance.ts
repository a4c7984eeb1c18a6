/** The material balance of a source from its records: what the ledger of months says beside lots and diversions. */
import {
  type BalanceLine,
  type BalanceRow,
  materialBalance,
  type Placed,
} from '../../core/checks/material-balance.ts'
import { defined } from '../../core/measure/defined.ts'
import { type Moment, monthOf } from '../../core/measure/moment.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import type { LotEntry } from './edition.ts'

/** What the balance asks of a lot. */
type Balanced = Pick<LotEntry, 'state'> & {
  readonly tonnes: number
  readonly record: Pick<Lot, 'produced' | 'silo'>
}

/** Line by line; none where no balance is kept. */
export function balanceRows(
  { balance = [], diverted = [] }: Source,
  lots: readonly Balanced[],
): BalanceRow[] {
  if (balance.length === 0) return []
  const lines = balance.map(
    (line): BalanceLine => ({
      month: line.month,
      ...defined({ silo: line.silo, stock: line.stock?.value }),
      produced: line.produced.value,
      diverted: line.diverted?.value ?? 0,
      rejected: line.rejected?.value ?? 0,
    }),
  )
  const certified = lots
    .filter(isCertified)
    .map(({ record: { produced, silo }, tonnes }) => placed(produced.to, silo, tonnes))
  return materialBalance(
    lines,
    certified,
    diverted.map(({ on, silo, mass }) => placed(on, silo, mass.value)),
  )
}

function isCertified({ state }: Pick<LotEntry, 'state'>): boolean {
  return state === 'provisional' || state === 'complete'
}

function placed(day: Moment, silo: string | undefined, tonnes: number): Placed {
  return { month: monthOf(day), ...defined({ silo }), tonnes }
}
