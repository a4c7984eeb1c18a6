/** Risks that a page states, against what happens in many trials with the true value on the limit. */
import { describe, expect, it } from 'vitest'
import { underDoubt } from '../../../src/core/criteria/decision-rule.ts'
import { jointRisk, riskAtLimit } from '../../../src/core/criteria/rule-risk.ts'
import { batchSeries } from '../../../src/core/doubt/batch-series.ts'
import {
  pooledSteps,
  pooledUncertainty,
  repeatedUncertainty,
} from '../../../src/core/doubt/pooled-repeatability.ts'
import { compareWithLimit } from '../../../src/core/judging/compare-with-limit.ts'
import { batchesToDecide, type Scatter } from '../../../src/core/judging/doubt-of-outcome.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { isFault, readQuantity } from '../../../src/core/measure/units.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'
import type { WrittenDecisionRule } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, setOf, statedUncertainty } from '../judging/fixture.ts'
import { chanceError, normal, shareOf } from './chance.ts'

const LIMIT = 75
const RULES: readonly (readonly [string, WrittenDecisionRule])[] = [
  ['a guard band of 1.645', { guarded: 1.645, 'agreed-in': 'contract 7' }],
  ['a probability of 0.95', { probability: 0.95, 'agreed-in': 'contract 7' }],
]

/** Standard deviation of one mortar, in points of the index; that of an index is √2 as much. */
const MORTAR = 2

describe('the risk of 5 % that a rule states', () => {
  const TRIALS = 3000
  const cases = RULES.flatMap(([title, rule]) =>
    [['K1', 'K1', 'K1'], ['K1', 'K2', 'K3'], ['K1', 'K1', 'K2'], ['K1']].map(
      (controls) => [title, controls.join(', '), rule, controls] as const,
    ),
  )

  it.each(cases)('%s of a mean against the controls %s', (_, names, rule, controls) => {
    const draw = normal(controls.length * 100 + names.length)
    const set = setOf([
      {
        clause: 'c',
        property: 'strength-activity-index',
        condition: 'c311',
        age: readAge('28 d'),
        'at-least': '75 %',
        several: 'mean',
        'decision-rule': rule,
      },
    ])
    const uncertaintyOf = () => statedUncertainty(Math.SQRT2 * MORTAR)
    const accepted = shareOf(TRIALS, () => {
      const made = new Map([...new Set(controls)].map((control) => [control, MORTAR * draw()]))
      const results = controls.map((control) =>
        index('28 d', LIMIT + MORTAR * draw() - (made.get(control) ?? Number.NaN), { control }),
      )
      return clauseOf(judge(set, evidenceOf(results, { uncertaintyOf })), 'c').outcome === 'meets'
    })
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })
})

describe('the risk of 5 % with an uncertainty pooled from the laboratory’s own batches', () => {
  const TRIALS = 3000
  const rule = { rule: 'guarded', k: quantile(0.95), agreedIn: 'contract 7' } as const
  const admits = { low: LIMIT, high: Number.POSITIVE_INFINITY }
  const age = readAge('28 d')
  // One per cent: a limit lies so few scatters from the value that relative and absolute scatter are one.
  const CV = 0.01
  const result = (value: number, day: string, more: Partial<Result> = {}) =>
    index('28 d', value, { tested: readMoment(day), laboratory: 'quay', age, ...more })
  const judged = (draw: () => number) => result(LIMIT * (1 + CV * (draw() - draw())), '2026-06-01')

  it('of six control batches of each of two cements', () => {
    const draw = normal(11)
    const accepted = shareOf(TRIALS, () => {
      const batches = Array.from({ length: 12 }, (_, place) => ({
        group: `PC-${place % 2}`,
        tested: readMoment(`2026-01-${String(place + 10)}`),
        mean: 40 * (1 + CV * draw()),
      }))
      const found = judged(draw)
      const uncertainty = pooledUncertainty(pooledSteps(batches), found)
      return uncertainty !== undefined && underDoubt(rule, found.value, admits, uncertainty) === 'meets'
    })
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })

  it('of six lots with three indices each, two of them against one control', () => {
    const draw = normal(12)
    const accepted = shareOf(TRIALS, () => {
      const lots = Array.from({ length: 6 }, (_, lot) => {
        const shared = draw()
        const value = (control: number) => 90 * (1 + CV * (draw() - control))
        const results = [
          result(value(shared), '2026-01-10', { control: 'K1' }),
          result(value(shared), '2026-01-11', { control: 'K1' }),
          result(value(draw()), '2026-01-12', { control: 'K2' }),
        ]
        return { id: `ash/${lot}`, results }
      })
      const [series] = [...(batchSeries([], lots).get('quay')?.values() ?? [])]
      const found = judged(draw)
      const uncertainty = repeatedUncertainty(pooledSteps(series?.batches ?? []), found)
      return uncertainty !== undefined && underDoubt(rule, found.value, admits, uncertainty) === 'meets'
    })
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })
})

describe('the risk as specified, where the value is rounded first', () => {
  const TRIALS = 20_000
  const limit = readQuantity('75 %', 'fraction')
  if (isFault(limit)) throw new Error('75 % is no quantity')

  it.each([
    // Φ(1/4) and Φ(1), of any table of the normal distribution.
    [2, 0.5987],
    [0.5, 0.8413],
  ])('75 % with an uncertainty of %d: accepted in %d of cases', (u, printed) => {
    const draw = normal(21)
    const stated = riskAtLimit({ rule: 'as-specified' }, { u, step: 1 }) ?? Number.NaN
    expect(stated).toBeCloseTo(printed, 4)
    const accepted = shareOf(
      TRIALS,
      () => compareWithLimit({ value: LIMIT + u * draw() }, 'at-least', [limit]).answer === 'met',
    )
    expect(Math.abs(accepted - stated)).toBeLessThan(chanceError(stated, TRIALS))
  })

  it('on the limits of two routes: as stated for routes of their own, less for routes that share a control', () => {
    const draw = normal(22)
    const u = Math.SQRT2 * MORTAR
    const one = riskAtLimit({ rule: 'as-specified' }, { u, step: 1 })
    const stated = jointRisk([one, one]) ?? Number.NaN
    const meets = (control: number) =>
      compareWithLimit({ value: LIMIT + MORTAR * (draw() - control) }, 'at-least', [limit]).answer === 'met'
    const apart = shareOf(TRIALS, () => [meets(draw()), meets(draw())].includes(true))
    const together = shareOf(TRIALS, () => {
      const control = draw()
      return [meets(control), meets(control)].includes(true)
    })
    expect(Math.abs(apart - stated)).toBeLessThan(chanceError(stated, TRIALS))
    expect(together).toBeLessThan(stated - 2 * chanceError(stated, TRIALS))
  })
})

describe('the number of batches whose mean would decide', () => {
  const TRIALS = 20_000

  /** Whether the mean of n batches with the true value on the end is said to show that it lies inside. */
  const misled = (n: number, batch: () => number, scatter: () => Scatter) => () => {
    let sum = 0
    for (let made = 0; made < n; made += 1) sum += batch()
    const [margin, found] = [sum / n, scatter()]
    const needed = batchesToDecide(margin, found, quantile(0.95, found.df))
    return 0 < margin && needed !== null && needed <= n
  }

  it('that many, each against its own control, mislead in 5 % of cases', () => {
    const draw = normal(31)
    const u = 2.8
    const accepted = shareOf(
      TRIALS,
      misled(
        11,
        () => (u / Math.SQRT2) * (draw() - draw()),
        () => ({ u }),
      ),
    )
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })

  it('three degrees of freedom: that many mislead in 5 % of cases', () => {
    const draw = normal(32)
    const [u, df] = [2, 3]
    const scatter = () => {
      const squares = Array.from({ length: df }, () => draw() ** 2).reduce((sum, one) => sum + one, 0)
      return { u: u * Math.sqrt(squares / df), df }
    }
    const accepted = shareOf(
      TRIALS,
      misled(12, () => u * draw(), scatter),
    )
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })

  it('a mean of ten preceding results: that many mislead in 5 % of cases', () => {
    const draw = normal(33)
    const u = 2
    const accepted = shareOf(TRIALS, () => {
      const reference = (u * draw()) / Math.sqrt(10)
      const scatter = { u: u * Math.sqrt(1 + 1 / 10), ofBatch: u, ofReference: u / Math.sqrt(10) }
      let sum = 0
      for (let made = 0; made < 6; made += 1) sum += u * draw()
      const margin = sum / 6 - reference
      const needed = batchesToDecide(margin, scatter, quantile(0.95))
      return 0 < margin && needed !== null && needed <= 6
    })
    expect(Math.abs(accepted - 0.05)).toBeLessThan(chanceError(0.05, TRIALS))
  })
})
