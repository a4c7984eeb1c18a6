/** A sentence in pieces, so that a page can make one of them bold, or a link, without knowing what it says. */

export interface Said {
  readonly text: string
  /** The figure that the sentence is for. */
  readonly strong?: true
  /** Beyond a limit, late, or open: for emphasis beside the word. */
  readonly alert?: true
  /** SOURCE/LOT that the piece names. */
  readonly lot?: string
  /** Part of the page that the piece leads to. */
  readonly part?: string
}

/** A piece without emphasis. */
export function plain(text: string): Said {
  return { text }
}

/** A figure to be seen first. */
export function strong(text: string): Said {
  return { text, strong: true }
}

/** A count to be seen first, with emphasis where it is not zero. */
export function counted(count: number, words = String(count)): Said {
  return 0 < count ? { text: words, strong: true, alert: true } : strong(words)
}

/** A lot by its printed number. */
export function lotNamed({ id, number }: { readonly id: string; readonly number: string }): Said {
  return { text: number, lot: id }
}

/** The whole as one text. */
export function saidText(pieces: readonly Said[]): string {
  return pieces.map(({ text }) => text).join('')
}
