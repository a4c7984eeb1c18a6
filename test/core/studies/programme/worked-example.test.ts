/** The example of the method page, computed again. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { batchMasses } from '../../../../src/core/studies/programme/batch-masses.ts'
import { logDeviation, smallestShift } from '../../../../src/core/studies/programme/resolution.ts'
import { testWindow } from '../../../../src/core/studies/programme/test-windows.ts'
import { largestShare } from '../../../../src/core/statistics/share-bounds.ts'
import { dayOf, plannedAge, plannedCondition } from './tiny-programme.ts'

const PAGE = readFileSync(
  resolve(import.meta.dirname, '../../../../content/methods/studies.mdx'),
  'utf8',
).replaceAll(/\s+/g, ' ')

describe('the example of a programme on the method page', () => {
  it('has the masses of a batch', () => {
    const { cement, material, water } = batchMasses('Q', plannedCondition('R30'))
    expect(PAGE).toContain(`${cement} g of cement, ${material} g of material, ${water} g of water`)
  })
  it('has the window of an age', () => {
    const { opens, closes } = testWindow(dayOf('2026-04-07'), 600, plannedAge('28 d', 12))
    expect([opens.text, closes.text]).toEqual(['2026-05-04T22:00', '2026-05-05T22:00'])
    expect(PAGE).toContain('may begin at 22:00 on 4 May and must be over by 22:00 on 5 May')
  })
  it('has what two batches resolve', () => {
    const shift = smallestShift({ batches: 2, df: 6, level: 0.95, power: 0.8 })
    expect(PAGE).toContain(`a true difference of ${shift.toFixed(2)} standard deviations`)
    const share = 100 * Math.expm1(shift * logDeviation(0.02))
    expect(PAGE).toContain(`which is ${share.toFixed(1)} % at a scatter of 2 %`)
    expect(PAGE).toContain(`none of 4 still allows ${(100 * largestShare(0, 4, 0.95)).toFixed(0)} %`)
  })
})
