/** One spoiled record for each seed and number: the same two give the same text on every machine. */
import { type Chance, chanceOf } from '../../src/demo/chance.ts'
import type { Corpus, CorpusRecord } from './corpus.ts'
import { oneOf, SPOIL_TEXT } from './spoil/spoil-text.ts'
import { withSpoiledValues } from './spoil/spoil-values.ts'

export interface SpoiledRecord {
  readonly corpus: Corpus
  readonly record: CorpusRecord
  /** What is read in place of the record's text. */
  readonly text: string
  /** How it was spoiled, in order. */
  readonly ways: readonly string[]
}

const TEXT_WAYS = Object.keys(SPOIL_TEXT)

/** Chance of one case: neighbouring numbers give unrelated ones. */
export function chanceFor(seed: number, number: number): Chance {
  // The finalizer of MurmurHash3 (Austin Appleby, public domain, from memory); only its stirring matters here.
  let mixed = (Math.imul(seed, 0x9e3779b1) + number) | 0
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b)
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
  return chanceOf((mixed ^ (mixed >>> 16)) >>> 0)
}

/** @param of corpora, each as likely as any other */
export function spoiledRecord(of: readonly Corpus[], seed: number, number: number): SpoiledRecord {
  const chance = chanceFor(seed, number)
  const corpus = oneOf(of, chance)
  const record = oneOf(corpus.records, chance)
  return { corpus, record, ...spoiled(record, chance) }
}

function spoiled({ text, name }: CorpusRecord, chance: Chance): { text: string; ways: string[] } {
  const values = chance.whole(0, 9) < 6
  if (values && name.kind !== 'method') {
    const spoiledValues = withSpoiledValues(text, chance)
    if (spoiledValues !== null && (chance.whole(0, 9) < 9 || spoiledValues.ways.length === 0))
      return { text: spoiledValues.text, ways: [...spoiledValues.ways] }
    return spoiledText(spoiledValues?.text ?? text, chance)
  }
  return spoiledText(text, chance)
}

function spoiledText(text: string, chance: Chance): { text: string; ways: string[] } {
  const ways = Array.from({ length: chance.whole(1, 2) }, () => oneOf(TEXT_WAYS, chance))
  return { text: ways.reduce((so, way) => SPOIL_TEXT[way]?.(so, chance) ?? so, text), ways }
}
