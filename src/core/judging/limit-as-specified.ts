/** A value against one limit as specified: the rounded value decides, and nothing is kept for doubt. */
import type { Comparison } from '../criteria/criterion.ts'
import { type ClassLimit, statedLimit } from '../criteria/limits-for-class.ts'
import type { BoundedParams, ComparedReason, ComparedSubject } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import { property } from '../measure/properties.ts'
import { withoutDust } from '../measure/rounding.ts'
import { type BoundEnd, extentOf, isBounded } from '../result/bounds.ts'
import type { Answer, ComparedValue, JudgedValue } from './compare-with-limit.ts'
import { inUnitOf } from './limit-unit.ts'

export interface AsSpecified {
  readonly outcome: 'meets' | 'does-not-meet' | 'not-reported'
  readonly reason: ComparedReason
}

interface OneLimit {
  readonly clause: Comparison
  readonly limit: ClassLimit
  readonly judged: JudgedValue
  /** The value as compared with that limit. */
  readonly compared: ComparedValue
}

/** The outcome that the rounded value gives, and its reason. */
export function limitAsSpecified(one: OneLimit): AsSpecified {
  return { outcome: OUTCOMES[one.compared.answer], reason: reasonOf(one) }
}

/** A value whose bounds lie on both sides of the limit is no report of it. */
const OUTCOMES = {
  met: 'meets',
  'not-met': 'does-not-meet',
  'cannot-decide': 'not-reported',
} as const satisfies Readonly<Record<Answer, AsSpecified['outcome']>>

function reasonOf({ clause, limit, judged, compared }: OneLimit): ComparedReason {
  const stated = statedLimit(limit)
  const figure = {
    value: compared.shown,
    decimals: compared.shownDecimals,
    unit: compared.shownUnit,
  }
  if (isBounded(judged))
    return isReportedBelow(clause, judged)
      ? { code: 'censored-with-limit', params: { below: figure, answer: compared.answer, limit: stated } }
      : {
          code: 'bounds-with-limit',
          params: { ...boundedParams(clause, limit, judged), answer: compared.answer },
        }
  // Said only where the value is shown in its stored unit: in another the digits would not be comparable.
  const rounded = compared.shownAsStored && judged.value !== compared.compared
  return {
    code: 'compared-with-limit',
    params: defined({
      subject: subjectOf(clause),
      compared: figure,
      unrounded: rounded ? judged.value : undefined,
      met: compared.answer === 'met',
      limit: stated,
    }),
  }
}

/** What a laboratory writes as "< 0.5 %", or a source declares so; a sum or a difference has two ends to tell. */
function isReportedBelow({ property: key, deviation }: Comparison, { censored }: JudgedValue): boolean {
  return censored !== undefined && deviation === undefined && property(key).nature !== 'derived'
}

function boundedParams(
  clause: Comparison,
  limit: ClassLimit,
  judged: JudgedValue,
): Omit<BoundedParams, 'answer'> {
  const { low, high } = extentOf(judged)
  const [first] = limit.quantities
  const inUnit = ({ at }: BoundEnd) =>
    Number.isFinite(at) && first !== undefined ? withoutDust(inUnitOf(first, at)) : null
  return {
    subject: subjectOf(clause),
    low: inUnit(low),
    high: inUnit(high),
    decimals: first?.decimals ?? 0,
    unit: first?.unit ?? '',
    limit: statedLimit(limit),
  }
}

function subjectOf({ statistic, deviation }: Comparison): ComparedSubject {
  if (statistic?.of === 'rolling-mean') return 'mean'
  if (statistic?.of === 'variables') return 'estimate'
  if (statistic?.of === 'declared') return 'declared'
  return deviation === undefined ? 'value' : 'deviation'
}
