/**
 * A fault of a record that keeps it from being read in one way only. Deciding one and drawing one are
 * separate files.
 */
export interface Diagnostic {
  /** Permanent, kebab-case: explained in `explanations.ts`. */
  readonly code: string
  readonly severity: 'error' | 'warning'
  /** Relative to the content folder, with forward slashes. */
  readonly file: string
  /** From 1, in UTF-16 units; line 1 column 1 where the whole file is meant. */
  readonly line: number
  readonly column: number
  /** End of the marked text, on the same line, exclusive. */
  readonly endColumn?: number
  /** What was found and what is expected. */
  readonly message: string
  /** How to fix it. */
  readonly mend: string
  /** Other places that the fault involves, in this file or another, the first the most telling. */
  readonly related?: readonly RelatedPlace[]
}

/** A place without which a fault is not understood: the other of two ids, the earlier of two dates. */
export interface RelatedPlace {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endColumn?: number
  /** What stands there, in a few words. */
  readonly message: string
}
