import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, history, index, judgeInWords, plannedIndex, result, setOf } from './fixture.ts'

const residue: WrittenClause = { clause: 'residue', property: 'residue-45um', 'at-most': '34 %' }
const activity7: WrittenClause = {
  clause: 'sai',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('7 d'),
  'at-least': '75 %',
}

describe('judge, one comparison', () => {
  it('judge says meets, does not meet, and meets on the very limit', () => {
    const set = setOf([residue])
    const outcome = (value: number) => judgeInWords(set, evidenceOf([result('residue-45um', value)])).outcome
    expect([outcome(20), outcome(34), outcome(34.4), outcome(34.6)]).toEqual([
      'meets',
      'meets',
      'meets',
      'does-not-meet',
    ])
  })

  it('judge carries value, compared value, limit, result and reason', () => {
    const clause = clauseOf(
      judgeInWords(setOf([residue]), evidenceOf([result('residue-45um', 34.6)])),
      'residue',
    )
    expect(clause).toMatchObject({
      outcome: 'does-not-meet',
      decides: true,
      kind: 'value',
      property: 'residue-45um',
      value: 34.6,
      compared: 35,
      unit: '%',
      decimals: 0,
      result: 'residue-45um||||lab|C',
      limit: { operator: 'at-most', values: [34], unit: '%', written: ['34 %'], layer: 'trial' },
      reason: '35 % (34.6 before rounding) does not meet the limit, at most 34 %',
      title: 'Residue on 45 µm, wet',
    })
  })

  it('judge does not report a required result that is absent, and still shows the limit', () => {
    const verdict = judgeInWords(setOf([residue]), evidenceOf([]))
    expect(verdict.outcome).toBe('not-reported')
    expect(clauseOf(verdict, 'residue')).toMatchObject({
      value: null,
      compared: null,
      result: null,
      reason: 'no result is reported',
      limit: { written: ['34 %'] },
    })
  })

  it('judge never holds an index of another condition or age against the limit', () => {
    const set = setOf([activity7])
    const hot = index('7 d', 95, { condition: 'modified-50c' })
    expect(judgeInWords(set, evidenceOf([hot, index('28 d', 95)])).outcome).toBe('not-reported')
    expect(judgeInWords(set, evidenceOf([hot, index('7 d', 70)])).outcome).toBe('does-not-meet')
  })

  it('judge takes the limit of the claimed class, and leaves a clause out whose limit lacks it', () => {
    const set = setOf(
      [
        { clause: 'cao', property: 'CaO', above: { C: '18.0 %' } },
        { clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %', C: '50.0 %' } },
      ],
      { classes: ['F', 'C', 'N'] },
    )
    const evidence = evidenceOf([result('CaO', 12), result('oxide-sum', 60)])
    expect(judgeInWords(set, { ...evidence, class: 'F' }).clauses.map((clause) => clause.outcome)).toEqual([
      'not-applicable',
      'does-not-meet',
    ])
    expect(judgeInWords(set, { ...evidence, class: 'C' }).clauses.map((clause) => clause.outcome)).toEqual([
      'does-not-meet',
      'meets',
    ])
    expect(judgeInWords(set, { ...evidence, class: 'N' }).outcome).toBe('reported')
  })

  it('judge cannot take a limit by class without a claimed class, nor with a class of another set', () => {
    const set = setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %', C: '50.0 %' } }], {
      classes: ['F', 'C'],
    })
    expect(clauseOf(judgeInWords(set, evidenceOf([result('oxide-sum', 90)])), 'sum')).toMatchObject({
      outcome: 'not-reported',
      reason: 'the limit depends on the class (F or C), and none is claimed',
    })
    expect(
      clauseOf(judgeInWords(set, evidenceOf([result('oxide-sum', 90)], { class: 'S' })), 'sum'),
    ).toMatchObject({
      outcome: 'not-reported',
      reason: 'the claimed class S is not a class of this specification (F or C)',
    })
  })

  it('judge leaves out clauses for other classes and other kinds of material', () => {
    const set = setOf(
      [
        { ...residue, classes: ['N'] },
        { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %', kinds: ['raw-natural-pozzolan'] },
      ],
      { classes: ['N', 'F'] },
    )
    const verdict = judgeInWords(
      set,
      evidenceOf([result('residue-45um', 50), result('loss-on-ignition', 9)], { class: 'F' }),
    )
    expect(verdict.clauses.map((clause) => clause.outcome)).toEqual(['not-applicable', 'not-applicable'])
    expect(verdict).toMatchObject({
      outcome: 'reported',
      decidedBy: [],
      reasons: ['no clause of this specification sets a limit for this lot'],
    })
  })

  it('judge asks for an optional clause only when the purchaser does', () => {
    const set = setOf([{ ...residue, optional: 'yes' }])
    const failing = evidenceOf([result('residue-45um', 50)])
    expect(clauseOf(judgeInWords(set, failing), 'residue').outcome).toBe('not-invoked')
    expect(judgeInWords(set, { ...failing, requested: { trial: ['residue'] } }).outcome).toBe('does-not-meet')
  })

  it('judge keeps the outcome of a clause for information out of the verdict', () => {
    const verdict = judgeInWords(
      setOf([
        { ...residue, information: 'yes' },
        { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' },
      ]),
      evidenceOf([result('residue-45um', 50), result('loss-on-ignition', 2)]),
    )
    expect(clauseOf(verdict, 'residue')).toMatchObject({
      outcome: 'does-not-meet',
      decides: false,
      information: true,
    })
    expect(verdict).toMatchObject({ outcome: 'meets', decidedBy: ['loi'] })
  })

  it('judge wants a result that is to be reported, whatever its value', () => {
    const set = setOf([{ clause: 'cao', property: 'CaO', report: 'yes' }])
    expect(judgeInWords(set, evidenceOf([result('CaO', 40)])).clauses[0]).toMatchObject({
      outcome: 'reported',
      value: 40,
      limit: null,
    })
    expect(judgeInWords(set, evidenceOf([])).clauses[0]).toMatchObject({ outcome: 'not-reported' })
  })

  it('judge applies a clause with a condition on another property only where it is true, and says what it lacks', () => {
    const set = setOf([
      {
        clause: 'sound',
        property: 'soundness-expansion',
        'at-most': '10 mm',
        when: [{ property: 'free-CaO', above: '1.5 %' }],
      },
    ])
    const withLime = (lime: number, censored?: 'below') =>
      clauseOf(
        judgeInWords(
          set,
          evidenceOf([
            result('soundness-expansion', 12),
            result('free-CaO', lime, censored === undefined ? {} : { censored }),
          ]),
        ),
        'sound',
      )
    expect(withLime(1.6)).toMatchObject({ outcome: 'does-not-meet' })
    expect(withLime(1.5)).toMatchObject({
      outcome: 'not-applicable',
      reason: 'applies only where free calcium oxide is above 1.5 %',
    })
    expect(withLime(0.5, 'below')).toMatchObject({ outcome: 'not-applicable' })
    expect(withLime(3, 'below')).toMatchObject({ outcome: 'not-reported' })
    expect(
      clauseOf(judgeInWords(set, evidenceOf([result('soundness-expansion', 12)])), 'sound'),
    ).toMatchObject({
      outcome: 'not-reported',
      reason:
        'whether it applies depends on free calcium oxide, which cannot be decided: no result is reported',
    })
  })

  it('judge names the evidence that an approval would need, and does not grant it', () => {
    const set = setOf(
      [
        {
          clause: 'loi',
          property: 'loss-on-ignition',
          'at-most': { F: '6.0 %', C: '6.0 %' },
          approval: { 'at-most': '12.0 %', classes: ['F'], evidence: 'performance records' },
        },
      ],
      { classes: ['F', 'C'] },
    )
    const clause = (value: number, lotClass: string) =>
      clauseOf(judgeInWords(set, evidenceOf([result('loss-on-ignition', value)], { class: lotClass })), 'loi')
    expect(clause(9, 'F')).toMatchObject({ outcome: 'does-not-meet' })
    expect(clause(9, 'F').reason).toContain(
      '9.0 % does not meet the limit, at most 6.0 %; the outer limit, at most 12.0 %, needs an approval on evidence (performance records); no approval is on record',
    )
    expect(clause(12.1, 'F').reason).not.toContain('approval')
    expect(clause(9, 'C').reason).not.toContain('approval')
    expect(clause(6, 'F').outcome).toBe('meets')
  })

  it('judge holds a value to two limits at once and shows the one that is not met', () => {
    const set = setOf([{ clause: 'range', property: 'loss-on-ignition', above: '2.0 %', 'at-most': '7.0 %' }])
    const clause = (value: number) =>
      clauseOf(judgeInWords(set, evidenceOf([result('loss-on-ignition', value)])), 'range')
    expect(clause(7)).toMatchObject({ outcome: 'meets' })
    expect(clause(2)).toMatchObject({ outcome: 'does-not-meet', limit: { operator: 'above' } })
    expect(clause(8)).toMatchObject({ outcome: 'does-not-meet', limit: { operator: 'at-most' } })
  })

  it('judge does not decide on a result reported as below that lies on both sides of the limit', () => {
    expect(
      clauseOf(
        judgeInWords(setOf([residue]), evidenceOf([result('residue-45um', 40, { censored: 'below' })])),
        'residue',
      ),
    ).toMatchObject({
      outcome: 'not-reported',
      reason: 'reported as below 40 %, which leaves open whether it meets the limit, at most 34 %',
    })
    expect(
      judgeInWords(setOf([residue]), evidenceOf([result('residue-45um', 1, { censored: 'below' })])).outcome,
    ).toBe('meets')
  })
})

describe('judge, tests still to come and tests that do not count', () => {
  const set = setOf([activity7])

  it('judge waits for a planned test and shows its due date', () => {
    const verdict = judgeInWords(
      set,
      evidenceOf([], { planned: [plannedIndex('7 d', { due: readMoment('2026-04-03') })] }),
    )
    expect(verdict.outcome).toBe('pending')
    expect(clauseOf(verdict, 'sai')).toMatchObject({
      due: '2026-04-03',
      reason: 'test recorded, result due 3\u00a0April 2026',
    })
  })

  it('judge waits only for a test of the judged condition, age and property', () => {
    const others = [
      plannedIndex('28 d'),
      plannedIndex('7 d', { condition: 'modified-50c' }),
      plannedIndex('7 d', { property: 'compressive-strength' }),
    ]
    const verdict = judgeInWords(set, evidenceOf([], { planned: others }))
    expect(verdict.outcome).toBe('not-reported')
    expect(verdict.clauses[0]).not.toHaveProperty('due')
  })

  it('judge no longer waits for an overdue test', () => {
    const overdue = plannedIndex('7 d', {
      due: readMoment('2026-03-01'),
      overdueSince: readMoment('2026-03-08'),
    })
    expect(clauseOf(judgeInWords(set, evidenceOf([], { planned: [overdue] })), 'sai')).toMatchObject({
      outcome: 'not-reported',
      reason: 'result overdue since 8\u00a0March 2026',
    })
  })

  const HOT = {
    code: 'temperature-outside',
    params: { readCelsius: 50, askedCelsius: 23, withinCelsius: 2 },
  } as const
  it('judge gives the reason of a test that is not valid, and judges a valid one beside it', () => {
    const hot = index('7 d', 90, { valid: false, reasons: [HOT] })
    expect(clauseOf(judgeInWords(set, evidenceOf([hot])), 'sai')).toMatchObject({
      outcome: 'not-valid',
      value: null,
      reason: 'the test is not valid: read at 50 °C, outside 23 °C ± 2 °C',
    })
    expect(
      judgeInWords(set, evidenceOf([hot, index('7 d', 70, { sample: 'G', sampleKind: 'grab' })])).outcome,
    ).toBe('does-not-meet')
    expect(judgeInWords(set, evidenceOf([hot], { planned: [plannedIndex('7 d')] })).outcome).toBe('pending')
  })
})

describe('judge, several results', () => {
  const grab = (sample: string, value: number, tested = '2026-03-10') =>
    result('residue-45um', value, { sample, sampleKind: 'grab', tested: readMoment(tested) })

  it('judge takes a composite before grabs', () => {
    expect(
      judgeInWords(setOf([residue]), evidenceOf([grab('G', 50), result('residue-45um', 20)])).outcome,
    ).toBe('meets')
  })

  it('judge takes the worst by default: the highest under an upper limit, the lowest over a lower one', () => {
    const clause = clauseOf(
      judgeInWords(setOf([residue]), evidenceOf([grab('G1', 20), grab('G2', 30), grab('G3', 25)])),
      'residue',
    )
    expect(clause).toMatchObject({ value: 30, result: 'residue-45um||||lab|G2' })
    expect(clause.reason).toContain('worst of 3 results')
    const low = setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': '70.0 %' }])
    expect(
      judgeInWords(low, evidenceOf([result('oxide-sum', 80), result('oxide-sum', 75, { sample: 'D' })]))
        .clauses[0],
    ).toMatchObject({ value: 75 })
  })

  it('judge averages or takes the latest where the clause says so', () => {
    const results = [grab('G1', 30, '2026-03-12'), grab('G2', 40, '2026-03-10')]
    expect(
      judgeInWords(setOf([{ ...residue, several: 'mean' }]), evidenceOf(results)).clauses[0],
    ).toMatchObject({
      value: 35,
      outcome: 'does-not-meet',
      result: null,
    })
    expect(
      judgeInWords(setOf([{ ...residue, several: 'latest' }]), evidenceOf(results)).clauses[0],
    ).toMatchObject({
      value: 30,
      outcome: 'meets',
    })
    const censored = [...results, { ...grab('G3', 1), censored: 'below' as const }]
    expect(judgeInWords(setOf([{ ...residue, several: 'mean' }]), evidenceOf(censored)).outcome).toBe(
      'not-reported',
    )
  })
})

describe('judge, deviations', () => {
  const points = {
    clause: 'uniform',
    property: 'residue-45um',
    'deviation-from': { preceding: 10 },
    relative: 'no',
    'magnitude-at-most': '5 percentage points',
  } as const

  it('judge compares with the unrounded mean of the preceding results and shows how many they are', () => {
    const evidence = evidenceOf([result('residue-45um', 25)], {
      preceding: history('residue-45um', [19, 20, 21]),
    })
    const clause = clauseOf(judgeInWords(setOf([points]), evidence), 'uniform')
    expect(clause).toMatchObject({
      outcome: 'meets',
      kind: 'deviation',
      value: 5,
      compared: 5,
      unit: 'percentage points',
      against: { mean: 20, n: 3, lots: ['s/L1', 's/L2', 's/L3'] },
    })
    expect(clause.reason).toBe(
      'deviation 5.0 percentage points meets the limit, at most 5 percentage points in magnitude; mean of 3 preceding results 20.00 %',
    )
  })

  it('judge compares a deviation in steps of 0.1 unless the clause says otherwise', () => {
    const outcome = (value: number, resolution?: number) =>
      judgeInWords(
        setOf([resolution === undefined ? points : { ...points, resolution }]),
        evidenceOf([result('residue-45um', value)], { preceding: history('residue-45um', [20]) }),
      ).outcome
    expect([outcome(25.04), outcome(25.06), outcome(14.96), outcome(14.94)]).toEqual([
      'meets',
      'does-not-meet',
      'meets',
      'does-not-meet',
    ])
    expect(outcome(25.4, 1)).toBe('meets')
  })

  it('judge has insufficient history without a preceding result, and judges a censored one by its bound', () => {
    expect(judgeInWords(setOf([points]), evidenceOf([result('residue-45um', 25)])).outcome).toBe(
      'insufficient-history',
    )
    const censored = evidenceOf([result('residue-45um', 1, { censored: 'below' })], {
      preceding: history('residue-45um', [20]),
    })
    // Less than 1 % is more than 19 points below 20 %.
    expect(judgeInWords(setOf([points]), censored).outcome).toBe('does-not-meet')
    expect(
      judgeInWords(setOf([points]), evidenceOf([], { preceding: history('residue-45um', [20]) })).outcome,
    ).toBe('not-reported')
  })

  it('judge asks the history with the method of the result judged', () => {
    const asked: unknown[] = []
    const evidence = evidenceOf([result('residue-45um', 25, { method: 'C430' })], {
      preceding: (...query) => {
        asked.push(query)
        return []
      },
    })
    judgeInWords(setOf([points]), evidence)
    expect(asked).toEqual([['residue-45um', undefined, undefined, 'C430', 10, undefined]])
  })

  it('judge compares with the declared value of the source, as quantity or as written', () => {
    const set = setOf([
      {
        clause: 'declared',
        property: 'residue-45um',
        'deviation-from': { declared: 'yes' },
        'magnitude-at-most': '10 percentage points',
      },
    ])
    const outcome = (value: number, declared?: string) =>
      judgeInWords(
        set,
        evidenceOf(
          [result('residue-45um', value)],
          declared === undefined ? {} : { declared: { 'residue-45um': declared } },
        ),
      ).outcome
    expect([outcome(30, '20 %'), outcome(30.6, '20 %'), outcome(30)]).toEqual([
      'meets',
      'does-not-meet',
      'not-reported',
    ])
  })

  it('judge holds a declared value as specified under any rule, and names no result for it', () => {
    const set = setOf(
      [{ clause: 'c', property: 'residue-45um', 'at-most': '34 %', statistic: { declared: 'yes' } }],
      { 'decision-rule': { guarded: 2, 'agreed-in': 'provision 7' } },
    )
    const clause = clauseOf(judgeInWords(set, evidenceOf([], { declared: { 'residue-45um': '34 %' } })), 'c')
    expect(clause).toMatchObject({ outcome: 'meets', value: 34, result: null })
  })

  it('judge gives no relative deviation from a mean of zero', () => {
    const set = setOf([
      {
        clause: 'rel',
        property: 'SO3',
        'deviation-from': { preceding: 10 },
        relative: 'yes',
        'magnitude-at-most': '5 %',
      },
    ])
    expect(
      judgeInWords(set, evidenceOf([result('SO3', 1)], { preceding: history('SO3', [0]) })).outcome,
    ).toBe('not-reported')
  })
})

describe('judge, decision rules', () => {
  it('judge cannot decide under an agreed guard band without an uncertainty', () => {
    const set = setOf([
      { ...residue, 'decision-rule': { guarded: 1.645, 'agreed-in': 'special provision 7' } },
    ])
    const clause = clauseOf(judgeInWords(set, evidenceOf([result('residue-45um', 20)])), 'residue')
    expect(clause.outcome).toBe('inconclusive')
    expect(clause.reason).toContain('no uncertainty stated')
    expect(judgeInWords(set, evidenceOf([])).outcome).toBe('not-reported')
  })

  it('judge follows the specification where a rule was not agreed in writing', () => {
    const set = setOf([residue], { 'decision-rule': { probability: 0.95 } })
    const clause = clauseOf(judgeInWords(set, evidenceOf([result('residue-45um', 20)])), 'residue')
    expect(clause.outcome).toBe('meets')
    expect(clause.reason).toContain('not agreed in writing, so judged as specified')
  })
})
