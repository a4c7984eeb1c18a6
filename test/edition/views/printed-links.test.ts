import { describe, expect, it } from 'vitest'
import type { Certificate } from '../../../src/edition/shape/edition.ts'
import { certificateLinks, linkAmong, linkTo } from '../../../src/edition/views/printed-links.ts'
import { editionAround } from '../certificate-fixture.ts'

describe('linkTo', () => {
  it('leads to a page that the site has, under its base', () => {
    const to = linkTo(editionAround({ lots: new Map([['hill/H-2', {}]]) as never }))
    expect(to({ kind: 'source', id: 'hill' })).toBe('/a/sources/hill/')
    expect(to({ kind: 'laboratory', id: 'quay' })).toBe('/a/laboratories/quay/')
    expect(to({ kind: 'criterion', id: 'set' })).toBe('/a/criteria/set/')
    expect(to({ kind: 'certificate', id: 'hill/H-2' })).toBe('/a/lots/hill/H-2/')
  })
  it('leads nowhere where there is none', () => {
    const to = linkTo(editionAround())
    expect(to({ kind: 'criterion', id: 'gone' })).toBeNull()
    expect(to(undefined)).toBeNull()
  })
})

describe('certificateLinks and linkAmong', () => {
  const to = { kind: 'laboratory', id: 'quay' } as const
  const printed = { name: 'x', verdicts: { others: [{ headline: { text: 'Quay', to } }] } }
  const links = certificateLinks(editionAround(), { printed } as unknown as Certificate)
  it('hold where every text of a certificate leads, wherever it stands', () => {
    expect(links).toEqual({ 'laboratory quay': '/a/laboratories/quay/' })
    expect(linkAmong(links)(to)).toBe('/a/laboratories/quay/')
    expect(linkAmong(links)(undefined)).toBeNull()
  })
  it('refuse a page that the certificate does not lead to', () => {
    expect(() => linkAmong(links)({ kind: 'laboratory', id: 'other' })).toThrow(RangeError)
  })
})
