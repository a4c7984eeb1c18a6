import { describe, expect, it } from 'vitest'
import { orderedConditions, thresholdOf } from '../../../../src/core/studies/screening/choice.ts'
import { errorsAt } from '../../../../src/core/studies/screening/errors-at-threshold.ts'
import { conditionMeans, type MaterialClass } from '../../../../src/core/studies/screening/material-means.ts'
import { separation } from '../../../../src/core/studies/screening/separation.ts'

/** { I1: "70 72", R1: "100 90+" }: batches, with a plus for one known only as above; the letter is the class. */
const CLASSES: Readonly<Record<string, MaterialClass>> = { I: 'inert', W: 'weak', R: 'reactive' }
const means = (all: Readonly<Record<string, string>>) =>
  conditionMeans(
    Object.entries(all).map(([material, texts]) => ({
      material,
      class: CLASSES[material[0] ?? ''] ?? 'weak',
      batches: texts
        .split(' ')
        .map((text) => ({ value: Number(text.replace('+', '')), above: text.endsWith('+') })),
    })),
    0.95,
  )

describe('conditionMeans', () => {
  // Batches 50 and 200: geometric mean 100, s² of the logarithms 2 ln²2 with one degree of freedom.
  it('takes the geometric mean and pools the scatter between batches', () => {
    const found = means({ I1: '50 200' })
    expect(found.means[0]?.value).toBeCloseTo(100, 9)
    expect(found.between?.deviation).toBeCloseTo(Math.SQRT2 * Math.log(2), 12)
    // t of one degree of freedom at 97.5 % is 12.706 in any table.
    expect(Math.log(found.means[0]?.interval?.[1] ?? 0)).toBeCloseTo(Math.log(100) + 12.706 * Math.log(2), 2)
  })
  it('gives a material wholly above the ceiling its largest bound, and no interval', () => {
    expect(means({ R1: '90+ 95+', I1: '70 72' }).means[0]).toMatchObject({
      value: expect.closeTo(95, 9),
      above: true,
      interval: null,
    })
  })
})

describe('conditionMeans, with some batches above the ceiling', () => {
  // I1 and I2 scatter by s² of (ln 80/70)²/2 and (ln 90/80)²/2, pooled; scipy 1.17 (brentq) for the mean of R1 at that scatter.
  it('takes the scatter of the other materials, not that of its own few batches', () => {
    const found = means({ I1: '70 80', I2: '80 90', R1: '150 200+' })
    const pooled = Math.sqrt((Math.log(80 / 70) ** 2 + Math.log(90 / 80) ** 2) / 4)
    expect(found.between?.deviation).toBeCloseTo(pooled, 12)
    expect(Math.log(found.means[2]?.value ?? 0)).toBeCloseTo(5.1747750515085, 9)
    expect(found.means[2]).toMatchObject({ censored: 1, above: false })
  })
})

describe('orderedConditions', () => {
  const wide = { id: 'wide', means: means({ I1: '70 70', R1: '100 101' }) }
  const narrow = { id: 'narrow', means: means({ I1: '70 70', R1: '80 81' }) }
  const wrong = { id: 'wrong', means: means({ I1: '70 70', I2: '150 150', R1: '140 140', R2: '160 161' }) }

  it('puts fewest on the wrong side first, then the widest gap', () => {
    expect(orderedConditions([wrong, narrow, wide], 5).map(({ id }) => id)).toEqual([
      'wide',
      'narrow',
      'wrong',
    ])
  })
  it('puts a condition without both classes last', () => {
    const lone = { id: 'lone', means: means({ R1: '90 91' }) }
    expect(orderedConditions([lone, narrow], 5).at(-1)).toEqual({
      id: 'lone',
      separation: null,
      threshold: null,
    })
  })
})

describe('thresholdOf', () => {
  const at = (inert: number, reactive: number) =>
    separation(
      [{ material: 'I', value: inert, above: false }],
      [{ material: 'R', value: reactive, above: false }],
    )
  // √(75 · 102) = 87.46.
  it('is the middle of the gap on the log scale, rounded', () => {
    expect(thresholdOf(at(75, 102), 5)).toBe(85)
    expect(thresholdOf(at(90, 1032), 50)).toBe(300)
  })
  it('is none without a gap', () => {
    expect(thresholdOf(at(80, 80), 5)).toBeNull()
  })
})

describe('errorsAt', () => {
  const found = means({ I1: '70 72', I2: '88 86', W1: '85 85', R1: '100 104', R2: '80+ 80+' })
  const errors = errorsAt(found, 85, { batches: 1, level: 0.95 })
  it('names who is judged wrongly, and who cannot be judged', () => {
    expect(errors.inert).toMatchObject({ n: 2, wrong: ['I2'], undecided: [] })
    expect(errors.reactive).toMatchObject({ n: 2, wrong: [], undecided: ['R2'] })
  })
  // 1 of 2: 1 − √0.05 = 0.776 for none; for one of two √0.95 = 0.975.
  it('bounds the share of new materials exactly, undecided ones as wrong', () => {
    expect(errors.inert.newMaterial).toBeCloseTo(Math.sqrt(0.95), 9)
    expect(errors.reactive.newMaterial).toBeCloseTo(Math.sqrt(0.95), 9)
  })
  // At 80 the means of I1 and R2 are sure: R2 is above 80, so it never fails; above 80 it is undecided, and so is the class.
  it('takes a material above the ceiling as sure to pass up to it, and says nothing beyond', () => {
    const all = means({ I1: '70 72', R1: '100 104', R2: '80+ 80+' })
    const at = (threshold: number) => errorsAt(all, threshold, { batches: 1, level: 0.95 }).reactive
    const alone = errorsAt(means({ I1: '70 72', R1: '100 104' }), 80, { batches: 1, level: 0.95 }).reactive
    expect(at(80).furtherBatches).toBeCloseTo((alone.furtherBatches ?? Number.NaN) / 2, 12)
    expect(at(80.1).furtherBatches).toBeNull()
    const inert = errorsAt(means({ I1: '90+ 90+', R1: '100 104' }), 90, { batches: 1, level: 0.95 }).inert
    expect(inert.furtherBatches).toBe(1)
  })
  it('sends half of the further batches of a material at the threshold either way', () => {
    const even = errorsAt(means({ I1: '80 90', R1: '80 90' }), Math.sqrt(80 * 90), {
      batches: 1,
      level: 0.95,
    })
    expect(even.inert.furtherBatches).toBeCloseTo(0.5, 9)
    expect(even.reactive.furtherBatches).toBeCloseTo(0.5, 9)
  })
})
