/** Fractions of crossed factors: which effects a fraction cannot tell apart. */

/** An effect, as the factors that it is of: one for a factor, two for an interaction. */
export type FactorsOf = readonly string[]

/**
 * Products of the defining words of a fraction: each stands for a constant in all conditions that are cast.
 * @param words factors of two levels whose product is high in every condition that is cast
 * @returns all products of one word or more, factors in order of the alphabet; an empty one where the words
 * depend on each other, so that a word halves nothing
 * Source: Box, Hunter and Hunter 1978, chapter 12 (defining relation; from memory).
 */
export function definingRelation(words: readonly FactorsOf[]): FactorsOf[] {
  const products: FactorsOf[] = []
  for (const word of words) products.push(word, ...products.map((product) => productOf(product, word)))
  return products
}

/**
 * The product of two effects: a factor that stands in both is squared away.
 * @param a,b factors of an effect, each once
 * @returns factors in order of the alphabet; none where both are one effect
 */
export function productOf(a: FactorsOf, b: FactorsOf): FactorsOf {
  return [...a.filter((one) => !b.includes(one)), ...b.filter((one) => !a.includes(one))].toSorted()
}

/**
 * Effects that a fraction mixes up with an effect.
 * @param effect asked about
 * @param words as of `definingRelation`
 * @returns by number of factors; an empty one stands for the mean of all
 */
export function mixedUpWith(effect: FactorsOf, words: readonly FactorsOf[]): FactorsOf[] {
  return definingRelation(words)
    .map((product) => productOf(effect, product))
    .toSorted((a, b) => a.length - b.length || (a.join() < b.join() ? -1 : 1))
}

/**
 * Effects that are asked for and that the fraction cannot tell apart.
 * @param asked effects
 * @param words as of `definingRelation`
 * @returns pairs; the second is empty where the first is mixed up with the mean
 */
export function inseparable(
  asked: readonly FactorsOf[],
  words: readonly FactorsOf[],
): { readonly effect: FactorsOf; readonly from: FactorsOf }[] {
  return asked.flatMap((effect, place) => {
    const mixed = mixedUpWith(effect, words)
    return [[], ...asked.slice(place + 1)]
      .filter((other) => mixed.some((one) => productOf(one, other).length === 0))
      .map((from) => ({ effect, from }))
  })
}
