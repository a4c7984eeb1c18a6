import { describe, expect, it } from 'vitest'
import { D2S_FACTOR, differenceLimit, precisionRow } from '../../../src/core/agency/precision.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Quantity } from '../../../src/core/measure/units.ts'

const fifth = { kind: 'fraction', value: 5, unit: '%', written: '5 %', decimals: 0 } as Quantity
const several = { laboratories: 'several', source: 'round robin' } as const

function rowsOf(...rows: Parameters<typeof precisionRow>[0][]) {
  return rows.flatMap((row) => precisionRow(row) ?? [])
}

describe('differenceLimit', () => {
  it('differenceLimit is 2.83 times the standard deviation between laboratories', () => {
    const rows = rowsOf({
      property: 'loss-on-ignition',
      ...several,
      'standard-deviation': '0.20 percentage points',
    })
    // By hand: 2.83 × 0.20 = 0.566.
    expect(differenceLimit(rows, { property: 'loss-on-ignition' }, 6)?.limit).toBeCloseTo(0.566, 10)
  })

  it('differenceLimit of a coefficient of variation goes by the mean of the two results', () => {
    const rows = rowsOf({ property: 'resistivity-index', ...several, 'coefficient-of-variation': fifth })
    // By hand: 5 % of 200 is 10, times 2.83.
    expect(differenceLimit(rows, { property: 'resistivity-index' }, 200)?.limit).toBeCloseTo(28.3, 10)
  })

  it('differenceLimit keeps to condition, age and range, and prefers the row that names them', () => {
    const strength = { property: 'strength-activity-index', ...several } as const
    const rows = rowsOf(
      { ...strength, 'standard-deviation': '4 percentage points' },
      {
        ...strength,
        condition: 'c311',
        'standard-deviation': '3 percentage points',
        from: '60 %',
        to: '90 %',
      },
      { ...strength, condition: 'c311', age: readAge('28 d'), 'standard-deviation': '2 percentage points' },
    )
    const at = (condition: string, age: string, level: number) =>
      differenceLimit(rows, { property: 'strength-activity-index', condition, age: readAge(age) }, level)
        ?.standardDeviation
    expect([
      at('c311', '28 d', 80),
      at('c311', '7 d', 90),
      at('c311', '7 d', 91),
      at('hot', '28 d', 80),
    ]).toEqual([2, 3, 4, 4])
  })

  it('differenceLimit takes no row of one laboratory, of another property, or that cannot be read', () => {
    const rows = rowsOf(
      { property: 'density', laboratories: 'single', source: 'x', 'standard-deviation': '0.01 g/cm3' },
      { property: 'SO3', ...several, 'standard-deviation': '0.1 percentage points' },
      { property: 'density', ...several, 'standard-deviation': '0.01 furlongs' },
      { property: 'density', ...several },
    )
    expect(rows).toHaveLength(2)
    expect(differenceLimit(rows, { property: 'density' }, 2.3)).toBeUndefined()
  })
})

/** Park and Miller's generator with sums of twelve: nearly normal, and the same on every machine. */
function scatter(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  return () => Array.from({ length: 12 }, uniform).reduce((sum, one) => sum + one, -6)
}

describe('D2S_FACTOR', () => {
  it('is exceeded by about one pair in twenty where two laboratories scatter alike', () => {
    const next = scatter(20_260_401)
    const runs = 40_000
    let beyond = 0
    for (let run = 0; run < runs; run += 1) if (D2S_FACTOR < Math.abs(next() - next())) beyond += 1
    // P(|Z| > 2.83 / √2) = 4.54 % (normal tables); three standard errors among 40,000 are 0.3 points.
    expect(beyond / runs).toBeGreaterThan(0.0423)
    expect(beyond / runs).toBeLessThan(0.0485)
  })
})
