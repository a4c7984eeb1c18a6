import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { selectResults } from '../../../src/core/judging/select-result.ts'
import type { UnmadeResult } from '../../../src/core/result/result.ts'
import { evidenceOf, index, plannedIndex, result } from './fixture.ts'

const asked = { property: 'strength-activity-index', condition: 'c311', age: readAge('28 d') } as const
const fine = { property: 'residue-45um', method: 'ASTM C430', methodRequired: true } as const
const unmade: UnmadeResult = {
  ...asked,
  laboratory: 'lab',
  sample: 'C',
  sampleKind: 'composite',
  tested: readMoment('2026-03-10'),
  begun: readMoment('2026-02-10'),
  reasons: [],
}

describe('selectResults', () => {
  it('selectResults takes results of the same property, condition and age alone', () => {
    const own = index('28 d', 80)
    const others = [
      index('7 d', 81),
      index('28 d', 82, { condition: 'modified-50c' }),
      result('resistivity-index', 83, { condition: 'c311', age: readAge('28 d') }),
    ]
    expect(selectResults(asked, evidenceOf([...others, own]))).toEqual({
      found: 'results',
      results: [own],
      passedOver: [],
    })
    expect(selectResults(asked, evidenceOf(others))).toEqual({
      found: 'none',
      outcome: 'not-reported',
      reason: { code: 'no-result', params: {} },
    })
  })

  it('selectResults takes a water requirement without its mortar, and no other property so', () => {
    const condition = 'c311'
    const bare = result('water-requirement', 98)
    expect(selectResults({ property: 'water-requirement', condition }, evidenceOf([bare])).found).toBe(
      'results',
    )
    expect(
      selectResults({ property: 'density', condition }, evidenceOf([result('density', 2.4)])).found,
    ).toBe('none')
    const other = result('water-requirement', 98, { condition: 'modified-50c' })
    expect(selectResults({ property: 'water-requirement', condition }, evidenceOf([other])).found).toBe(
      'none',
    )
  })

  it('selectResults puts composites before grabs, and passes over what is not valid', () => {
    const grab = index('28 d', 80, { sampleKind: 'grab' })
    const composite = index('28 d', 81)
    const broken = index('28 d', 60, { valid: false })
    expect(selectResults(asked, evidenceOf([grab, composite, broken]))).toEqual({
      found: 'results',
      results: [composite],
      passedOver: [grab],
    })
    expect(selectResults(asked, evidenceOf([grab, broken]))).toEqual({
      found: 'results',
      results: [grab],
      passedOver: [],
    })
  })

  it('selectResults takes samples of the duty that the clause names, and says where there are others alone', () => {
    const grab = index('28 d', 80, { sampleKind: 'grab' })
    const composite = index('28 d', 81)
    const check = index('28 d', 82, { duty: 'verification' })
    const evidence = evidenceOf([grab, composite, check])
    expect(selectResults({ ...asked, duty: 'regular' }, evidence)).toEqual({
      found: 'results',
      results: [grab],
      passedOver: [composite, check],
    })
    expect(selectResults({ ...asked, duty: 'composite' }, evidence)).toMatchObject({ results: [composite] })
    expect(selectResults({ ...asked, duty: 'regular' }, evidenceOf([composite]))).toMatchObject({
      outcome: 'not-reported',
      reason: { code: 'other-duties', params: { duty: 'regular', used: ['composite'] } },
    })
    expect(selectResults(asked, evidenceOf([check]))).toMatchObject({
      outcome: 'not-reported',
      reason: { code: 'other-duties', params: { duty: null, used: ['verification'] } },
    })
  })

  it('selectResults counts what is computed from readings alone where the clause asks for them', () => {
    const read = { ...asked, from: 'readings' } as const
    const figures = [index('28 d', 80, { finished: true }), index('28 d', 81, { summaryOnly: true })]
    const own = index('28 d', 82)
    expect(selectResults(read, evidenceOf([...figures, own]))).toMatchObject({ results: [own] })
    expect(selectResults(read, evidenceOf(figures))).toMatchObject({ reason: { code: 'no-readings' } })
  })

  it('selectResults is pending on the earliest test awaited, even where one broke its conditions', () => {
    const planned = [
      plannedIndex('28 d', { due: readMoment('2026-04-29') }),
      plannedIndex('28 d', { due: readMoment('2026-04-08') }),
      plannedIndex('7 d', { due: readMoment('2026-03-01') }),
    ]
    expect(selectResults(asked, evidenceOf([index('28 d', 60, { valid: false })], { planned }))).toEqual({
      found: 'none',
      outcome: 'pending',
      reason: { code: 'result-awaited', params: { due: '2026-04-08' } },
      due: readMoment('2026-04-08'),
    })
  })

  it('selectResults says since when a result is overdue, and does not wait for it any longer', () => {
    const planned = [
      plannedIndex('28 d', { overdueSince: readMoment('2026-03-20') }),
      plannedIndex('28 d', { overdueSince: readMoment('2026-03-08') }),
    ]
    expect(selectResults(asked, evidenceOf([], { planned }))).toMatchObject({
      outcome: 'not-reported',
      reason: { code: 'result-overdue', params: { since: '2026-03-08' } },
    })
  })

  it('selectResults is not valid where tests were made and none counts, with every reason', () => {
    const broken = index('28 d', 60, { valid: false })
    expect(selectResults(asked, evidenceOf([broken]))).toEqual({
      found: 'none',
      outcome: 'not-valid',
      reason: { code: 'test-not-valid', params: { reasons: [] } },
    })
    expect(selectResults(asked, evidenceOf([], { unmade: [unmade] }))).toMatchObject({ outcome: 'not-valid' })
    expect(
      selectResults(asked, evidenceOf([], { unmade: [{ ...unmade, age: readAge('7 d') }] })),
    ).toMatchObject({
      outcome: 'not-reported',
    })
  })

  it('selectResults takes a method with its edition for the method, and no other that begins alike', () => {
    const by = (method?: string) =>
      selectResults(fine, evidenceOf([result('residue-45um', 20, method === undefined ? {} : { method })]))
    expect([by('ASTM C430').found, by('ASTM C430-17').found]).toEqual(['results', 'results'])
    expect(by('ASTM C4305')).toMatchObject({
      outcome: 'not-reported',
      reason: { code: 'other-methods', params: { method: 'ASTM C430', used: ['ASTM C4305'] } },
    })
    expect(by()).toMatchObject({ reason: { params: { used: [null] } } })
    expect(selectResults(fine, evidenceOf([]))).toMatchObject({ reason: { code: 'no-result' } })
  })

  it('selectResults takes results by any method where the clause requires one and names none', () => {
    const required = { property: 'residue-45um', methodRequired: true } as const
    const own = result('residue-45um', 20, { method: 'laser' })
    expect(selectResults(required, evidenceOf([own]))).toEqual({
      found: 'results',
      results: [own],
      passedOver: [],
    })
  })

  it('selectResults names each other method once, and takes any where none is required', () => {
    const results = ['EN 933-10', 'EN 933-10', 'laser'].map((method) =>
      result('residue-45um', 20, { method }),
    )
    expect(selectResults(fine, evidenceOf(results))).toMatchObject({
      reason: { params: { used: ['EN 933-10', 'laser'] } },
    })
    expect(selectResults({ property: 'residue-45um', method: 'ASTM C430' }, evidenceOf(results)).found).toBe(
      'results',
    )
  })

  it('selectResults derives what follows from another result only where none is stated', () => {
    const residue = result('residue-45um', 20)
    expect(selectResults({ property: 'passing-45um' }, evidenceOf([residue]))).toMatchObject({
      results: [{ value: 80 }],
    })
    expect(
      selectResults({ property: 'passing-45um' }, evidenceOf([residue, result('passing-45um', 79)])),
    ).toMatchObject({ results: [{ value: 79 }] })
  })
})
