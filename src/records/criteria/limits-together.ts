/** Whether any value can meet all limits of a clause. */
import { EVERY_CLASS, type Limit } from '../../core/criteria/criterion.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { CompileContext } from './context.ts'

/** Bound of one side for one class, in the stored unit. */
interface Bound {
  readonly value: number
  readonly strict: boolean
  readonly text: string
}

/** Reports limits that no value can meet together, for any class. */
export function checkTogether(context: CompileContext, limits: readonly Limit[], pointer: string): void {
  const classes = new Set(limits.flatMap((limit) => Object.keys(limit.byClass)))
  for (const name of classes) {
    const { lowest, highest } = strictestBounds(limits, name)
    if (lowest === undefined || highest === undefined) continue
    const empty =
      highest.value < lowest.value || (highest.value === lowest.value && (lowest.strict || highest.strict))
    if (!empty) continue
    const forClass = name === EVERY_CLASS ? '' : ` for class ${name}`
    context.fault(
      pointer,
      'criterion-limits-contradict',
      `no value can be ${lowest.text} and ${highest.text}${forClass}`,
      'write the lower limit below the upper one',
    )
  }
}

/** The highest lower and the lowest upper bound that hold for a class. */
function strictestBounds(limits: readonly Limit[], name: string): { lowest?: Bound; highest?: Bound } {
  const bounds = limits.flatMap((limit) =>
    boundsOf(limit, limit.byClass[name] ?? limit.byClass[EVERY_CLASS] ?? []),
  )
  const lows = bounds
    .filter((bound) => bound.side === 'low')
    .sort((a, b) => b.value - a.value || Number(b.strict) - Number(a.strict))
  const highs = bounds
    .filter((bound) => bound.side === 'high')
    .sort((a, b) => a.value - b.value || Number(b.strict) - Number(a.strict))
  return { lowest: lows[0], highest: highs[0] }
}

function boundsOf(
  { operator }: Limit,
  [first, second]: readonly Quantity[],
): (Bound & { readonly side: 'low' | 'high' })[] {
  if (first === undefined) return []
  const { value, written } = first
  switch (operator) {
    case 'at-least':
      return [{ side: 'low', value, strict: false, text: `at least ${written}` }]
    case 'above':
      return [{ side: 'low', value, strict: true, text: `above ${written}` }]
    case 'at-most':
      return [{ side: 'high', value, strict: false, text: `at most ${written}` }]
    case 'below':
      return [{ side: 'high', value, strict: true, text: `below ${written}` }]
    case 'magnitude-at-most':
      return [
        { side: 'low', value: -value, strict: false, text: `at least −${written}` },
        { side: 'high', value, strict: false, text: `at most ${written}` },
      ]
    case 'between':
      return second === undefined
        ? []
        : [
            { side: 'low', value, strict: false, text: `at least ${written}` },
            { side: 'high', value: second.value, strict: false, text: `at most ${second.written}` },
          ]
    case 'report':
      return []
  }
}
