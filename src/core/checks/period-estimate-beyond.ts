/** Audit check: the mean of a control period, less or plus a factor times its scatter, lies beyond its limit. */
import { type ClauseOutcome, everyClauseOutcome } from '../criteria/verdict.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/**
 * One finding for each clause by variables of the governing criterion that its newest estimate does not meet.
 * @param source id
 * @param lots in order of sampling, with their governing verdicts
 * @returns looks are clauses with an estimate
 * Notes: 1. the estimate is the one that judging made, so that nothing is computed twice; 2. a limit is no test: what
 * lies beyond it does, so that no flag is expected by chance.
 */
export function periodEstimatesBeyond(source: string, lots: readonly AuditedLot[]): Checked {
  const newest = new Map(lots.flatMap((lot) => estimatesOf(lot).map((one) => [one.place, one])))
  const findings = [...newest.values()].flatMap((one) => findingOf(source, one))
  return { check: 'period-estimate-beyond', looked: newest.size, findings }
}

interface Estimate {
  readonly place: string
  readonly lot: string
  readonly criterion: string
  readonly clause: ClauseOutcome
}

function estimatesOf({ id, verdicts: [governing] }: AuditedLot): Estimate[] {
  if (governing === undefined) return []
  const { criterion, clauses } = governing
  return [...everyClauseOutcome(clauses)]
    .filter(
      ({ outcome, reasons }) => outcome !== 'pending' && reasons.some(({ code }) => code === 'estimate-of'),
    )
    .map((clause) => ({ place: `${criterion}|${clause.id}`, lot: id, criterion, clause }))
}

function findingOf(source: string, { lot, criterion, clause: judged }: Estimate): Finding[] {
  const estimate = judged.reasons.find((reason) => reason.code === 'estimate-of')
  const { outcome, property, condition, age, value, unit, decimals, limit } = judged
  if (outcome !== 'does-not-meet' || estimate === undefined || property === undefined) return []
  if (value === null || unit === null || limit === null) return []
  const test = {
    source,
    lot,
    clause: judged.id,
    property,
    condition: condition ?? null,
    age: age?.text ?? null,
  }
  const stated = { operator: limit.operator, written: limit.written }
  const figures = { value, unit, decimals: decimals ?? estimate.params.mean.decimals, limit: stated }
  const params = { ...test, ...figures, ...estimate.params }
  return [found(source, { code: 'period-estimate-beyond', params }, criterion, judged.id)]
}
