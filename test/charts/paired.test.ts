import { describe, expect, it } from 'vitest'
import { logTicks } from '../../src/charts/paired-axes.ts'
import { pairedMark } from '../../src/charts/paired-marks.ts'
import { type PairedInput, pairedModel, type PairedSeries } from '../../src/charts/paired.ts'

const LIMITS = { x: [{ value: 75, label: '75 %, set' }], y: [{ value: 250, label: '250 %, set' }] }
const NONE = { x: [], y: [] }

function model(points: readonly (readonly [number, number])[], more: Partial<PairedInput> = {}) {
  const found = pairedModel({
    series: [{ name: 'S', role: 'source', points: points.map(([x, y]) => ({ x, y })) }],
    limits: NONE,
    width: 560,
    height: 300,
    ...more,
  })
  if (found === null) throw new Error('no model')
  return found
}

/** Places of circles, which begin one radius left of their middle. */
function places(marks: string): [number, number][] {
  return [...marks.matchAll(/M([\d.]+),([\d.]+)a([\d.]+)/g)].map(([, x, y, radius]) => [
    Number(x) + Number(radius),
    Number(y),
  ])
}

describe('pairedModel', () => {
  it('sets a point by strength evenly and by resistivity logarithmically', () => {
    // Plot 46 to 548 by 24 to 260. Inner range across 58 to 536, upwards 250 to 34: 75 of 50 to 100 is half
    // of the way, as is 316.23 of 100 to 1000.
    const { series } = model([
      [50, 100],
      [75, Math.sqrt(100 * 1000)],
      [100, 1000],
    ])
    expect(places(series[0]?.marks ?? '').map(([x, y]) => [x.toFixed(2), y.toFixed(2)])).toEqual([
      ['58.00', '250.00'],
      ['297.00', '142.00'],
      ['536.00', '34.00'],
    ])
  })
  it('labels 100 and 1000 where values reach from 80 to 1500, and keeps both ends well apart', () => {
    const { yTicks, series, plot } = model([
      [70, 80],
      [90, 1500],
      [80, 160],
    ])
    expect(yTicks.map(({ value }) => value)).toEqual([100, 200, 500, 1000])
    const heights = places(series[0]?.marks ?? '').map(([, y]) => y)
    expect((heights[0] ?? 0) - (heights[2] ?? 0)).toBeGreaterThan((plot.bottom - plot.top) / 6)
  })
  it('takes even steps where an axis is too short for three of 1, 2 and 5', () => {
    expect(logTicks([80, 180])).toEqual([80, 100, 120, 140, 160, 180])
    expect(logTicks([80, 1500])).toEqual([100, 200, 500, 1000])
    expect(logTicks([7, 90000])).toEqual([10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000])
  })
  it('names the quadrants in the corners only where two limits part the plot', () => {
    const points = [
      [60, 100],
      [90, 400],
    ] as const
    expect(model(points, { limits: LIMITS }).corners).toEqual([])
    const parted = model(points, { limits: LIMITS, quadrants: { x: 75, y: 250 }, width: 860 })
    expect(parted.corners.map(({ text, anchor }) => [text, anchor])).toEqual([
      ['meets resistivity only', 'start'],
      ['meets both', 'end'],
      ['meets neither', 'start'],
      ['meets strength only', 'end'],
    ])
  })
  it('leaves every quadrant room for its name and keeps marks off the names, though all lots meet both', () => {
    const { plot, xLimits, yLimits, corners, series } = model(
      [
        [98, 900],
        [99, 1000],
        [100, 950],
      ],
      { limits: LIMITS, quadrants: { x: 75, y: 250 }, width: 320 },
    )
    const [x = 0, y = 0] = [xLimits[0]?.x, yLimits[0]?.y]
    expect(x - plot.left).toBeGreaterThan((plot.right - plot.left) / 5)
    expect(plot.bottom - y).toBeGreaterThan((plot.bottom - plot.top) / 5)
    const lowestName = Math.max(...corners.map((corner) => corner.y).filter((at) => at < y))
    for (const [, at] of places(series[0]?.marks ?? '')) expect(at).toBeGreaterThan(lowestName)
    for (const corner of corners)
      expect(corner.text.length * 6.2).toBeLessThan(
        corner.anchor === 'start' ? x - plot.left : plot.right - x,
      )
  })
  it('sets the value of a level line into the right margin, off every mark, with a tick on the axis', () => {
    const { plot, yLimits, yTicks } = model(
      [
        [60, 255],
        [61, 262],
        [62, 245],
        [100, 900],
      ],
      { limits: { x: [], y: [{ value: 250, label: '250 %' }] } },
    )
    expect(yLimits[0]?.label.x).toBeGreaterThan(plot.right)
    expect(yTicks.find(({ value }) => value === 250)?.y).toBe(yLimits[0]?.y)
  })
  it('sets labels of upright lines that lie close in rows of their own, above a plot of unchanged height', () => {
    const one = model(
      [
        [60, 100],
        [90, 400],
      ],
      { limits: { x: [{ value: 75, label: '75 %, one set' }], y: [] } },
    )
    const two = model(
      [
        [60, 100],
        [90, 400],
      ],
      {
        limits: {
          x: [
            { value: 75, label: '75 %, one set' },
            { value: 76, label: '76 %, another set' },
          ],
          y: [],
        },
      },
    )
    expect(new Set(two.xLimits.map(({ labelY }) => labelY)).size).toBe(2)
    expect(two.plot.bottom - two.plot.top).toBe(one.plot.bottom - one.plot.top)
  })
  it('stands for one point alone and is null without any', () => {
    const [place] = places(model([[80, 300]]).series[0]?.marks ?? '')
    expect(place?.every((value) => Number.isFinite(value))).toBe(true)
    expect(pairedModel({ series: [], limits: LIMITS, width: 460, height: 300 })).toBeNull()
  })
  it('gives ten sources ten outlines, and the eleventh the first again with a letter', () => {
    const marks = Array.from({ length: 21 }, (_, place) => pairedMark(place))
    expect(new Set(marks.slice(0, 10).map(({ draw }) => draw(0, 0, 1))).size).toBe(10)
    expect(marks.slice(0, 10).every(({ letter }) => letter === '')).toBe(true)
    expect([marks[10], marks[20]].map((mark) => [mark?.word, mark?.letter])).toEqual([
      ['circle', 'b'],
      ['circle', 'c'],
    ])
    const series = Array.from(
      { length: 11 },
      (_, place): PairedSeries => ({
        name: `S${place}`,
        role: 'source',
        points: [{ x: 60 + place, y: 100 + place }],
      }),
    )
    expect(
      pairedModel({ series, limits: NONE, width: 460, height: 300 })?.series.map(
        ({ letters }) => letters.length,
      ),
    ).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1])
  })
  it('draws what only stands beside smaller, and what the picture is about larger', () => {
    const points = [{ x: 80, y: 400 }]
    const roles = (['beside', 'source', 'subject'] as const).map(
      (role): PairedSeries => ({ name: role, role, points }),
    )
    const radii = roles.map((series) =>
      Number(/a([\d.]+),/.exec(model([[80, 400]], { series: [series] }).series[0]?.marks ?? '')?.[1]),
    )
    expect(radii[0]).toBeLessThan(radii[1] ?? 0)
    expect(radii[1]).toBeLessThan(radii[2] ?? 0)
  })
  it('is drawn as before', () => {
    const series: PairedSeries[] = [
      {
        name: 'ash',
        role: 'source',
        points: [
          { x: 80, y: 400 },
          { x: 90, y: 200 },
        ],
      },
      { name: 'filler', role: 'inert', points: [{ x: 50, y: 90 }] },
    ]
    expect(
      pairedModel({ series, limits: LIMITS, quadrants: { x: 75, y: 250 }, width: 320, height: 350 }),
    ).toMatchInlineSnapshot(`
      {
        "corners": [
          {
            "anchor": "start",
            "text": "meets resistivity",
            "x": 52,
            "y": 52,
          },
          {
            "anchor": "start",
            "text": "only",
            "x": 52,
            "y": 66,
          },
          {
            "anchor": "end",
            "text": "meets both",
            "x": 262,
            "y": 52,
          },
          {
            "anchor": "start",
            "text": "meets neither",
            "x": 52,
            "y": 318,
          },
          {
            "anchor": "end",
            "text": "meets",
            "x": 262,
            "y": 290,
          },
          {
            "anchor": "end",
            "text": "strength",
            "x": 262,
            "y": 304,
          },
          {
            "anchor": "end",
            "text": "only",
            "x": 262,
            "y": 318,
          },
        ],
        "height": 364,
        "middles": [
          [
            [
              206.5,
              90,
            ],
            [
              256,
              174.57,
            ],
          ],
          [
            [
              58,
              272,
            ],
          ],
        ],
        "plot": {
          "bottom": 324,
          "left": 46,
          "right": 268,
          "top": 38,
        },
        "series": [
          {
            "letter": "",
            "letters": [],
            "marks": "M203.54,90a2.96,2.96 0 1,0 5.92,0a2.96,2.96 0 1,0 -5.92,0ZM253.04,174.57a2.96,2.96 0 1,0 5.92,0a2.96,2.96 0 1,0 -5.92,0Z",
            "name": "ash",
            "role": "source",
            "shape": "circle",
            "tone": 0,
          },
          {
            "letter": "",
            "letters": [],
            "marks": "M55.27,269.27l5.46,0 0,5.46 -5.46,0Z",
            "name": "filler",
            "role": "inert",
            "shape": "square",
            "tone": 1,
          },
        ],
        "width": 320,
        "xLimits": [
          {
            "label": {
              "anchor": "middle",
              "row": 0,
              "text": "75 %, set",
              "x": 181.75,
            },
            "labelY": 33,
            "x": 181.75,
          },
        ],
        "xTicks": [
          {
            "value": 50,
            "x": 58,
          },
          {
            "value": 60,
            "x": 107.5,
          },
          {
            "value": 70,
            "x": 157,
          },
          {
            "value": 80,
            "x": 206.5,
          },
          {
            "value": 90,
            "x": 256,
          },
        ],
        "yLimits": [
          {
            "label": {
              "anchor": "start",
              "text": "250 %, set",
              "x": 274,
              "y": 151.35,
            },
            "y": 147.35,
          },
        ],
        "yTicks": [
          {
            "value": 100,
            "y": 259.14,
          },
          {
            "value": 200,
            "y": 174.57,
          },
          {
            "value": 250,
            "y": 147.35,
          },
          {
            "value": 500,
            "y": 62.77,
          },
        ],
      }
    `)
  })
})
