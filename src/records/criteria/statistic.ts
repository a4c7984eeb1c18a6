/** What a clause judges in place of the single result. */
import type { Comparison, Statistic } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import type { CompileContext } from './context.ts'
import { daysOf } from './duration.ts'
import type { WrittenClause, WrittenStatistic } from './written-criterion.ts'

/** @param deviation of the clause, with which only a tolerance goes together */
export function compileStatistic(
  context: CompileContext,
  written: WrittenClause,
  deviation: Comparison['deviation'],
  pointer: string,
): Statistic | undefined {
  if (written.statistic === undefined) return undefined
  const at = below(pointer, 'statistic')
  const statistic = statisticOf(context, written.statistic, at)
  if (statistic === undefined) return undefined
  checkDeviation(context, statistic, deviation, at)
  if (statistic.of === 'attributes' && !rises(statistic.acceptance))
    context.fault(
      below(at, 'attributes'),
      'criterion-statistic',
      'the acceptance numbers are not in rising order',
      'list them by number of results, the smallest first',
    )
  return statistic
}

/** A statistic is taken of results; only a tolerance may be on their deviations, from what does not move. */
function checkDeviation(
  context: CompileContext,
  statistic: Statistic,
  deviation: Comparison['deviation'],
  at: string,
): void {
  if (deviation !== undefined && statistic.of !== 'tolerance')
    context.fault(
      at,
      'criterion-statistic',
      `the statistic ${statistic.of} is computed from results, but the clause is on their deviation`,
      'remove "deviation-from" or "statistic"',
    )
  if (statistic.of === 'tolerance' && deviation?.from === 'preceding')
    context.fault(
      at,
      'criterion-statistic',
      'a share of results around a mean that moves with them has no meaning',
      'write "deviation-from: { declared: yes }"',
    )
}

/** More results never allow fewer beyond the limit. */
function rises(acceptance: readonly { readonly from: number; readonly allow: number }[]): boolean {
  return acceptance.every(({ from, allow }, index) => {
    const before = acceptance[index - 1]
    return before === undefined || (before.from < from && before.allow <= allow)
  })
}

function statisticOf(context: CompileContext, written: WrittenStatistic, at: string): Statistic | undefined {
  const whole = (key: string, value: number): number => {
    if (!Number.isInteger(value))
      context.fault(
        below(at, key),
        'criterion-statistic',
        `${value} is not a whole number of results`,
        'write a whole number',
      )
    return value
  }
  const { variables, attributes, tolerance } = written
  if (written['rolling-mean'] !== undefined)
    return { of: 'rolling-mean', count: whole('rolling-mean', written['rolling-mean']) }
  if (variables !== undefined) {
    return {
      of: 'variables',
      days: daysOf(variables.period),
      atLeast: whole('variables', variables['at-least']),
      share: estimated(context, 'share', variables.share.value, at),
      confidence: estimated(context, 'confidence', variables.confidence.value, at),
    }
  }
  if (attributes !== undefined)
    return {
      of: 'attributes',
      days: daysOf(attributes.period),
      acceptance: attributes.acceptance,
      ...defined({ beyond: attributes.beyond }),
    }
  if (tolerance !== undefined)
    return {
      of: 'tolerance',
      count: whole('tolerance', tolerance.results),
      atLeast: whole('tolerance', tolerance['at-least']),
      share: share(context, tolerance.share.value, below(at, 'tolerance')),
    }
  if (written.variability !== undefined)
    return { of: 'variability', count: whole('variability', written.variability.results) }
  return written.declared === 'yes' ? { of: 'declared' } : undefined
}

/** Beyond these no number of results gives a tolerance factor that means anything. Own choice, in per cent. */
const [LEAST_PERCENT, MOST_PERCENT] = [1, 99.9]

/** A share or confidence that a tolerance factor is computed for. */
function estimated(
  context: CompileContext,
  key: 'share' | 'confidence',
  percent: number,
  at: string,
): number {
  if (!(LEAST_PERCENT <= percent && percent <= MOST_PERCENT))
    context.fault(
      below(below(at, 'variables'), key),
      'criterion-statistic',
      `a ${key} of ${percent} % is beyond what a tolerance factor can be computed for`,
      `write a ${key} from ${LEAST_PERCENT} % to ${MOST_PERCENT} %; 95 % is usual`,
    )
  return percent / 100
}

function share(context: CompileContext, percent: number, at: string): number {
  if (!(0 < percent && percent < 100))
    context.fault(
      at,
      'criterion-statistic',
      `a share of ${percent} % cannot be shown by results`,
      'write a share above 0 % and below 100 %',
    )
  return percent / 100
}
