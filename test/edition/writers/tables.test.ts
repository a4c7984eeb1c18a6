import { describe, expect, it } from 'vitest'
import { partitions } from '../../../src/edition/tables/partitions.ts'
import { lotsTable, resultsTable, shipmentsTable } from '../../../src/edition/writers/tables.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { evidenceOf, result, setOf } from '../../core/judging/fixture.ts'
import { revision, shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash')],
  [
    tinyLot('ash/1', {
      number: '=1+1',
      state: 'complete',
      revisions: [revision(2, '2026-04-02')],
      verdicts: [verdict('a', 'does-not-meet', { class: 'F', decidedBy: ['loi', 'fineness'] })],
      shipments: [{ ...shipment('ash/1', 'BL-1', '2026-03-12'), project: 'Bridge, north' }],
    }),
    tinyLot('ash/2'),
  ],
)

describe('lotsTable', () => {
  it('has a line for each verdict, none for a lot without, and no cell that a spreadsheet computes', () => {
    const [head, ...lines] = [...lotsTable(edition)].join('').split('\n')
    expect(head).toMatch(/^\ufefflot,number,source,class,/)
    expect(lines).toEqual([
      "ash/1,'=1+1,ash,,2026-03-01,2026-03-05,2026-03-05,1000,complete,2,2026-04-02,a,1,F,does-not-meet,loi fineness,Does not meet,,,1000 t,,no",
      '',
    ])
  })

  it('gives a piece for each year of a source, so that no text of them all is ever made', () => {
    const [first, second] = [...edition.lots.keys()].map((id) => edition.lot(id))
    const earlier = {
      ...tinyLot('ash/0'),
      verdicts: first?.verdicts ?? [],
      sampled: readMoment('2025-03-05'),
    }
    const years = tinyEdition([tinySource('ash')], [earlier, ...(first && second ? [first, second] : [])])
    const [, ...pieces] = lotsTable(years)
    expect(pieces.map((piece) => piece.slice(0, 5))).toEqual(['ash/0', 'ash/1'])
  })
})

describe('resultsTable', () => {
  it('is its head alone without results', () => {
    expect([...resultsTable(edition)].join('')).toBe(
      '\ufefflot,role,property,condition,age,method,laboratory,sample,tested,censored,value,unit,written,n,valid,reasons,low,high,printed,revision,criterion,limit,margin\n',
    )
  })
})

describe('a line of results', () => {
  const set = setOf([{ clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }], { id: 'vale' })
  const results = [result('loss-on-ignition', 6.549_999_999_999_99), result('density', 2.3)]
  const lot = tinyLot('ash/1', {
    state: 'complete',
    revisions: [revision(1, '2026-04-02')],
    results,
    verdicts: [judge(set, evidenceOf(results))],
  })
  const tables = tinyEdition([tinySource('ash')], [lot], { criteria: new Map([['vale', set]]) })
  const cells = (table: Iterable<string>) =>
    [...table]
      .join('')
      .trim()
      .split('\n')
      .map((line) => line.split(','))

  it('gives a value with six digits, revision, limit, and the margin of the value as compared: 6.55 is held as 6.6, 6.0 − 6.6', () => {
    const [head = [], loss = [], density = []] = cells(resultsTable(tables))
    const of = (row: readonly string[], name: string) => row[head.indexOf(name)]
    expect(['value', 'revision', 'criterion', 'limit', 'margin'].map((name) => of(loss, name))).toEqual([
      '6.55',
      '1',
      'vale',
      '≤ 6.0 %',
      '-0.6',
    ])
    expect(['limit', 'margin'].map((name) => of(density, name))).toEqual(['', ''])
  })

  it('gives limit and margin to the one of repeated tests that was judged, and none to the others', () => {
    const repeated = [result('loss-on-ignition', 3.31), result('loss-on-ignition', 2.19)]
    const retested = tinyEdition(
      [tinySource('ash')],
      [tinyLot('ash/1', { results: repeated, verdicts: [judge(set, evidenceOf(repeated))] })],
      { criteria: new Map([['vale', set]]) },
    )
    const [head = [], ...rows] = cells(resultsTable(retested))
    // The worst is judged where the clause says nothing else: 6.0 − 3.3.
    const margins = rows.map((row) => ['value', 'limit', 'margin'].map((name) => row[head.indexOf(name)]))
    expect(margins).toEqual([
      ['3.31', '≤ 6.0 %', '2.7'],
      ['2.19', '', ''],
    ])
  })

  it('names, for a query engine, the unit of a difference of per cents and of others', () => {
    const unitsIn = (name: string) =>
      [...partitions(tables)]
        .find(({ table }) => table.name === name)
        ?.columns()
        .find((column) => column.name === 'difference_unit')?.values
    expect(unitsIn('clauses')).toEqual(['percentage points'])
    expect(unitsIn('results')).toEqual(['percentage points', 'g/cm3'])
  })

  it('tells in the table of lots which clause is not met and by how much', () => {
    expect([...lotsTable(tables)].join('')).toContain(
      'Loss on ignition: 6.6 % against ≤ 6.0 %, beyond it by 0.6 points',
    )
  })
})

describe('shipmentsTable', () => {
  it('quotes a cell with a comma', () => {
    expect([...shipmentsTable(edition)].join('').split('\n')[1]).toBe(
      'BL-1,2026-03-12,ash/1,25,25 t,,"Bridge, north",,complete,Does not meet,25.0 t,,,Without a certificate,',
    )
  })
})
