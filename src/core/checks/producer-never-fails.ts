/** Audit check: an agency's results fail a limit that none of the producer's does. */
import type { Pair } from '../agency/pairs.ts'
import type { SidesOfLimit } from '../agency/sides.ts'
import { kept } from '../measure/kept.ts'
import { everyClauseOutcome } from '../criteria/verdict.ts'
import type { AuditedLot } from './audited.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** Chance below which it is asked: own choice. */
const chance = () => CHECKS['producer-never-fails'].rate ?? 0

/** A limit with the agency's results held against it. */
interface Held {
  readonly pair: Pair
  readonly limit: SidesOfLimit['limit']
  readonly clause: string
  results: number
  failed: number
}

/**
 * Information on each limit that the agency's results alone fail.
 * @param source id
 * @param lots in order of sampling, with their governing verdicts
 * @param pairs of the source, of both kinds
 * @returns looks are limits that both sides were held against
 * Source: had all results the same chance to fail, that all failures are the agency's has the hypergeometric
 * probability C(m, k) / C(m + n, k), k of the agency's m having failed and none of the producer's n (elementary).
 */
export function producerNeverFails(
  source: string,
  lots: readonly AuditedLot[],
  pairs: readonly Pair[],
): Checked {
  const producers = producersByClause(lots)
  const held = [...heldByClause(pairs).values()].filter(({ clause }) => producers.has(clause))
  const findings = held.flatMap(({ pair, clause, limit, results, failed }): Finding[] => {
    const own = producers.get(clause) ?? { met: 0, failed: 0 }
    const probability = allAgencys(failed, results, own.met)
    if (failed === 0 || 0 < own.failed || chance() <= probability) return []
    const test = { property: pair.property, condition: pair.condition ?? null, age: pair.age?.text ?? null }
    const counts = { agency: results, agencyFailed: failed, producer: own.met }
    const params = { source, clause, limit, ...test, ...counts, probability }
    return [found(source, { code: 'producer-never-fails', params }, clause)]
  })
  return { check: 'producer-never-fails', looked: held.length, findings }
}

function heldByClause(pairs: readonly Pair[]): Map<string, Held> {
  const byClause = new Map<string, Held>()
  for (const pair of pairs)
    for (const { clause, limit, agency } of pair.sides) {
      if (agency === 'open') continue
      const held = kept(byClause, clause, (): Held => ({ pair, clause, limit, results: 0, failed: 0 }))
      held.results += 1
      if (agency === 'would-not-meet') held.failed += 1
    }
  return byClause
}

function producersByClause(lots: readonly AuditedLot[]): Map<string, { met: number; failed: number }> {
  const byClause = new Map<string, { met: number; failed: number }>()
  for (const {
    verdicts: [governing],
  } of lots)
    for (const { id, outcome } of everyClauseOutcome(governing?.clauses ?? [])) {
      if (outcome !== 'meets' && outcome !== 'does-not-meet') continue
      const counts = kept(byClause, id, () => ({ met: 0, failed: 0 }))
      if (outcome === 'meets') counts.met += 1
      else counts.failed += 1
    }
  return byClause
}

function allAgencys(failed: number, agency: number, producer: number): number {
  let probability = 1
  for (let place = 0; place < failed; place += 1)
    probability *= (agency - place) / (agency + producer - place)
  return probability
}
