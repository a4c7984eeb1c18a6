/** From a reason's code to its sentence: a table must hold every code, or it does not compile. */

/** A table of sentences, one for each code of a table of parameters; `context` is what they share. */
export type WordsOf<Params, Context extends readonly unknown[] = [], Words = string> = {
  readonly [Code in keyof Params]: (params: Params[Code], ...context: Context) => Words
}

/** The sentence of one reason. */
export function wordsOf<
  Params,
  Code extends keyof Params,
  Context extends readonly unknown[],
  Words = string,
>(
  table: WordsOf<Params, Context, Words>,
  reason: { readonly [C in Code]: { readonly code: C; readonly params: Params[C] } }[Code],
  ...context: Context
): Words {
  return table[reason.code](reason.params, ...context)
}
