/**
 * What checks say of sources in which nothing happened, and of the same with one thing planted: the number of flags that
 * a page expects by chance must be the number that chance raises.
 */
import { describe, expect, it } from 'vitest'
import { CHECKS, type CheckId } from '../../../src/core/checks/catalogue.ts'
import { type ChecksRun, checksRun, poissonRange } from '../../../src/core/checks/checked.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { checkedSource, type Planted } from './clean-source.ts'

/** Twenty sources of 500 lots each, a third of them independent, the others correlated by 0.2 and 0.4. */
const [SOURCES, LOTS] = [20, 500]
const PHIS = [0, 0.2, 0.4]

function histories(seed: number) {
  return Array.from({ length: SOURCES }, (_, place) =>
    checkedSource({ id: `s${place}`, lots: LOTS, phi: PHIS[place % 3] ?? 0, seed: 1000 * seed + place }),
  )
}

/** Flags of the checks that chance can raise. */
function flagged({ looks }: Pick<ChecksRun, 'looks'>): number {
  return looks.reduce((sum, { expected, found }) => sum + (expected === null ? 0 : found), 0)
}

function isInside(run: ChecksRun): boolean {
  const { low, high } = run.expectedByChance
  return low <= flagged(run) && flagged(run) <= high
}

describe('clean histories of 10,000 lots', () => {
  const sources = [1, 2, 3, 4].map(histories)
  const runs = sources.map((own) => checksRun(own.flat(), SOURCES * LOTS))
  const all = checksRun(sources.flat(2), 4 * SOURCES * LOTS)

  it('raise as many flags as the range says that a page prints', () => {
    // Seeds 1 to 8 raise 100, 101, 126, 117, 107, 126, 125 and 112 where some 117 are expected. Of four ranges of 95 % one
    // is missed in every fifth such test; all four together must hit theirs.
    expect(runs.filter(isInside).length).toBeGreaterThanOrEqual(3)
    expect(isInside(all)).toBe(true)
  })
  it('raise them within the range of each source in nineteen of twenty', () => {
    const own = sources.flat().map((checked) => checksRun(checked, LOTS))
    expect(own.filter(isInside).length / own.length).toBeGreaterThan(0.92)
  })
  it('raise no more of any one check than its rate leads to expect, and not far fewer', () => {
    const stochastic = all.looks.filter(({ expected }) => expected !== null)
    expect(stochastic.length).toBeGreaterThan(15)
    for (const { check, found, expected } of stochastic) {
      expect(found, check).toBeLessThanOrEqual(poissonRange(expected ?? 0).high)
      // What is stated as a rate at most is never more than three times too high.
      if (10 < (expected ?? 0)) expect(found, check).toBeGreaterThan((expected ?? 0) / 3)
    }
  })
  it('raise nothing that chance cannot raise', () => {
    for (const { check, found, expected } of all.looks)
      if (expected === null) expect([check, found]).toEqual([check, 0])
  })
})

const EVENT = { date: momentOfDay(16_801 + 7 * 150), title: 'new classifier', kind: 'equipment-change' }
const july = (place: number) => new Date((16_801 + 7 * place) * 86_400_000).getUTCMonth() === 6

const PLANTED: readonly (readonly [CheckId, string, Planted])[] = [
  ['out-of-control', 'twelve results far off', { loss: (x, at) => (at % 16 === 5 ? x + 2 : x) }],
  ['run-on-one-side', 'a level that stays up', { loss: (x, at) => (120 <= at ? x + 0.6 : x) }],
  ['weighted-average-off', 'a level that stays up', { loss: (x, at) => (120 <= at ? x + 0.75 : x) }],
  [
    'steady-rise-or-fall',
    'a feed that runs down',
    { loss: (x, at) => 2 + 0.05 * (x - 2.5) + 0.1 * (at % 10) },
  ],
  ['results-drift', 'a drift of the newest lots', { index: (x, at) => x - 0.25 * Math.max(0, at - 170) }],
  ['step-at-event', 'a step at an event', { event: EVENT, index: (x, at) => (150 <= at ? x - 4 : x) }],
  ['month-effect', 'a month that differs', { loss: (x, at) => (july(at) ? x + 0.6 : x) }],
  ['margin-shrinking', 'a margin that shrinks', { index: (x, at) => (at < 150 ? x + 3 : x - 2) }],
  ['bunched-at-limit', 'failures moved inside', { index: (x) => (72.5 < x && x < 74.5 ? x + 2 : x) }],
  ['index-follows-control', 'a weak control', { index: (x, _, control) => (x * 38) / control }],
  ['control-drift', 'a step of the control', { control: (x, at) => (140 <= at ? 0.94 * x : x) }],
  ['control-batch-off', 'a control batch off', { control: (x, at) => (at === 90 ? 0.8 * x : x) }],
  [
    'uneven-last-digits',
    'loads read to the half',
    { load: (m, d) => (0 < d ? Math.round(2 * (m + d)) / 2 : m + d) },
  ],
  ['scatter-small', 'specimens too much alike', { load: (m, d) => m + 0.3 * d }],
  ['readings-alike', 'a copied lot', { copied: 60 }],
  ['split-bias', 'a laboratory that reads high', { split: (x) => x + 0.3 }],
  ['independent-differs', 'independent samples that differ', { independent: (x) => x + 0.7 }],
]

describe('a source of 200 lots with one thing planted', () => {
  const found = (check: CheckId, planted: Planted) =>
    checkedSource({ id: 'vale', lots: 200, phi: 0, seed: 5, planted })
      .filter((one) => one.check === check)
      .flatMap(({ findings }) => findings)

  it.each(PLANTED)('is asked about by %s: %s', (check, _, planted) => {
    const clean = new Set(found(check, {}).map(({ id }) => id))
    expect(found(check, planted).filter(({ id }) => !clean.has(id)).length).toBeGreaterThan(0)
  })
  it('covers every check that chance can raise, but those of single pairs and rounds and those simulated elsewhere', () => {
    const covered = new Set<string>(PLANTED.map(([check]) => check))
    const left = (Object.keys(CHECKS) as CheckId[]).filter(
      (check) => CHECKS[check].rate !== undefined && !covered.has(check),
    )
    expect(left).toEqual([
      'split-beyond-limit',
      'producer-never-fails',
      'proficiency-open',
      'lots-alike',
      'specimens-equal',
      'feed-rising',
    ])
  })
})
