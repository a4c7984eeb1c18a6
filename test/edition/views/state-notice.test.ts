import { describe, expect, it } from 'vitest'
import { stateNotice } from '../../../src/edition/views/state-notice.ts'
import { editionAround, entry, revision } from '../certificate-fixture.ts'

const edition = editionAround()

describe('stateNotice', () => {
  it('has nothing to say of the revision in force, nor of a draft', () => {
    expect(stateNotice(edition, entry(), { revision: 1 })).toBeNull()
    expect(stateNotice(edition, entry({ revisions: [] }), { revision: null })).toBeNull()
  })
  it('leads from an earlier revision to the certificate in force', () => {
    expect(stateNotice(edition, entry(), { revision: 0 })).toEqual({
      by: 'revision 1 of 8\u00a0April 2026',
      revision: 0,
      inForce: { text: 'H-1', href: '/a/lots/hill/H-1/' },
      withdrawn: null,
    })
  })
  it('says that the lot was withdrawn since', () => {
    const revisions = [revision(0, '2026-03-20'), revision(1, '2026-04-08', { reason: 'mixed up' })]
    expect(
      stateNotice(edition, entry({ state: 'withdrawn', revisions }), { revision: 0 })?.withdrawn,
    ).toEqual({
      on: '8\u00a0April 2026',
      reason: 'Mixed up.',
    })
  })
})
