import { describe, expect, it } from 'vitest'
import {
  mortarGroups,
  mortarsOf,
  testMortarCount,
  weekdayOf,
} from '../../../../src/core/studies/programme/planned-mortars.ts'
import { momentOfDay } from '../../../../src/core/measure/moment.ts'
import type { Programme } from '../../../../src/core/studies/programme/programme.ts'
import { dayOf, tinyProgramme } from './tiny-programme.ts'

const laid = (programme: Programme) =>
  mortarGroups(programme).map(
    ({ day, condition, batch, materials, laboratory }) =>
      `${momentOfDay(day)} ${laboratory} ${condition.code} ${batch}: ${materials.join(' ')}`,
  )
const capacity = (mortarsADay: number, more: object = {}) => ({
  days: { ...(tinyProgramme().days as Extract<Programme['days'], { by: 'capacity' }>), mortarsADay, ...more },
})

describe('weekdayOf', () => {
  it('knows a Monday, a Sunday and the first day of all', () => {
    expect(weekdayOf(dayOf('2026-04-06'))).toBe(0)
    expect(weekdayOf(dayOf('2026-04-12'))).toBe(6)
    expect(weekdayOf(0)).toBe(3)
    expect(weekdayOf(dayOf('1969-12-29'))).toBe(0)
  })
})

describe('mortarGroups', () => {
  it('casts one batch of all conditions, then the next, each with its control, on the days of casting', () => {
    // Four mortars a condition, five a day: a condition a day, on Tuesdays and Wednesdays.
    expect(laid(tinyProgramme())).toEqual([
      '2026-04-07 1 R30 1: Q L A',
      '2026-04-08 1 R50 1: Q L A',
      '2026-04-14 1 R30 2: Q L A',
      '2026-04-15 1 R50 2: Q L A',
    ])
  })
  it('puts two conditions on a day that holds both', () => {
    expect(laid(tinyProgramme(capacity(8))).slice(0, 3)).toEqual([
      '2026-04-07 1 R30 1: Q L A',
      '2026-04-07 1 R50 1: Q L A',
      '2026-04-08 1 R30 2: Q L A',
    ])
  })
  it('goes on the next day with a control of its own where a day does not hold a condition', () => {
    // Three a day: control, Q, L; then control, A, and one place too few for a control with a test batch.
    expect(laid(tinyProgramme(capacity(3))).slice(0, 3)).toEqual([
      '2026-04-07 1 R30 1a: Q L',
      '2026-04-08 1 R30 1b: A',
      '2026-04-14 1 R50 1a: Q L',
    ])
  })
  it('gives each test batch its own control where that is asked, all on days that hold both', () => {
    expect(laid({ ...tinyProgramme(capacity(5)), control: 'each' }).slice(0, 4)).toEqual([
      '2026-04-07 1 R30 1a: Q',
      '2026-04-07 1 R30 1b: L',
      '2026-04-08 1 R30 1c: A',
      '2026-04-08 1 R50 1a: Q',
    ])
  })
  it('leaves out days on which nobody casts, and cells that are left out', () => {
    const except = new Set([dayOf('2026-04-08')])
    const leftOut = [{ materials: ['L', 'A'], conditions: ['R50'] }]
    expect(laid({ ...tinyProgramme(capacity(5, { except })), leftOut }).slice(0, 2)).toEqual([
      '2026-04-07 1 R30 1: Q L A',
      '2026-04-14 1 R50 1: Q',
    ])
  })
  it('lets laboratories cast side by side, and takes dates by batch as they are', () => {
    const days = { by: 'batch', days: [dayOf('2026-04-20'), dayOf('2026-05-04')] } as const
    const programme = tinyProgramme({ laboratories: ['1', '2'], days })
    expect(laid(programme).filter((line) => line.includes(' R30 '))).toEqual([
      '2026-04-20 1 R30 1: Q L A',
      '2026-05-04 1 R30 2: Q L A',
      '2026-04-20 2 R30 1: Q L A',
      '2026-05-04 2 R30 2: Q L A',
    ])
  })
  it('has no group for a condition whose materials are all left out', () => {
    const leftOut = [{ materials: ['Q', 'L', 'A'], conditions: ['R50'] }]
    expect(laid({ ...tinyProgramme(), leftOut })).toHaveLength(2)
  })
  it.each([2, 3, 4, 5, 7, 8, 100])(
    'casts every cell as often as planned, and never more than %i mortars a day nor two controls of one code',
    (mortarsADay) => {
      for (const control of ['shared', 'each'] as const) {
        const programme = tinyProgramme({ ...capacity(mortarsADay), control, batches: 3 })
        const groups = mortarGroups(programme)
        const mortars = mortarsOf(groups)
        const tests = mortars.filter(({ material }) => material !== 'control')
        expect(tests).toHaveLength(testMortarCount(programme))
        expect(new Set(tests.map((one) => `${one.material} ${one.condition.code} ${one.number}`)).size).toBe(
          18,
        )
        for (const own of Map.groupBy(mortars, ({ day }) => day).values())
          expect(own.length).toBeLessThanOrEqual(mortarsADay)
        // The code of a batch names its control alone: a reading finds it by that.
        const codes = groups.map(({ condition, batch }) => `${condition.code} ${batch}`)
        expect(new Set(codes).size).toBe(codes.length)
      }
    },
  )
})
