import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { certificateFeed } from '../../../src/edition/writers/feed.ts'
import { revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

function feedOf(lots: Parameters<typeof tinyEdition>[1]): string[] {
  const text = certificateFeed(tinyEdition([tinySource('ash')], lots)) ?? ''
  return [...text.matchAll(/<title type="html"><!\[CDATA\[(.*?)\]\]><\/title>/g)].map(
    ([, title]) => title ?? '',
  )
}

describe('certificateFeed', () => {
  it('lists revisions with how their lots stand, the newest first, those of one day by lot, and leaves drafts out', () => {
    const titles = feedOf([
      tinyLot('ash/1', {
        state: 'complete',
        verdicts: [verdict('a', 'does-not-meet')],
        revisions: [revision(0, '2026-03-10', { state: 'superseded' }), revision(1, '2026-04-02')],
      }),
      tinyLot('ash/2', {
        state: 'withdrawn',
        withdrawn: readMoment('2026-03-10'),
        verdicts: [verdict('a', 'meets')],
        revisions: [revision(0, '2026-03-10', { state: 'withdrawn' })],
      }),
      tinyLot('ash/3'),
    ])
    expect(titles).toEqual([
      'ash/1, revision 1: Does not meet',
      'ash/1, revision 0: issued, since superseded',
      'ash/2, revision 0: Withdrawn 10 March 2026; was: meets',
    ])
  })

  it('keeps the hundred newest of all, also an earlier revision of a lot that was revised again', () => {
    const old = Array.from({ length: 120 }, (_, index) =>
      tinyLot(`ash/${index}`, {
        revisions: [revision(0, `2025-01-${String((index % 28) + 1).padStart(2, '0')}`)],
      }),
    )
    const revised = tinyLot('ash/new', {
      state: 'complete',
      revisions: [revision(0, '2026-03-10'), revision(1, '2026-04-02')],
    })
    const titles = feedOf([...old, revised])
    expect(titles).toHaveLength(100)
    expect(titles.slice(0, 2)).toEqual([
      'ash/new, revision 1: Not judged',
      'ash/new, revision 0: issued, since superseded',
    ])
  })

  it('is left out where the site has no address', () => {
    const edition = tinyEdition([], [], { address: { origin: null, base: '/' } })
    expect(certificateFeed(edition)).toBeNull()
  })
})
