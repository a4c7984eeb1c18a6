/** Differences between two JSON values by JSON pointer (RFC 6901); elements go by name if they have one. */
import { type Compared, type Difference, filePatternOf, patternOf } from './difference.ts'
import { elementNames } from './element-names.ts'

interface Spot {
  readonly pointer: string
  readonly pattern: string
}

/**
 * @param report put before each pointer, for example "check:demo@2025-06-30"
 * @param was reference value, as JSON.parse gives it
 * @param is present value
 */
export function jsonDifferences(report: string, was: unknown, is: unknown): Compared {
  const comparison = new JsonComparison(report)
  comparison.compare({ pointer: '', pattern: '' }, was, is)
  return { differences: comparison.differences, reports: 0, values: comparison.values, files: 0 }
}

class JsonComparison {
  readonly differences: Difference[] = []
  values = 0
  readonly #report: string
  readonly #reportPattern: string

  constructor(report: string) {
    this.#report = report
    this.#reportPattern = report.startsWith('check:') ? 'check:*' : filePatternOf(report)
  }

  compare(at: Spot, was: unknown, is: unknown): void {
    if (Array.isArray(was) && Array.isArray(is)) this.#compareArrays(at, was, is)
    else if (isObject(was) && isObject(is))
      this.#compareMembers(at, new Map(Object.entries(was)), new Map(Object.entries(is)))
    else this.#compareValues(at, was, is)
  }

  #compareValues(at: Spot, was: unknown, is: unknown): void {
    this.values += 1
    // An object against a number, say, differs as a whole; equal objects never come here.
    if (was !== is) this.#add(at, JSON.stringify(was), JSON.stringify(is))
  }

  #compareArrays(at: Spot, was: readonly unknown[], is: readonly unknown[]): void {
    const names = elementNames(was, is)
    const places = { was: was.map((_, place) => `${place}`), is: is.map((_, place) => `${place}`) }
    const { was: wasNames, is: isNames } = names ?? places
    this.#compareOrder(at, wasNames, isNames)
    const elements = (of: readonly string[], array: readonly unknown[]) =>
      new Map(of.map((name, place) => [name, array[place]]))
    this.#compareMembers(at, elements(wasNames, was), elements(isNames, is), '*')
  }

  /** The order of elements is judged among those that both arrays have. */
  #compareOrder(at: Spot, was: readonly string[], is: readonly string[]): void {
    const [wasKnown, isKnown] = [new Set(was), new Set(is)]
    const before = was.filter((name) => isKnown.has(name)).join(', ')
    const after = is.filter((name) => wasKnown.has(name)).join(', ')
    if (before !== after) this.#add(within(at, '(order)'), before, after)
  }

  #compareMembers(
    at: Spot,
    was: ReadonlyMap<string, unknown>,
    is: ReadonlyMap<string, unknown>,
    pattern?: string,
  ): void {
    for (const name of new Set([...was.keys(), ...is.keys()])) {
      const here = within(at, name, pattern)
      if (!was.has(name)) this.#add(here, null, JSON.stringify(is.get(name)))
      else if (!is.has(name)) this.#add(here, JSON.stringify(was.get(name)), null)
      else this.compare(here, was.get(name), is.get(name))
    }
  }

  #add(at: Spot, was: string | null, is: string | null): void {
    this.differences.push({
      where: `${this.#report}:${at.pointer}`,
      pattern: `${this.#reportPattern}:${at.pattern}`,
      was,
      is,
    })
  }
}

function within(at: Spot, name: string, pattern?: string): Spot {
  const segment = name.replaceAll('~', '~0').replaceAll('/', '~1')
  return { pointer: `${at.pointer}/${segment}`, pattern: `${at.pattern}/${pattern ?? patternOf(segment)}` }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
