import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { registerView, registerYears, registerYearView } from '../../../src/edition/views/register.ts'
import { revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash', { criteria: ['plain'] }), tinySource('tuff')],
  [
    tinyLot('ash/1', { sampled: readMoment('2024-12-31T23:50') }),
    tinyLot('ash/2', { sampled: readMoment('2026-01-01'), verdicts: [verdict('plain', 'pending')] }),
    tinyLot('ash/3', {
      sampled: readMoment('2026-02-01'),
      class: 'F',
      state: 'complete',
      verdicts: [verdict('plain', 'meets')],
      revisions: [revision(0, '2026-02-20')],
    }),
  ],
  { criteria: new Map([['plain', { id: 'plain', title: 'Plain set', edition: '2' } as Criterion]]) },
)

describe('registerView', () => {
  it('counts lots by source and year, the latest year first, with nought where there is none', () => {
    expect(registerView(edition)).toEqual({
      lotCount: 3,
      years: ['2026', '2024'],
      sources: [
        { id: 'ash', name: 'Ash of ash', counts: [2, 1] },
        { id: 'tuff', name: 'Ash of tuff', counts: [0, 0] },
      ],
      criteria: [{ id: 'plain', name: 'Plain set, edition 2' }],
      marks: ['meets', 'draft'],
    })
  })
})

describe('registerYears', () => {
  it('has a page for each year of a source that has lots', () => {
    expect(registerYears(edition)).toEqual([
      { source: 'ash', year: '2026' },
      { source: 'ash', year: '2024' },
    ])
  })
})

describe('registerYearView', () => {
  it('lists the lots of the year, newest first, each with its state and governing verdict', () => {
    const { name, lots } = registerYearView(edition, { source: 'ash', year: '2026' })
    expect(name).toBe('Ash of ash')
    expect(
      lots.map(({ id, standing, issued, class: claimed }) => [id, standing.text, issued?.number, claimed]),
    ).toEqual([
      ['ash/3', 'Meets', 0, 'F'],
      ['ash/2', 'Draft, never issued; pending', undefined, null],
    ])
  })
})
