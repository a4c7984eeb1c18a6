/** New limits of a supplement over those of its base, class by class and side by side. */
import { EVERY_CLASS, type Limit, type Operator } from '../../core/criteria/criterion.ts'
import { quantitiesFor } from '../../core/criteria/limits-for-class.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { CompileContext } from './context.ts'

/** Operators that bound a value on the same side replace each other. */
const SIDES: Readonly<Record<Operator, string>> = {
  'at-least': 'lower',
  above: 'lower',
  'at-most': 'upper',
  below: 'upper',
  between: 'both',
  'magnitude-at-most': 'magnitude',
  report: 'none',
}

interface Intent {
  readonly change: 'tighten' | 'relax'
  readonly pointer: string
}

/**
 * @param base limits of the clause below
 * @param changed limits that the supplement states; classes and sides it does not name keep theirs
 * @returns the limits that hold; a report-only clause that gets a limit is report-only no longer
 */
export function mergeLimits(
  context: CompileContext,
  base: readonly Limit[],
  changed: readonly Limit[],
  intent: Intent,
): Limit[] {
  return changed.reduce<Limit[]>(
    (limits, limit) => {
      checkDirection(context, limits, limit, intent)
      const named = Object.keys(limit.byClass)
      const whole = named.includes(EVERY_CLASS)
      const others = limits.flatMap((other): Limit[] => {
        if (other.operator === 'report') return []
        if (SIDES[other.operator] !== SIDES[limit.operator]) return [other]
        if (whole) return []
        const kept = Object.entries(spread(other, context.classes)).filter(([name]) => !named.includes(name))
        return kept.length === 0 ? [] : [{ operator: other.operator, byClass: Object.fromEntries(kept) }]
      })
      const same = others.find((other) => other.operator === limit.operator)
      return same === undefined
        ? [...others, limit]
        : others.map((other) =>
            other === same
              ? { operator: limit.operator, byClass: { ...same.byClass, ...limit.byClass } }
              : other,
          )
    },
    [...base],
  )
}

/** One limit for all classes written out by class, so that one class can be given another. */
function spread({ byClass }: Limit, classes: readonly string[]): Limit['byClass'] {
  const every = byClass[EVERY_CLASS]
  return every === undefined || classes.length === 0
    ? byClass
    : Object.fromEntries(classes.map((name) => [name, every]))
}

function checkDirection(
  context: CompileContext,
  base: readonly Limit[],
  limit: Limit,
  { change, pointer }: Intent,
): void {
  for (const [name, quantities] of Object.entries(limit.byClass)) {
    // A limit that could not be read has its own fault, and no direction.
    if (quantities.length < (limit.operator === 'between' ? 2 : 1)) continue
    const classes = name === EVERY_CLASS && context.classes.length > 0 ? context.classes : [name]
    const olds = classes.map((one) => oldQuantities(base, limit.operator, one))
    const forClass = name === EVERY_CLASS ? '' : ` for class ${name}`
    if (change === 'relax' && olds.every((old) => old === undefined)) {
      context.fault(
        `${pointer}/${limit.operator}`,
        'criterion-change-direction',
        `the clause has no limit on that side to relax${forClass}`,
        'write "change: tighten" for a new limit',
      )
      continue
    }
    const refused = ['both', change === 'tighten' ? 'looser' : 'tighter']
    const wrong = olds.find(
      (old) => old !== undefined && refused.includes(direction(limit.operator, old, quantities)),
    )
    if (wrong === undefined) continue
    context.fault(
      `${pointer}/${limit.operator}`,
      'criterion-change-direction',
      `the limit ${words(quantities)}${forClass} is ${change === 'tighten' ? 'looser' : 'tighter'} than ${words(wrong)} of the base, but the change says ${change}`,
      `write "change: ${change === 'tighten' ? 'relax' : 'tighten'}" if that is meant`,
    )
  }
}

function oldQuantities(
  base: readonly Limit[],
  operator: Operator,
  name: string,
): readonly Quantity[] | undefined {
  const old = base.find(
    (limit) => SIDES[limit.operator] === SIDES[operator] && quantitiesFor(limit, name) !== undefined,
  )
  return old === undefined ? undefined : quantitiesFor(old, name)
}

/** Equal numbers are neither: the operator may still become strict. */
function direction(
  operator: Operator,
  old: readonly Quantity[],
  now: readonly Quantity[],
): 'tighter' | 'looser' | 'neither' | 'both' {
  const [from, to] = [old.map(({ value }) => value), now.map(({ value }) => value)]
  const [low, high] = [(to[0] ?? 0) - (from[0] ?? 0), (to[1] ?? 0) - (from[1] ?? 0)]
  if (SIDES[operator] === 'both')
    return (low < 0 && high < 0) || (low > 0 && high > 0)
      ? 'both'
      : low === 0 && high === 0
        ? 'neither'
        : low < 0 || high > 0
          ? 'looser'
          : 'tighter'
  const rises = SIDES[operator] === 'lower' ? low : -low
  return rises === 0 ? 'neither' : rises > 0 ? 'tighter' : 'looser'
}

function words(quantities: readonly Quantity[]): string {
  return quantities.map(({ written }) => written).join(' to ')
}
