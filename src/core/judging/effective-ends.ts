/** Where an outcome really changes: a value is rounded first, so that half a step beyond a limit is still met. */
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import { stepOfDecimals, withoutDust } from '../measure/rounding.ts'
import type { Quantity } from '../measure/units.ts'
import type { Resolution } from './compare-with-limit.ts'
import { limitNumber, storedFrom } from './limit-unit.ts'

/** One end of what is admitted, in the stored unit. */
export interface End {
  readonly at: number
  /** Rounding step that moved the end by half of itself; zero where nothing is rounded. */
  readonly step: number
}

/** What is admitted before rounding; an open side has no end. */
export interface Ends {
  readonly low?: End
  readonly high?: End
}

/**
 * The values that are admitted once they are rounded.
 * @param resolution as of `compareWithLimit`
 * @returns "at least 75 %" begins at 74.5 %, in the stored unit
 * @throws RangeError for a unit that is none of its kind's
 * Notes: 1. a limit between two steps admits from the next step inside it; 2. whether the very end is admitted
 * depends on its even digit, which no distance shows.
 * Source: ASTM E29, rounding method, 6.4.3; read second-hand.
 */
export function effectiveEnds({ operator, quantities }: ClassLimit, resolution?: Resolution): Ends {
  const [first, second = first] = quantities
  if (first === undefined || second === undefined) return {}
  switch (operator) {
    case 'at-least':
    case 'above':
      return { low: lowEnd(operator, first, resolution) }
    case 'at-most':
    case 'below':
      return { high: highEnd(operator, first, resolution) }
    case 'between':
      return { low: lowEnd('at-least', first, resolution), high: highEnd('at-most', second, resolution) }
    case 'magnitude-at-most': {
      const high = highEnd('at-most', first, resolution)
      return { low: { ...high, at: -high.at }, high }
    }
  }
}

/** The same without any rounding, as the rules that take doubt into account compare. */
export function unroundedEnds(limit: ClassLimit): Ends {
  return effectiveEnds(limit, 'none')
}

function lowEnd(operator: 'at-least' | 'above', limit: Quantity, resolution: Resolution | undefined): End {
  const step = resolution ?? stepOfDecimals(limit.decimals)
  if (step === 'none') return { at: limit.value, step: 0 }
  const steps = withoutDust(limitNumber(limit) / step)
  const least = operator === 'at-least' ? Math.ceil(steps) : Math.floor(steps) + 1
  return storedEnd(limit, (least - 0.5) * step, step)
}

function highEnd(operator: 'at-most' | 'below', limit: Quantity, resolution: Resolution | undefined): End {
  const step = resolution ?? stepOfDecimals(limit.decimals)
  if (step === 'none') return { at: limit.value, step: 0 }
  const steps = withoutDust(limitNumber(limit) / step)
  const most = operator === 'at-most' ? Math.floor(steps) : Math.ceil(steps) - 1
  return storedEnd(limit, (most + 0.5) * step, step)
}

/** @param written,step in the limit's written unit */
function storedEnd(limit: Quantity, written: number, step: number): End {
  return {
    at: storedFrom(limit, withoutDust(written)),
    step: withoutDust(storedFrom(limit, step) - storedFrom(limit, 0)),
  }
}
