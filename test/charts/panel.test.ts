/** A panel of a source's charts as plain values. */
import { describe, expect, it } from 'vitest'
import { acrossOf, acrossOfPlace, axisTicks, placeTicks } from '../../src/charts/panel-axis.ts'
import { panelModel, type PanelPoint } from '../../src/charts/panel.ts'
import { marginLabels } from '../../src/charts/panel-margin.ts'
import { thinned } from '../../src/charts/panel-thinning.ts'

function point(x: number, value: number | null, more: Partial<PanelPoint> = {}): PanelPoint {
  return { x, value, status: 'valid', outside: false, shape: 0, breaks: false, ...more }
}

function panel(points: readonly PanelPoint[], limits: { value: number; label: string }[] = []) {
  return panelModel({ points, limits, last: null, height: 100, joined: true })
}

describe('acrossOf', () => {
  it('puts the first and last day near the edges, and a single day in the middle', () => {
    expect([acrossOf({ from: 10, to: 20 }, 10), acrossOf({ from: 10, to: 20 }, 20)]).toEqual([12, 988])
    expect(acrossOf({ from: 10, to: 10 }, 10)).toBe(500)
    expect([acrossOfPlace(0, 3), acrossOfPlace(1, 3), acrossOfPlace(2, 3)]).toEqual([12, 500, 988])
  })
})

describe('axisTicks', () => {
  // 2024-01-15 and 2026-01-15, counted in days by hand: 54 years of 365 days and 13 leap days before 2024.
  const from = 54 * 365 + 13 + 14
  it('labels a January with its year, and no more than a dozen months', () => {
    const ticks = axisTicks({ from, to: from + 731 })
    expect(ticks.length).toBeLessThanOrEqual(12)
    expect(ticks.filter(({ major }) => major).map(({ text }) => text)).toEqual(['2025', '2026'])
  })

  it('says which year it is on an axis without a January, and keeps every third month on a phone', () => {
    // From 15 March to 15 September 2024.
    const ticks = axisTicks({ from: from + 60, to: from + 244 })
    expect(ticks.map(({ text }) => text)).toEqual(['Apr 2024', 'May', 'Jun', 'Jul', 'Aug', 'Sep'])
    expect(ticks.filter(({ major }) => major).map(({ text }) => text)).toEqual(['Apr 2024', 'Jul'])
  })
})

describe('placeTicks', () => {
  it('names as many places as have room, the first and every fourth of them on a phone as well', () => {
    const places = Array.from({ length: 21 }, (_, place) => ({ x: 50 * place, text: `L${place}` }))
    const ticks = placeTicks(places)
    expect(ticks.map(({ text }) => text)).toEqual(['L0', 'L3', 'L6', 'L9', 'L12', 'L15', 'L18'])
    expect(ticks.filter(({ major }) => major).map(({ text }) => text)).toEqual(['L0', 'L12'])
  })
})

describe('panelModel', () => {
  it('reads out each point that has words, at its mark', () => {
    const model = panel([
      point(0, 1, { words: 'a' }),
      point(500, null, { status: 'pending', words: 'b' }),
      point(900, 2),
    ])
    expect(model?.readings.map(({ x, words }) => [x, words])).toEqual([
      [0, 'a'],
      [500, 'b'],
    ])
    expect(model?.readings[1]?.y).toBe(94)
  })

  it('breaks the line where results are not compared, and passes over what is awaited', () => {
    const model = panel([
      point(0, 1),
      point(100, 2),
      point(150, null, { status: 'pending' }),
      point(200, 3),
      point(300, 4, { breaks: true }),
      point(400, 5),
    ])
    expect(model?.lines.match(/M/g)).toHaveLength(2)
    expect(model?.marks).toEqual([{ x: 150, y: 94, mark: 'awaited' }])
  })

  it('draws no line to a result that does not count, and gives it a mark of its own', () => {
    const model = panel([point(0, 1), point(100, 9, { status: 'not-valid' }), point(200, 1), point(300, 2)])
    expect(model?.lines.match(/M/g)).toHaveLength(1)
    expect(model?.marks.map(({ mark }) => mark)).toEqual(['not-valid'])
  })

  it('gives results outside a limit the diamond, and those of a second laboratory square dots', () => {
    const model = panel([point(0, 1), point(100, 2, { shape: 1 }), point(200, 8, { outside: true })])
    expect(model?.dots.map(({ shape }) => shape)).toEqual(['round', 'square'])
    expect(model?.marks.map(({ mark }) => mark)).toEqual(['outside'])
  })

  it('states a limit far off the scale with an arrow, at the edge that it lies beyond', () => {
    const model = panel(
      [point(0, 16), point(100, 18)],
      [
        { value: 34, label: '34 at most' },
        { value: 2, label: '2 at least' },
      ],
    )
    expect(model?.limits).toEqual([])
    expect(model?.margin).toEqual([
      { y: 7, text: '34 at most ↑', kind: 'limit' },
      { y: 93, text: '2 at least ↓', kind: 'limit' },
    ])
  })

  it('is nothing without a value', () => {
    expect(panel([point(0, null, { status: 'pending' })])).toBeNull()
  })
})

describe('marginLabels', () => {
  it('keeps labels apart and within the panel, in the order of their lines', () => {
    const wishes = [95, 96, 40].map((y) => ({ y, text: String(y), kind: 'limit' as const }))
    expect(marginLabels(wishes, 100).map(({ y }) => y)).toEqual([40, 79, 93])
  })
})

describe('thinned', () => {
  const many = Array.from({ length: 3000 }, (_, place) => point(place / 3, Math.sin(place)))
  it('keeps a short series whole', () => {
    expect(thinned(many.slice(0, 400))).toHaveLength(400)
  })
  it('keeps the lowest and highest of each stretch, what stands out, and the last', () => {
    const failing = point(500.1, 0.2, { outside: true })
    const kept = thinned([...many, failing, point(999.9, 0.1)])
    expect(kept.length).toBeLessThan(400)
    expect(kept).toContain(failing)
    expect(kept.at(-1)?.x).toBe(999.9)
    const highest = Math.max(...many.map(({ value }) => value ?? 0))
    expect(kept.some(({ value }) => value === highest)).toBe(true)
  })
})
