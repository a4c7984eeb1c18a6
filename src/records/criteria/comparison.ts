/** A clause on the value of a property: its limits or bands, and what is judged in place of the single result. */
import type { Band, Comparison, Statistic } from '../../core/criteria/criterion.ts'
import type { Resolution } from '../../core/judging/compare-with-limit.ts'
import { defined } from '../../core/measure/defined.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { isFinishable } from '../../core/measure/ratio-indices.ts'
import { below } from '../yaml/pointer.ts'
import { compileApproval } from './approval.ts'
import { compileHead, type NamedPosition } from './clause-head.ts'
import { checkConditionAndAge } from './condition-and-age.ts'
import type { CompileContext } from './context.ts'
import { compileDeviation } from './deviation.ts'
import { limitScale } from './limit-scale.ts'
import { compileLimits } from './limits.ts'
import { compilePremises, premiseLimits } from './premise.ts'
import { compileStatistic } from './statistic.ts'
import { WRITTEN_OPERATORS, type WrittenClause } from './written-criterion.ts'

/** A clause that names the property it is on. */
type OnProperty = WrittenClause & { readonly property: PropertyKey }

export function compileComparison(
  context: CompileContext,
  written: OnProperty,
  position: NamedPosition,
): Comparison {
  const { pointer } = position
  const head = compileHead(context, written, position)
  checkConditionAndAge(context, written, pointer)
  const deviation = compileDeviation(context, written, pointer)
  const scale = limitScale(written.property, deviation)
  // Of a deviation whose reference is at fault nobody knows what its limits are in.
  const isClear = deviation !== undefined || written['deviation-from'] === undefined
  const limits = isClear ? compileLimits(context, written, scale, pointer) : []
  const bands = compileBands(context, written, pointer)
  const statistic = compileStatistic(context, written, deviation, pointer)
  if (isClear) checkJudged(context, written, { limits, bands, statistic }, pointer)
  checkResolution(context, written, pointer)
  checkFrom(context, written, pointer)
  const deemedBy = written['deemed-by']
  return {
    ...head,
    form: 'comparison',
    property: written.property,
    ...defined({ condition: written.condition, age: written.age }),
    limits,
    ...defined({ bands, deviation, statistic }),
    several: written.several ?? 'worst',
    ...defined({
      resolution: resolutionOf(written),
      approval: compileApproval(context, written, scale, pointer),
      deemedBy:
        deemedBy === undefined ? undefined : compilePremises(context, deemedBy, below(pointer, 'deemed-by')),
      method: written.method,
      methodRequired: written['method-required'] === 'yes' ? (true as const) : undefined,
      from: written.from,
      duty: written.duty,
    }),
  }
}

interface Judged {
  readonly limits: Comparison['limits']
  readonly bands: readonly Band[] | undefined
  readonly statistic: Statistic | undefined
}

/** A clause holds a limit, or classifies, or asks for a report; only a variability needs none of these. */
function checkJudged(
  context: CompileContext,
  written: WrittenClause,
  { limits, bands, statistic }: Judged,
  pointer: string,
): void {
  const held = limits.filter((limit) => limit.operator !== 'report')
  if (bands !== undefined && 0 < held.length)
    context.fault(
      below(pointer, 'band'),
      'criterion-limits-contradict',
      'the clause has both bands and a limit',
      'make the classification a clause of its own',
    )
  if (statistic !== undefined && statistic.of !== 'variability' && held.length === 0)
    context.fault(
      below(pointer, 'statistic'),
      'criterion-statistic',
      `the statistic ${statistic.of} needs a limit to be compared with`,
      'add an operator such as "at-least: 75 %"',
    )
  if (bands === undefined && statistic?.of !== 'variability' && limits.length === 0 && !statesLimit(written))
    context.fault(
      pointer,
      'criterion-no-operator',
      'the clause states neither a limit nor a report',
      'add an operator such as "at-most: 6.0 %", or "report: yes"',
    )
}

/** A limit that could not be read has its own fault. */
function statesLimit(written: WrittenClause): boolean {
  return WRITTEN_OPERATORS.some((operator) => operator !== 'report' && written[operator] !== undefined)
}

function checkResolution(context: CompileContext, { resolution }: WrittenClause, pointer: string): void {
  if (typeof resolution !== 'number' || 0 < resolution) return
  context.fault(
    below(pointer, 'resolution'),
    'criterion-resolution',
    `the rounding step ${resolution} is not above zero`,
    'write a step such as 0.1, in the unit of the limit, or none',
  )
}

/** Nothing else is computed from readings: every other property is a figure of its laboratory. */
function checkFrom(context: CompileContext, { from, property }: OnProperty, pointer: string): void {
  if (from === undefined || isFinishable(property)) return
  context.fault(
    below(pointer, 'from'),
    'criterion-from-readings',
    `the clause counts only results computed from readings, and ${property} is never computed from any`,
    'take "from" out, or make the clause one on a result of a mortar',
  )
}

/** The schema lets no other word through than "none". */
export function resolutionOf({ resolution }: WrittenClause): Resolution | undefined {
  return typeof resolution === 'string' ? 'none' : resolution
}

function compileBands(context: CompileContext, written: OnProperty, pointer: string): Band[] | undefined {
  return written.band?.map((band, index) => {
    const at = below(below(pointer, 'band'), index)
    const further = band.and === undefined ? [] : compilePremises(context, band.and, below(at, 'and'))
    const own =
      WRITTEN_OPERATORS.some((operator) => operator !== 'report' && band[operator] !== undefined) ||
      further.length === 0
        ? [{ property: written.property, limits: premiseLimits(context, band, written.property, at) }]
        : []
    return { title: band.title, where: [...own, ...further.filter((premise) => 'property' in premise)] }
  })
}
