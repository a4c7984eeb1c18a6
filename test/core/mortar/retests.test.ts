import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { idleRetests, replacedReadings } from '../../../src/core/mortar/retests.ts'

const first = { age: readAge('28 d'), tested: readMoment('2026-04-08T09:40') }

function replaced(readings: Parameters<typeof replacedReadings>[0]): [number, string][] {
  return [...replacedReadings(readings)].map(([reading, retest]) => [readings.indexOf(reading), retest.text])
}

describe('replacedReadings', () => {
  it('replaces the test whose moment the retest names', () => {
    expect(
      replaced([
        first,
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-08T12:00'),
          'retest-of': readMoment('2026-04-08T09:40'),
        },
      ]),
    ).toEqual([[0, '2026-04-08T12:00']])
  })
  it('replaces the test of a date named alone, but not the retest made on the same day', () => {
    expect(
      replaced([
        first,
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-08T12:00'),
          'retest-of': readMoment('2026-04-08'),
        },
      ]),
    ).toEqual([[0, '2026-04-08T12:00']])
    expect(
      replaced([
        { age: readAge('28 d'), tested: readMoment('2026-04-08') },
        { age: readAge('28 d'), tested: readMoment('2026-04-08'), 'retest-of': readMoment('2026-04-08') },
      ]),
    ).toEqual([[0, '2026-04-08']])
  })
  it('replaces only what it names: neither another age nor another day', () => {
    expect(
      replaced([
        { ...first, age: readAge('7 d') },
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-08T12:00'),
          'retest-of': readMoment('2026-04-08T09:40'),
        },
      ]),
    ).toEqual([])
    expect(
      replaced([
        first,
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-09T12:00'),
          'retest-of': readMoment('2026-04-07'),
        },
      ]),
    ).toEqual([])
  })
  it('lets a second retest replace the first', () => {
    const again = {
      age: readAge('28 d'),
      tested: readMoment('2026-04-08T12:00'),
      'retest-of': readMoment('2026-04-08T09:40'),
    }
    expect(
      replaced([
        first,
        again,
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-08T15:00'),
          'retest-of': readMoment('2026-04-08T12:00'),
        },
      ]),
    ).toEqual([
      [0, '2026-04-08T12:00'],
      [1, '2026-04-08T15:00'],
    ])
  })
  it('replaces the first of two tests that no clock tells apart, whatever their places in the record', () => {
    const [age, day] = [readAge('28 d'), readMoment('2026-04-08')]
    const retest = { age, tested: day, 'retest-of': day }
    const morning = { age, tested: readMoment('2026-04-08T09:40') }
    expect(replaced([retest, { age, tested: day }])).toEqual([[1, '2026-04-08']])
    expect(replaced([retest, morning])).toEqual([[1, '2026-04-08']])
    expect(replaced([morning, retest])).toEqual([[0, '2026-04-08']])
  })
  it('replaces nothing made after the retest', () => {
    expect(
      replaced([
        {
          age: readAge('28 d'),
          tested: readMoment('2026-04-08T08:00'),
          'retest-of': readMoment('2026-04-08'),
        },
        first,
      ]),
    ).toEqual([])
  })
})

describe('idleRetests', () => {
  it('finds retests that name another age, another day, a later test or themselves alone', () => {
    const retest = (of: string, age = '28 d') => ({
      age: readAge(age),
      tested: readMoment('2026-04-08T12:00'),
      'retest-of': readMoment(of),
    })
    const idle = (readings: Parameters<typeof replaced>[0]) =>
      idleRetests(readings).map((reading) => readings.indexOf(reading))
    expect(idle([first, retest('2026-04-08T09:40')])).toEqual([])
    expect(idle([first, retest('2026-04-08')])).toEqual([])
    expect(idle([first, retest('2026-04-07')])).toEqual([1])
    expect(idle([first, retest('2026-04-08T09:40', '7 d')])).toEqual([1])
    expect(idle([{ ...first, tested: readMoment('2026-04-08T13:00') }, retest('2026-04-08')])).toEqual([1])
    expect(idle([retest('2026-04-08')])).toEqual([0])
  })
  it('finds a planned retest only where it names no test at all', () => {
    const planned = (of: string) => ({ age: readAge('28 d'), 'retest-of': readMoment(of) })
    expect(idleRetests([first, planned('2026-04-08T09:40')])).toEqual([])
    expect(idleRetests([first, planned('2026-04-07')])).toEqual([planned('2026-04-07')])
    expect(replaced([first, planned('2026-04-08T09:40')])).toEqual([])
  })
})
