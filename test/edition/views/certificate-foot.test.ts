import { describe, expect, it } from 'vitest'
import { certificateFoot } from '../../../src/edition/views/certificate-foot.ts'
import { certificate, editionAround, entry } from './certificate-fixture.ts'

describe('certificateFoot', () => {
  it('signs with name, function and date, and gives digest and address', () => {
    expect(certificateFoot(editionAround(), entry(), certificate())).toEqual({
      signature: {
        name: 'M. Okafor',
        particulars: 'quality manager, independent of production; 8\u00a0April 2026',
      },
      issued: true,
      digest: 'sha256-1',
      address: {
        href: 'https://example.org/a/lots/hill/H-1/',
        text: 'example.org/a/lots/hill/H-1/',
      },
    })
  })
  it('says whether independence is recorded', () => {
    const by = (independent: boolean | null) =>
      certificateFoot(
        editionAround(),
        entry(),
        certificate({ by: { name: 'M. Okafor', function: 'chemist', independent } }),
      ).signature?.particulars
    expect(by(false)).toContain('not independent of production')
    expect(by(null)).toContain('independence from production not recorded')
  })
  it('leaves a draft unsigned and without a digest', () => {
    const draft = certificate({ revision: null, state: 'draft', issued: null, by: null })
    expect(certificateFoot(editionAround(), entry({ revisions: [] }), draft)).toMatchObject({
      signature: null,
      issued: false,
      digest: null,
    })
  })
  it('has no address where the site has none yet', () => {
    const nowhere = editionAround({ address: { origin: null, base: '/' } })
    expect(certificateFoot(nowhere, entry(), certificate()).address).toBeNull()
  })
})
