/** A condition's name for readers. */
import type { Edition } from './edition.ts'

/** The title of a condition; its id where no record has it. */
export function conditionTitle(
  { conditions, announcedConditions }: Pick<Edition, 'conditions' | 'announcedConditions'>,
  id: string,
): string {
  return (conditions.get(id) ?? announcedConditions.get(id))?.title ?? id
}
