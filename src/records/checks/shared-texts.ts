/** Texts of records, each held once: units, names, dates and round figures come again in thousands of lots. */

/** Longer ones seldom come again. */
const LONGEST = 64

/**
 * Puts one text in place of all that are the same, and takes none as a part of the file that it was read from, which would
 * keep the whole file in memory.
 */
export class SharedTexts {
  readonly #known = new Map<string, string>()

  /** @param value of a record, just read: nobody else has it yet */
  shareIn(value: unknown): void {
    if (typeof value !== 'object' || value === null) return
    const members = value as Record<string, unknown>
    for (const [key, member] of Object.entries(members))
      if (typeof member === 'string') members[key] = this.#shared(member)
      else this.shareIn(member)
  }

  #shared(text: string): string {
    const known = this.#known.get(text)
    if (known !== undefined) return known
    const own = ownCopy(text)
    if (own.length <= LONGEST) this.#known.set(own, own)
    return own
  }
}

/** A text that was cut out of another refers to it, until it is written anew. */
function ownCopy(text: string): string {
  return JSON.parse(JSON.stringify(text)) as string
}
