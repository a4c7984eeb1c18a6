import { readMoment } from '../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { LotColumns } from '../../src/scripts/columns.ts'
import {
  type Filter,
  filteredLots,
  lotRow,
  sortedLots,
  sortIn,
  sortText,
} from '../../src/scripts/lot-filter.ts'

const DATA: LotColumns = {
  formerly: {},
  sets: [],
  criteria: ['plain', 'warm'],
  sources: ['quay', 'hill'],
  standings: [
    { mark: 'meets', text: 'Meets' },
    { mark: 'does-not-meet', text: 'Does not meet' },
    { mark: 'withdrawn', text: 'Withdrawn; was: meets' },
    { mark: 'pending', text: 'Pending' },
    { mark: null, text: 'Not judged' },
  ],
  columns: {
    lot: ['quay/Q-1', 'quay/Q-2', 'hill/H-1', 'hill/H-2'],
    number: ['Q-1', 'Q-2', 'No. 7', 'H-2'],
    source: [0, 0, 1, 1],
    sampled: [
      readMoment('2025-12-31'),
      readMoment('2026-01-01'),
      readMoment('2026-01-01'),
      readMoment('2026-02-10'),
    ],
    class: ['F', 'F', null, 'N'],
    standing: { plain: [0, 1, 2, 3], warm: [4, 0, 2, 3] },
    governingStanding: [0, 1, 2, 3],
    governingSet: [],
    governingShortfall: [
      null,
      'Loss on ignition: 6.6 % against ≤ 6.0 %, beyond it by 0.6 points',
      null,
      null,
    ],
  },
}
const ANY: Filter = { source: '', criterion: 'plain', outcome: '', sampled: {}, text: '' }

describe('filteredLots', () => {
  it('gives every lot without a wish', () => {
    expect(filteredLots(DATA, ANY)).toEqual([0, 1, 2, 3])
  })
  it('takes the first and the last day of a period in', () => {
    expect(
      filteredLots(DATA, {
        ...ANY,
        sampled: { from: readMoment('2026-01-01'), to: readMoment('2026-02-09') },
      }),
    ).toEqual([1, 2])
  })
  it('reads the verdict under the chosen criterion; neither a withdrawn lot nor one not judged counts as meeting it', () => {
    expect(filteredLots(DATA, { ...ANY, outcome: 'meets' })).toEqual([0])
    expect(filteredLots(DATA, { ...ANY, criterion: 'warm', outcome: 'meets' })).toEqual([1])
    expect(filteredLots(DATA, { ...ANY, outcome: 'withdrawn' })).toEqual([2])
    expect(filteredLots(DATA, { ...ANY, criterion: 'unknown', outcome: 'meets' })).toEqual([])
  })
  it('reads the verdict under the criterion that governs each lot where none is chosen', () => {
    const data = { ...DATA, columns: { ...DATA.columns, governingStanding: [4, 0, 2, 3] } }
    expect(filteredLots(data, { ...ANY, criterion: '', outcome: 'meets' })).toEqual([1])
  })
  it('finds text in the id and in the printed number, without regard to case', () => {
    expect(filteredLots(DATA, { ...ANY, text: ' h-1 ' })).toEqual([2])
    expect(filteredLots(DATA, { ...ANY, text: 'no. 7' })).toEqual([2])
    expect(filteredLots(DATA, { ...ANY, text: 'q', source: 'hill' })).toEqual([])
  })
})

describe('sortedLots', () => {
  it('sorts by a column either way and keeps the order of the file among equals', () => {
    expect(sortedLots([0, 1, 2, 3], DATA, 'plain', { column: 1, descending: true })).toEqual([3, 1, 2, 0])
    expect(sortedLots([0, 1, 2, 3], DATA, 'plain', { column: 1, descending: false })).toEqual([0, 1, 2, 3])
    expect(sortedLots([0, 1, 2, 3], DATA, 'plain', { column: 4, descending: false })).toEqual([2, 3, 0, 1])
  })
})

describe('lotRow', () => {
  it('says where a lot is not judged, and has the word none without a class', () => {
    expect(lotRow(DATA, 'warm', 0)).toMatchObject({ mark: null, standing: 'Not judged' })
    expect(lotRow(DATA, 'warm', 2)).toEqual({
      shortfall: null,
      id: 'hill/H-1',
      number: 'No. 7',
      sampled: readMoment('2026-01-01'),
      mark: 'withdrawn',
      standing: 'Withdrawn; was: meets',
      class: 'none',
      source: 'hill',
    })
  })
})

describe('lotRow', () => {
  it('says which clause is not met and by how much under the set that governs, and not under a chosen one', () => {
    expect(lotRow(DATA, '', 1).shortfall).toMatch(/beyond it by 0.6 points/)
    expect(lotRow(DATA, 'plain', 1).shortfall).toBeNull()
  })
})

describe('sortIn', () => {
  it('reads what sortText writes for every column, and no other text', () => {
    for (const column of [0, 1, 2, 3, 4])
      for (const descending of [true, false])
        expect(sortIn(sortText({ column, descending }))).toEqual({ column, descending })
    expect(['', 'sampled', 'sampled-sideways', 'constructor-up'].map(sortIn)).toEqual([
      null,
      null,
      null,
      null,
    ])
  })
})
