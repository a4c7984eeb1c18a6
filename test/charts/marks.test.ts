import { describe, expect, it } from 'vitest'
import { beyondArrow, diamond, historyMark } from '../../src/charts/marks.ts'

const at = { x: 10, y: 20 }

describe('the marks', () => {
  it('have an outline of their own for every state that is not plainly valid', () => {
    const small = (['not-valid', 'withdrawn', 'pending'] as const).map((shape) =>
      historyMark({ ...at, shape }),
    )
    expect(new Set(small).size).toBe(3)
  })
  it('leave a valid point to its dot', () => {
    expect(historyMark({ ...at, shape: 'valid' })).toBe('')
  })
})

describe('diamond', () => {
  it('reaches as far above as to the sides', () => expect(diamond(10, 20, 4)).toBe('M10 16l4 4-4 4-4-4Z'))
})

describe('beyondArrow', () => {
  it('points away from the line, the same way mirrored to the left', () => {
    expect(beyondArrow(114, 8, 'right')).toBe('M111 3.5 119 8 111 12.5Z')
    expect(beyondArrow(6, 8, 'left')).toBe('M9 3.5 1 8 9 12.5Z')
  })
})
