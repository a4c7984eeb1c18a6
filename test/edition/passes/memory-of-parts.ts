/** What a command keeps on the disk, in memory. */
import type { KeptParts, PartOfSource } from '../../../src/edition/passes/parts-of-sources.ts'

export interface MemoryOfParts extends KeptParts {
  readonly texts: Map<string, string>
  /** How often something was there. */
  taken: number
}

export function memoryOfParts(): MemoryOfParts {
  const texts = new Map<string, string>()
  const keyOf = ({ source, restsOn, name }: PartOfSource) => `${source} ${restsOn} ${name}`
  return {
    texts,
    taken: 0,
    get(part) {
      const text = texts.get(keyOf(part))
      if (text !== undefined) this.taken += 1
      return text
    },
    put: (part, text) => texts.set(keyOf(part), text),
  }
}
