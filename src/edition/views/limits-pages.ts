/** Limits by property: the list of properties, and one property with the limits of every set. */
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { propertyWords } from '../../words/property-names.ts'
import { plural } from '../../words/numbers.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { link, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import { limitsByCondition, limitsByProperty, type PropertyLimit } from './limits-by-property.ts'
import { type PropertyLimits, propertyLimits } from './property-limits.ts'

export interface LimitedProperty {
  readonly title: string
  readonly href: string
  /** "3 clauses in 2 sets". */
  readonly count: string
}

/** Properties that any set has a limit for, in the order of the property list. */
export function limitedProperties(edition: Pick<Edition, 'address' | 'criteria'>): LimitedProperty[] {
  return [...limitsByProperty(edition.criteria.values())].map(([key, limits]) => {
    const sets = new Set(limits.map(({ criterion }) => criterion.id))
    return {
      title: property(key).title,
      href: link(edition, paths.limitsOf(key)),
      count: `${plural(limits.length, 'clause', 'clauses')} in ${plural(sets.size, 'specification', 'specifications')}`,
    }
  })
}

export interface LimitsPage {
  readonly title: string
  /** The property's name within a sentence. */
  readonly name: string
  readonly lead: string
  /** One for each condition. */
  readonly groups: readonly {
    /** null where no limit of the property belongs to a condition. */
    readonly heading: string | null
    readonly limits: PropertyLimits
  }[]
}

export function limitsPage(
  edition: Pick<Edition, 'address' | 'conditions' | 'announcedConditions'>,
  key: PropertyKey,
  limits: readonly PropertyLimit[],
): LimitsPage {
  const { title, description } = property(key)
  const groups = limitsByCondition(limits)
  const ofMortar = groups.some(({ condition }) => condition !== undefined)
  const heading = (condition: string | undefined) =>
    condition === undefined ? 'Any condition' : unbroken(sentence(conditionTitle(edition, condition)))
  return {
    title,
    name: propertyWords({ property: key }),
    lead: ofMortar
      ? `${description} A limit belongs to its condition and age; numbers at different conditions are not comparable.`
      : description,
    groups: groups.map(({ condition, limits: own }) => ({
      heading: ofMortar ? heading(condition) : null,
      limits: propertyLimits(edition, own, ofMortar ? `Limits, ${heading(condition)}` : 'Limits'),
    })),
  }
}
