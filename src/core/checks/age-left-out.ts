/** Audit check: an earlier age that most lots report is missing where a later one was used. */
import type { PropertyKey } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** Of the lots with the later age: own choice. */
const MOST = 0.5
/** Lots named: own choice. */
const SHOWN = 5

interface Tested {
  readonly lot: string
  readonly ages: ReadonlyMap<string, number>
}

/**
 * A finding for each index whose earlier age is missing for some lots and on record for most.
 * @param source id
 * @param lots in order of sampling
 * Note: an age that is planned, awaited or not valid is on record.
 */
export function agesLeftOut(source: string, lots: readonly AuditedLot[]): Checked {
  const byTest = new Map<string, { property: PropertyKey; condition: string; tested: Tested[] }>()
  for (const lot of lots)
    for (const [key, own] of Map.groupBy(
      agesOf(lot),
      ({ property, condition }) => `${property}|${condition}`,
    )) {
      const [first] = own
      if (first === undefined) continue
      const test = byTest.get(key) ?? { property: first.property, condition: first.condition, tested: [] }
      test.tested.push({ lot: lot.id, ages: new Map(own.map(({ text, hours }) => [text, hours])) })
      byTest.set(key, test)
    }
  let looked = 0
  const findings = [...byTest.values()].flatMap(({ property, condition, tested }) => {
    const left = leftOut(tested)
    looked += tested.length
    return left.map((one): Finding => {
      const { age, later, missing, of } = one
      const head = { source, property, condition, age, later, lots: missing.length, of }
      const params = { ...head, listed: missing.slice(0, SHOWN) }
      return found(source, { code: 'age-left-out', params }, property, condition, age)
    })
  })
  return { check: 'age-left-out', looked, findings }
}

function agesOf({ results, planned }: AuditedLot): {
  property: PropertyKey
  condition: string
  text: string
  hours: number
}[] {
  const isIndex = ({ property }: { readonly property: PropertyKey }) =>
    property === 'strength-activity-index' || property === 'resistivity-index'
  const done = results.filter((result: Result) => result.role === 'producer')
  return [...done, ...planned]
    .filter(isIndex)
    .flatMap(({ property, condition, age }) =>
      condition === undefined || age === undefined
        ? []
        : [{ property, condition, text: age.text, hours: age.hours }],
    )
}

/** Each age that most of the lots with a later one have, with the lots that lack it. */
function leftOut(tested: readonly Tested[]): { age: string; later: string; missing: string[]; of: number }[] {
  const ages = [...new Map(tested.flatMap((one) => [...one.ages]))].sort(([, a], [, b]) => a - b)
  return ages.slice(0, -1).flatMap(([age], place) => {
    const [later = ''] = ages[place + 1] ?? []
    const withLater = tested.filter((one) => one.ages.has(later))
    const missing = withLater.filter((one) => !one.ages.has(age)).map(({ lot }) => lot)
    const has = withLater.length - missing.length
    return 0 < missing.length && MOST * withLater.length < has
      ? [{ age, later, missing, of: withLater.length }]
      : []
  })
}
