import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { type AtLimit, atTheLimits, bunchedAtLimits } from '../../../src/core/checks/at-the-limits.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'
import { chanceOf } from '../../../src/demo/chance.ts'

/** Lots judged "at least 75 %", by their unrounded index. */
function lotsOf(values: readonly number[], more: object = {}): AuditedLot[] {
  return values.map((value, place) => {
    const result = `strength-activity-index|c311|7 d|||${place}`
    const clause = {
      id: 'activity',
      kind: 'value',
      outcome: value < 74.5 ? 'does-not-meet' : 'meets',
      property: 'strength-activity-index',
      condition: 'c311',
      value,
      decimals: 0,
      unit: '%',
      information: false,
      limit: { operator: 'at-least', written: ['75 %'], values: [75], unit: '%', layer: 's' },
      result,
    }
    return {
      id: `vale/V-${place}`,
      results: [{ key: result, ...more }],
      verdicts: [{ criterion: 's', clauses: [clause] }],
    } as unknown as AuditedLot
  })
}

function only(values: readonly number[], more: object = {}): AtLimit | undefined {
  return atTheLimits(lotsOf(values, more))[0]
}

/** Twenty-two lots away from the limit, as a normal with mean 80 and standard deviation 4 spreads them. */
const AWAY = [
  71.0, 72.0, 77.1, 77.5, 77.9, 78.3, 78.6, 78.9, 79.2, 79.6, 79.9, 80.2, 80.5, 80.8, 81.2, 81.6, 82.0, 82.5,
  83.1, 83.8, 85.0, 87.0,
]

describe('atTheLimits', () => {
  it('counts on both sides of the edge at which the rounded value changes its outcome', () => {
    const found = only([...AWAY, 74.4, 74.5, 74.6])
    expect(found).toMatchObject({ edge: 74.5, side: 'low', admitted: 2, refused: 1, shown: 'too-few' })
    expect(found?.values).toHaveLength(25)
  })
  it('finds twelve lots just inside the limit and none beyond', () => {
    const values = [...AWAY, 74.6, 74.7, 74.8, 74.9, 75.0, 75.1, 75.2, 75.3, 75.4, 75.5, 75.6, 75.7]
    const found = only(values)
    expect(found).toMatchObject({ admitted: 12, refused: 0, shown: 'bunched' })
    const [finding] = bunchedAtLimits('vale', found === undefined ? [] : [found], 1).findings
    const { sentence, evidence } = wordedFinding(finding as NonNullable<typeof finding>, PLAIN_NAMES)
    expect(sentence).toBe(
      'Of 12 lots of vale close to the limit of at least 75 % for strength activity index (c311), 12 lie just inside it and none just beyond',
    )
    expect(evidence.at(-1)).toBe('diverted failing lots also cause this; one is on record')
  })
  it('says that too few lie near the limit where even all of them inside would be chance', () => {
    expect(only([...AWAY, 74.6, 74.7])).toMatchObject({ admitted: 2, refused: 0, shown: 'too-few' })
  })
  it('leaves out finished figures, and asks nothing of fewer than twenty lots', () => {
    expect(only(AWAY, { finished: true })).toBeUndefined()
    expect(only(AWAY.slice(0, 19))).toBeUndefined()
    expect(only(AWAY.slice(0, 20))).toBeDefined()
  })
  it('flags no more than one clean source in fifty, whose mean lies one to two deviations inside', () => {
    // Seeded. The level is 1 %; the fit knows mean and deviation from the sample only.
    const chance = chanceOf(0.7)
    const TRIALS = 400
    let [flagged, looked] = [0, 0]
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const centre = 74.5 + 4 * (1 + chance.uniform())
      const found = only(Array.from({ length: 120 }, () => centre + 4 * chance.normal()))
      if (found?.shown === 'bunched') flagged += 1
      if (found?.shown !== 'too-few') looked += 1
    }
    expect(looked).toBeGreaterThan(TRIALS / 2)
    expect(flagged / looked).toBeLessThan(0.02)
  })
  it('sees most sources of which half of the failing lots were lifted over the limit', () => {
    const chance = chanceOf(0.3)
    let seen = 0
    for (let trial = 0; trial < 100; trial += 1) {
      const values = Array.from({ length: 200 }, () => {
        const value = 78 + 4 * chance.normal()
        return 72.5 < value && value < 74.5 && chance.uniform() < 0.75 ? 74.5 + chance.uniform() : value
      })
      if (only(values)?.shown === 'bunched') seen += 1
    }
    expect(seen).toBeGreaterThan(80)
  })
})
