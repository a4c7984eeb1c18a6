/** Reasons are data: a permanent code with what its sentence needs. `src/words/` makes the sentence; nobody reads one back. */

/** A closed union with one member for each code of a table of parameters. */
export type ReasonOf<Params> = {
  readonly [Code in keyof Params]: { readonly code: Code; readonly params: Params[Code] }
}[keyof Params]
