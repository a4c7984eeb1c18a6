/** Values made for a key, of which those that were used last are kept. */

interface Kept<Value> {
  readonly value: Value
  readonly weight: number
}

function weighed<Value>(value: Value, weightOf: (value: Value) => number): Kept<Value> {
  return { value, weight: weightOf(value) }
}

/** Holds values of no more than a given weight together; the one that was used last whatever it weighs. */
export class LastUsed<Value> {
  readonly #most: number
  /** The one that was used last stands last. */
  readonly #kept = new Map<string, Kept<Value>>()
  #last: string | undefined
  #held = 0

  /** @param most weight of all values kept, in the unit of `of`; Infinity keeps everything */
  constructor(most: number) {
    this.#most = most
  }

  /**
   * The value for a key, made where it is not kept.
   * @param weightOf a value, not negative
   * @param make the value, which depends on the key alone
   */
  of(key: string, weightOf: (value: Value) => number, make: () => Value): Value {
    const known = this.#kept.get(key)
    if (known !== undefined && key === this.#last) return known.value
    // What weighs too much goes before another is made.
    this.#last = key
    this.#letGo()
    const own = known ?? weighed(make(), weightOf)
    if (known === undefined) this.#held += own.weight
    this.#kept.delete(key)
    this.#kept.set(key, own)
    this.#last = key
    this.#letGo()
    return own.value
  }

  #letGo(): void {
    for (const [key, { weight }] of this.#kept) {
      if (this.#held <= this.#most || key === this.#last) return
      this.#kept.delete(key)
      this.#held -= weight
    }
  }
}
