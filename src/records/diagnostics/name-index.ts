/**
 * Many names as a tree of their letters: a name is compared with all that begin alike at once, and no further than it may
 * still be near.
 */

interface Node {
  readonly below: Map<string, Node>
  /** Names that end here; several differ by case alone. */
  readonly names: string[]
}

export interface NearName {
  readonly candidate: string
  /** Letters to be added, taken out or exchanged, whatever their case. */
  readonly distance: number
}

export class NameIndex {
  readonly #root = emptyNode()
  readonly #byWord = new Map<string, string[]>()
  #longest = 0

  constructor(names: Iterable<string>) {
    for (const name of names) this.#add(name)
  }

  /** Letters of the longest name. */
  get longest(): number {
    return this.#longest
  }

  /** Names whose words, between hyphens, include a word. */
  withWord(word: string): readonly string[] {
    return this.#byWord.get(word) ?? []
  }

  /** Every name within a distance, in no order. @param name in small letters */
  within(name: string, most: number): NearName[] {
    const found: NearName[] = []
    // How far the letters up to a node are from each beginning of the name.
    const visit = (node: Node, depth: number, row: readonly number[]) => {
      const distance = row[name.length] ?? 0
      if (distance <= most) for (const candidate of node.names) found.push({ candidate, distance })
      for (const [letter, next] of node.below) {
        const further = nextRow(row, { letter, depth: depth + 1, most }, name)
        if (further !== null) visit(next, depth + 1, further)
      }
    }
    visit(
      this.#root,
      0,
      Array.from({ length: name.length + 1 }, (_, place) => place),
    )
    return found
  }

  #add(name: string): void {
    const small = name.toLowerCase()
    this.#longest = Math.max(this.#longest, name.length)
    let node = this.#root
    for (let place = 0; place < small.length; place += 1) {
      const letter = small.charAt(place)
      const next = node.below.get(letter) ?? emptyNode()
      node.below.set(letter, next)
      node = next
    }
    node.names.push(name)
    for (const word of new Set(small.split('-'))) {
      const own = this.#byWord.get(word)
      if (own === undefined) this.#byWord.set(word, [name])
      else own.push(name)
    }
  }
}

function emptyNode(): Node {
  return { below: new Map(), names: [] }
}

interface Further {
  readonly letter: string
  /** Letters up to this one. */
  readonly depth: number
  readonly most: number
}

/**
 * The row of Wagner and Fischer's table for one letter more, as far as it may hold what is near enough: a beginning that is
 * shorter or longer by more letters is further away than that.
 * @returns null where nothing in it is near enough
 */
function nextRow(row: readonly number[], { letter, depth, most }: Further, name: string): number[] | null {
  const next = new Array<number>(row.length).fill(most + 1)
  let least = most + 1
  if (depth <= most) {
    next[0] = depth
    least = depth
  }
  const last = Math.min(name.length, depth + most)
  for (let place = Math.max(1, depth - most); place <= last; place += 1) {
    const exchanged = (row[place - 1] as number) + (name.charAt(place - 1) === letter ? 0 : 1)
    const distance = Math.min(exchanged, (row[place] as number) + 1, (next[place - 1] as number) + 1)
    next[place] = distance
    if (distance < least) least = distance
  }
  return most < least ? null : next
}
