/** A place of a lot in the words of its form: "Mortar C, c311, strength 7 d, specimens, a". */
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { placeOf, SHEETS } from './bench-sheet.ts'
import { labelOf, nodeAt } from './form-node.ts'

export function placeWords(path: Path, record: Plain): string {
  const words: string[] = []
  let value: Plain | undefined = record
  for (const [depth, part] of path.entries()) {
    value =
      typeof value === 'object' && value !== null
        ? (value as Record<string | number, Plain>)[part]
        : undefined
    const here = path.slice(0, depth + 1)
    const isItem = typeof path[depth + 1] === 'number'
    if (!isItem) words.push(typeof part === 'number' ? itemWords(here, part, value) : keyWords(here, part))
  }
  return words.join(', ')
}

function keyWords(path: Path, key: string): string {
  const node = nodeAt(path)
  return node === undefined ? key : labelOf(key, node)
}

function itemWords(path: Path, index: number, value: Plain | undefined): string {
  const sheet = SHEETS[placeOf(path)]
  const told = (sheet?.told ?? [])
    .map((key) => (value as Record<string, Plain> | undefined)?.[key])
    .filter((text) => typeof text === 'string' && text !== '')
  return `${sheet?.one ?? 'Entry'} ${told.length === 0 ? index + 1 : told.join(', ')}`
}
