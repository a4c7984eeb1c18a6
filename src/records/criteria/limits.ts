/** Limits of a clause: written text to quantities by class. */
import { EVERY_CLASS, type Limit, type Operator } from '../../core/criteria/criterion.ts'
import {
  acceptedSpellings,
  isFault,
  KINDS,
  type Quantity,
  type QuantityFault,
  type QuantityKind,
  readQuantity,
} from '../../core/measure/units.ts'
import { below } from '../yaml/pointer.ts'
import { checkClass, type CompileContext } from './context.ts'
import { boundsUnder, type LimitScale } from './limit-scale.ts'
import { checkTogether } from './limits-together.ts'
import { WRITTEN_OPERATORS, type WrittenLimit, type WrittenOperators } from './written-criterion.ts'

/**
 * Compiles every operator found at a place of the record.
 * @param scale kind of quantity that the limits must be, and what they may be
 * @param pointer JSON pointer of the object that holds the operators
 * @returns the limits that could be read, in the order of the operators
 */
export function compileLimits(
  context: CompileContext,
  written: WrittenOperators,
  scale: LimitScale,
  pointer: string,
): Limit[] {
  const limits = WRITTEN_OPERATORS.flatMap((operator): Limit[] => {
    const value = written[operator]
    if (value === undefined || (operator === 'report' && value === 'no')) return []
    if (operator === 'report') return [{ operator, byClass: {} }]
    const at = below(pointer, operator)
    const asked = { operator, scale }
    return [
      {
        operator,
        byClass:
          typeof value === 'string'
            ? everyClass(context, [value], asked, () => at)
            : isList(value)
              ? everyClass(context, value, asked, (index) => below(at, index))
              : perClass(context, value, asked, at),
      },
    ]
  })
  checkTogether(context, limits, pointer)
  return limits
}

function isList(value: WrittenLimit | readonly string[]): value is readonly string[] {
  return Array.isArray(value)
}

interface AskedLimit {
  readonly operator: Operator
  readonly scale: LimitScale
}

type ByClass = Record<string, readonly Quantity[]>

function everyClass(
  context: CompileContext,
  texts: readonly string[],
  asked: AskedLimit,
  at: (index: number) => string,
): ByClass {
  return { [EVERY_CLASS]: texts.flatMap((text, index) => compileQuantity(context, text, asked, at(index))) }
}

function perClass(
  context: CompileContext,
  map: Readonly<Record<string, string>>,
  asked: AskedLimit,
  pointer: string,
): ByClass {
  const names = Object.keys(map)
  if (names.length === 0)
    context.fault(
      pointer,
      'criterion-no-operator',
      'the limit names no class and no quantity',
      'write one quantity for every class, or one for each: "{ F: 70.0 %, C: 50.0 % }"',
    )
  for (const name of names) checkClass(context, name, below(pointer, name))
  return Object.fromEntries(
    names.map((name) => [name, compileQuantity(context, map[name] ?? '', asked, below(pointer, name))]),
  )
}

function compileQuantity(
  context: CompileContext,
  text: string,
  asked: AskedLimit,
  pointer: string,
): Quantity[] {
  const { kind } = asked.scale
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
  if (quantity.censored === undefined) return checkedRange(context, quantity, asked, pointer)
  context.fault(
    pointer,
    'criterion-unit',
    `the limit "${text}" is written like a result reported as below a bound`,
    'write the plain quantity; the operator says on which side of it a value must lie',
  )
  return []
}

/** A limit where no value can lie is met by every lot, or by none. */
function checkedRange(
  context: CompileContext,
  quantity: Quantity,
  { operator, scale }: AskedLimit,
  pointer: string,
): Quantity[] {
  const [low, high] = boundsUnder(operator, scale)
  if (low <= quantity.value && quantity.value <= high) return [quantity]
  const { stored } = KINDS[scale.kind]
  context.fault(
    pointer,
    'criterion-limit-range',
    `the limit "${quantity.written}" lies outside what ${scale.of} can be`,
    `check the number and its unit: a limit between ${low} and ${high}${stored === '' ? '' : ` ${stored}`} was expected`,
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
    case 'exponent':
      return 'has an exponent; the number is needed in plain digits'
    case 'unknown-unit':
      return `has a unit of another kind; ${asked}`
    case 'decimal-comma':
      return `has a comma in its number; ${fault.readings.join(' or ')} may be meant`
    case 'above':
      return 'says "above" in its text; the operator does that'
    case 'ambiguous-ton':
      return 'says "ton", which may mean three different masses'
    case 'out-of-range':
      return 'is larger than any physical value'
    case 'not-a-number':
      return `is not a quantity; ${asked}`
  }
}
