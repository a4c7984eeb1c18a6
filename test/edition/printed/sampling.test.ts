import { describe, expect, it } from 'vitest'
import { printedLaboratory, printedSampling } from '../../../src/edition/printed/sampling.ts'
import { certificate } from '../certificate-fixture.ts'

type Sample = ReturnType<typeof certificate>['samples'][number]

function sample(more: Partial<Sample> = {}): Sample {
  return {
    id: 'A',
    kind: 'composite',
    duty: 'composite',
    of: null,
    taken: '2 March 2026, 06:00 to 8 March 2026, 18:00',
    begun: '2 March 2026, 06:00',
    ended: '8 March 2026, 18:00',
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
  it('tells regular samples that were taken alike together, and a stated duty that is not the usual one', () => {
    const regular = (id: string, day: string) =>
      sample({
        id,
        kind: 'grab',
        duty: 'regular',
        taken: day,
        begun: day,
        ended: day,
        received: day,
        represents: '363 t',
      })
    const samples = [
      sample(),
      regular('R1', '2 March 2026'),
      regular('R2', '3 March 2026'),
      regular('R3', '4 March 2026'),
      sample({ id: 'D', duty: 'regular' }),
    ]
    const view = printedSampling(certificate({ samples })).samples
    expect(view.map((facts) => facts[0]?.text)).toEqual([
      'H-1/A, composite',
      'H-1/R1, R2, R3, 3 regular samples, grab',
      'H-1/D, composite, regular sample',
    ])
    expect(view[1]?.slice(1).map(({ text }) => text)).toEqual([
      '2 March 2026 to 4 March 2026',
      'silo S2',
      'automatic cutter; sampler not recorded',
      '28 increments, 6\u00a0kg',
      '363\u00a0t each',
      '2 March 2026 to 4 March 2026',
      undefined,
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
