/** Audit checks: the material balance of a source, and what was shipped against what was certified. */
import { sum } from '../statistics/descriptive.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'
import type { BalanceRow } from './material-balance.ts'

/** Of what was produced in a month, what scales and moisture may explain: own choice. */
const EXPLAINED = 0.05
/** Months named: own choice. */
const SHOWN = 5
/** Tonnes that two records of one diversion may differ by in rounding: own choice. */
const ROUNDING_T = 1
/** Scales of silo and truck agree to about so much: own choice, as for the shipments of one lot. */
const SCALES = 0.01

/** Masses in tonnes. */
export interface KeptBalance {
  readonly source: string
  /** In order of month and silo. */
  readonly rows: readonly BalanceRow[]
  /** Whether the source keeps a ledger of what was diverted. */
  readonly ledger: 'kept' | 'not-kept'
  readonly shippedT: number
  /** Mass of all lots that have a certificate. */
  readonly certifiedT: number
}

/**
 * Warnings about months that do not balance, about diversions that the ledger does not hold, and about more shipped
 * than certified.
 */
export function balanceKept(of: KeptBalance): Checked[] {
  return [unbalanced(of), ledgerApart(of), aboveCertified(of)]
}

function unbalanced({ source, rows }: KeptBalance): Checked {
  const told = rows.flatMap((row) =>
    row.difference === null ? [] : [{ ...row, difference: row.difference }],
  )
  const off = told.filter(({ difference, produced }) => EXPLAINED * produced < Math.abs(difference))
  const listed = off.slice(-SHOWN).map(({ month, silo = null, difference, produced }) => ({
    month,
    silo,
    difference,
    produced,
  }))
  const total = sum(told.map(({ difference }) => difference))
  const params = { source, off: off.length, of: told.length, total, percent: 100 * EXPLAINED, listed }
  const findings: Finding[] = off.length === 0 ? [] : [found(source, { code: 'balance-off', params })]
  return { check: 'balance-off', looked: told.length, findings }
}

function ledgerApart({ source, rows, ledger }: KeptBalance): Checked {
  const looked = ledger === 'kept' ? rows : []
  const apart = looked.filter(
    ({ diverted, divertedOnRecord }) => ROUNDING_T < Math.abs(diverted - divertedOnRecord),
  )
  const listed = apart.slice(-SHOWN).map(({ month, silo = null, diverted, divertedOnRecord }) => ({
    month,
    silo,
    balance: diverted,
    ledger: divertedOnRecord,
  }))
  const params = { source, apart: apart.length, of: looked.length, listed }
  const findings: Finding[] = apart.length === 0 ? [] : [found(source, { code: 'diversion-apart', params })]
  return { check: 'diversion-apart', looked: looked.length, findings }
}

function aboveCertified({ source, shippedT, certifiedT }: KeptBalance): Checked {
  const params = { source, shippedT, certifiedT }
  const findings: Finding[] =
    (1 + SCALES) * certifiedT < shippedT ? [found(source, { code: 'shipped-above-certified', params })] : []
  return { check: 'shipped-above-certified', looked: 0 < shippedT ? 1 : 0, findings }
}
