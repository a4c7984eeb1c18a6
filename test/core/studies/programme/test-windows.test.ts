import { describe, expect, it } from 'vitest'
import { momentOfDay } from '../../../../src/core/measure/moment.ts'
import { specimenNumbers } from '../../../../src/core/studies/programme/specimen-numbers.ts'
import { specimensPerMortar } from '../../../../src/core/studies/programme/programme.ts'
import { testWindow } from '../../../../src/core/studies/programme/test-windows.ts'
import { dayOf, plannedAge } from './tiny-programme.ts'

const windowOf = (cast: string, minute: number | null, age: string, within: number) => {
  const { day, opens, closes } = testWindow(dayOf(cast), minute, plannedAge(age, within))
  return [momentOfDay(day).text, opens.text, closes.text]
}

describe('testWindow', () => {
  it('counts whole days from the hour of casting', () => {
    // 28 days after 7 April is 5 May; 12 hours either way of 10:00.
    expect(windowOf('2026-04-07', 600, '28 d', 12)).toEqual([
      '2026-05-05',
      '2026-05-04T22:00',
      '2026-05-05T22:00',
    ])
  })
  it('goes over the end of a year and the last of February', () => {
    expect(windowOf('2027-12-31', 540, '7 d', 3)).toEqual([
      '2028-01-07',
      '2028-01-07T06:00',
      '2028-01-07T12:00',
    ])
    expect(windowOf('2028-02-01', 540, '28 d', 3)[0]).toBe('2028-02-29')
  })
  it('takes hours as hours: 20 h after 10:00 is 06:00 of the next day', () => {
    expect(windowOf('2026-04-07', 600, '20 h', 0.5)).toEqual([
      '2026-04-08',
      '2026-04-08T05:30',
      '2026-04-08T06:30',
    ])
  })
  it('names days alone where the hour is not planned', () => {
    expect(windowOf('2026-04-07', null, '28 d', 12)).toEqual(['2026-05-05', '2026-05-05', '2026-05-05'])
    expect(windowOf('2026-04-07', null, '91 d', 72)).toEqual(['2026-07-07', '2026-07-04', '2026-07-10'])
  })
})

describe('specimenNumbers', () => {
  const ages = [plannedAge('28 d', 12, 3, 2), plannedAge('7 d', 3, 2, 3)]
  it('counts on from the youngest age, where what is read is crushed', () => {
    expect(specimenNumbers(ages, 'crushed').map(({ crushed, read }) => [crushed, read])).toEqual([
      [
        [1, 2],
        [1, 3],
      ],
      [
        [4, 6],
        [4, 5],
      ],
    ])
    expect(specimensPerMortar(ages, 'crushed', 1)).toBe(7)
  })
  it('reads the same ones at each age, where they are kept', () => {
    expect(specimenNumbers(ages, 'kept').map(({ crushed, read }) => [crushed, read])).toEqual([
      [
        [1, 2],
        [6, 8],
      ],
      [
        [3, 5],
        [6, 7],
      ],
    ])
    expect(specimensPerMortar(ages, 'kept', 1)).toBe(9)
  })
  it('has none where none is tested', () => {
    expect(specimenNumbers([plannedAge('7 d', 3, 0, 0)], 'crushed')).toMatchObject([
      { crushed: null, read: null },
    ])
  })
})
