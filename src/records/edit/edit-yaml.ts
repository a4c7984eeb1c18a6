/**
 * Edits of a record's YAML text: what an edit does not touch stays byte for byte, comments, order and written digits
 * included.
 */
import { parseYaml } from '../yaml/parse-yaml.ts'
import { applied, type Edit, EditFault, finer, type Path, same, type Step } from './record-edits.ts'
import { type EditOptions, spliced } from './splice-yaml.ts'
import type { Plain } from './write-yaml.ts'

export { type Edit, EditFault, type EditOptions, type Path }

/**
 * The text after all edits, one after the other. `set` makes the mappings that its path lacks; of a mapping or list
 * that stands it changes only what differs. `append` makes the list where there is none.
 * @throws EditFault for a text that cannot be read, and where the result would not read back as the edited value
 */
export function editYaml(text: string, edits: readonly Edit[], options: EditOptions = {}): string {
  let value = plainOf(text)
  let edited = text
  for (const batch of batches(edits)) {
    const next = applied(value, batch)
    const steps = 'append' in batch ? [batch] : finer(value, batch)
    for (const step of steps) edited = spliced(edited, step, options)
    value = next
  }
  if (!same(plainOf(edited), value))
    throw new EditFault('The record is written in a form that cannot be edited in place.')
  return edited
}

function batches(edits: readonly Edit[]): Step[] {
  const steps: Step[] = []
  for (const edit of edits) {
    const last = steps.at(-1)
    if (!('append' in edit)) steps.push(edit)
    else if (last !== undefined && 'append' in last && same(last.append, edit.append))
      steps[steps.length - 1] = { append: last.append, items: [...last.items, edit.item] }
    else steps.push({ append: edit.append, items: [edit.item] })
  }
  return steps
}

/** The value of a text; undefined for a text without one. */
function plainOf(text: string): Plain | undefined {
  const parsed = parseYaml(text)
  if ('value' in parsed) return parsed.value as Plain
  if (parsed.fault.code === 'yaml-empty') return undefined
  throw new EditFault(`The text cannot be edited while it cannot be read: ${parsed.fault.message}.`)
}
