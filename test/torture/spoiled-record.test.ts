import { describe, expect, it } from 'vitest'
import { RECORD_KINDS } from '../../src/records/schema/schemas.ts'
import { corpora } from './corpus.ts'
import { readSpoiled } from './read-spoiled.ts'
import { SPOIL_TEXT } from './spoil/spoil-text.ts'
import { VALUE_WAYS } from './spoil/spoil-values.ts'
import { type SpoiledRecord, spoiledRecord } from './spoiled-record.ts'

const of = corpora()
const cases = Array.from({ length: 1500 }, (_, number) => spoiledRecord(of, 7, number))

describe('spoiledRecord', () => {
  it('gives the same text for the same seed and number, and another for another', () => {
    expect(spoiledRecord(corpora(), 7, 12).text).toBe(cases[12]?.text)
    expect(new Set(cases.map(({ text }) => text)).size).toBeGreaterThan(1400)
    expect(spoiledRecord(of, 8, 12).text).not.toBe(cases[12]?.text)
  })
  it('uses every way of spoiling, and spoils every kind of record', () => {
    const used = new Set(cases.flatMap(({ ways }) => ways))
    expect([...Object.keys(SPOIL_TEXT), ...VALUE_WAYS].filter((way) => !used.has(way))).toEqual([])
    expect(new Set(cases.map(({ record }) => record.name.kind)).size).toBe(RECORD_KINDS.length)
  })
})

/** The first record of the small folder of a kind, with another text. */
function withText(kind: string, change: (text: string) => string): SpoiledRecord {
  const [corpus] = of
  const record = corpus?.records.find(({ name }) => name.kind === kind)
  if (corpus === undefined || record === undefined)
    throw new RangeError(`withText needs a known kind, got ${kind}`)
  return { corpus, record, text: change(record.text), ways: [] }
}

describe('readSpoiled', () => {
  it('finds no fault in a sound record, and gives it with those that it refers to', () => {
    const { faults, records, diagnostics } = readSpoiled(
      withText('lot', (text) => text),
      'what it refers to',
    )
    expect({ faults, diagnostics }).toEqual({ faults: [], diagnostics: [] })
    expect([...(records?.controls.keys() ?? [])]).toEqual(['K1'])
  })
  it('finds no fault in a diagnostic that is as it should be', () => {
    const { faults, diagnostics } = readSpoiled(
      withText('lot', (text) => text.replace('1450 t', '1450')),
      'what it refers to',
    )
    expect(diagnostics.map(({ code }) => code)).toEqual(['quantity-unit'])
    expect(faults).toEqual([])
  })
})
