import { describe, expect, it } from 'vitest'
import { certificateAddress } from '../../../src/edition/views/certificate-address.ts'
import { editionAround } from '../certificate-fixture.ts'

describe('certificateAddress', () => {
  it('gives the address in full and to be read', () => {
    expect(certificateAddress(editionAround(), 'hill/H-1')).toEqual({
      href: 'https://example.org/a/lots/hill/H-1/',
      text: 'example.org/a/lots/hill/H-1/',
    })
  })
  it('has no address where the site has none yet', () => {
    const nowhere = editionAround({ address: { origin: null, base: '/' } })
    expect(certificateAddress(nowhere, 'hill/H-1')).toBeNull()
  })
})
