import { describe, expect, it } from 'vitest'
import { samplingView } from '../../../src/edition/views/sampling-view.ts'
import { certificate, editionAround } from './certificate-fixture.ts'

type Sample = ReturnType<typeof certificate>['samples'][number]
const edition = editionAround()

function sample(more: Partial<Sample> = {}): Sample {
  return {
    id: 'A',
    kind: 'composite',
    of: null,
    taken: '2026-03-02T06:00 to 2026-03-08T18:00',
    place: 'silo S2',
    by: null,
    method: 'automatic cutter',
    increments: 28,
    mass: '6 kg',
    container: null,
    represents: '1450 t',
    to: null,
    received: '2026-03-09',
    retained: null,
    ...more,
  }
}

describe('samplingView', () => {
  it('tells how the sample of the lot was taken, and what is not recorded', () => {
    const [facts] = samplingView(edition, certificate({ samples: [sample()] })).samples
    expect(facts?.map(({ label, text }) => [label, text])).toEqual([
      ['Sample', 'H-1/A, composite'],
      ['Taken', '2\u00a0March 2026, 06:00 to 8\u00a0March 2026, 18:00'],
      ['Place', 'silo S2'],
      ['Method; by', 'automatic cutter; sampler not recorded'],
      ['Increments, mass, container', '28 increments, 6\u00a0kg'],
      ['Represents', '1450\u00a0t'],
      ['Received', '9\u00a0March 2026'],
      ['Retained', null],
    ])
  })
  it('says of one increment that it is one', () => {
    const [facts] = samplingView(edition, certificate({ samples: [sample({ increments: 1 })] })).samples
    expect(facts?.[4]?.text).toBe('1 increment, 6\u00a0kg')
  })
  it('keeps splits and independent samples in one sentence', () => {
    const samples = [
      sample(),
      sample({ id: 'B', kind: 'split', of: 'A', to: 'agency', taken: null }),
      sample({ id: 'C', kind: 'independent', to: 'quay', taken: '2026-03-05' }),
    ]
    const view = samplingView(edition, certificate({ samples }))
    expect(view.samples).toHaveLength(1)
    expect(view.others).toBe(
      'Split B of A sent to agency; Independent sample C sent to name of quay, taken 5\u00a0March 2026',
    )
  })
  it('gives each laboratory with its standing and accreditation', () => {
    const laboratories = [
      {
        id: 'quay',
        name: 'Quay',
        address: ['Quay 4', 'Vale'],
        standing: 'agency',
        accreditation: 'Body, L-1',
      },
      { id: 'gone', name: 'Gone', address: ['Pier'], standing: 'in-house', accreditation: null },
    ]
    expect(samplingView(edition, certificate({ laboratories })).laboratories).toEqual([
      {
        name: { text: 'Quay', href: '/a/laboratories/quay/' },
        particulars:
          ', Quay 4, Vale; laboratory of an agency; accreditation: Body, L-1; results outside its scope are marked “not accredited”',
      },
      {
        name: { text: 'Gone', href: null },
        particulars: ', Pier; in-house; no accreditation in force',
      },
    ])
  })
  it('has no sentence on other samples where there are none', () =>
    expect(samplingView(edition, certificate()).others).toBeNull())
})
