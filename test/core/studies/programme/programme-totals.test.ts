import { describe, expect, it } from 'vitest'
import { mortarGroups } from '../../../../src/core/studies/programme/planned-mortars.ts'
import type { Programme } from '../../../../src/core/studies/programme/programme.ts'
import { programmeDays, programmeTotals } from '../../../../src/core/studies/programme/programme-totals.ts'
import { dayOf, plannedAge, plannedCondition, tinyProgramme } from './tiny-programme.ts'

function totals(programme: Programme) {
  const groups = mortarGroups(programme)
  return programmeTotals(programme, groups, programmeDays(programme, groups))
}

describe('programmeTotals', () => {
  it('counts by hand: two conditions, two batches, three materials, three cubes', () => {
    // 12 test and 4 control mortars; cement (500 + 3 × 350 + 500 + 3 × 250) × 2, each material (150 + 250) × 2.
    const found = totals(tinyProgramme())
    expect(found).toMatchObject({
      ...{ testMortars: 12, controlMortars: 4, specimens: 48, strengthTests: 48, resistivityReadings: 0 },
      ...{ castingDays: 4, firstCast: dayOf('2026-04-07'), lastCast: dayOf('2026-04-15') },
      lastTest: dayOf('2026-05-13'),
      sandG: 16 * 1375,
      // Four mortars of three cubes on each day.
      moulds: { count: 12, day: dayOf('2026-04-07') },
      tests: { count: 12, day: dayOf('2026-05-05') },
      weekendTests: 0,
    })
    expect([...found.cementG]).toEqual([['C1', 5600]])
    expect([...found.materialG]).toEqual([
      ['Q', 800],
      ['L', 800],
      ['A', 800],
    ])
  })
  it('counts moulds that are filled for longer than a day on all their days, by laboratory', () => {
    const programme = tinyProgramme({ inMouldHours: 48, laboratories: ['1', '2'] })
    expect(totals(programme).moulds).toEqual({ count: 24, day: dayOf('2026-04-08') })
  })
  it('counts tests of a Saturday and a Sunday', () => {
    // Cast on Tuesday and Wednesday, tested four days on: Saturday and Sunday.
    const ages = [plannedAge('4 d', 2, 3, 3)]
    const conditions = [plannedCondition('R30', { ages }), plannedCondition('R50', { ages })]
    expect(totals(tinyProgramme({ conditions })).weekendTests).toBe(16 * 6)
  })
  it('does not state a mass that one of the batches does not', () => {
    const conditions = [plannedCondition('R30'), plannedCondition('x', { cement: null, cementitiousG: null })]
    const found = totals(tinyProgramme({ conditions }))
    expect([...found.cementG]).toEqual([
      ['C1', 3100],
      ['', null],
    ])
    expect(found.materialG.get('Q')).toBeNull()
  })
  it('needs a mortar', () => {
    expect(() => programmeTotals(tinyProgramme(), [], [])).toThrow(RangeError)
  })
})
