import { describe, expect, it } from 'vitest'
import { precisionRow } from '../../../src/core/agency/precision.ts'
import { type AgencyEvidence, sourceAgency } from '../../../src/core/agency/source-agency.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { result } from '../judging/fixture.ts'
import { agencys, lotOf } from './fixture.ts'

const ROWS = [
  precisionRow({
    property: 'loss-on-ignition',
    laboratories: 'several',
    'standard-deviation': '0.20 percentage points',
    source: 'round robin',
  }),
].flatMap((row) => row ?? [])

function found(more: Partial<AgencyEvidence>) {
  return sourceAgency({
    asOf: readMoment('2026-06-30'),
    lots: [],
    samples: [],
    plan: [],
    precision: ROWS,
    ...more,
  })
}

describe('sourceAgency', () => {
  it('sourceAgency takes the mean, its interval and the running sum of three splits', () => {
    const lots = [1, 2, 3].map((place) =>
      lotOf(place, [
        result('loss-on-ignition', 2),
        agencys('loss-on-ignition', 2 + place, { tested: readMoment(`2026-03-1${place}`) }),
      ]),
    )
    const [split] = found({ lots }).split
    // By hand: differences 1, 2, 3: mean 2, s 1, t = 2√3; all beyond 0.566, 0.15 expected by chance.
    expect(split?.mean).toBeCloseTo(2, 10)
    expect(split?.paired?.t).toBeCloseTo(2 * Math.sqrt(3), 10)
    expect(
      split?.running.map((one) => one && [one.sum, one.mean].map((value) => Math.round(value * 100))),
    ).toEqual([
      [100, 100],
      [300, 150],
      [600, 200],
    ])
    expect(split?.precision).toMatchObject({ beyond: 3, of: 3 })
    expect(split?.precision?.expected).toBeCloseTo(0.15, 10)
  })

  it('sourceAgency never puts splits and independent samples together', () => {
    const lots = [
      lotOf(1, [result('loss-on-ignition', 2), agencys('loss-on-ignition', 3)]),
      lotOf(2, [
        result('loss-on-ignition', 2),
        agencys('loss-on-ignition', 9, { sample: 'I', sampleKind: 'independent' }),
      ]),
    ]
    const { split, independent } = found({ lots })
    expect(split.map(({ n, mean }) => [n, mean])).toEqual([[1, 1]])
    expect(independent.map(({ agency }) => [agency.n, agency.mean])).toEqual([[1, 9]])
  })

  it('sourceAgency holds independent samples against the producer’s lots of the same period, F then t', () => {
    const values = [1, 2, 3, 4, 5, 6, 7]
    const lots = values.map((value, place) =>
      lotOf(place, [
        result('loss-on-ignition', value),
        // The agency sampled the lots of 3, 4 and 5 %.
        ...([2, 3, 4].includes(place)
          ? [agencys('loss-on-ignition', value + 2, { sample: 'I', sampleKind: 'independent' })]
          : []),
      ]),
    )
    const [own] = found({ lots }).independent
    // By hand: 5, 6, 7 against 3, 4, 5: variances 1 and 1, F 1; t = 2 / √(2/3) = √6 with 4 degrees of freedom.
    expect(own?.producer).toMatchObject({ n: 3, mean: 4 })
    expect(own?.f?.ratio).toBeCloseTo(1, 12)
    expect(own?.form).toBe('pooled')
    expect(own?.t?.t).toBeCloseTo(Math.sqrt(6), 10)
    // scipy 1.17.1, noncentral t with 4 degrees of freedom at 1 %: a shift of 1.5 s.
    expect(own?.power).toBeCloseTo(0.08452864798640906, 8)
  })

  it('sourceAgency turns to Welch’s form where F shows another scatter at the level', () => {
    const spread = [-40, 40, -35, 35, 0]
    const lots = spread.map((value, place) =>
      lotOf(place, [
        result('loss-on-ignition', 50 + value / 1000),
        agencys('loss-on-ignition', 50 + value, { sample: 'I', sampleKind: 'independent' }),
      ]),
    )
    const [own] = found({ lots }).independent
    expect(own?.form).toBe('welch')
    expect(own?.t?.df).toBeCloseTo(4, 3)
  })

  it('sourceAgency says no test of a single independent sample', () => {
    const lots = [
      lotOf(1, [
        result('loss-on-ignition', 2),
        agencys('loss-on-ignition', 9, { sample: 'I', sampleKind: 'independent' }),
      ]),
    ]
    expect(found({ lots }).independent).toMatchObject([{ f: null, t: null, power: null }])
  })

  it('sourceAgency compares no class with another', () => {
    const both = [result('loss-on-ignition', 2), agencys('loss-on-ignition', 3)]
    const { split } = found({ lots: [lotOf(1, both), lotOf(2, both, { class: 'C' })] })
    expect(split.map(({ n }) => n)).toEqual([1, 1])
  })

  it('sourceAgency counts what was planned and taken in each period', () => {
    const taken = (day: string) => ({ kind: 'split', lot: 'ash/1', taken: readMoment(day) }) as const
    const period = { from: readMoment('2026-01-01'), to: readMoment('2026-06-29'), planned: 3 }
    const { status, splits, independents } = found({
      samples: [
        { ...taken('2026-01-01'), sampler: 'x' },
        { ...taken('2026-06-29'), custody: 'y' },
        taken('2026-06-30'),
      ],
      plan: [
        { kind: 'split', ...period },
        { kind: 'independent', ...period, to: readMoment('2026-12-31') },
        { kind: 'assurance', ...period },
      ],
    })
    expect([splits, independents]).toEqual([3, 0])
    expect(
      status.map(({ taken: known, missing, over, withSampler, withCustody }) => [
        known,
        missing,
        over,
        withSampler,
        withCustody,
      ]),
    ).toEqual([
      [2, 1, true, 1, 1],
      [0, 3, false, 0, 0],
      [null, null, true, 0, 0],
    ])
  })

  it('sourceAgency compares at the level that the newest plan of independent samples states, else at 1 %', () => {
    const lots = [1, 2, 3].map((place) =>
      lotOf(place, [
        result('loss-on-ignition', place),
        agencys('loss-on-ignition', place, { sample: 'I', sampleKind: 'independent' }),
      ]),
    )
    const year = (from: string, more: object) =>
      ({
        kind: 'independent',
        from: readMoment(`${from}-01-01`),
        to: readMoment(`${from}-12-31`),
        planned: 1,
        ...more,
      }) as const
    const levelUnder = (...plan: AgencyEvidence['plan']) => found({ lots, plan }).independent[0]?.level
    expect([
      levelUnder(),
      levelUnder(year('2026', { level: '5 %' }), year('2025', { level: '1 %' })),
      levelUnder(year('2025', { level: '5 %' }), year('2026', {})),
      levelUnder(year('2026', { level: '5 %', kind: 'split' })),
    ]).toEqual([0.01, 0.05, 0.05, 0.01])
  })

  it('sourceAgency counts assurance visits where they are on record, and says nothing of them where none is', () => {
    const plan = {
      kind: 'assurance',
      from: readMoment('2026-01-01'),
      to: readMoment('2026-12-31'),
      planned: 3,
    } as const
    const status = (visits?: { on: ReturnType<typeof readMoment> }[]) =>
      found({ plan: [visits === undefined ? plan : { ...plan, visits }] }).status.map(
        ({ taken, missing }) => [taken, missing],
      )
    expect([status(), status([{ on: readMoment('2026-02-03') }])]).toEqual([[[null, null]], [[1, 2]]])
  })
})
