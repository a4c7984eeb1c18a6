import { describe, expect, it } from 'vitest'
import { besidePoints, boxAbout, overlap } from '../../src/charts/beside-points.ts'
import { dodged } from '../../src/charts/dodged.ts'
import { errorCurves } from '../../src/charts/error-curves.ts'
import { labelWidth } from '../../src/charts/labels.ts'
import { logTicks } from '../../src/charts/log-ticks.ts'
import { materialLines } from '../../src/charts/material-lines.ts'
import { referenceScatter } from '../../src/charts/reference-scatter.ts'
import type { ClassErrors } from '../../src/core/studies/screening/errors-at-threshold.ts'

describe('dodged', () => {
  const bounds = { top: 0, bottom: 100 }
  it('leaves labels that have room where they are', () => {
    expect(dodged([50, 10, 80], 10, bounds)).toEqual([50, 10, 80])
  })
  // Three at 50 stand about it; one at 56 joins them: mean 51.5, so from 36.5 on.
  it('spreads labels that touch about the mean of their wishes', () => {
    expect(dodged([50, 50, 50], 10, bounds)).toEqual([40, 50, 60])
    expect(dodged([50, 56, 50, 50], 10, bounds)).toEqual([36.5, 66.5, 46.5, 56.5])
  })
  it('keeps them within the bounds, and is null without room for all', () => {
    expect(dodged([99, 100], 10, bounds)).toEqual([90, 100])
    expect(dodged([1, 2, 3], 60, bounds)).toBeNull()
  })
})

describe('logTicks', () => {
  it('takes the finest steps that have room', () => {
    expect(logTicks(60, 1600, 0.15)).toEqual([100, 200, 500, 1000])
    expect(logTicks(62, 117, 0.1)).toEqual([70, 80, 90, 100])
  })
  it('writes small values without dust', () => {
    expect(logTicks(0.25, 0.65, 0.18)).toEqual([0.25, 0.3, 0.4, 0.5, 0.6])
  })
})

const errors = (wrong: number, share: number, undecided = 0): ClassErrors => ({
  n: 2,
  wrong: ['a', 'b'].slice(0, wrong),
  undecided: ['c'].slice(0, undecided),
  newMaterial: share,
  furtherBatches: null,
})

describe('errorCurves', () => {
  const curve = [
    { threshold: 50, inert: errors(2, 1), reactive: errors(0, 0.78) },
    { threshold: 100, inert: errors(2, 1), reactive: errors(0, 0.78) },
    { threshold: 100.1, inert: errors(0, 0.78), reactive: errors(0, 0.78) },
    { threshold: 200, inert: errors(0, 0.78), reactive: errors(0, 0.78, 1) },
  ]
  const model = errorCurves(curve, curve[1] ?? null)
  it('steps where a count changes and draws level stretches by their ends', () => {
    const [inert] = model?.panels ?? []
    // Both ends, and both sides of the step; 100 lies in the middle of 50 to 200 on a logarithmic axis.
    expect(inert?.seen.match(/[ML]/g)).toHaveLength(4)
    expect(model?.threshold).toBe(((inert?.plot.left ?? 0) + (inert?.plot.right ?? 0)) / 2)
  })
  it('draws what is undecided only where something is, and no chance without a scatter', () => {
    expect(model?.panels.map(({ withUndecided }) => withUndecided !== null)).toEqual([false, true])
    expect(model?.panels.map(({ further }) => further)).toEqual([null, null])
  })
  it('ends the chance for further batches where a material is no longer decided', () => {
    const known = (furtherBatches: number | null) => ({ ...errors(0, 0.78), furtherBatches })
    const part = errorCurves(
      [
        { threshold: 50, inert: known(0.5), reactive: known(0) },
        { threshold: 100, inert: known(0.2), reactive: known(0.1) },
        { threshold: 200, inert: known(0.1), reactive: known(null) },
      ],
      null,
    )
    const ends = part?.panels.map(({ further }) => further?.split('L').length)
    expect(ends).toEqual([3, 2])
  })
  it('reads nothing off without a threshold', () => {
    const without = errorCurves(curve, null)
    expect(without?.threshold).toBeNull()
    expect(without?.panels.flatMap(({ readings }) => readings)).toEqual([])
  })
})

describe('materialLines', () => {
  const at = (values: readonly (number | null)[], last: 'disc' | 'up' = 'disc') =>
    values.map((value, place) => ({
      temperature: [23, 40, 50][place] ?? 0,
      value,
      shape: place === values.length - 1 ? last : ('disc' as const),
    }))
  it('breaks a line where a material has no index', () => {
    const model = materialLines([{ name: 'A', class: 'reactive', points: at([90, null, 95]) }], [80, 100])
    expect(model?.lines).toEqual([{ class: 'reactive', path: '', open: '' }])
    expect(model?.marks).toHaveLength(2)
  })
  it('keeps the piece to a bound apart from what is known', () => {
    const model = materialLines([{ name: 'A', class: 'reactive', points: at([90, 92, 95], 'up') }], [80, 100])
    expect(model?.lines[0]?.path.match(/M/g)).toHaveLength(1)
    expect(model?.lines[0]?.open.match(/M/g)).toHaveLength(1)
  })
  it('names no more than there is room for, none upon another', () => {
    const many = Array.from({ length: 40 }, (_, place) => ({
      name: `M${place}`,
      class: 'inert',
      points: at([90, 90, 90]),
    }))
    const names = materialLines(many, [80, 100])?.names ?? []
    const apart = names.slice(1).map(({ y }, place) => y - (names[place]?.y ?? 0))
    expect(names.length).toBeLessThan(40)
    expect(Math.min(...apart)).toBeGreaterThan(12.8)
  })
  it('draws nothing over one temperature', () => {
    expect(materialLines([{ name: 'A', class: 'x', points: at([90]) }], [80, 100])).toBeNull()
  })
})

describe('besidePoints', () => {
  const plot = { left: 0, right: 300, top: 0, bottom: 200 }
  it('puts no name on a mark or on another name', () => {
    const marks = Array.from({ length: 12 }, (_, place) => ({
      x: 120 + (place % 4) * 9,
      y: 90 + Math.floor(place / 4) * 9,
      name: `N${place}`,
    }))
    const names = besidePoints(marks, { marks, kept: [] }, plot)
    const boxes = names.map(({ name, x, y }) => ({
      left: x,
      right: x + labelWidth(name),
      top: y - 9,
      bottom: y + 2,
    }))
    expect(names.length).toBeGreaterThan(6)
    const onMark = boxes.filter((box) => marks.some((mark) => overlap(boxAbout(mark, 5), box)))
    const onName = boxes.filter((box, place) =>
      boxes.some((other, at) => at !== place && overlap(other, box)),
    )
    expect([onMark, onName]).toEqual([[], []])
  })
  it('leaves a name out where no place is free', () => {
    const marks = [{ x: 150, y: 100, name: 'A' }]
    const kept = [{ left: 0, right: 300, top: 0, bottom: 200 }]
    expect(besidePoints(marks, { marks, kept }, plot)).toEqual([])
  })
})

describe('referenceScatter', () => {
  const point = (name: string, reference: number, index: number, disagrees = false) => ({
    name,
    reference,
    index,
    shape: 'disc' as const,
    disagrees,
  })
  it('draws the line of a power law through its points', () => {
    const model = referenceScatter([point('A', 1, 10), point('B', 100, 100)], {
      line: { slope: 0.5, intercept: Math.log(10) },
      boundary: null,
      threshold: null,
      thresholdLabel: '',
    })
    const [a, b] = model?.points ?? []
    expect(model?.line).toEqual({ x1: a?.x, y1: a?.y, x2: b?.x, y2: b?.y })
  })
  it('names the threshold where no mark stands', () => {
    const crowd = [40, 41, 42].map((index) => point(`L${index}`, 1, index))
    const model = referenceScatter([...crowd, point('R', 100, 90)], {
      line: null,
      boundary: 10,
      threshold: 41,
      thresholdLabel: 'threshold 41 %',
    })
    expect(model?.thresholdName?.anchor).toBe('end')
  })
  it('draws nothing without points', () => {
    const none = { line: null, boundary: null, threshold: null, thresholdLabel: '' }
    expect(referenceScatter([], none)).toBeNull()
  })
})
