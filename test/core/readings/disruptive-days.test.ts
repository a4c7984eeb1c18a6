import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import type { LotEvidence } from '../../../src/core/mortar/mortar.ts'
import { disruptiveDays, disruptiveDaysOfControl } from '../../../src/core/readings/disruptive-days.ts'
import { evidence, q, strength, WARM } from './fixture.ts'

const on = (text: string) => readMoment(text)
const days = (lot: LotEvidence) => disruptiveDays(lot).map((day) => momentOfDay(day).text)

const first = strength(['100 kN'], { age: readAge('7 d'), tested: on('2026-03-18') })
const retest = { ...first, tested: on('2026-03-20'), 'retest-of': on('2026-03-18') }
const dropped = (date: string) => ({
  ...first,
  specimens: { a: { load: q('100 kN', 'force'), excluded: 'lost', 'excluded-on': on(date) } },
})
const LATE = { asOf: on('2026-05-01') }

describe('disruptiveDays', () => {
  it('are none where results were only added', () => {
    const full = strength(['101 kN'], { age: readAge('28 d'), tested: on('2026-04-08') })
    const both = [first, full]
    expect(days(evidence({ test: { strength: both }, control: { strength: both }, more: LATE }))).toEqual([])
    const without = { ...first, specimens: { a: { load: q('100 kN', 'force'), excluded: 'lost' } } }
    expect(days(evidence({ test: { strength: [without] }, more: LATE }))).toEqual([])
  })
  it('are those on which a retest of the lot or of its control became known, once each, in order', () => {
    const late = { ...retest, reported: on('2026-03-28') }
    const lot = evidence({
      test: { strength: [late, first, retest] },
      control: { strength: [retest] },
      more: LATE,
    })
    expect(days(lot)).toEqual(['2026-03-20', '2026-03-28'])
  })
  it('are those on which a specimen or a value was excluded', () => {
    const value = { value: q('3.1 %', 'fraction'), excluded: 'spilt', 'excluded-on': on('2026-03-14') }
    const analysis = { laboratory: 'quay', sample: 'C', tested: on('2026-03-10'), results: { SO3: value } }
    const lot = evidence({
      test: { strength: [dropped('2026-03-25')] },
      control: { strength: [dropped('2026-03-22')] },
      more: { ...LATE, analyses: [analysis] },
    })
    expect(days(lot)).toEqual(['2026-03-14', '2026-03-22', '2026-03-25'])
  })
  it('leave out what came after the as-of date', () => {
    const lot = evidence({ test: { strength: [first, retest] }, more: { asOf: on('2026-03-19') } })
    expect(days(lot)).toEqual([])
  })
  it('are those on which the strength became known that the condition asks of the control, after an index', () => {
    const asks = (broken: 'flag' | 'not-valid', age = '28 d') => ({
      ...LATE,
      conditions: new Map([
        [
          'warm',
          {
            ...WARM,
            control: { strength: { age: readAge(age), 'at-least': q('35 MPa', 'stress') }, broken },
          },
        ],
      ]),
    })
    const full = strength(['100 kN'], { age: readAge('28 d'), tested: on('2026-04-08') })
    const lot = (more: Partial<LotEvidence>) =>
      evidence({ test: { strength: [first] }, control: { strength: [first, full] }, more })
    expect(days(lot(asks('not-valid')))).toEqual(['2026-04-08'])
    expect(days(lot(asks('flag')))).toEqual([])
    // At the first age nothing was known before that the control could have spoilt.
    expect(days(lot(asks('not-valid', '7 d')))).toEqual([])
  })
})

describe('disruptiveDaysOfControl', () => {
  it('are its own retests and exclusions, up to the date', () => {
    const { controls } = evidence({ control: { strength: [dropped('2026-03-22'), retest] } })
    const [control] = controls.values()
    if (control === undefined) throw new Error('the fixture has a control')
    const own = (date: string) =>
      disruptiveDaysOfControl(control, on(date)).map((day) => momentOfDay(day).text)
    expect(own('2026-03-22')).toEqual(['2026-03-20', '2026-03-22'])
    expect(own('2026-03-21')).toEqual(['2026-03-20'])
  })
})
