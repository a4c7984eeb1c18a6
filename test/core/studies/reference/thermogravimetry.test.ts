import { describe, expect, it } from 'vitest'
import {
  basisMassG,
  type CalciumHydroxideConsumed,
  calciumHydroxideConsumed,
  type ConsumptionTest,
} from '../../../../src/core/studies/reference/calcium-hydroxide-consumed.ts'
import {
  type CalciumHydroxideContent,
  calciumHydroxideContent,
} from '../../../../src/core/studies/reference/calcium-hydroxide-content.ts'
import { MOLAR_MASS } from '../../../../src/core/studies/reference/molar-masses.ts'
import { stepLoss, tangentLoss } from '../../../../src/core/studies/reference/thermogravimetric-loss.ts'

const points = (...rows: readonly (readonly [number, number])[]) => rows.map(([x, y]) => ({ x, y }))

/** A step of 3 mg about 447 °C on a line that falls by 0.004 mg a degree. */
const SLOPED = [
  50, 49.96, 49.92, 49.88, 49.84, 49.8, 49.7599, 49.7198, 49.6793, 49.6376, 49.5916, 49.5309, 49.4207,
  49.1599, 48.5574, 47.622, 46.8535, 46.4802, 46.3277, 46.2538, 46.204, 46.1611, 46.1203, 46.0801, 46.04, 46,
  45.96, 45.92, 45.88, 45.84, 45.8,
].map((y, place) => ({ x: 300 + 10 * place, y }))
const TANGENTS = { before: { from: 340, to: 400 }, after: { from: 490, to: 560 } }

describe('tangentLoss', () => {
  // Oracle: numpy 2.4.6, polyfit of degree 1 on both ranges, read at the middle of the steepest interval.
  it('is the distance of both tangents at the steepest loss', () => {
    expect(tangentLoss(SLOPED, TANGENTS)).toEqual({
      lossMg: expect.closeTo(2.9762672619047024, 9) as number,
      middle: 445,
    })
  })
  it('is less than the plain step, which counts the steady loss too', () => {
    expect(stepLoss(SLOPED, { from: 400, to: 490 }, 'water')).toEqual({
      lossMg: expect.closeTo(3.3378, 9) as number,
      middle: null,
    })
  })
  // A pure step of 5 mg on level ground: both ways agree.
  it('equals the plain step where nothing else is lost', () => {
    const level = points(
      [300, 40],
      [340, 40],
      [380, 40],
      [420, 40],
      [440, 35],
      [480, 35],
      [520, 35],
      [560, 35],
    )
    const found = tangentLoss(level, { before: { from: 300, to: 420 }, after: { from: 440, to: 560 } })
    expect(found).toEqual({ lossMg: 5, middle: 430 })
    expect(stepLoss(level, { from: 420, to: 440 }, 'water')).toMatchObject({ lossMg: 5 })
  })
  it.each([
    [
      'a tangent of two rows',
      { ...TANGENTS, before: { from: 385, to: 405 } },
      { fault: 'few-rows', rows: 2 },
    ],
    [
      'tangents the wrong way round',
      { before: TANGENTS.after, after: TANGENTS.before },
      { fault: 'range-backwards' },
    ],
    [
      'a range that runs backwards',
      { ...TANGENTS, after: { from: 560, to: 490 } },
      { fault: 'range-backwards' },
    ],
    [
      'nothing between them',
      { before: { from: 340, to: 402 }, after: { from: 403, to: 450 } },
      { fault: 'few-rows', what: 'water', rows: 0 },
    ],
  ] as const)('refuses %s', (_, tangents, fault) => {
    expect(tangentLoss(SLOPED, tangents)).toMatchObject(fault)
  })
})

const CURVE = points([40, 50], [400, 44], [500, 41], [600, 40], [800, 38], [950, 37.5])
const content = (test: Partial<Parameters<typeof calciumHydroxideContent>[0]>) =>
  calciumHydroxideContent({
    ...{ curve: CURVE, water: { from: 400, to: 500 }, carbonate: null, basis: 'ignited', ...test },
  })

describe('calciumHydroxideContent', () => {
  // By hand: 3 mg of water × 74.093/18.015 = 12.33855 mg; over 37.5 mg 32.9028, over 50 mg 24.6771 g/100 g.
  it('turns the water of the step into hydroxide, on either basis', () => {
    expect((content({}) as CalciumHydroxideContent).value).toBeCloseTo(32.9028, 4)
    expect((content({ basis: 'initial' }) as CalciumHydroxideContent).value).toBeCloseTo(24.6771, 4)
  })
  // 2 mg of carbon dioxide × 74.093/44.009 = 3.3672 mg more: 15.7056 mg over 37.5 mg.
  it('adds carbonated hydroxide only where a range is stated', () => {
    const found = content({ carbonate: { from: 600, to: 800 } }) as CalciumHydroxideContent
    expect(found.hydroxideMg).toBeCloseTo(15.7057, 3)
    expect(found.value).toBeCloseTo(41.882, 3)
  })
  it('finds 100 g/100 g in pure hydroxide', () => {
    const pure = points([40, MOLAR_MASS.calciumHydroxide], [400, MOLAR_MASS.calciumHydroxide], [500, 56.078])
    expect(content({ curve: pure, basis: 'initial' })).toMatchObject({
      value: expect.closeTo(100, 9) as number,
    })
  })
  it.each([
    ['a step outside the table', { water: { from: 30, to: 500 } }, { fault: 'outside-table', what: 'water' }],
    [
      'a step that gains',
      { curve: points([40, 50], [400, 41], [500, 44]) },
      { fault: 'negative-loss', lossMg: -3 },
    ],
    [
      'a temperature out of order',
      { curve: points([40, 50], [500, 44], [400, 41]) },
      { fault: 'not-increasing', row: 2 },
    ],
    [
      'a carbonate range beyond it',
      { carbonate: { from: 600, to: 980 } },
      { fault: 'outside-table', what: 'carbonate' },
    ],
  ] as const)('refuses %s', (_, test, fault) => {
    expect(content(test)).toMatchObject(fault)
  })
})

const MIX = { calciumHydroxideG: 30, materialG: 10, waterG: 40, otherG: 0, materialLoss: 0 }
const BASE: ConsumptionTest = {
  ...{
    curve: CURVE,
    water: { from: 400, to: 500 },
    carbonate: null,
    basis: 'initial',
    mix: MIX,
    blank: null,
  },
}

describe('basisMassG', () => {
  it('is all of the paste, or what ignition leaves of it with lime as CaO', () => {
    expect(basisMassG(MIX, 'initial')).toBe(80)
    expect(
      basisMassG({ ...MIX, calciumHydroxideG: 74.093, otherG: 1, materialLoss: 0.1 }, 'ignited'),
    ).toBeCloseTo(56.077 + 9 + 1, 9)
  })
})

describe('calciumHydroxideConsumed', () => {
  // By hand: 24.6771 g/100 g of 80 g is 19.7417 g left of 30 g put in; 10.2583 g over 10 g of material.
  it('is what was put in less what is left, for 100 g of material', () => {
    const found = calciumHydroxideConsumed(BASE) as CalciumHydroxideConsumed
    expect(found.leftG).toBeCloseTo(19.7417, 4)
    expect(found.value).toBeCloseTo(102.583, 3)
    expect(found.limeShare).toBe(1)
  })
  // A blank of 40 g of lime and 40 g of water that finds 45 g/100 g: 36 g of 40, so 90 % of the 30 g counts.
  it('counts of the lime what a blank finds of it', () => {
    const blankCurve = points(
      [40, 100],
      [400, 90],
      [500, 90 - (45 * MOLAR_MASS.water) / MOLAR_MASS.calciumHydroxide],
    )
    const blank = { ...BASE, curve: blankCurve, mix: { ...MIX, materialG: null, calciumHydroxideG: 40 } }
    const found = calciumHydroxideConsumed({ ...BASE, blank }) as CalciumHydroxideConsumed
    expect(found.limeShare).toBeCloseTo(0.9, 12)
    expect(found.putInG).toBeCloseTo(27, 12)
    expect(found.value).toBeCloseTo(72.583, 3)
  })
  it('is nothing where all that was put in is found again', () => {
    const left = (30 / 80) * 50
    const curve = points(
      [40, 50],
      [400, 44],
      [500, 44 - (left * MOLAR_MASS.water) / MOLAR_MASS.calciumHydroxide],
    )
    expect(calciumHydroxideConsumed({ ...BASE, curve })).toMatchObject({
      value: expect.closeTo(0, 9) as number,
    })
  })
  it('passes a fault of either thermogram on, and needs a material', () => {
    const bad = { curve: points([40, 50]) }
    expect(calciumHydroxideConsumed({ ...BASE, ...bad })).toMatchObject({ fault: 'few-rows' })
    expect(calciumHydroxideConsumed({ ...BASE, blank: { ...BASE, ...bad } })).toMatchObject({
      fault: 'few-rows',
    })
    expect(() => calciumHydroxideConsumed({ ...BASE, mix: { ...MIX, materialG: null } })).toThrow(RangeError)
  })
})
