/** Which fields a pasted column goes into. */
import type { FormField } from './form-parts.ts'
import { nextKey } from './next-key.ts'

/**
 * From the field that it was pasted into on, as many fields of the same mapping as there are cells; specimens that have no
 * field yet are made.
 * @param fields of the form, in its order
 */
export function fieldsForColumn(first: FormField, fields: readonly FormField[], count: number): FormField[] {
  const holder = JSON.stringify(first.path.slice(0, -1))
  const siblings = fields.filter(({ path }) => JSON.stringify(path.slice(0, -1)) === holder)
  const place = siblings.findIndex(({ path }) => path.at(-1) === first.path.at(-1))
  const targets = siblings.slice(place, place + count)
  if (first.path.at(-2) !== 'specimens') return targets
  const taken = siblings.map(({ path }) => String(path.at(-1)))
  while (targets.length < count) {
    const mark = nextKey(taken)
    taken.push(mark)
    targets.push({ ...first, path: [...first.path.slice(0, -1), mark], text: '', required: false })
  }
  return targets
}
