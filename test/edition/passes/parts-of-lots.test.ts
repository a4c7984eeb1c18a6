/** Of a source with one more lot only that lot is made; what is kept of the others holds on every day, or on its own. */
import { resolve } from 'node:path'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { asOfDate, computeEdition } from '../../../src/edition/compute.ts'
import { type LotsToAsk, partsOfLots } from '../../../src/edition/passes/parts-of-lots.ts'
import type { KeptParts, PartOfSource } from '../../../src/edition/passes/parts-of-sources.ts'
import { loadRecords, type Records } from '../../../src/records/load.ts'

/** Lots of which a document was read. */
const read = vi.hoisted(() => new Set<string>())

vi.mock('../../../src/records/issued/read-document.ts', async (original) => {
  const actual = await original<typeof import('../../../src/records/issued/read-document.ts')>()
  return {
    ...actual,
    issuedReader: (folder: string) => {
      const reader = actual.issuedReader(folder)
      const document = (lot: string, revision: number) => {
        read.add(lot)
        return reader.document(lot, revision)
      }
      return { ...reader, document }
    },
  }
})

/** What a command keeps on the disk, in memory. */
function memoryOfParts(): KeptParts & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>()
  const keyOf = ({ source, restsOn, name }: PartOfSource) => `${source} ${restsOn} ${name}`
  return {
    texts,
    get: (part) => texts.get(keyOf(part)),
    put: (part, text) => texts.set(keyOf(part), text),
  }
}

describe('partsOfLots', () => {
  let kept = memoryOfParts()
  let made: string[] = []
  beforeEach(() => {
    kept = memoryOfParts()
    made = []
  })

  /** Asks each lot for its name and gives those that were made. */
  function asked(lots: LotsToAsk['restOn'], { day = '2026-04-01', settled = true } = {}): string[] {
    made = []
    const parts = partsOfLots(kept, { source: 'ash', name: 'names', asOf: readMoment(day), restOn: lots })
    const values = lots().map(([id], place) =>
      parts.of(
        place,
        () => {
          made.push(id)
          return { id, on: readMoment(day), none: undefined, is: -0 }
        },
        () => settled,
      ),
    )
    parts.end()
    expect(values.map(({ id }) => id)).toEqual(lots().map(([id]) => id))
    expect(values.every(({ is }) => Object.is(is, -0))).toBe(true)
    return made
  }

  it('makes a lot only where it rests on something else than before', () => {
    const two = () => [['ash/1', 'd1'] as const, ['ash/2', 'd2'] as const]
    expect(asked(two)).toEqual(['ash/1', 'ash/2'])
    expect(asked(two)).toEqual([])
    expect(asked(() => [...two(), ['ash/3', 'd3']])).toEqual(['ash/3'])
    expect(
      asked(() => [
        ['ash/1', 'd1'],
        ['ash/2', 'other'],
      ]),
    ).toEqual(['ash/2'])
    expect(asked(() => [['ash/9', 'd1']])).toEqual(['ash/9'])
  })

  it('makes what is not settled again on another day', () => {
    const one = () => [['ash/1', 'd1'] as const]
    expect(asked(one, { settled: false })).toEqual(['ash/1'])
    expect(asked(one, { settled: false })).toEqual([])
    expect(asked(one, { settled: false, day: '2026-04-02' })).toEqual(['ash/1'])
    expect(asked(one, { day: '2026-04-03' })).toEqual(['ash/1'])
    expect(asked(one, { day: '2026-04-04' })).toEqual([])
  })

  it('keeps lots that nobody asked for, and no lot that is gone', () => {
    const two = () => [['ash/1', 'd1'] as const, ['ash/2', 'd2'] as const]
    asked(two)
    partsOfLots(kept, { source: 'ash', name: 'names', asOf: readMoment('2026-04-01'), restOn: two }).end()
    expect(asked(two)).toEqual([])
    asked(() => [['ash/2', 'd2']])
    expect([...kept.texts.values()].join('')).not.toContain('ash/1')
  })

  it('takes a spoiled line for none', () => {
    const one = () => [['ash/1', 'd1'] as const]
    asked(one)
    for (const [key, text] of kept.texts) kept.texts.set(key, text.replace('ash/1 d1', 'ash/1'))
    expect(asked(one)).toEqual(['ash/1'])
  })
})

describe('a source of which one lot has changed', () => {
  const CONTENT = resolve(import.meta.dirname, '../../../content')
  const { records } = loadRecords(CONTENT)
  const SOURCE = 'quellan-ash'
  const own = [...records.lots.keys()].filter((id) => id.startsWith(`${SOURCE}/`))
  const newest = own.findLast((id) => records.lots.get(id)?.revisions !== undefined) ?? ''
  const withQuantity: Records = {
    ...records,
    lots: new Map(
      [...records.lots].map(([id, lot]) => [
        id,
        id === newest ? { ...lot, quantity: { ...lot.quantity, value: lot.quantity.value + 1 } } : lot,
      ]),
    ),
  }
  const on = (whole: Records, later: number, kept?: KeptParts) =>
    computeEdition(whole, {
      program: 'test',
      asOf: momentOfDay(asOfDate(records, {}).day + later),
      ...(kept && { kept }),
    })
  const told = (edition: ReturnType<typeof on>) =>
    edition.lotsOf(SOURCE).map(({ id }) => JSON.stringify(edition.lot(id)))

  // Dates on record that pass in between change what lots rest on.
  it.each([
    [0, 0],
    [1, 5],
    [40, 20],
  ])('reads the documents of no lot before it, %i days later, or of few', (later, few) => {
    const kept = memoryOfParts()
    on(records, 0, kept).source(SOURCE)
    read.clear()
    const again = told(on(withQuantity, later, kept))
    const readAgain = [...read]
    expect(readAgain).toContain(newest)
    const settled = own.filter((id) => id < newest && records.lots.get(id)?.revisions !== undefined)
    const withdrawn = (id: string) =>
      records.lots.get(id)?.revisions?.some((revision) => revision.withdrawn === 'yes') === true
    const needless = readAgain.filter((id) => settled.includes(id) && !withdrawn(id))
    expect(needless.length).toBeLessThanOrEqual(few)
    expect(settled.length).toBeGreaterThan(30)
    expect(again).toEqual(told(on(withQuantity, later)))
  })
})
