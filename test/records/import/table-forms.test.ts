import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readWorkbook } from '../../../src/records/import/xlsx.ts'
import { mapFaults, ORIGIN, planned, texts, told } from './imported.ts'
import { workbookOf } from './hand-made.ts'

const LOTS = `every: { source: works, sample: C, sample-kind: composite, laboratory: bench }
numbers: { decimal: comma }
dates: day-month-year
tables:
  - holds: analyses
    columns:
      Lot: lot
      Made: produced
      Tons (t): quantity
      Tested: tested
      LOI (%): loss-on-ignition
      SO3: { to: SO3, unit: "%", stands-for: { ND: "< 0.1" } }
      Remark: ignore
`
const TABLE = `Lot;Made;Tons (t);Tested;LOI (%);SO3;Remark
W-1;10.03.2026;900;11.03.2026;2,10;<0,5;fine
W-2;17.03.2026;910;18.03.2026;2,3;ND;
`

describe('planImport', () => {
  it('writes a new lot for each row, with the digits of the sheet', () => {
    expect(texts({ map: LOTS, table: TABLE })).toEqual({
      'lots/works/W-1.yaml': `produced: { from: 2026-03-10, to: 2026-03-10 }
quantity: 900 t

samples:
  - { id: C, kind: composite }

analyses:
  - { laboratory: bench, sample: C, tested: 2026-03-11, results: { SO3: < 0.5 %, loss-on-ignition: 2.10 % } }
`,
      'lots/works/W-2.yaml': `produced: { from: 2026-03-17, to: 2026-03-17 }
quantity: 910 t

samples:
  - { id: C, kind: composite }

analyses:
  - { laboratory: bench, sample: C, tested: 2026-03-18, results: { SO3: < 0.1 %, loss-on-ignition: 2.3 % } }
`,
    })
  })

  it('keeps the name, digest and day of the file in the record', () => {
    const [change] = planned({ map: LOTS, table: TABLE }).changes
    expect(change?.text).toContain(
      `imported:\n  - { file: ${ORIGIN.file}, digest: ${ORIGIN.digest}, on: 2026-03-11 }\n`,
    )
  })

  it('changes nothing for a file that it has taken already', () => {
    const { changes } = planned({ map: LOTS, table: TABLE })
    const onRecord = Object.fromEntries(changes.map(({ path, text }) => [path, text]))
    const again = planned({ map: LOTS, table: TABLE, onRecord })
    expect([again.changes, again.differences, again.faults, again.unchanged]).toEqual([[], [], [], 2])
  })

  const CUBES = `every: { source: works, condition: c311, laboratory: bench, control: K-1, cast: 2026-03-12T09:20, sample: C }
tables:
  - holds: tests
    columns:
      Lot: lot
      Age: { to: age, unit: d }
      Broken: tested
      Cube 1 (kN): load
      Cube 2 (kN): load
      Cube 3 (kN): load
`
  const HEAD = 'Lot,Age,Broken,Cube 1 (kN),Cube 2 (kN),Cube 3 (kN)\n'

  it('puts 28-day cubes into the test that has the 7-day ones, and leaves every other sign as it was', () => {
    const before = `# our best lot
produced: { from: 2026-03-01, to: 2026-03-07 }   # seven days
quantity: 900 t
samples: [ { id: C, kind: composite } ]

tests:
  - sample: C
    condition: c311
    control: K-1
    laboratory: bench
    cast: 2026-03-12T09:20
    strength:
      - { age: 7 d, tested: 2026-03-19T09:30, specimens: { a: 60.10 kN, b: 61.2 kN, c: 62 kN } } # dry surface
      - { age: 28 d }
note: kept
`
    const path = 'lots/works/W-1.yaml'
    const table = `${HEAD}W-1,28,2026-04-09T09:40,80.1,81.0,79.9\n`
    expect(texts({ map: CUBES, table, onRecord: { [path]: before } })[path]).toBe(
      before.replace(
        '{ age: 28 d }',
        '{ age: 28 d, tested: 2026-04-09T09:40, specimens: { d: 80.1 kN, e: 81.0 kN, f: 79.9 kN } }',
      ),
    )
  })

  it('shows each value that differs and writes none of them, but with --replace', () => {
    const before = `produced: { from: 2026-03-10, to: 2026-03-10 }
quantity: 905 t # weighed
samples:
  - { id: C, kind: composite }
analyses:
  - { laboratory: bench, sample: C, tested: 2026-03-11, results: { loss-on-ignition: 2.1 %, SO3: 0.4 % } }
`
    const given = {
      map: LOTS,
      table: TABLE.split('\n').slice(0, 2).join('\n'),
      onRecord: { 'lots/works/W-1.yaml': before },
    }
    expect(planned(given).changes).toEqual([])
    expect(told(given)).toEqual([
      'bench.csv!C2: lot works/W-1, quantity: on record "905 t", in the file "900 t" [import-differs] -> correct the file or the record; --replace writes what the file says over all such values',
      'bench.csv!F2: lot works/W-1, analyses 1, results, SO3: on record "0.4 %", in the file "< 0.5 %" [import-differs] -> correct the file or the record; --replace writes what the file says over all such values',
    ])
    expect(texts({ ...given, replace: true })['lots/works/W-1.yaml']).toBe(
      before.replace('905 t', '900 t').replace('SO3: 0.4 %', 'SO3: < 0.5 %'),
    )
  })

  it('tells every cell that it refuses in one run, with its address and how to fix it', () => {
    const table = `Lot;Made;Tons (t);Tested;LOI (%);SO3;Remark
W 1;10.03.26;9OO;31.02.2026;2.1;nil;
W-2;17.03.2026;1,5 short ton;18.03.2026;<0,5;0,2;
;17.03.2026;900;18.03.2026;2,2;0,2;
`
    expect(told({ map: LOTS, table })).toEqual([
      'bench.csv!A2: found "W 1"; an id of letters, digits and hyphens was expected [import-cell] -> write under stands-for which id is meant, such as "W 1": W-1, or how the text is made up under pattern',
      'bench.csv!B2: found "10.03.26"; a date was expected [import-cell] -> write it as 2026-12-31, or with four digits of the year',
      'bench.csv!C2: found "9OO"; a number in t was expected [import-cell] -> write the number alone, or correct the column’s unit in the map',
      'bench.csv!D2: found "31.02.2026"; a date, or a date and time, was expected [import-cell] -> write a day that the calendar has, as 2026-12-31',
      'bench.csv!E2: found "2.1"; a decimal comma and no sign between thousands were expected [import-cell] -> correct the number, or the signs under numbers in the map',
      'bench.csv!F2: found "nil"; a number in % was expected [import-cell] -> correct the cell; where "nil" stands for a value or for none, say so under stands-for or blank in the map',
      'bench.csv!C3: found "1,5 short ton"; a number in t was expected [import-cell] -> write the number alone, or correct the column’s unit in the map',
      'bench.csv!row 4: the row does not say which lot it belongs to [import-row] -> give "lot" in a column or under every in the map; in a merged or repeated cell say fill: down; leave rows of means and totals out under except',
    ])
  })

  it('asks which comes first, day or month, and what a comma is', () => {
    const map = LOTS.replace('numbers: { decimal: comma }\ndates: day-month-year\n', '')
    expect(
      told({ map, table: TABLE.split('\n').slice(0, 2).join('\n') }).map((text) =>
        text.replace(/ \[.*->/, ' ->'),
      ),
    ).toEqual([
      'bench.csv!B2: found "10.03.2026"; whether the day or the month comes first is not said -> write dates: day-month-year or dates: month-day-year in the map',
      'bench.csv!D2: found "11.03.2026"; whether the day or the month comes first is not said -> write dates: day-month-year or dates: month-day-year in the map',
      'bench.csv!E2: found "2,10"; a decimal point and no sign between thousands were expected -> say in the map what the comma is: numbers: { decimal: comma } or numbers: { thousands: comma }',
      'bench.csv!F2: found "0,5"; a decimal point and no sign between thousands were expected -> say in the map what the comma is: numbers: { decimal: comma } or numbers: { thousands: comma }',
    ])
  })

  it('tells a row of the wrong width, a heading that is missing, one that is twice there and one that is not placed', () => {
    expect(told({ map: LOTS, table: `${TABLE}W-3;24.03.2026;900;25.03.2026;2\n` })).toEqual([
      'bench.csv!row 4: the row has 5 cells, and the headings have 7 [import-row] -> give it a cell for each column, blank where there is no value; put a cell in quotes that holds the separator',
    ])
    const [missing] = told({ map: LOTS, table: TABLE.replace('LOI (%)', 'LOI %') })
    expect(missing).toContain('there is no heading "LOI (%)" here [import-heading] -> did you mean LOI %?')
    const [twice] = told({ map: LOTS, table: TABLE.replace('Remark', 'SO3') })
    expect(twice).toContain(
      '2 columns have the heading "SO3" [import-heading] -> name them in the map by @F and @G',
    )
    expect(told({ map: LOTS.replace('      Remark: ignore\n', ''), table: TABLE })).toEqual([
      'bench.csv!G1: the map does not say what the column "Remark" gives [import-heading] -> write "Remark": ignore in the map, or the field or property that it gives',
    ])
  })

  it('takes two rows that state one value differently for a fault', () => {
    const [first, second] = told({ map: LOTS, table: `${TABLE}W-2;17.03.2026;920;18.03.2026;2,3;0,2;\n` })
    expect(first).toContain('bench.csv!C4: found "920 t"; C3 states "910 t" for the same [import-twice]')
    expect(second).toContain('bench.csv!F4: found "0.2 %"; F3 states "< 0.1 %" for the same [import-twice]')
  })

  it('reads a table on its side, lots as columns', () => {
    const map = `every: { source: works, laboratory: bench, tested: 2026-03-11, sample: C, sample-kind: composite, produced: 2026-03-10 }
tables:
  - holds: analyses
    records-in: columns
    columns: { Lot: lot, Mass: quantity, "CaO, %": CaO }
`
    const found = texts({ map, table: 'Lot,W-1,W-2\nMass,900 t,910 t\n"CaO, %",4.10,5\n' })
    expect(Object.values(found).map((text) => /quantity: .*|CaO: [^ }]* %/g.exec(text)?.[0])).toEqual([
      'quantity: 900 t',
      'quantity: 910 t',
    ])
    expect(found['lots/works/W-1.yaml']).toContain('CaO: 4.10 %')
    expect(told({ map, table: 'Lot,W-1,W-2\nMass,900 t,910 t\n"CaO, %",4.10,five\n' })[0]).toContain(
      'bench.csv!C3:',
    )
  })

  it('reads lots one under the other, each with its own line, and leaves out means and headings that stand again', () => {
    const map = `every: { source: works, laboratory: bench, tested: 2026-03-11, sample: C }
tables:
  - holds: analyses
    headings: 2
    block: "Lot {lot}"
    except: { What: mean }
    columns: { What: ignore, "LOI, %": loss-on-ignition }
`
    const plan = planned({
      map,
      table:
        'Monthly report,\nWhat,"LOI, %"\nLot W-1,\nash,2.1\nmean,2.1\nLot W-2,\nWhat,"LOI, %"\nash,2.2\n',
    })
    expect(
      plan.changes.map(({ id, draft }) => [id, draft.at(['analyses', 0, 'results', 'loss-on-ignition'])]),
    ).toEqual([
      ['works/W-1', '2.1 %'],
      ['works/W-2', '2.2 %'],
    ])
    expect([plan.rows, plan.leftOut]).toEqual([2, 2])
  })

  it('fills a lot down where the map says so, as merged cells and blank repetitions need', () => {
    const map = (
      lot: string,
    ) => `every: { source: works, sample: C, condition: c311 , control: K-1, laboratory: bench, cast: 2026-03-01, tested: cast + age }
tables:
  - { holds: tests, columns: { Lot: ${lot}, Age: age, Load (kN): load } }
`
    const table = 'Lot,Age,Load (kN)\nW-1,7 d,60.1\n,7 d,61.2\n,28 days,80\n'
    const found = texts({ map: map('{ to: lot, fill: down }'), table })['lots/works/W-1.yaml']
    expect(found).toContain('- { age: 7 d, tested: 2026-03-08, specimens: { a: 60.1 kN, b: 61.2 kN } }')
    expect(found).toContain('- { age: 28 d, tested: 2026-03-29, specimens: { c: 80 kN } }')
    expect(told({ map: map('lot'), table })).toHaveLength(2)
  })

  it('gives several ages of a finished index as a list, a later one beside those on record', () => {
    const map = `every: { source: works, laboratory: bench, tested: 2026-04-09, sample: C, condition: c311 }
tables:
  - holds: analyses
    columns:
      Lot: lot
      SAI 7 d: { to: strength-activity-index, unit: "%", age: 7 d }
      SAI 28 d: { to: strength-activity-index, unit: "%", age: 28 d }
`
    const seven = planned({ map, table: 'Lot,SAI 7 d,SAI 28 d\nW-1,84,\n' })
    const before = seven.changes[0]?.text ?? ''
    expect(before).toContain('strength-activity-index: { value: 84 %, condition: c311, age: 7 d }')
    const later = planned({
      map,
      table: 'Lot,SAI 7 d,SAI 28 d\nW-1,84,91.5\n',
      onRecord: { 'lots/works/W-1.yaml': before },
    })
    expect(later.differences).toEqual([])
    expect(later.changes[0]?.draft.at(['analyses', 0, 'results', 'strength-activity-index'])).toEqual([
      { value: '84 %', condition: 'c311', age: '7 d' },
      { value: '91.5 %', condition: 'c311', age: '28 d' },
    ])
  })

  it('makes a regular sample of each day, and reads shipments with text that stays text', () => {
    const regular = texts({
      map: `every: { source: works, lot: W-1, laboratory: bench, duty: regular }
tables: [ { holds: samples, columns: { Day: sampled, Tested: tested, LOI (%): loss-on-ignition } } ]
`,
      table: 'Day,Tested,LOI (%)\n2026-03-02,2026-03-02,2.1\n2026-03-03,2026-03-04,2.2\n',
    })['lots/works/W-1.yaml']
    expect(regular).toContain('- { id: 2026-03-02, kind: grab, duty: regular, on: 2026-03-02 }')
    expect(regular).toContain('sample: 2026-03-03, tested: 2026-03-04')
    const shipped = texts({
      map: `every: { source: works, lot: W-1 }
tables: [ { holds: shipments, columns: { Bill: bill, Day: date, Net (t): mass, Customer: to } } ]
`,
      table: 'Bill,Day,Net (t),Customer\n007,2026-03-02,25.1,=Mix\n',
    })['lots/works/W-1.yaml']
    expect(shipped).toMatch(/- \{ bill: "?007"?, date: 2026-03-02, mass: 25\.1 t, to: "?=Mix"? \}/)
  })

  it('reads merged headings of two rows, and cells in error only where they are wanted', () => {
    const text = (at: string, value: string) => `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`
    const bytes = workbookOf({
      merged: ['A1:A2', 'B1:C1'],
      rows: `<row r="1">${text('A1', 'Lot')}${text('B1', '7 d (kN)')}${text('D1', 'Ratio')}</row><row r="2">${text('B2', '1')}${text('C2', '2')}</row><row r="3">${text('A3', 'W-1')}<c r="B3"><v>60.1</v></c><c r="C3" t="e"><v>#REF!</v></c><c r="D3" t="e"><v>#DIV/0!</v></c></row>`,
    })
    const map = `every: { source: works, sample: C, condition: c311, control: K-1, laboratory: bench, cast: 2026-03-01, tested: cast + age }
tables:
  - holds: tests
    headings: [1, 2]
    columns: { Lot: lot, 7 d (kN) / 1: { to: load, age: 7 d }, 7 d (kN) / 2: { to: load, age: 7 d }, Ratio: ignore }
`
    expect(told({ map, table: readWorkbook(bytes) })).toEqual([
      'bench.csv!Bench!C3: found the error #REF!; a number in kN was expected [import-cell] -> correct the cell in the spreadsheet, or clear it',
    ])
  })

  it('drops no row without a word and never throws, whatever the cells hold', () => {
    const cell = fc.oneof(
      fc.constantFrom(
        '',
        'W-1',
        'W-2',
        '2.1',
        '<0.5',
        'ND',
        '11.03.2026',
        '2026-03-11',
        '900',
        'x',
        '-',
        '1,5',
      ),
      fc.string({ maxLength: 8 }),
    )
    const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`
    const rows = fc.array(fc.array(cell, { minLength: 7, maxLength: 7 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(rows, (grid) => {
        const table = [TABLE.split('\n')[0], ...grid.map((row) => row.map(quoted).join(';'))].join('\n')
        const {
          faults,
          rows: read,
          leftOut,
        } = planned({ map: LOTS.replace('tables:', 'separator: semicolon\ntables:'), table })
        const refused = new Set(faults.flatMap(({ place }) => (place === null ? [] : [place.row])))
        const filled = grid.filter((row) =>
          row.some((text) => !/^[\s\u00a0\u200b\ufeff]*$/.test(text)),
        ).length
        expect(read + leftOut + refused.size).toBeGreaterThanOrEqual(filled)
      }),
      { numRuns: 500, seed: 14 },
    )
  })
})

describe('readImportMap', () => {
  it('tells each fault of a map by its line and column', () => {
    expect(
      mapFaults(`every: { source: our works, colour: red }
tables:
  - holds: shipments
    columns: { Bill: bil, Mass: { to: mass, unit: undecided }, Note: undecided }
`),
    ).toEqual([
      '4:22 "bil" is no field of a table of shipments; did you mean bill?',
      '4:51 it is not decided which unit the column "Mass" has; write the unit of its numbers',
      '4:70 it is not decided what the column "Note" gives; write the field or property that is meant, or ignore',
      '1:37 "colour" is no field of a table of shipments; known: bill, date, mass, to, project, purchase-order, seal, vehicle, source, lot',
      '1:18 found "our works"; an id of letters, digits and hyphens was expected; write under stands-for which id is meant, such as "our works": our-works, or how the text is made up under pattern',
    ])
    expect(mapFaults('tables: [ { hold: lots, columns: { A: lot } } ]\n')).toHaveLength(2)
    expect(mapFaults('tables: [ { holds: lots, columns: { A: lot, B: SiO2, C: CaO } } ]\n')).toEqual([
      '1:20 a table of lots takes no results, and 2 columns of it give some: SiO2, CaO; write holds: analyses, which takes what is known of lots and samples as well',
    ])
    const standing = (form: string) =>
      mapFaults(
        `tables: [ { holds: analyses, ${form}, columns: { A: lot, B: { to: SO3, unit: "%" }, C: { to: tested } } } ]\n`,
      )
    expect(standing('stands-for: { ND: "< 0.05 %" }')).toEqual([])
    expect(standing('stands-for: { ND: -- }')).toEqual([
      expect.stringMatching(/^1:48 found "--"; .* was expected; /),
    ])
    // Never the oxide alone: the equivalent counts potassium too.
    expect(
      mapFaults('tables: [ { holds: analyses, columns: { A: Na2Oeq, B: ticket no, C: customer } } ]\n'),
    ).toEqual([
      '1:44 "Na2Oeq" is no field of a table of analyses; write ignore: alkali-equivalent is computed from the other results',
      expect.stringContaining('"ticket no" is no field of a table of analyses; '),
      expect.stringContaining('"customer" is no field of a table of analyses; '),
    ])
    expect(mapFaults('tables: [ { holds: shipments, columns: { A: consignee } } ]\n')).toEqual([
      expect.stringMatching(/; write to$/),
    ])
  })
})
