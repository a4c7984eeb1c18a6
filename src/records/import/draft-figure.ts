/** A result of an analysis in a draft: a plain quantity, one with its basis, or a figure of a mortar among others. */
import { isPropertyKey } from '../../core/measure/properties.ts'
import { isFinishable } from '../../core/measure/ratio-indices.ts'
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { isMapping, isSame, type Mapping, type RecordDraft } from './draft.ts'
import type { FieldValue } from './cell-values.ts'

export interface FigureToState {
  readonly value: FieldValue
  /** Of the row, where the column does not say. */
  readonly condition: string | undefined
  readonly age: string | undefined
}

export function stateFigure(draft: RecordDraft, path: Path, { value, condition, age }: FigureToState): void {
  const { basis, method, 'standard-uncertainty': u } = value.scope
  const finished = isPropertyKey(value.name) && isFinishable(value.name)
  const mortar = finished
    ? { condition: value.scope.condition ?? condition, age: value.scope.age ?? age }
    : {}
  const figure = defined({ value: value.written, ...mortar, 'standard-uncertainty': u, basis, method })
  const old = draft.at(path)
  const reads = value.field.reads
  const { place } = value
  if (Object.keys(figure).length === 1 && !isMapping(old) && !Array.isArray(old))
    draft.state(path, { written: value.written, place, reads })
  else if (Array.isArray(old) || (isMapping(old) && !isSameMortar(old, figure))) {
    draft.makeList(path)
    const index = draft.itemOf(
      path,
      (one) => isSameMortar(one, figure),
      () => figure,
      place,
    )
    stateMembers(draft, [...path, index], figure, value)
  } else if (isMapping(old)) stateMembers(draft, path, figure, value)
  else draft.state(path, { written: figure, place, reads })
}

function stateMembers(draft: RecordDraft, path: Path, figure: Mapping, { place, field }: FieldValue): void {
  for (const [key, written] of Object.entries(figure))
    draft.state([...path, key], {
      written,
      place,
      ...(key === 'value' ? { reads: field.reads } : key === 'age' ? { reads: { as: 'age' } } : {}),
    })
}

function isSameMortar(one: Mapping, other: Mapping): boolean {
  return (
    one['condition'] === other['condition'] && isSame(one['age'] ?? '', other['age'] ?? '', { as: 'age' })
  )
}

function defined(members: Readonly<Record<string, Plain | undefined>>): Mapping {
  return Object.fromEntries(
    Object.entries(members).filter((entry): entry is [string, Plain] => entry[1] !== undefined),
  )
}
