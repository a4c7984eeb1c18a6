/** Of a source with one more lot only that lot is made; what is kept of the others holds on every day, or on its own. */
import { resolve } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { ALTERED } from '../../../src/demo/planted.ts'
import { asOfDate, computeEdition } from '../../../src/edition/compute.ts'
import { type LotsToAsk, partsOfLots } from '../../../src/edition/passes/parts-of-lots.ts'
import type { KeptParts } from '../../../src/edition/passes/parts-of-sources.ts'
import { loadRecords, type Records } from '../../../src/records/load.ts'
import { memoryOfParts } from './memory-of-parts.ts'

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
  const { source } = ALTERED
  const { records: all } = loadRecords(resolve(import.meta.dirname, '../../../content'))
  const own = [...all.lots].filter(([id]) => id.startsWith(`${source}/`))
  const records: Records = { ...all, lots: new Map(own) }
  const issued = [...records.lots.keys()].filter((id) => records.lots.get(id)?.revisions !== undefined)
  const newest = issued.at(-1) ?? ''
  const withQuantity: Records = {
    ...records,
    lots: new Map(
      [...records.lots].map(([id, lot]) => [
        id,
        id === newest ? { ...lot, quantity: { ...lot.quantity, value: lot.quantity.value + 1 } } : lot,
      ]),
    ),
  }
  /** Lots that are told otherwise, of those issued and not withdrawn before the one that has changed. */
  const withAnother = (one: Told, other: Told) =>
    issued.filter(
      (id) =>
        id !== newest &&
        records.lots.get(id)?.revisions?.at(-1)?.withdrawn === undefined &&
        one.get(id) !== other.get(id),
    )

  type Told = ReadonlyMap<string, string>

  function told(whole: Records, later: number, kept?: KeptParts): Told {
    const asOf = momentOfDay(asOfDate(records, {}).day + later)
    const edition = computeEdition(whole, { program: 'test', asOf, ...(kept && { kept }) })
    return new Map(edition.lotsOf(source).map(({ id }) => [id, JSON.stringify(edition.lot(id))]))
  }

  // Where dates on record pass in between, what rests on them is made anew.
  it.each([
    [0, 0],
    [40, 12],
  ])('has the documents of no earlier lot read, %i days later, or of %i at most', (later, few) => {
    const kept = memoryOfParts()
    told(records, 0, kept)
    const anew = told(withQuantity, later)
    // In no folder there are no documents: a lot of which one is asked for is told otherwise.
    const folderless = { ...withQuantity, contentDir: '' }
    expect(withAnother(told(folderless, later), anew)).not.toEqual([])
    expect(withAnother(told(folderless, later, kept), anew).length).toBeLessThanOrEqual(few)
    expect(told(withQuantity, later, kept)).not.toEqual(told(records, later))
    told(records, 0, kept)
    expect(told(withQuantity, later, kept)).toEqual(anew)
    expect(issued.length).toBeGreaterThan(30)
  })
})
