/** Names of properties within a sentence. */
import { type PropertyKey, property } from '../core/measure/properties.ts'
import type { UnitSystem } from './unit-systems.ts'

/** The title of a property as the site's customers print it. */
export function propertyTitle(key: PropertyKey, units: UnitSystem): string {
  const { title, americanTitle } = property(key)
  return units === 'US' ? (americanTitle ?? title) : title
}

/** The title with a small first letter, but for a formula: "loss on ignition", "SO3". */
export function propertyWords(asked: { readonly property: PropertyKey }): string {
  const { title } = property(asked.property)
  return /^[A-Z][a-z]{2}/.test(title) ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : title
}
