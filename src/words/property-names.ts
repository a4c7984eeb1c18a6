/** Names of properties within a sentence. */
import { type PropertyKey, property } from '../core/measure/properties.ts'

/** The title with a small first letter, but for a formula: "loss on ignition", "SO3". */
export function propertyWords(asked: { readonly property: PropertyKey }): string {
  const { title } = property(asked.property)
  return /^[A-Z][a-z]{2}/.test(title) ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : title
}
