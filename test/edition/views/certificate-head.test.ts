import { describe, expect, it } from 'vitest'
import { certificateHead } from '../../../src/edition/views/certificate-head.ts'
import { certificate } from './certificate-fixture.ts'

describe('certificateHead', () => {
  it('says what the certificate is, which revision, and what it replaces', () => {
    expect(certificateHead(certificate(), { superseded: false })).toEqual({
      lot: 'H-1',
      material: 'Raw natural pozzolan, Hill tuff',
      certificate: 'hill/H-1',
      revision: '1',
      state: 'complete',
      issued: '8\u00a0April 2026',
      replaces: 'revision 0 of 20\u00a0March 2026',
      reason: '28 d results added',
    })
  })
  it('says of a draft that it was never issued', () => {
    const draft = certificate({ revision: null, state: 'draft', issued: null, replaces: null, reason: null })
    expect(certificateHead(draft, { superseded: false })).toMatchObject({
      revision: 'none, never issued',
      state: 'draft',
      issued: 'not issued',
      replaces: null,
      reason: null,
    })
  })
  it('calls a revision superseded whatever its document says', () => {
    expect(certificateHead(certificate(), { superseded: true }).state).toBe('superseded')
  })
})
