/** What may stand at a place of a lot's text: keys of a mapping, words of a fixed list, records of the site. */
import type { Path } from '../edit/edit-yaml.ts'
import { NAMES, placeOf } from './bench-sheet.ts'
import {
  choicesOf,
  exampleOf,
  type FormNode,
  helpOf,
  isMapping,
  isShort,
  itemOf,
  labelOf,
  membersOf,
  nodeAt,
} from './form-node.ts'

export interface Suggestion {
  readonly text: string
  /** What it is called, where that is not the text itself. */
  readonly label?: string
  readonly help: string
}

/** Ids by what a field names. */
export type SiteNames = Readonly<Record<(typeof NAMES)[string], readonly string[]>>

/** Keys that the mapping at a path may have, those that it must have among them. */
export function keySuggestions(path: Path): Suggestion[] {
  const node = nodeAt(path)
  if (node === undefined) return []
  return membersOf(node).map(([key, member]) => ({
    text: `${key}:${opensLines(member) ? '' : ' '}`,
    label: labelOf(key, member),
    help: helpOf(member),
  }))
}

/** What stands on lines of its own. */
function opensLines(node: FormNode): boolean {
  return itemOf(node) !== undefined || (isMapping(node) && !isShort(node))
}

/** Values that the key at a path may have; its example where any text may stand there. */
export function valueSuggestions(path: Path, names: SiteNames): Suggestion[] {
  const node = nodeAt(path)
  if (node === undefined || itemOf(node) !== undefined) return []
  const named = NAMES[placeOf(path)]
  if (named !== undefined) return names[named].map((text) => ({ text, help: helpOf(node) }))
  const choices = choicesOf(node)
  if (choices !== undefined) return choices.map((text) => ({ text, help: helpOf(node) }))
  const example = exampleOf(node)
  return example === '' ? [] : [{ text: example, label: 'for instance', help: helpOf(node) }]
}
