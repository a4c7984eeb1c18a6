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
    const printed = resultText({ unit, decimals, value, ...defined({ censored, bounds }) }, units)
    // A document that states no bounds was made before any were stated.
    const comparable = bounds === undefined ? valid.map(withoutBounds) : valid
    const texts = comparable.map((result) => resultText(result, units))
    if (texts.includes(printed)) return []
    return [{ property, condition, age: age?.text, issued: printed, today: texts.at(-1) ?? null }]
  })
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
function stated({ lot, data }: IssuedDocument): Stated[] {
  return [...lot.results, ...data.results].flatMap(({ values = {}, results = [], ...head }) => [
    ...Object.entries(values).map(([property, value]) => ({
      name: nameOf({ ...head, property: property as DocumentResult['property'] }),
      value,
    })),
    ...results
      .filter(({ valid }) => valid !== false)
      .map((result) => ({ ...result, name: nameOf({ ...head, ...result }) })),
  ])
}
