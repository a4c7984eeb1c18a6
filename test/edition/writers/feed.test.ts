import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { certificateFeed, sourceFeed } from '../../../src/edition/writers/feed.ts'
import { base } from '../views/criterion-fixture.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

interface Element {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: Element[]
  text: string
}

/** Read by a parser that is strict about well-formedness and namespaces, and shares no code with the writer. */
function parsed(text: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' }
  const open = [root]
  const parser = new SaxesParser({ xmlns: true })
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ local, uri, attributes }) => {
    expect(uri).toBe('http://www.w3.org/2005/Atom')
    const values = Object.entries(attributes).map(([name, { value }]) => [name, value] as const)
    const element = { name: local, attributes: Object.fromEntries(values), children: [], text: '' }
    open.at(-1)?.children.push(element)
    open.push(element)
  })
  parser.on('closetag', () => {
    open.pop()
  })
  parser.on('text', (piece) => {
    const element = open.at(-1)
    if (element !== undefined) element.text += piece
  })
  parser.write(text).close()
  const [feed] = root.children
  if (feed === undefined) throw new RangeError('parsed needs a document with an element')
  return feed
}

const all = ({ children }: Element, name: string) => children.filter((child) => child.name === name)
const one = (element: Element, name: string) => {
  const found = all(element, name)
  expect(found, name).toHaveLength(1)
  return found[0] ?? element
}

function publicEdition(lots: Parameters<typeof tinyEdition>[1], more: Partial<Edition> = {}): Edition {
  return tinyEdition([tinySource('ash')], lots, { audience: 'public', ...more })
}

function feedOf(lots: Parameters<typeof tinyEdition>[1]): Element {
  return parsed(certificateFeed(publicEdition(lots)) ?? '')
}

function titlesOf(lots: Parameters<typeof tinyEdition>[1]): string[] {
  return all(feedOf(lots), 'entry').map((entry) => one(entry, 'title').text)
}

describe('certificateFeed', () => {
  it('lists revisions with how their lots stand, the newest first, those of one day by lot, and leaves drafts out', () => {
    const titles = titlesOf([
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
    const titles = titlesOf([...old, revised])
    expect(titles).toHaveLength(100)
    expect(titles.slice(0, 2)).toEqual([
      'ash/new, revision 1: Not judged',
      'ash/new, revision 0: issued, since superseded',
    ])
  })

  it('is left out where the site has no address, and of the internal edition', () => {
    const address = { origin: null, base: '/' }
    expect(certificateFeed(publicEdition([], { address }))).toBeNull()
    expect(certificateFeed(publicEdition([], { audience: 'internal' }))).toBeNull()
  })

  it('lets no text of a record break out of its element, and holds no sign that XML cannot', () => {
    const reason =
      ']]></summary></entry><entry><title>forged</title></entry>&amp;"\'\u0000\u001b\ud800 \ufffe<![CDATA['
    const feed = feedOf([
      tinyLot('ash/1', { state: 'complete', revisions: [revision(0, '2026-03-10', { reason })] }),
    ])
    const entries = all(feed, 'entry')
    expect(entries).toHaveLength(1)
    const shown = ['\u0000', '\u001b', '\ud800', '\ufffe'].reduce(
      (text, sign) => text.replace(sign, '\ufffd'),
      reason,
    )
    expect(entries.map((entry) => one(entry, 'summary').text)).toEqual([shown])
  })
})

/** Source: RFC 4287, The Atom Syndication Format; the section is named with each rule. */
describe('certificateFeed as RFC 4287 asks', () => {
  const lots = [
    tinyLot('ash/1', {
      state: 'complete',
      revisions: [revision(0, '2026-03-10', { state: 'superseded' }), revision(1, '2026-04-02')],
    }),
    tinyLot('ash/2', { state: 'complete', revisions: [revision(0, '2026-03-10')] }),
  ]
  /** RFC 3339 with an upper-case T and Z (section 3.3). */
  const DATE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/

  it('holds one id, one title, one updated and an author with a name (4.1.1)', () => {
    const feed = feedOf(lots)
    expect(feed.name).toBe('feed')
    for (const name of ['id', 'title']) expect(one(feed, name).text).not.toBe('')
    expect(one(feed, 'updated').text).toMatch(DATE)
    expect(one(one(feed, 'author'), 'name').text).not.toBe('')
  })
  it('has one id, one title and one updated in each entry, and a link to its page (4.1.2)', () => {
    for (const entry of all(feedOf(lots), 'entry')) {
      expect(one(entry, 'title').text).not.toBe('')
      expect(one(entry, 'updated').text).toMatch(DATE)
      expect(all(entry, 'link').map(({ attributes }) => attributes['rel'])).toEqual(['alternate'])
    }
  })
  it('gives each entry an id of its own, an absolute address that a later revision does not move (4.2.6)', () => {
    const ids = all(feedOf(lots), 'entry').map((entry) => one(entry, 'id').text)
    expect(ids).toEqual([
      'https://example.org/a/lots/ash/1/revision/1/',
      'https://example.org/a/lots/ash/1/revision/0/',
      'https://example.org/a/lots/ash/2/revision/0/',
    ])
    expect(new Set(ids).size).toBe(ids.length)
  })
  it('says what its texts are: plain text, without markup (3.1.1)', () => {
    const feed = feedOf(lots)
    const texts = [feed, ...all(feed, 'entry')].flatMap((element) =>
      ['title', 'summary', 'rights'].flatMap((name) => all(element, name)),
    )
    expect(texts.map(({ attributes }) => attributes['type'])).toEqual(texts.map(() => 'text'))
    expect(texts.flatMap(({ children }) => children)).toEqual([])
  })
  it('names its own address and that of the site once each (4.1.1, 4.2.7.2)', () => {
    const links = all(feedOf(lots), 'link').map(({ attributes }) => [attributes['rel'], attributes['href']])
    expect(links).toEqual([
      ['alternate', 'https://example.org/a/'],
      ['self', 'https://example.org/a/feed.xml'],
    ])
  })
})

describe('sourceFeed', () => {
  const lots = [
    tinyLot('ash/1', { state: 'complete', revisions: [revision(0, '2026-03-10')] }),
    tinyLot('tuff/1', { state: 'complete', revisions: [revision(0, '2026-03-11')] }),
  ]
  const edition = tinyEdition([tinySource('ash'), tinySource('tuff')], lots, { audience: 'public' })

  it('follows one source alone, under an id and an address of its own', () => {
    const feed = parsed(sourceFeed(edition, 'ash') ?? '')
    expect(all(feed, 'entry').map((entry) => one(entry, 'title').text)).toEqual([
      'ash/1, revision 0: Not judged',
    ])
    expect(one(feed, 'id').text).toBe('https://example.org/a/sources/ash/')
    expect(all(feed, 'link').map(({ attributes }) => attributes['href'])).toEqual([
      'https://example.org/a/sources/ash/',
      'https://example.org/a/sources/ash/feed.xml',
    ])
    expect(one(one(feed, 'author'), 'name').text).toBe('Register')
  })

  it('is left out where the whole site’s feed is, and refuses a source that is not in the edition', () => {
    expect(sourceFeed({ ...edition, audience: 'internal' }, 'ash')).toBeNull()
    expect(() => sourceFeed(edition, 'slag')).toThrow('got slag')
  })
})

describe('an entry', () => {
  it('says after the reason which clauses decided, of the revision in force alone', () => {
    const lot = tinyLot('ash/1', {
      state: 'complete',
      verdicts: [verdict('base', 'does-not-meet', { decidedBy: ['loi'] })],
      revisions: [
        revision(0, '2026-03-10', { state: 'superseded', reason: 'first issue' }),
        revision(1, '2026-04-02', { reason: '28 d results' }),
      ],
    })
    const feed = parsed(certificateFeed(publicEdition([lot], { criteria: new Map([['base', base]]) })) ?? '')
    expect(all(feed, 'entry').map((entry) => one(entry, 'summary').text)).toEqual([
      '28 d results; decided by: Loss on ignition',
      'first issue',
    ])
  })
})
