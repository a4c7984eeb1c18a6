/** Every check that reads a history: a case by hand that it finds, and one that it does not. */
import { describe, expect, it } from 'vitest'
import { controlDrift } from '../../../src/core/checks/control-drift.ts'
import type { CheckId } from '../../../src/core/checks/catalogue.ts'
import type { Finding } from '../../../src/core/checks/finding.ts'
import { historyChecks } from '../../../src/core/checks/history-checks.ts'
import { controlBatchSeries } from '../../../src/core/history/control-batch-history.ts'
import type { SourceHistory } from '../../../src/core/history/source-history.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'
import { batchesOf } from '../history/batches-fixture.ts'
import { historyOf, seriesOf } from '../history/history-fixture.ts'
import { pointsOf } from '../history/points-fixture.ts'

/** 79 and 81 in turn: centre 80, mean moving range 2, so sigma 2/1.128 = 1.77 and limits 74.7 and 85.3. */
function inTurn(n: number, centre = 80): number[] {
  return Array.from({ length: n }, (_, place) => centre + (place % 2 === 0 ? -1 : 1))
}

function worded(finding: Finding) {
  return wordedFinding(finding, PLAIN_NAMES)
}

function found(history: SourceHistory, check: CheckId) {
  const own = historyChecks('vale', history).find((one) => one.check === check)
  const findings = (own?.findings ?? []).map(worded).map(({ sentence, evidence, ...finding }) => ({
    ...finding,
    sentence: plainSpaces(sentence),
    evidence: evidence.map(plainSpaces),
  }))
  return { looked: own?.looked, expected: own?.expected, findings }
}

const ofValues = (values: readonly number[], made: Parameters<typeof pointsOf>[1] = {}) =>
  historyOf([seriesOf(pointsOf(values, made))])

describe('out-of-control', () => {
  const chart = (last: number[]) => found(ofValues([...inTurn(40 - last.length), ...last]), 'out-of-control')

  it('asks about two of forty results beyond limits from the first twenty, which one series in twenty has', () => {
    const { looked, expected, findings } = chart([86, 74])
    expect(looked).toBe(1)
    expect(expected).toBeCloseTo(0.7 * 0.049, 9)
    expect(findings).toMatchObject([
      { id: 'out-of-control/vale/strength-activity-index/works', severity: 'warning', about: 'vale' },
    ])
    expect(findings[0]?.sentence).toBe(
      '2 of 40 results of strength activity index of vale at works lie beyond three standard deviations of their control chart',
    )
    expect(findings[0]?.evidence).toEqual([
      'centre 80.0 %, limits 74.7 % and 85.3 %, from 20 results',
      'chance alone reaches 2 or more in 4.9 % of series of 40 whose neighbours do not correlate (simulated)',
      '38 and 39: ask what was different',
    ])
  })
  it('leaves one of forty to chance, which one series in six has', () => {
    expect(chart([86])).toMatchObject({ looked: 1, findings: [] })
  })
  it('asks nothing of properties that the governing criterion does not limit, nor of others than those that steer', () => {
    const points = pointsOf([...inTurn(38), 86, 74])
    const limits = seriesOf(points).limits
    for (const series of [seriesOf(points, { limits: [] }), seriesOf(points, { property: 'SO3', limits })])
      expect(found(historyOf([series]), 'out-of-control')).toMatchObject({ looked: 0, findings: [] })
  })
  it('takes each laboratory for itself', () => {
    const other = pointsOf(inTurn(20), { laboratory: 'quay', from: 40 })
    const history = historyOf([seriesOf([...pointsOf([...inTurn(38), 86, 74]), ...other])])
    expect(found(history, 'out-of-control')).toMatchObject({ looked: 2, findings: [{ about: 'vale' }] })
  })
})

describe('run-on-one-side', () => {
  it('counts each point of a run from the eighth on', () => {
    // The last of the first twenty lies above the centre too: a run of 21, of which 14 count.
    const { findings } = found(ofValues([...inTurn(20), ...inTurn(20, 81.5)]), 'run-on-one-side')
    expect(findings[0]?.sentence).toBe(
      'Results of strength activity index of vale at works stay on one side of their centre: 14 points end a run of eight or more',
    )
    expect(found(ofValues(inTurn(40)), 'run-on-one-side').findings).toEqual([])
  })
})

describe('steady-rise-or-fall', () => {
  it('counts each point of a rise from the sixth on', () => {
    // 79 is the last of the first eighteen but one; 77 begins a rise of nine, of which four count.
    const rise = [77, 77.5, 78, 78.6, 79.3, 80, 80.8, 81.5, 82.2]
    const { findings } = found(ofValues([...inTurn(18), ...rise, ...inTurn(13)]), 'steady-rise-or-fall')
    expect(findings[0]?.sentence).toMatch(/rise or fall steadily: 4 points end six or more in one direction$/)
    expect(found(ofValues(inTurn(40)), 'steady-rise-or-fall').findings).toEqual([])
  })
})

describe('weighted-average-off', () => {
  it('asks about averages beyond their limits at more points than chance explains', () => {
    const { findings } = found(ofValues([...inTurn(20), ...inTurn(20, 83)]), 'weighted-average-off')
    expect(findings[0]?.sentence).toMatch(/^The weighted average .* beyond its limits at 1\d points of 40$/)
    expect(found(ofValues(inTurn(40)), 'weighted-average-off').findings).toEqual([])
  })
})

describe('results-drift', () => {
  it('states the slope with its interval, and where the line meets the limit', () => {
    // scipy 1.17.1, linregress: slope −0.13957 ± 0.06371 (t 2.0739, 22 degrees of freedom); residuals alternate, so
    // that nothing widens the interval. By hand: the line stands at 75.67 now, and (75.67 − 74.5)/0.13957 is 8.4 lots.
    const values = inTurn(24, 79).map((value, place) => value - 0.15 * place)
    const { looked, findings } = found(ofValues(values), 'results-drift')
    expect(looked).toBe(1)
    expect(findings[0]?.sentence).toBe(
      'Results of strength activity index of vale at works fall: −1.4 points ± 0.6 points per 10 lots since 1 January 2026',
    )
    expect(findings[0]?.evidence[1]).toMatch(
      /^if it went on, the line would meet 74\.50 %, where the outcome changes, after 9 lots$/,
    )
  })
  it('is silent while the interval holds zero', () => {
    expect(found(ofValues(inTurn(24)), 'results-drift')).toMatchObject({ looked: 1, findings: [] })
  })
})

describe('step-at-event', () => {
  // By hand: means 80 and 83, variances 10/9 each, standard error √(2 · (10/9)/10) = 0.4714, t 2.1009 of 18 degrees.
  const values = [...inTurn(10), ...inTurn(10, 83)]
  const event = { date: momentOfDay(20_454 + 7 * 10), title: 'new mill', kind: 'process-change' }
  const withEvent = (own: readonly number[]) => historyOf([seriesOf(pointsOf(own), { events: [event] })])

  it('states the difference of the means with its interval', () => {
    const { findings } = found(withEvent(values), 'step-at-event')
    expect(findings).toMatchObject([
      { id: 'step-at-event/vale/strength-activity-index/process-change-2026-03-12', severity: 'warning' },
    ])
    expect(findings[0]?.sentence).toBe(
      'Results of strength activity index of vale rose at “new mill”, 12 March 2026: +3.0 points ± 1.0 points',
    )
    expect(found(withEvent(inTurn(20)), 'step-at-event')).toMatchObject({ looked: 1, findings: [] })
  })
  it('says what lies so close that the results cannot tell the two apart', () => {
    const ofCement = (from: number) => {
      const [own, last] = [values.slice(0, from), values.slice(from)]
      const points = [...pointsOf(own, { cement: 'A' }), ...pointsOf(last, { cement: 'B', from })]
      const { findings } = found(historyOf([seriesOf(points, { events: [event] })]), 'step-at-event')
      return findings[0]?.sentence.split(': ')[1]
    }
    // The event lies before the eleventh lot. Three lots between two cuts have no mean worth comparing, four have one.
    expect(ofCement(13)).toBe(
      '+3.0 points ± 1.0 points; beside it lies a change of control cement from A to B, 2 April 2026, and these results cannot tell them apart',
    )
    expect(ofCement(14)).toBe('+3.0 points ± 1.0 points')
  })
  it('names a change of laboratory with the first lot after it, so that a lot not shown takes its day with it', () => {
    const points = [...pointsOf(inTurn(10)), ...pointsOf(inTurn(10, 83), { laboratory: 'quay', from: 10 })]
    const { findings } = found(historyOf([seriesOf(points)]), 'step-at-event')
    expect(findings[0]).toMatchObject({ id: 'step-at-event/vale/strength-activity-index/laboratory-change' })
    expect(findings[0]?.sentence).toMatch(
      /rose where the laboratory changed from works to quay, 12 March 2026: /,
    )
    expect(findings[0]?.evidence[1]).toBe('the laboratory changed between the two as well')
  })
})

describe('month-effect', () => {
  it('asks about the months that differ, in one finding', () => {
    // A lot every ten days for three years; those of July lie 3 points higher.
    const values = inTurn(110).map((value, place) => {
      const month = new Date((20_454 + 10 * place) * 86_400_000).getUTCMonth()
      return month === 6 ? value + 3 : value
    })
    const { looked, findings } = found(ofValues(values, { every: 10 }), 'month-effect')
    expect(looked).toBe(1)
    expect(findings).toMatchObject([{ severity: 'information', about: 'vale' }])
    expect(findings[0]?.sentence).toMatch(/differ by month: July \+3\.\d points ± \d\.\d points$/)
    expect(found(ofValues(inTurn(110), { every: 10 }), 'month-effect')).toMatchObject({ findings: [] })
  })
})

describe('margin-shrinking', () => {
  it('asks where more of the newer half lie within one standard deviation of the limit', () => {
    // 77 lies 2.5 above the limit of 74.5 and 82 lies 7.5; the standard deviation of nine and eleven is 2.55.
    const before = [82, 82, 77, 82, 82, 82, 82, 82, 82, 82]
    const after = [77, 77, 82, 77, 77, 77, 77, 82, 77, 77]
    const { looked, findings } = found(ofValues([...before, ...after]), 'margin-shrinking')
    expect(looked).toBe(1)
    expect(findings[0]?.sentence).toBe(
      'More results of strength activity index of vale at works lie close to at least 75 % than before: 1 of 10, then 8 of 10',
    )
    expect(found(ofValues([...after, ...before]), 'margin-shrinking').findings).toEqual([])
  })
})

describe('uniformity-exceeded', () => {
  it('asks once for each clause, names the newest lots, and expects none by chance', () => {
    const count = {
      criterion: 'c618',
      clause: 'uniformity-residue',
      property: 'residue-45um' as const,
      half: 5,
      unit: 'percentage points',
      outside: 7,
      judged: 40,
      lots: Array.from({ length: 7 }, (_, place) => `vale/${place}`),
    }
    const one = found(historyOf([], [{ ...count, outside: 1, judged: 1 }]), 'uniformity-exceeded')
    expect(one.findings[0]?.sentence).toBe(
      'The residue on 45 µm, wet of the one lot of vale that could be judged lies more than 5 points from the mean of the lots before',
    )
    const { looked, expected, findings } = found(historyOf([], [count]), 'uniformity-exceeded')
    expect([looked, expected]).toEqual([40, undefined])
    expect(findings[0]?.sentence).toBe(
      'The residue on 45 µm, wet of 7 of 40 lots of vale lies more than 5 points from the mean of the lots before',
    )
    expect(findings[0]?.evidence[0]).toBe('2, 3, 4, 5, 6 and 2 others')
    expect(
      found(historyOf([], [{ ...count, outside: 0, lots: [] }]), 'uniformity-exceeded').findings,
    ).toEqual([])
  })
})

describe('index-follows-control', () => {
  // scipy 1.17.1, pearsonr of these: r −0.98739, p 1.1e-07.
  const indices = [83.1, 80.2, 81.5, 79.1, 82.4, 78.8, 80.9, 81.8, 79.6, 82.0]
  const controls = [38.2, 40.6, 39.4, 41.5, 38.9, 41.9, 40.1, 39.7, 40.8, 39.0]

  it('asks where the index is high and its control low', () => {
    const { looked, findings } = found(ofValues(indices, { controls }), 'index-follows-control')
    expect(looked).toBe(1)
    expect(findings[0]?.severity).toBe('information')
    expect(findings[0]?.sentence).toBe(
      'The strength activity index of vale at works is high where its control is low: r = −0.99, p below 0.001, over 10 control batches',
    )
  })
  it('asks nothing where the index rises with its control', () => {
    const rising = controls.map((value) => 80 - value)
    expect(found(ofValues(indices, { controls: rising }), 'index-follows-control').findings).toEqual([])
  })
})

describe('control-drift', () => {
  const LEVEL = inTurn(20, 40)
  const drift = (values: readonly number[]) =>
    controlDrift({ laboratory: 'works', series: controlBatchSeries(batchesOf(values), []) })

  it('is about the laboratory, asked once, with the newest five beside the centre', () => {
    // From the 21st on 2 lower: each adds 2/1.773 ± 0.564 − 0.5 standard deviations to the lower sum.
    const { looked, findings } = drift([...LEVEL, ...inTurn(20, 38)])
    expect(looked).toBe(1)
    expect(findings.map(worded)).toMatchObject([
      { id: 'control-drift/works/compressive-strength/c311/28-d', about: 'works', severity: 'warning' },
    ])
    expect(findings.map(worded)[0]?.sentence).toMatch(
      /^The 28 d compressive strength \(c311\) of control mortar at works drifts: .* of 40 batches, the newest five average 4\.5 % below the centre$/,
    )
  })
  it('is silent over batches that stay where they were', () => {
    expect(drift([...LEVEL, ...LEVEL])).toMatchObject({ looked: 1, findings: [] })
  })
})
