import { describe, expect, it } from 'vitest'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'
import { defined } from '../../../src/core/measure/defined.ts'
import { printedTables } from '../../../src/edition/printed/result-table.ts'
import { certificate, clause, index, mortar, result, verdict } from '../certificate-fixture.ts'

type Document = ReturnType<typeof certificate>
const [SET] = certificate().criteria as [Document['criteria'][number]]

const ALL = ['activity', 'composition', 'physical'] as const

function linesOf(more: Partial<Document>) {
  return printedTables(certificate(more), ALL).flatMap((table) => table.lines)
}
const line = (more: Partial<Document>) => linesOf(more)[0]

describe('printedTables: an index', () => {
  it('stands beside the means of test and control mortar, in the units of the site', () => {
    const mortars = {
      test: { value: 28.44, unit: 'MPa', decimals: 1 },
      control: { value: 34.13, unit: 'MPa', decimals: 1 },
    }
    const own = (units: 'SI' | 'US') =>
      line({ results: [index({ mortars })], verdicts: [verdict([])], units })?.remarks
    expect(own('SI')).toMatch(/^test 28\.4\u00a0MPa, control 34\.1\u00a0MPa · /)
    // By hand: 28.44 × 145.0377 = 4124.9 and 34.13 × 145.0377 = 4950.1, to the nearest ten.
    expect(own('US')).toMatch(/^test 4,120\u00a0psi, control 4,950\u00a0psi · /)
  })
  it('stands in the order in which the sets name its condition, whatever the alphabet says', () => {
    const judged = clause({ id: 'own', property: 'strength-activity-index', condition: 'zeta', age: '28 d' })
    const lines = linesOf({
      results: [index({ condition: 'alpha', age: '7 d' }), index({ condition: 'zeta', age: '91 d' })],
      criteria: [SET, { ...SET, id: 'second' }],
      verdicts: [verdict([]), verdict([judged])],
    })
    expect(lines.map(({ title }) => /(\d+)\sd$/.exec(title)?.[1])).toEqual(['28', '91', '7'])
  })
})

describe('printedTables: results that no clause judged', () => {
  it('are not said to be without a limit where another sample of their property was held against one', () => {
    const results = [
      result(),
      result({ sample: 'B', key: 'other', value: 9.9 }),
      result({ property: 'SO3', key: 'so3' }),
    ]
    const [table] = printedTables(certificate({ results }), ALL)
    expect(table?.plain.map(({ lead, items }) => [lead, items.map(({ name }) => name)])).toEqual([
      [undefined, [expect.stringMatching(/^(SO|Sulfur)/)]],
      ['Other results of properties with a limit, not judged:', [expect.stringMatching(/^(LOI|Loss)/)]],
    ])
  })
})

describe('printedTables: a value', () => {
  it('that meets its limit stands with limit, strip and how it was found', () => {
    expect(line({})).toEqual({
      title: 'Loss on ignition',
      remarks: 'ASTM C311-22 · n 2 · tested 12\u00a0Mar\u00a02026',
      value: '2.1\u00a0%',
      unrounded: '2.14\u00a0% before rounding',
      strip: { value: 2.14, to: 10 },
      limit: '≤\u00a010.0\u00a0%',
      outcome: 'meets',
    })
  })
  it('that does not meet needs no reason beside its figures', () => {
    const failing = clause({ outcome: 'does-not-meet', value: 12, reason: '12.0 % does not meet the limit' })
    const own = line({ verdicts: [verdict([failing])] })
    expect(own?.outcome).toBe('does-not-meet')
    expect(own).not.toHaveProperty('why')
  })
  it('reads in the unit that its limit is written in, before rounding too: 1 m2/g is 1000 m2/kg', () => {
    const written = { operator: 'at-least', values: [15_000], unit: 'm2/kg', written: ['15 m2/g'] } as const
    const judged = clause({
      property: 'specific-surface',
      value: 20_400,
      compared: 20_000,
      unit: 'm2/kg',
      decimals: 0,
      limit: { ...written, layer: 'own' },
    })
    const own = result({ property: 'specific-surface', value: 20_400, unit: 'm2/kg', decimals: 0 })
    expect(line({ results: [own], verdicts: [verdict([judged])] })).toMatchObject({
      value: '20\u00a0m²/g',
      unrounded: '20.4\u00a0m²/g before rounding',
      limit: '≥\u00a015\u00a0m²/g',
    })
  })
  it('that a laboratory reports finished is marked, with what its rounding leaves open', () => {
    const own = result({ finished: true })
    const note =
      'as written it stands for anything from 9.95 % to 10.05 %, which lies on both sides of the limit'
    const judged = clause({ reason: `10.0 % meets the limit; ${note}`, note })
    expect(line({ results: [own], verdicts: [verdict([judged])] })).toMatchObject({
      remarks:
        'ASTM C311-22 · n 2 · as reported by the laboratory, not recomputed · tested 12\u00a0Mar\u00a02026',
      outcome: 'meets',
      why: 'As written it stands for anything from 9.95 % to 10.05 %, which lies on both sides of the limit.',
    })
  })
  it('that is pending shows a dash, its due date, and its reason', () => {
    const pending = clause({
      outcome: 'pending',
      result: null,
      value: null,
      due: '2026-04-08',
      reason: 'test recorded, result due 8\u00a0April 2026',
    })
    const own = line({ results: [], verdicts: [verdict([pending])] })
    expect(own).toMatchObject({
      value: '–',
      outcome: 'pending',
      due: '8\u00a0Apr\u00a02026',
      remarks: 'test recorded, result due 8\u00a0April 2026',
    })
    expect(own).not.toHaveProperty('why')
  })
  it('that is not valid keeps its figure and says why, exclusions too', () => {
    const reasons = ['specimen f excluded: corner lost', 'read at 48.5 °C, outside 23 °C ± 2 °C']
    const invalid = result({ valid: false, reasons })
    const judged = clause({ outcome: 'not-valid', result: null, value: null })
    expect(line({ results: [invalid], verdicts: [verdict([judged])] })).toMatchObject({
      value: '2.14\u00a0%',
      outcome: 'not-valid',
      why: 'Specimen f excluded: corner lost. Read at 48.5 °C, outside 23 °C ± 2 °C.',
    })
  })
  it('below the limit of determination is printed as such', () => {
    const censored = result({ value: 0.01, censored: 'below' })
    expect(line({ results: [censored] })?.value).toBe('<\u00a00.01\u00a0%')
  })
  it('that is inconclusive gives the reason of its clause', () => {
    const open = clause({ outcome: 'inconclusive', reason: 'no uncertainty stated' })
    expect(line({ verdicts: [verdict([open])] })?.why).toBe('No uncertainty stated.')
  })
  it('at another condition than the standard’s is named with it', () => {
    const judged = clause({
      property: 'strength-activity-index',
      condition: 'warm',
      age: '28 d',
      result: index().key,
    })
    expect(line({ results: [index()], verdicts: [verdict([judged])] })?.title).toBe(
      'Strength activity index, modified (50\u00a0%, 50\u00a0°C), 28\u00a0d',
    )
    const plain = index({ condition: 'plain' })
    expect(
      line({ results: [plain], verdicts: [verdict([{ ...judged, condition: 'plain', result: plain.key }])] }),
    ).toMatchObject({
      title: 'Strength activity index, 28\u00a0d',
      remarks: '20\u00a0%, 23\u00a0°C · ASTM C311-22 · n 3 · tested 12\u00a0Mar\u00a02026',
    })
  })
  it('leaves exclusions to the mortars that list them, and tells other notes', () => {
    const reasons = ['specimen f excluded: corner lost', 'the laboratory reports a mean alone']
    const readings = [
      {
        of: 'test' as const,
        what: 'strength' as const,
        age: '28 d',
        tested: '2026-04-07',
        specimens: [{ mark: 'f', reading: '60 kN', excluded: 'corner lost' }],
      },
    ]
    expect(line({ results: [result({ reasons })], mortars: [mortar({ readings })] })?.why).toBe(
      'The laboratory reports a mean alone.',
    )
    expect(line({ results: [result({ reasons })] })?.why).toBe(
      'Specimen f excluded: corner lost. The laboratory reports a mean alone.',
    )
  })
  it('leaves what is said of an interval to the working, which alone prints one', () => {
    const interval = { level: 0.95, low: 90, high: 96, method: 'Fieller', df: 2, shape: 'bounded' } as never
    const reasons = [
      resultReasonWords({ code: 'interval-too-narrow', params: { levelPercent: 95 } }),
      'the laboratory reports a mean alone',
    ]
    expect(line({ results: [result({ reasons, interval })] })?.why).toBe(
      'The laboratory reports a mean alone.',
    )
  })
  it('names sample and laboratory where there are several, and a result outside the accreditation', () => {
    const laboratories = [
      ...certificate().laboratories,
      { id: 'pier', name: 'Pier laboratory', address: [], standing: 'contract', accreditation: null },
    ]
    const results = [result({ accredited: false }), result({ key: 'other', property: 'SO3', sample: 'B' })]
    expect(line({ laboratories, results })?.remarks).toBe(
      'ASTM C311-22 · n 2 · tested 12\u00a0Mar\u00a02026 · sample A · Quay laboratory · not accredited',
    )
    const [quay, pier] = laboratories.map((own) => ({ ...own, accreditationUnknown: true as const }))
    if (quay === undefined || pier === undefined) throw new Error('there are two laboratories')
    const rest = laboratories.slice(1)
    expect(line({ laboratories: [quay, ...rest], results })?.remarks).toMatch(
      / · accreditation not recorded$/,
    )
    // The line of each laboratory says it already.
    expect(line({ laboratories: [quay, pier], results })?.remarks).toMatch(/ · Quay laboratory$/)
  })
  it('leaves it to a note of the table that no result has a method on record', () => {
    const loss = { ...result(), method: undefined as never }
    const magnesia = { ...loss, property: 'MgO' as const, key: 'MgO' }
    const of = (results: Document['results']) => printedTables(certificate({ results }), ALL)[0]
    const none = of([loss, magnesia])
    expect(none?.note).toBe('No test method is recorded for these results.')
    expect(none?.lines[0]?.remarks).toBe('n 2 · tested 12\u00a0Mar\u00a02026')
    expect(JSON.stringify(none)).not.toContain('method not recorded')
    const one = of([result(), magnesia])
    expect(one?.note).toBeUndefined()
    expect(one?.plain[0]?.remarks).toMatch(/^method not recorded/)
    expect(of([loss])?.lines[0]?.remarks).toMatch(/^method not recorded/)
  })
  it('is in the limit’s unit, with the site’s beside it where that is another', () => {
    const strength = result({ property: 'compressive-strength', value: 34.129049, unit: 'MPa', decimals: 1 })
    const limit = {
      operator: 'at-least' as const,
      values: [30],
      unit: 'MPa',
      written: ['30.0 MPa'],
      layer: 'set',
    }
    const judged = clause({
      property: 'compressive-strength',
      result: strength.key,
      value: strength.value,
      compared: 34.1,
      unit: 'MPa',
      limit,
    })
    const of = { results: [strength], verdicts: [verdict([judged])] }
    expect(linesOf(of)[0]).not.toHaveProperty('american')
    // 34.1 MPa are 4945.8 psi, printed to the nearest ten.
    expect(linesOf({ ...of, units: 'US' })[0]).toMatchObject({
      value: '34.1\u00a0MPa',
      american: '4,950\u00a0psi',
      limit: '≥\u00a030.0\u00a0MPa',
    })
  })
  it('without a limit is in the site’s unit alone', () => {
    const strength = index({ property: 'strength-activity-index', value: 83.26 })
    const { value } = linesOf({ results: [strength], verdicts: [verdict([])], units: 'US' })[0] ?? {}
    expect(value).toBe('83.3\u00a0%')
  })
})

describe('printedTables: doubt', () => {
  // The limit is 75: 83.3 with u = 1 stands 8.3 u clear of it, 75.5 half a u.
  const at = (value: number, u: number, inDoubt?: true) =>
    line({
      verdicts: [
        verdict([
          clause({
            value,
            limit: { operator: 'at-least', values: [75], unit: '%', written: ['75 %'], layer: 'set' },
            uncertainty: { u, basis: 'stated' },
            doubt: 'as stored',
            ...defined({ inDoubt }),
          }),
        ]),
      ],
    })
  it('is told only where the uncertainty leaves one', () => {
    expect(at(83.3, 1)).not.toHaveProperty('doubt')
    expect(at(75.5, 1, true)?.doubt).toBe('as stored')
  })
  it('gives the strip its uncertainty', () => expect(at(75.5, 1)?.strip).toMatchObject({ u: 1 }))
})

describe('printedTables: a deviation and a statistic', () => {
  const deviation = clause({
    id: 'uniform',
    kind: 'deviation',
    value: -0.3012,
    compared: -0.3,
    decimals: 1,
    unit: 'percentage points',
    against: { mean: 2.4412, n: 10, lots: ['hill/H-0'], values: [2.44] },
    limit: {
      operator: 'magnitude-at-most',
      values: [5],
      unit: 'percentage points',
      written: ['5 percentage points'],
      layer: 'set',
    },
  })
  it('says from what the value deviates, and how it was found where no other row does', () => {
    expect(line({ verdicts: [verdict([deviation])] })).toMatchObject({
      kind: 'deviation',
      title: 'Loss on ignition, against the preceding 10',
      remarks:
        '2.14\u00a0% against a mean of 2.441\u00a0% · ASTM C311-22 · n 2 · tested 12\u00a0Mar\u00a02026',
      value: '\u22120.3\u00a0points',
      limit: '±\u00a05\u00a0points',
    })
    expect(linesOf({ verdicts: [verdict([clause(), deviation])] })[1]?.remarks).toBe(
      '2.14\u00a0% against a mean of 2.441\u00a0%',
    )
  })
  it('is held against the declared value where no lot stands behind it', () => {
    const declared = {
      ...deviation,
      against: { from: 'declared' as const, mean: 2.5, n: 1, lots: [], values: [] },
    }
    expect(linesOf({ verdicts: [verdict([clause(), declared])] })[1]).toMatchObject({
      title: 'Loss on ignition, against the declared value',
      remarks: '2.14\u00a0% against 2.50\u00a0% declared',
    })
  })
  it('is held against the control where that is what it deviates from', () => {
    const control = {
      ...deviation,
      against: { from: 'control' as const, mean: 2.5, n: 1, lots: [], values: [] },
    }
    expect(linesOf({ verdicts: [verdict([clause(), control])] })[1]).toMatchObject({
      title: 'Loss on ignition, against the control',
      remarks: '2.14\u00a0% against 2.50\u00a0% of the control',
    })
  })
  describe('without history yet', () => {
    const { against: _against, ...rest } = deviation
    const early = {
      ...rest,
      title: 'Loss on ignition, uniformity',
      outcome: 'insufficient-history' as const,
      value: null,
      reason: 'no preceding result',
    }
    it('gives the value that was found and the limit to come, beside the reason', () => {
      const own = line({ verdicts: [verdict([early])] })
      expect(own).toMatchObject({
        title: 'Loss on ignition, uniformity',
        remarks: '2.14\u00a0% · no preceding result · ASTM C311-22 · n 2 · tested 12\u00a0Mar\u00a02026',
        value: '–',
        limit: '±\u00a05\u00a0points',
      })
      expect(own).not.toHaveProperty('why')
    })
    it('gives the reason alone where no value was found', () => {
      const own = line({ verdicts: [verdict([{ ...early, result: null }])] })
      expect(own).toMatchObject({ remarks: 'no preceding result', value: '–' })
    })
  })
  it('of a period has the clause’s own title, its figure with a decimal, and the reason', () => {
    const mean = clause({
      kind: 'statistic',
      title: 'Loss on ignition, mean of the last 5',
      value: 2.2,
      compared: 2.2,
      decimals: 1,
      reason: 'mean 2.2 % since 2 January 2026 meets the limit',
    })
    expect(line({ verdicts: [verdict([mean])] })).toMatchObject({
      title: 'Loss on ignition, mean of the last 5',
      value: '2.2\u00a0%',
      remarks: 'mean 2.2\u00a0% since 2 January 2026 meets the limit',
    })
  })
})

describe('printedTables: groups and other sets', () => {
  it('heads a group with what it demands', () => {
    const members = [clause({ id: 'a' }), clause({ id: 'b' })]
    const group = clause({ id: 'g', title: 'Either', kind: 'group', combine: 'any-of', clauses: members })
    expect(line({ verdicts: [verdict([group])] })?.opens).toEqual({
      title: 'Either',
      demand: 'one of these is enough',
      outcome: 'meets',
    })
    expect(line({ verdicts: [verdict([{ ...group, combine: 'all-of' }])] })?.opens?.demand).toBe(
      'all of these must hold',
    )
  })
  it('names the set of a limit that is not the governing one’s, and leaves its doubt to its own page', () => {
    const judged = clause({
      property: 'strength-activity-index',
      condition: 'warm',
      age: '28 d',
      result: index().key,
      value: 75.5,
      limit: { operator: 'at-least', values: [75], unit: '%', written: ['75 %'], layer: 'second' },
      uncertainty: { u: 1, basis: 'stated' },
      doubt: 'as stored',
    })
    const [own] = linesOf({
      results: [index()],
      criteria: [SET, { ...SET, id: 'second', designation: 'VALE 2' }],
      verdicts: [verdict([]), verdict([judged])],
    })
    expect(own?.remarks.endsWith(' · limit of VALE 2, edition 1')).toBe(true)
    expect(own).not.toHaveProperty('doubt')
  })
  it('reports an index that no set judges', () => {
    const own = line({ results: [index()], verdicts: [] })
    expect(own?.outcome).toBe('reported')
    expect(own).not.toHaveProperty('limit')
    expect(line({ results: [index({ valid: false })], verdicts: [] })?.outcome).toBe('not-valid')
  })
})

describe('printedTables: results without a limit', () => {
  it('stand on a line of their own, with what is wrong with them', () => {
    const invalid = result({ property: 'SO3', key: 'so3', valid: false, reasons: ['too late', 'wet'] })
    const [table] = printedTables(
      certificate({ results: [result({ property: 'SiO2', key: 'silica' }), invalid], verdicts: [] }),
      ALL,
    )
    expect(table?.lines).toEqual([])
    expect(table?.plain).toEqual([
      {
        items: [
          { name: 'SiO₂', value: '2.14\u00a0%' },
          { name: 'SO₃', value: '2.14\u00a0%', fault: ': too late; wet' },
        ],
        remarks: 'ASTM C311-22 · tested 12\u00a0Mar\u00a02026',
      },
    ])
  })
  it('leave a fault to the index of the same test that shares it', () => {
    const reasons = ['the control K1 is too weak']
    const strength = result({
      property: 'compressive-strength',
      condition: 'warm',
      age: '28 d',
      unit: 'MPa',
      valid: false,
      reasons,
    })
    const [table] = printedTables(
      certificate({ results: [index({ valid: false, reasons }), strength], verdicts: [] }),
      ALL,
    )
    expect(table?.plain[0]?.items[0]).toMatchObject({
      fault: ', see the index',
      detail: ' (28\u00a0d, 12\u00a0Mar\u00a02026)',
    })
    expect(table?.plain[0]?.remarks).toBe('50\u00a0%, 50\u00a0°C · after ASTM C311-22, modified')
  })
})
