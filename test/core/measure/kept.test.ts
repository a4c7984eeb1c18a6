import { describe, expect, it } from 'vitest'
import { kept } from '../../../src/core/measure/kept.ts'

describe('kept', () => {
  it('makes a value once for each key', () => {
    const made: string[] = []
    const make = (name: string) => () => {
      made.push(name)
      return { name }
    }
    const store = new Map<string | null, { name: string }>()
    const first = kept(store, 'F', make('first'))
    expect(kept(store, 'F', make('second'))).toBe(first)
    expect(kept(store, null, make('third'))).toEqual({ name: 'third' })
    expect(made).toEqual(['first', 'third'])
  })
  it('keeps values with objects as keys', () => {
    const store = new WeakMap<object, { name: string }>()
    const key = {}
    expect(kept(store, key, () => ({ name: 'one' }))).toBe(kept(store, key, () => ({ name: 'other' })))
  })
})
