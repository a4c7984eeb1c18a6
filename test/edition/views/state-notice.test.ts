import { describe, expect, it } from 'vitest'
import { isSuperseded, stateNotice } from '../../../src/edition/views/state-notice.ts'
import { certificate, editionAround, entry, revision } from './certificate-fixture.ts'

const edition = editionAround()

describe('stateNotice', () => {
  it('has nothing to say of the revision in force', () => {
    expect(stateNotice(edition, entry(), certificate())).toEqual({
      superseded: null,
      withdrawn: null,
      draft: false,
    })
  })
  it('leads from an earlier revision to the certificate in force', () => {
    expect(stateNotice(edition, entry(), certificate({ revision: 0 })).superseded).toEqual({
      by: 'revision 1 of 8\u00a0April 2026',
      revision: 0,
      inForce: { text: 'H-1', href: '/a/lots/hill/H-1/' },
    })
  })
  it('gives date and reason of a withdrawal, and links a replacement that is published', () => {
    const withdrawn = entry({
      state: 'withdrawn',
      revisions: [revision(0, '2026-03-20', { reason: 'mixed up on 2026-03-18', replacedBy: 'hill/H-2' })],
    })
    const document = certificate({ revision: 0, state: 'withdrawn' })
    const notice = {
      on: '20\u00a0March 2026',
      reason: 'Mixed up on 18\u00a0March 2026.',
    }
    expect(stateNotice(edition, withdrawn, document).withdrawn).toEqual({
      ...notice,
      replacement: { text: 'hill/H-2', href: null },
    })
    const published = editionAround({
      lots: new Map([['hill/H-2', { number: 'H-2' }]]) as never,
    })
    expect(stateNotice(published, withdrawn, document).withdrawn).toEqual({
      ...notice,
      replacement: { text: 'H-2', href: '/a/lots/hill/H-2/' },
    })
  })
  it('warns of a draft', () => {
    const draft = certificate({ revision: null, state: 'draft' })
    expect(stateNotice(edition, entry({ state: 'draft', revisions: [] }), draft)).toEqual({
      superseded: null,
      withdrawn: null,
      draft: true,
    })
  })
})

describe('isSuperseded', () => {
  it('holds of a revision before the newest alone, never of a draft', () => {
    expect(isSuperseded(entry(), { revision: 0 })).toBe(true)
    expect(isSuperseded(entry(), { revision: 1 })).toBe(false)
    expect(isSuperseded(entry(), { revision: null })).toBe(false)
    expect(isSuperseded(entry({ revisions: [] }), { revision: 0 })).toBe(false)
  })
})
