/** Classification without a verdict: the first band or region whose demands hold names the value. */
import type { Band } from '../criteria/criterion.ts'
import type { Finding } from './judged-clause.ts'
import type { Bench } from './limits.ts'
import { allHold, answersOf, type Holds } from './premises.ts'
import { property } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import { KINDS } from '../measure/units.ts'

/** @param result of the clause's own property; other properties of a region are looked up in the evidence */
export function classified(bench: Bench, result: Result, key: string | null): Finding {
  const { clause } = bench
  const { kind, decimals } = property(clause.property)
  const shared = {
    value: result.value,
    compared: result.value,
    unit: KINDS[kind].stored,
    decimals,
    result: key,
  }
  const answers = (clause.bands ?? []).map((band) => ({ band, answer: falls(band, result, bench) }))
  const found = answers.find(({ answer }) => answer.holds !== 'no')
  if (found === undefined) return { ...shared, outcome: 'reported', reason: 'falls into none of the bands' }
  if (found.answer.holds === 'open')
    return { ...shared, outcome: 'not-reported', reason: `classified by ${found.answer.because}` }
  return {
    ...shared,
    outcome: 'reported',
    reason: `classified as ${found.band.title}; no limit`,
    band: found.band.title,
  }
}

function falls({ where }: Band, result: Result, { clause, evidence, lotClass }: Bench): Holds {
  const own = where.filter((premise) => premise.property === clause.property)
  const others = where.filter((premise) => premise.property !== clause.property)
  const answers = own.flatMap((premise) => answersOf(premise.limits, result, lotClass))
  if (answers.includes('not-met')) return { holds: 'no', because: clause.property }
  if (answers.includes('cannot-decide'))
    return { holds: 'open', because: 'a censored result that lies on both sides of a band’s limit' }
  return allHold(others, evidence, lotClass)
}
