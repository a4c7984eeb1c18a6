/** Results that no clause names, gathered into the lines they are printed on. */
import { defined } from '../../core/measure/defined.ts'
import { PROPERTIES, type PropertyKey } from '../../core/measure/properties.ts'
import type { CertificateResult } from '../shape/certificate-facts.ts'

/** Results of one analysis or mortar: printed as one line. */
export interface PlainResults {
  readonly sample: string
  readonly laboratory: string
  readonly condition?: string
  readonly tested: string
  readonly accredited: boolean
  readonly results: readonly CertificateResult[]
}

const ORDER = Object.keys(PROPERTIES) as PropertyKey[]

/** Place of a property in the list of all. */
export function propertyOrder(item: { readonly property: PropertyKey }): number {
  return ORDER.indexOf(item.property)
}

/** Lines in the order of the property list; those of a mortar are one whatever their method and day. */
export function plainResults(results: readonly CertificateResult[]): PlainResults[] {
  const inOrder = results.toSorted((a, b) => propertyOrder(a) - propertyOrder(b))
  return [...Map.groupBy(inOrder, lineOf).values()].flatMap((own): PlainResults[] => {
    const [head] = own
    if (head === undefined) return []
    const { sample, laboratory, tested, accredited, condition } = head
    return [defined({ sample, laboratory, tested, accredited, condition, results: own })]
  })
}

function lineOf(result: CertificateResult): string {
  const { sample, laboratory, accredited, condition, method, tested, finished } = result
  const how = condition === undefined ? [method, tested] : [condition]
  return [sample, laboratory, accredited, ...how, finished].join('|')
}
