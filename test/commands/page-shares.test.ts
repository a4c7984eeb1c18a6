import { describe, expect, it } from 'vitest'
import { PageShares } from '../../src/commands/page-shares.ts'

/** Pages named SOURCE/NUMBER; "/NUMBER" concerns several sources. */
const pagesOf = (source: string, count: number) =>
  Array.from({ length: count }, (_, place) => `${source}/${place}`)

function sharesOf(pages: readonly string[], isComputed = (_thread: number, _source: string) => false) {
  return new PageShares({ pages, sourceOf: (page) => page.split('/')[0] || undefined, isComputed })
}

/** Sources that a thread draws of, and how many pages, until nothing is left for it. */
function all(shares: PageShares<string>, thread: number): string[] {
  const drawn: string[] = []
  for (let next = shares.next(thread); next.length > 0; next = shares.next(thread)) drawn.push(...next)
  return drawn
}

const source = (page = '') => page.split('/')[0]

describe('PageShares', () => {
  it('keeps the pages of several sources apart', () => {
    expect(sharesOf(['/0', 'ash/0', '/1']).others).toEqual(['/0', '/1'])
  })

  it('has each thread go on with its source, and begin with the largest that nobody has begun', () => {
    const shares = sharesOf([...pagesOf('ash', 100), ...pagesOf('tuff', 200)])
    expect(source(shares.next(1)[0])).toBe('tuff')
    expect(source(shares.next(2)[0])).toBe('ash')
    expect(source(shares.next(1)[0])).toBe('tuff')
    expect(source(shares.next(2)[0])).toBe('ash')
  })

  it('hands out every page once, in order', () => {
    const pages = [...pagesOf('ash', 100), ...pagesOf('tuff', 70)]
    expect(all(sharesOf(pages), 1)).toEqual(pages)
  })

  it('has a source helped by a thread that would have to compute it only while more than a third is left', () => {
    const shares = sharesOf(pagesOf('ash', 96))
    expect(shares.next(1)).toHaveLength(32)
    expect(shares.next(2)).toHaveLength(32)
    const later = sharesOf(pagesOf('ash', 96))
    later.next(1)
    later.next(1)
    expect(later.next(2)).toEqual([])
    expect(later.next(1)).toHaveLength(32)
  })

  it('has a source helped to its end by a thread that has computed it', () => {
    const shares = sharesOf(pagesOf('ash', 96), (thread) => thread === 0)
    shares.next(1)
    shares.next(1)
    expect(shares.next(0)).toHaveLength(32)
    expect(shares.next(1)).toEqual([])
  })
})
