import { describe, expect, it } from 'vitest'
import { heldSince, knownAges, onShipping } from '../../../src/core/checks/on-shipping.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'

const day = readMoment
const LOT = {
  ages: [
    { age: readAge('7 d'), known: day('2026-03-10') },
    { age: readAge('28 d'), known: day('2026-03-31') },
  ],
  revisions: [
    { date: day('2026-03-12'), state: 'superseded' },
    { date: day('2026-04-05'), state: 'withdrawn' },
  ],
  failed: day('2026-03-31'),
}

describe('onShipping', () => {
  it.each([
    ['2026-03-09', ['7 d', '28 d'], 'none', 'afterwards'],
    ['2026-03-10', ['28 d'], 'none', 'afterwards'],
    ['2026-03-12', ['28 d'], 'in-force', 'afterwards'],
    ['2026-03-31', [], 'in-force', 'known'],
    ['2026-04-05', [], 'withdrawn', 'known'],
  ])('on %s: unknown %j, certificate %s, failure %s', (date, unknown, certificate, failure) => {
    const state = onShipping(LOT, day(date))
    expect([state.unknown.map(({ text }) => text), state.certificate, state.failure]).toEqual([
      unknown,
      certificate,
      failure,
    ])
  })
  it('holds no failure against a lot that meets', () => {
    expect(onShipping({ ...LOT, failed: null }, day('2026-03-09')).failure).toBe('none')
  })
})

describe('knownAges', () => {
  const index = { property: 'strength-activity-index', role: 'producer', age: readAge('28 d') }
  it('takes the later of two results of an age, and leaves verification and strengths out', () => {
    const results = [
      { ...index, tested: day('2026-03-31') },
      { ...index, tested: day('2026-03-31'), known: day('2026-04-02') },
      { ...index, role: 'verification', tested: day('2026-04-09') },
      { ...index, property: 'compressive-strength', tested: day('2026-04-09') },
    ] as never
    expect(knownAges({ results, planned: [] }).map(({ age, known }) => [age.text, known?.text])).toEqual([
      ['28 d', '2026-04-02'],
    ])
  })
  it('knows no age of which a result is awaited', () => {
    const results = [{ ...index, tested: day('2026-03-31') }] as never
    expect(knownAges({ results, planned: [index] as never })).toEqual([{ age: readAge('28 d'), known: null }])
  })
})

describe('heldSince', () => {
  const days = ['2026-03-01', '2026-03-08', '2026-03-29'].map((text) => day(text))
  it('goes back to the last break, and asks no day before it', () => {
    const asked: string[] = []
    const since = heldSince(days, (each) => {
      asked.push(each.text)
      return each.text === '2026-03-29'
    })
    expect([since?.text, asked]).toEqual(['2026-03-29', ['2026-03-29', '2026-03-08']])
  })
  it('is the first day where it always held, and none where it does not hold or there is no day', () => {
    expect(heldSince(days, () => true)?.text).toBe('2026-03-01')
    expect(heldSince(days, () => false)).toBeNull()
    expect(heldSince([], () => true)).toBeNull()
  })
})
