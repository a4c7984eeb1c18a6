import { describe, expect, it } from 'vitest'
import { nameInSource, sourceOf } from '../../../src/core/measure/lot-id.ts'

describe('sourceOf and nameInSource', () => {
  it('part a lot’s id at the slash', () => {
    expect([sourceOf('tuff/T-1'), nameInSource('tuff/T-1')]).toEqual(['tuff', 'T-1'])
  })
})
