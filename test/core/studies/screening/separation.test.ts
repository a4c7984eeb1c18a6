import { describe, expect, it } from 'vitest'
import { areaInterval, areaWithoutModel } from '../../../../src/core/studies/screening/area-interval.ts'
import {
  censoredLogMean,
  censoredLogNormal,
  wholeReadings,
} from '../../../../src/core/studies/screening/censored-mean.ts'
import { twoByTwo } from '../../../../src/core/studies/screening/changed-verdicts.ts'
import { area, type Placed, separation } from '../../../../src/core/studies/screening/separation.ts'
import { chanceError, normal, shareOf } from '../../simulation/chance.ts'

/** "70 80 90+": values, with a plus for one known only as above. */
const placed = (texts: string, name: string): Placed[] =>
  texts.split(' ').map((text, place) => ({
    material: `${name}${place + 1}`,
    value: Number(text.replace('+', '')),
    above: text.endsWith('+'),
  }))

describe('separation', () => {
  it('sets the fewest materials aside, and measures the gap between the rest', () => {
    const found = separation(placed('70 75 78', 'I'), placed('60 100 120', 'R'))
    expect(found.wrongSide).toEqual(['R1'])
    expect(found).toMatchObject({ highestInert: { value: 78 }, lowestReactive: { value: 100 } })
    expect(found.ratio).toBeCloseTo(100 / 78, 12)
  })
  it('takes all where two or more are on the wrong side', () => {
    const found = separation(placed('70 75 130', 'I'), placed('60 100 120', 'R'))
    expect(found.wrongSide).toHaveLength(2)
    expect(found.lowestReactive.value).toBe(60)
    expect(found.highestInert.value).toBe(130)
  })
  it('ranks a reading above the ceiling on top, and gives no ratio where the ceiling is below the inert', () => {
    const open = separation(placed('70 95', 'I'), placed('90+ 90+', 'R'))
    expect(open.wrongSide).toEqual([])
    expect(open.area).toBe(1)
    expect(open.ratio).toBeNull()
    expect(separation(placed('70 75', 'I'), placed('90+ 100', 'R')).ratio).toBeCloseTo(100 / 75, 12)
  })
  it('needs both classes', () => {
    expect(() => separation([], placed('1', 'R'))).toThrow(
      'separation needs both classes, got 0 inert and 1 reactive',
    )
  })
})

describe('area', () => {
  it('is one less the area of the classes exchanged', () => {
    const [a, b] = [placed('1 3 3 7', 'I'), placed('2 3 8', 'R')]
    expect(area(a, b) + area(b, a)).toBeCloseTo(1, 12)
  })
  // Pairs of (1, 3) with (2, 3): 2 over 1, 3 over 1 and 3 with 3 a tie: 2.5 of 4.
  it('counts a tie half', () => {
    expect(area(placed('1 3', 'I'), placed('2 3', 'R'))).toBe(2.5 / 4)
  })
})

describe('areaInterval', () => {
  // One material each: P(reactive above) = A, so that one win bounds A from below by α/2 alone.
  it('is exact for one material of each class', () => {
    const [low, high] = areaInterval(1, { inert: 1, reactive: 1 }, 0.95)
    expect(low).toBeCloseTo(0.025, 9)
    expect(high).toBe(1)
  })
  it('lies mirrored about the half', () => {
    const [low, high] = areaInterval(10, { inert: 4, reactive: 6 }, 0.95)
    const mirrored = areaInterval(14, { inert: 6, reactive: 4 }, 0.95)
    expect(mirrored[0]).toBeCloseTo(1 - high, 9)
    expect(mirrored[1]).toBeCloseTo(1 - low, 9)
  })
  it.each([0.6, 0.85])(
    'covers an area of %f in 95 % of studies or more, under both of its alternatives',
    (truth) => {
      const next = normal(3)
      // Exponential life times: the chance that one outlives another is the ratio of their rates.
      const theta = truth / (1 - truth)
      const exponential = (rate: number) => (next() ** 2 + next() ** 2) / (2 * rate)
      const study = (sign: 1 | -1) => {
        const inert = Array.from({ length: 6 }, () => exponential(sign === 1 ? theta : 1))
        const reactive = Array.from({ length: 8 }, () => exponential(sign === 1 ? 1 : theta))
        const won = inert.flatMap((low) => reactive.map((high) => (sign * low < sign * high ? 1 : 0)))
        const [from, to] = areaInterval(
          won.reduce<number>((total, one) => total + one, 0),
          { inert: 6, reactive: 8 },
          0.95,
        )
        return from <= truth && truth <= to
      }
      for (const sign of [1, -1] as const)
        expect(shareOf(400, () => study(sign))).toBeGreaterThan(0.95 - chanceError(0.95, 400))
    },
  )
})

describe('areaWithoutModel', () => {
  // 0.025^(1/6): six pairs that share no material, all won.
  it('is the sixth root of 0.025 for six and eight', () => {
    expect(areaWithoutModel(6, 8, 0.95)).toBeCloseTo(0.5407, 4)
  })
})

describe('censoredLogNormal', () => {
  // scipy 1.17, direct maximum of the likelihood: 6.723244322, 0.203885086.
  it('agrees with a direct maximum of the likelihood', () => {
    const seen = [700, 820, 650].map((value) => ({ value, above: false }))
    const found = censoredLogNormal([...seen, { value: 900, above: true }, { value: 900, above: true }])
    expect(found?.mean).toBeCloseTo(6.723244322, 7)
    expect(found?.deviation).toBeCloseTo(0.203885086, 7)
  })
  it('is the plain mean of the logarithms without a bound', () => {
    const found = censoredLogNormal([2, 8].map((value) => ({ value, above: false })))
    expect(found?.mean).toBeCloseTo(Math.log(4), 12)
    expect(found?.deviation).toBeCloseTo(Math.log(2), 12)
  })
  it('has no answer where all are above, or nothing scatters', () => {
    expect(
      censoredLogNormal([
        { value: 9, above: true },
        { value: 9, above: true },
      ]),
    ).toBeNull()
    expect(
      censoredLogNormal([
        { value: 9, above: false },
        { value: 9, above: false },
      ]),
    ).toBeNull()
    expect(censoredLogNormal([{ value: 9, above: false }])).toBeNull()
  })
})

describe('censoredLogMean', () => {
  const of = (values: readonly number[], bounds: readonly number[]) => [
    ...values.map((value) => ({ value, above: false })),
    ...bounds.map((value) => ({ value, above: true })),
  ]
  // scipy 1.17: root of the likelihood's derivative by brentq.
  it.each([
    [[700, 820, 650], [900, 900], 0.1, 6.688361776010129],
    [[700, 820, 650], [900, 900], 0.3, 6.758001850328983],
    [[880], [900, 905], 0.04, 6.822981543193637],
  ])(
    'is the mean of greatest likelihood at a known scatter: %j above %j, %s',
    (values, bounds, deviation, log) => {
      expect(censoredLogMean(of(values, bounds), deviation)).toBeCloseTo(log, 9)
    },
  )
  it('is the plain mean of the logarithms without a bound, whatever the scatter', () => {
    expect(censoredLogMean(of([2, 8], []), 0.01)).toBeCloseTo(Math.log(4), 12)
  })
  // scipy 1.17: minus the second difference of the log-likelihood at its maximum, step 1e-4, times the variance.
  it.each([
    [[700, 820, 650], [900, 900], 0.1, 4.633108],
    [[700, 820, 650], [900, 900], 0.3, 4.335249],
    [[880], [900, 905], 0.04, 2.056514],
  ])('rests on fewer whole readings than there are: %j above %j, %s', (values, bounds, deviation, whole) => {
    const readings = of(values, bounds)
    expect(wholeReadings(readings, censoredLogMean(readings, deviation), deviation)).toBeCloseTo(whole, 5)
  })
  it('refuses bounds alone', () => {
    expect(() => censoredLogMean(of([], [900]), 0.1)).toThrow(RangeError)
  })
})

describe('twoByTwo', () => {
  // Five change one way and none the other: 2 · ½⁵ = 0.0625; six would give 0.03125.
  it.each([
    [5, 0.0625],
    [6, 0.03125],
  ])('%i changes one way have p %f', (changes, p) => {
    const judged = Array.from({ length: changes }, (_, place) => ({
      material: `M${place}`,
      first: true,
      second: false,
    }))
    expect(twoByTwo(judged).p).toBeCloseTo(p, 12)
  })
  it('has p 1 where nothing changes', () => {
    expect(twoByTwo([{ material: 'A', first: true, second: true }]).p).toBe(1)
  })
})
