import { describe, expect, it } from 'vitest'
import { resultTables, type TableRow } from '../../../src/edition/printed/result-rows.ts'
import { certificate, clause, index, result, verdict } from '../certificate-fixture.ts'

const named = ({ property, kind, age }: TableRow) => [property, kind, age].filter(Boolean).join(' ')
const rows = (document: ReturnType<typeof certificate>) =>
  resultTables(document).flatMap((table) => table.rows)
const [SET] = certificate().criteria as [ReturnType<typeof certificate>['criteria'][number]]

describe('resultTables', () => {
  it('sets clauses on one property together, in the order of the first of each', () => {
    const clauses = [
      clause(),
      clause({ id: 'fines', property: 'residue-45um' }),
      clause({ id: 'loi-deviation', kind: 'deviation' }),
    ]
    const tables = resultTables(certificate({ verdicts: [verdict(clauses)] }))
    expect(tables.map(({ title, rows: own }) => [title, own.map(named)])).toEqual([
      ['Composition', ['loss-on-ignition value', 'loss-on-ignition deviation']],
      ['Physical properties', ['residue-45um value']],
    ])
  })
  it('leaves clauses out that need no result, and clauses on the record', () => {
    const clauses = [
      clause({ outcome: 'not-invoked' }),
      clause({ id: 'wet', outcome: 'not-applicable' }),
      clause({ id: 'fuel', property: undefined as never, kind: 'fact' }),
    ]
    expect(rows(certificate({ results: [], verdicts: [verdict(clauses)] }))).toEqual([])
  })
  it('opens a group before its first member alone', () => {
    const group = clause({
      id: 'either',
      title: 'Either',
      kind: 'group',
      combine: 'any-of',
      clauses: [clause({ id: 'a', condition: 'warm' }), clause({ id: 'b', condition: 'plain' })],
    })
    const own = rows(certificate({ verdicts: [verdict([group, clause({ id: 'last' })])] }))
    expect(own.map(({ opens, member }) => [opens?.id ?? null, member])).toEqual([
      ['either', true],
      [null, true],
      [null, false],
    ])
  })
  it('shows the figure of a test that was not valid and therefore not judged', () => {
    const invalid = result({ valid: false, reasons: ['read too late'] })
    const judged = clause({ outcome: 'not-valid', result: null, value: null })
    expect(rows(certificate({ results: [invalid], verdicts: [verdict([judged])] }))[0]?.result).toEqual(
      invalid,
    )
    const pending = clause({ outcome: 'pending', result: null, value: null })
    expect(rows(certificate({ results: [invalid], verdicts: [verdict([pending])] }))[0]?.result).toBeNull()
  })
  it('adds indices that only another set judges under the first that does, and those that none does', () => {
    const later = index({ age: '91 d' })
    const other = (id: string) =>
      verdict([
        clause({
          id,
          property: 'strength-activity-index',
          condition: 'warm',
          age: '28 d',
          result: index().key,
        }),
      ])
    const own = rows(
      certificate({
        results: [later, index()],
        criteria: [SET, { ...SET, id: 'second' }, { ...SET, id: 'third' }],
        verdicts: [verdict([]), other('from-second'), other('from-third')],
      }),
    )
    expect(own.map((row) => [named(row), row.under?.id ?? null, row.clause?.id ?? null])).toEqual([
      ['strength-activity-index value 28 d', 'second', 'from-second'],
      ['strength-activity-index value 91 d', null, null],
    ])
  })
  it('prints results that no clause names as one line for each analysis', () => {
    const results = [
      result({ property: 'SO3', key: 'so3' }),
      result({ property: 'moisture', key: 'wet', tested: '2026-03-13' }),
      result({ property: 'SiO2', key: 'silica' }),
    ]
    const [table] = resultTables(certificate({ results, verdicts: [verdict([])] }))
    expect(table?.plain.map((line) => line.results.map(({ property }) => property))).toEqual([
      ['SiO2', 'SO3'],
      ['moisture'],
    ])
  })
})
