/** A value against one limit as specified: the rounded value decides, and nothing is kept for doubt. */
import type { Comparison } from '../criteria/criterion.ts'
import { type ClassLimit, statedLimit } from '../criteria/limits-for-class.ts'
import type { ComparedReason, ComparedSubject } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import type { Answer, ComparedValue, JudgedValue } from './compare-with-limit.ts'

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

/** A censored value that lies on both sides of the limit is no report of it. */
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
  if (judged.censored !== undefined)
    return { code: 'censored-with-limit', params: { below: figure, answer: compared.answer, limit: stated } }
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

function subjectOf({ statistic, deviation }: Comparison): ComparedSubject {
  if (statistic?.of === 'rolling-mean') return 'mean'
  if (statistic?.of === 'variables') return 'estimate'
  if (statistic?.of === 'declared') return 'declared'
  return deviation === undefined ? 'value' : 'deviation'
}
