/** What an issued document states and what has another value today, as when a test was made again after it. */
import { defined } from '../../core/measure/defined.ts'
import type { Result } from '../../core/result/result.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { resultText } from '../../words/units.ts'
import type { DocumentResult, IssuedDocument } from '../shape/document.ts'
import type { ChangedValue } from '../shape/edition.ts'

/**
 * @param issued the newest issued document
 * @param results of the lot today
 * @returns one for each valid value of the document that no valid result gives any more, as printed; values of
 * which the lot has no result at all are left to the findings
 */
export function changedValues(
  issued: IssuedDocument,
  results: readonly Result[],
  units: UnitSystem,
): ChangedValue[] {
  const producers = results.filter(({ role }) => role === 'producer')
  const today = Map.groupBy(producers, (result) => nameOf({ ...result, age: result.age?.text }))
  return stated(issued).flatMap(({ name, value, censored, bounds }) => {
    const own = today.get(name) ?? []
    const valid = own.filter((result) => result.valid)
    const [first] = own
    if (first === undefined) return []
    const { property, condition, age, unit, decimals } = first
    // Nearly every value is as it was, and need not be printed to see it.
    if (valid.some((result) => isAsStated({ value, ...defined({ censored, bounds }) }, first, result)))
      return []
    const printed = resultText({ unit, decimals, value, ...defined({ censored, bounds }) }, units)
    // A document that states no bounds was made before any were stated.
    const comparable = bounds === undefined ? valid.map(withoutBounds) : valid
    const texts = comparable.map((result) => resultText(result, units))
    if (texts.includes(printed)) return []
    return [{ property, condition, age: age?.text, issued: printed, today: texts.at(-1) ?? null }]
  })
}

/**
 * @returns keys of the results of mortars that the document does not state at all, valid or not: what came since,
 * whatever its own date says
 */
export function unstatedResults(issued: IssuedDocument, results: readonly Result[]): string[] {
  const known = new Set(
    named(issued).flatMap(({ head, values, results: own }) => [
      ...Object.keys(values).map((property) =>
        nameOf({ ...head, property: property as DocumentResult['property'] }),
      ),
      ...own.map((result) => nameOf({ ...head, ...result })),
    ]),
  )
  return results
    .filter(
      ({ role, valid, age, ...result }) =>
        role === 'producer' && valid && age !== undefined && !known.has(nameOf({ ...result, age: age.text })),
    )
    .map(({ key }) => key)
}

function named({ lot, data }: IssuedDocument) {
  return [...lot.results, ...data.results].map(({ values = {}, results = [], ...head }) => ({
    head,
    values,
    results,
  }))
}

/** Whether a result prints as a value of the document does, being the same. */
function isAsStated(
  { value, censored, bounds }: Omit<Stated, 'name'>,
  { unit, decimals }: Pick<Result, 'unit' | 'decimals'>,
  result: Result,
): boolean {
  return (
    result.value === value &&
    result.unit === unit &&
    result.decimals === decimals &&
    result.censored === censored &&
    (bounds === undefined || (result.bounds?.low === bounds.low && result.bounds.high === bounds.high))
  )
}

function withoutBounds({ bounds: _bounds, ...result }: Result): Result {
  return result
}

type Named = Pick<DocumentResult, 'property'> & {
  readonly laboratory: string
  readonly sample: string
  readonly condition?: string | undefined
  readonly age?: string | undefined
}

/** What a result and its successor share. */
function nameOf({ laboratory, sample, condition, property, age }: Named): string {
  return [laboratory, sample, condition, property, age].join('|')
}

type Stated = Pick<DocumentResult, 'value' | 'censored' | 'bounds'> & { readonly name: string }

/** The document's valid values, one by one. */
function stated(issued: IssuedDocument): Stated[] {
  return named(issued).flatMap(({ values, results, head }) => [
    ...Object.entries(values).map(([property, value]) => ({
      name: nameOf({ ...head, property: property as DocumentResult['property'] }),
      value,
    })),
    ...results
      .filter(({ valid }) => valid !== false)
      .map((result) => ({ ...result, name: nameOf({ ...head, ...result }) })),
  ])
}
