import { describe, expect, it } from 'vitest'
import { linkTo } from '../../../src/edition/views/printed-links.ts'
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
