/**
 * Audit check: lots whose measured values all agree to the last digit. A few values of few digits agree by chance in a
 * long history, so it is asked only where that is unlikely.
 */
import type { PropertyKey } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { AuditedLot } from './audited.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** Values that have to agree: practice of an auditor, no source. */
const FEWEST = 3

/** Values of a lot as written, by property. */
interface Row {
  readonly lot: string
  readonly values: ReadonlyMap<PropertyKey, string>
}

/**
 * A warning for each set of lots that are alike.
 * @param source id
 * @param lots in order of sampling
 * @returns one look for each set of properties that lots report
 * Notes: 1. reported values alone, without condition: a computed index follows from its readings, which have a check
 * of their own, as rows of oxides have; 2. what chance does is reckoned from how often each value occurs, as though
 * the properties were independent of one another and the lots of their neighbours.
 */
export function lotsAlike(source: string, lots: readonly AuditedLot[]): Checked {
  const rows = lots.map(rowOf).filter(({ values }) => FEWEST <= values.size)
  const groups = [...Map.groupBy(rows, ({ values }) => [...values.keys()].join('|')).values()].filter(
    (own) => 1 < own.length,
  )
  const findings = groups.flatMap((own) => alikeAmong(source, own))
  return { check: 'lots-alike', looked: groups.length, findings }
}

function rowOf({ id: lot, results }: AuditedLot): Row {
  const values = new Map<PropertyKey, string>()
  for (const result of results.filter(isReported).sort((a, b) => (a.property < b.property ? -1 : 1)))
    if (!values.has(result.property)) values.set(result.property, result.written ?? '')
  return { lot, values }
}

function isReported({ role, valid, written, condition, property }: Result): boolean {
  return (
    role === 'producer' && valid && written !== undefined && condition === undefined && !OXIDE.test(property)
  )
}

/** Oxides and alkalis are keyed by their formulas. */
const OXIDE = /^[A-Z]/

function alikeAmong(source: string, rows: readonly Row[]): Finding[] {
  const expected = agreeByChance(rows)
  // With more pairs to be expected by chance alone, nothing is asked.
  if ((CHECKS['lots-alike'].rate ?? 0) <= expected) return []
  const alike = Map.groupBy(rows, ({ values }) => [...values.values()].join('|'))
  return [...alike.values()].flatMap((own): Finding[] => {
    const [first] = own
    if (first === undefined || own.length < 2) return []
    const values = [...first.values].map(([property, written]) => ({ property, written }))
    const params = { source, lots: own.map(({ lot }) => lot), values, expected }
    return [
      found(source, { code: 'lots-alike', params }, ...own.map(({ lot }) => lot.slice(source.length + 1))),
    ]
  })
}

/** Pairs of rows that would agree in all values, from the share of pairs that agree in each. */
function agreeByChance(rows: readonly Row[]): number {
  const pairs = (rows.length * (rows.length - 1)) / 2
  const properties = [...(rows[0]?.values.keys() ?? [])]
  const shares = properties.map((property) => {
    const counts = Map.groupBy(rows, ({ values }) => values.get(property))
    const agreeing = [...counts.values()].reduce((sum, { length }) => sum + (length * (length - 1)) / 2, 0)
    return agreeing / pairs
  })
  return shares.reduce((product, share) => product * share, pairs)
}
