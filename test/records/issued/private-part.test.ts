import { describe, expect, it } from 'vitest'
import { type PrivatePart, revealedIn, withRevealed } from '../../../src/records/issued/private-part.ts'

const withheld = { by: 'name not published', lot: { samples: [{ by: 'name not published', id: 'A' }] } }
const full = { by: 'M. Okafor', lot: { samples: [{ by: 'P. Idowu', id: 'A' }] } }
const part = (persons: PrivatePart['persons']): PrivatePart => ({
  format: 2,
  salt: 's',
  certificate: 'a/b',
  revision: 0,
  ...(persons === undefined ? {} : { persons }),
})

describe('revealedIn', () => {
  it('names each place that differs, with what stands there in full', () => {
    expect(revealedIn(withheld, full)).toEqual([
      [['by'], 'M. Okafor'],
      [['lot', 'samples', 0, 'by'], 'P. Idowu'],
    ])
    expect(revealedIn(full, full)).toEqual([])
  })
  it('takes the whole of what has other members', () => {
    expect(revealedIn({ a: { text: 'x' } }, { a: { text: 'y', to: 'z' } })).toEqual([
      [['a'], { text: 'y', to: 'z' }],
    ])
    expect(revealedIn({ a: [] }, { a: ['x'] })).toEqual([[['a'], ['x']]])
  })
})

describe('withRevealed', () => {
  it('puts back what a group holds, in a copy', () => {
    const own = part(revealedIn(withheld, full))
    expect(withRevealed(withheld, own, ['persons'])).toEqual(full)
    expect(withRevealed(withheld, own, ['seals'])).toEqual(withheld)
    expect(withheld.by).toBe('name not published')
  })
  it('leaves places alone that the document does not have', () => {
    expect(
      withRevealed(
        { a: 1 },
        part([
          [['__proto__', 'x'], 2],
          [['b', 'c'], 2],
        ]),
        ['persons'],
      ),
    ).toEqual({ a: 1 })
  })
})
