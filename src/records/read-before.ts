/** What was read from files before and need not be read again, in this process or by an earlier command. */

export interface KeptReading {
  /** Changes whenever the file may have changed. */
  readonly mark: string
  readonly value: unknown
}

/**
 * What was read from files before and need not be read again: a thousand records are read in the time of one when one
 * of them is saved.
 */
export class ReadBefore {
  readonly #kept = new Map<string, KeptReading>()
  #earlier: ReadonlyMap<string, KeptReading>

  /** @param earlier what an earlier command with the same program kept of the same folder, by name */
  constructor(earlier: ReadonlyMap<string, KeptReading> = new Map()) {
    this.#earlier = earlier
  }

  /**
   * What was read from a file, now or before.
   * @param name of the file and of what is read from it
   * @param mark changes whenever the file may have changed; null where it cannot be told
   * @param read says with the value whether it is all that there is to tell, and may be kept
   */
  of<T>(name: string, mark: string | null, read: () => { readonly value: T; readonly keep: boolean }): T {
    const kept = this.#kept.get(name) ?? this.#earlier.get(name)
    if (kept !== undefined && kept.mark === mark) {
      this.#kept.set(name, kept)
      // Only `read` for this name has put it there.
      return kept.value as T
    }
    const { value, keep } = read()
    if (mark !== null && keep) this.#kept.set(name, { mark, value })
    else this.#kept.delete(name)
    return value
  }

  /** Holds nothing any more, once all is read. */
  letGo(): void {
    this.#kept.clear()
    this.#earlier = new Map()
  }

  /** What was asked for and may be kept, by name. */
  kept(): ReadonlyMap<string, KeptReading> {
    return this.#kept
  }
}
