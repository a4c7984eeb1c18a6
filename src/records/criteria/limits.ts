/** Limits of a clause: written text to quantities by class, and whether a value can meet them together. */
import { EVERY_CLASS, type Limit } from '../../core/criteria/criterion.ts'
import {
  acceptedSpellings,
  isFault,
  KINDS,
  type Quantity,
  type QuantityFault,
  type QuantityKind,
  readQuantity,
} from '../../core/measure/units.ts'
import { below, checkClasses, type CompileContext } from './context.ts'
import { WRITTEN_OPERATORS, type WrittenLimit, type WrittenOperators } from './written-criterion.ts'

/**
 * Compiles every operator found at a place of the record.
 * @param kind kind of quantity that the limits must be
 * @param pointer JSON pointer of the object that holds the operators
 * @returns the limits that could be read, in the order of the operators
 */
export function compileLimits(
  context: CompileContext,
  written: WrittenOperators,
  kind: QuantityKind,
  pointer: string,
): Limit[] {
  const limits = WRITTEN_OPERATORS.flatMap((operator): Limit[] => {
    const value = written[operator]
    if (value === undefined || value === 'no') return []
    if (operator === 'report') return [{ operator, byClass: {} }]
    const place = below(pointer, operator)
    return [
      {
        operator,
        byClass:
          typeof value === 'string'
            ? everyClass(context, [value], kind, () => place)
            : isList(value)
              ? everyClass(context, value, kind, (index) => below(place, index))
              : perClass(context, value, kind, place),
      },
    ]
  })
  checkTogether(context, limits, pointer)
  return limits
}

function isList(value: WrittenLimit | readonly string[]): value is readonly string[] {
  return Array.isArray(value)
}

type ByClass = Record<string, readonly Quantity[]>

function everyClass(
  context: CompileContext,
  texts: readonly string[],
  kind: QuantityKind,
  place: (index: number) => string,
): ByClass {
  return { [EVERY_CLASS]: texts.flatMap((text, index) => compileQuantity(context, text, kind, place(index))) }
}

function perClass(
  context: CompileContext,
  map: Readonly<Record<string, string>>,
  kind: QuantityKind,
  pointer: string,
): ByClass {
  const names = Object.keys(map)
  checkClasses(context, names, (_, name) => below(pointer, name))
  return Object.fromEntries(
    names.map((name) => [name, compileQuantity(context, map[name] ?? '', kind, below(pointer, name))]),
  )
}

function compileQuantity(
  context: CompileContext,
  text: string,
  kind: QuantityKind,
  pointer: string,
): Quantity[] {
  const quantity = readQuantity(text, kind)
  if (isFault(quantity)) {
    context.fault(
      pointer,
      'criterion-unit',
      `the limit "${text}" ${faultWords(quantity, kind)}`,
      `write the limit as ${KINDS[kind].title}, for instance ${KINDS[kind].example}`,
    )
    return []
  }
  if (quantity.censored === undefined) return [quantity]
  context.fault(
    pointer,
    'criterion-unit',
    `the limit "${text}" is written as a censored result`,
    'write the plain quantity; the operator says on which side of it a value must lie',
  )
  return []
}

function faultWords(fault: QuantityFault, kind: QuantityKind): string {
  const units = acceptedSpellings(kind).filter((spelling) => spelling !== '')
  const asked = `${KINDS[kind].title}${units.length === 0 ? ', a number without a unit,' : ` (${units.slice(0, 4).join(', ')})`} is needed here`
  switch (fault.fault) {
    case 'wrong-kind':
      return `is ${KINDS[fault.is].title}; ${asked}`
    case 'no-unit':
      return `has no unit; ${asked}`
    case 'unknown-unit':
      return `has a unit that does not fit; ${asked}`
    case 'decimal-comma':
      return `has a decimal comma; ${fault.mended} is meant`
    case 'above':
      return 'says "above" in its text; the operator does that'
    case 'ambiguous-ton':
      return 'says "ton", which is three different masses'
    case 'out-of-range':
      return 'is beyond any physical value'
    case 'not-a-number':
      return `is no quantity; ${asked}`
  }
}

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
