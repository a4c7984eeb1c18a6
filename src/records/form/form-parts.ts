/** What the form of a lot is made of: fields, mappings under a heading, lists. */
import type { Path } from '../edit/edit-yaml.ts'
import type { NAMES } from './bench-sheet.ts'

/** One value, as it is written. */
export interface FormField {
  readonly kind: 'field'
  readonly path: Path
  readonly label: string
  readonly help: string
  readonly example: string
  /** As written; empty where nothing is. */
  readonly text: string
  readonly required: boolean
  /** Words of a fixed list. */
  readonly choices?: readonly string[]
  /** Records of the site that the field names one of. */
  readonly names?: (typeof NAMES)[string]
  /** Kept as a number, without quotes. */
  readonly number: boolean
  /** Written as what no field shows: to be changed in the text. */
  readonly fixed?: true
  /** The value may be written out as a mapping with details: the key that the text then stands under. */
  readonly detailed?: string
}

/** A mapping, or a part of one, under a heading. */
export interface FormGroup {
  readonly kind: 'group'
  readonly path: Path
  readonly legend: string
  readonly help: string
  readonly parts: readonly FormPart[]
  /** What can be added: a key with what it is called. */
  readonly further: readonly FurtherKey[]
  /** It can be taken out as a whole. */
  readonly removable: boolean
  /** Entries have keys of one's own choice: what the next one would have. */
  readonly nextKey?: string
}

export interface FurtherKey {
  readonly key: string
  readonly label: string
}

export interface FormList {
  readonly kind: 'list'
  readonly path: Path
  readonly legend: string
  readonly help: string
  readonly items: readonly (FormGroup | FormField)[]
  /** What one of them is called. */
  readonly one: string
}

export type FormPart = FormField | FormGroup | FormList

/** Every field of a form, in order. */
export function fieldsOf(parts: readonly FormPart[]): FormField[] {
  return parts.flatMap((made) =>
    made.kind === 'field' ? [made] : fieldsOf(made.kind === 'list' ? made.items : made.parts),
  )
}
