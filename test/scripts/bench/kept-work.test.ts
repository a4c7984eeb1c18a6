import { describe, expect, it } from 'vitest'
import { keeperOf, type Storage } from '../../../src/scripts/bench/kept-work.ts'

function storage(): Storage {
  const kept = new Map<string, string>()
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => {
      kept.set(key, value)
    },
    removeItem: (key) => {
      kept.delete(key)
    },
  }
}

const WORK = { lot: 'ash/A-1', text: 'quantity: 1 t\n', under: 'c618-12a' }

describe('keeperOf', () => {
  it('keeps work by lot, and knows the last', () => {
    const shared = storage()
    const keeper = keeperOf('/a/', () => shared)
    expect(keeper.last()).toBeUndefined()
    expect(keeper.keep(WORK)).toBe(true)
    expect(keeper.keep({ ...WORK, lot: 'ash/A-2' })).toBe(true)
    expect(keeper.kept('ash/A-1')).toEqual(WORK)
    expect(keeper.last()?.lot).toBe('ash/A-2')
    keeper.discard('ash/A-2')
    expect([keeper.last(), keeper.kept('ash/A-2')]).toEqual([undefined, undefined])
    expect(keeper.kept('ash/A-1')).toEqual(WORK)
  })

  it('keeps two sites of one host apart', () => {
    const shared = storage()
    keeperOf('/a/', () => shared).keep(WORK)
    expect(keeperOf('/b/', () => shared).kept(WORK.lot)).toBeUndefined()
  })

  it('says that a storage that is full or closed keeps nothing, and goes on', () => {
    const closed = keeperOf('/a/', () => {
      throw new DOMException('denied', 'SecurityError')
    })
    expect([closed.keep(WORK), closed.kept(WORK.lot), closed.last()]).toEqual([false, undefined, undefined])
    expect(() => closed.discard(WORK.lot)).not.toThrow()
  })

  it('takes no entry that somebody else wrote', () => {
    const shared = storage()
    shared.setItem('bench /a/ ash/A-1', '{"text": 1}')
    expect(keeperOf('/a/', () => shared).kept('ash/A-1')).toBeUndefined()
    shared.setItem('bench /a/ ash/A-1', 'no JSON')
    expect(keeperOf('/a/', () => shared).kept('ash/A-1')).toBeUndefined()
  })
})
