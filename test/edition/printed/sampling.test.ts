import { describe, expect, it } from 'vitest'
import { printedLaboratory, printedSampling } from '../../../src/edition/printed/sampling.ts'
import { certificate } from '../certificate-fixture.ts'

type Sample = ReturnType<typeof certificate>['samples'][number]

function sample(more: Partial<Sample> = {}): Sample {
  return {
    id: 'A',
    kind: 'composite',
    of: null,
    taken: '2 March 2026, 06:00 to 8 March 2026, 18:00',
    place: 'silo S2',
    by: null,
    method: 'automatic cutter',
    increments: 28,
    mass: '6 kg',
    container: null,
    represents: '1450 t',
    to: null,
    received: '9 March 2026',
    retained: null,
    ...more,
  }
}

describe('printedSampling', () => {
  it('tells how the sample of the lot was taken, and what is not recorded', () => {
    const [facts] = printedSampling(certificate({ samples: [sample()] })).samples
    expect(facts?.map(({ label, text }) => [label, text])).toEqual([
      ['Sample', 'H-1/A, composite'],
      ['Taken', '2 March 2026, 06:00 to 8 March 2026, 18:00'],
      ['Place', 'silo S2'],
      ['Method; by', 'automatic cutter; sampler not recorded'],
      ['Increments, mass, container', '28 increments, 6\u00a0kg'],
      ['Represents', '1450\u00a0t'],
      ['Received', '9 March 2026'],
      ['Retained', undefined],
    ])
  })
  it('says of one increment that it is one', () => {
    const [facts] = printedSampling(certificate({ samples: [sample({ increments: 1 })] })).samples
    expect(facts?.[4]?.text).toBe('1 increment, 6\u00a0kg')
  })
  it('keeps splits and independent samples in one sentence', () => {
    const samples = [
      sample(),
      sample({ id: 'B', kind: 'split', of: 'A', to: 'agency laboratory', taken: null }),
      sample({ id: 'C', kind: 'independent', to: 'Quay laboratory', taken: '5 March 2026' }),
    ]
    const view = printedSampling(certificate({ samples }))
    expect(view.samples).toHaveLength(1)
    expect(view.others).toBe(
      'Split B of A sent to agency laboratory; Independent sample C sent to Quay laboratory, taken 5 March 2026',
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
    expect(laboratories.map(printedLaboratory)).toEqual([
      {
        name: { text: 'Quay', to: { kind: 'laboratory', id: 'quay' } },
        particulars:
          ', Quay 4, Vale; laboratory of an agency; accreditation: Body, L-1; results outside its scope are marked “not accredited”',
      },
      {
        name: { text: 'Gone', to: { kind: 'laboratory', id: 'gone' } },
        particulars: ', Pier; in-house; no accreditation in force',
      },
    ])
  })
  it('has no sentence on other samples where there are none', () =>
    expect(printedSampling(certificate())).not.toHaveProperty('others'))
})
