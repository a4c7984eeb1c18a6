import { describe, expect, it } from 'vitest'
import { certificateAddresses, revisionAddresses } from '../../../src/edition/views/certificate-pages.ts'
import { revision, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash')],
  [
    tinyLot('ash/1', {
      formerly: ['hollow/A-1'],
      revisions: [revision(0, '2026-03-10'), revision(1, '2026-04-02')],
    }),
    tinyLot('ash/2'),
  ],
)

describe('certificateAddresses', () => {
  it('has each lot at its own address, and at an earlier id that leads to it', () => {
    expect(certificateAddresses(edition)).toEqual([
      { source: 'ash', lot: '1', id: 'ash/1' },
      { source: 'hollow', lot: 'A-1', id: 'ash/1' },
      { source: 'ash', lot: '2', id: 'ash/2' },
    ])
  })
})

describe('revisionAddresses', () => {
  it('has every revision but the newest, at the earlier id too', () => {
    expect(revisionAddresses(edition)).toEqual([
      { source: 'ash', lot: '1', id: 'ash/1', number: 0 },
      { source: 'hollow', lot: 'A-1', id: 'ash/1', number: 0 },
    ])
  })
})
