import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { errorsOf, type Given, mapOf, planned, recordIn, written } from './imported.ts'

const SHEET = { file: 'sheet.csv', digest: `sha256-${'0'.repeat(64)}`, on: '2026-11-27' }

const imported = (table: Given['table'], map: string, more: Partial<Given> = {}) =>
  planned({ table, map, origin: SHEET, ...more })

/** One table a month: a lot with its analysis a row. */
const MONTH = `
numbers: { decimal: comma, thousands: point }
dates: day-month-year
every: { source: ash, laboratory: quay, sample: C, sample-kind: composite }
tables:
  - holds: analyses
    stands-for: { ND: "< 0.05 %" }
    columns:
      Lot: lot
      From: produced-from
      To: produced-to
      Tonnes: { to: quantity, unit: t }
      Tested: tested
      SiO2 (%): SiO2
      SO3: { to: SO3, unit: "%" }
      7 d: { to: strength-activity-index, unit: "%", condition: c311, age: 7 d }
      28 d: { to: strength-activity-index, unit: "%", condition: c311, age: 28 d }
      Remark: ignore
`
const HEADINGS = 'Lot;From;To;Tonnes;Tested;SiO2 (%);SO3;7 d;28 d;Remark'
const ROW = 'A-1;05.01.2026;11.01.2026;1.450;14.01.2026;53,10;<0,1;82;;fine'

describe('planImport', () => {
  it('makes a lot of a row: signs of numbers, dates, units and bounds as the map says', () => {
    const plan = imported(`${HEADINGS}\n${ROW}\n`, MONTH)
    expect(errorsOf(plan)).toEqual([])
    expect(recordIn(plan, 'lots/ash/A-1.yaml')).toEqual({
      produced: { from: '2026-01-05', to: '2026-01-11' },
      quantity: '1450 t',
      samples: [{ id: 'C', kind: 'composite' }],
      analyses: [
        {
          laboratory: 'quay',
          sample: 'C',
          tested: '2026-01-14',
          results: {
            SiO2: '53.10 %',
            SO3: '< 0.1 %',
            'strength-activity-index': { value: '82 %', condition: 'c311', age: '7 d' },
          },
        },
      ],
      imported: [{ file: 'sheet.csv', digest: `sha256-${'0'.repeat(64)}`, on: '2026-11-27' }],
    })
  })
  it('adds a later age to the lot on record and leaves the rest of its text as it was', () => {
    const first = written(imported(`${HEADINGS}\n${ROW}\n`, MONTH))['lots/ash/A-1.yaml'] ?? ''
    const onRecord = {
      'lots/ash/A-1.yaml': first.replace('quantity: 1450 t', 'quantity: 1450 t # by the scale'),
    }
    const plan = imported(`${HEADINGS}\n${ROW.replace('82;;', '82;91;')}\n`, MONTH, { onRecord })
    expect(errorsOf(plan)).toEqual([])
    const text = written(plan)['lots/ash/A-1.yaml'] ?? ''
    expect(text).toContain('quantity: 1450 t # by the scale')
    expect(text).toContain('SiO2: 53.10 %')
    expect(JSON.stringify(recordIn(plan, 'lots/ash/A-1.yaml'))).toContain(
      '{"value":"91 %","condition":"c311","age":"28 d"}',
    )
  })
  it('changes nothing where everything is on record', () => {
    const text = written(imported(`${HEADINGS}\n${ROW}\n`, MONTH))['lots/ash/A-1.yaml'] ?? ''
    const plan = imported(`${HEADINGS}\n${ROW}\n`, MONTH, { onRecord: { 'lots/ash/A-1.yaml': text } })
    expect([plan.changes, plan.differences, plan.unchanged]).toEqual([[], [], 1])
  })
  it('shows a value that differs with both readings, and takes the file’s only when told to', () => {
    const text = written(imported(`${HEADINGS}\n${ROW}\n`, MONTH))['lots/ash/A-1.yaml'] ?? ''
    const other = `${HEADINGS}\n${ROW.replace('53,10', '53,4')}\n`
    const onRecord = { 'lots/ash/A-1.yaml': text }
    const plan = imported(other, MONTH, { onRecord })
    expect(plan.changes).toEqual([])
    expect(plan.differences).toMatchObject([{ id: 'ash/A-1', onRecord: '53.10 %', inFile: '53.4 %' }])
    const replaced = imported(other, MONTH, { onRecord, replace: true })
    expect(written(replaced)['lots/ash/A-1.yaml']).toContain('SiO2: 53.4 %')
  })
  it('puts rows of readings together: tests with their ages, and a specimen a row', () => {
    const map = `
every: { source: ash, sample: C, laboratory: quay, control: K-1, condition: c311 }
tables:
  - holds: tests
    columns:
      Lot: lot
      Cast: cast
      Age: age
      Tested: tested
      Cube: specimen
      Load (kN): load
`
    const table = [
      'Lot,Cast,Age,Tested,Cube,Load (kN)',
      'A-1,2026-01-14 09:20,7 d,2026-01-21 10:05,a,78.4',
      'A-1,2026-01-14 09:20,7 d,2026-01-21 10:05,b,80.1',
      'A-1,2026-01-14 09:20,28 d,2026-02-11 09:50,c,101.0',
    ].join('\n')
    const plan = imported(table, map, { onRecord: { 'lots/ash/A-1.yaml': 'quantity: 1450 t\n' } })
    expect(errorsOf(plan)).toEqual([])
    expect(recordIn(plan, 'lots/ash/A-1.yaml')).toMatchObject({
      quantity: '1450 t',
      tests: [
        {
          condition: 'c311',
          control: 'K-1',
          cast: '2026-01-14T09:20',
          strength: [
            { age: '7 d', tested: '2026-01-21T10:05', specimens: { a: '78.4 kN', b: '80.1 kN' } },
            { age: '28 d', tested: '2026-02-11T09:50', specimens: { c: '101.0 kN' } },
          ],
        },
      ],
    })
  })
  it('plans every age of finished indices from their casting day, and finds the mortar again a month later', () => {
    const map = `
every: { source: ash, sample: C, sample-kind: composite, laboratory: quay, condition: c311 }
tables:
  - holds: analyses
    columns:
      Lot: lot
      Produced: produced
      Tons: { to: quantity, unit: t }
      Cast: cast
      28 d date: { to: tested, age: 28 d }
      28 d (%): { to: strength-activity-index, unit: "%", age: 28 d }
      7 d date: { to: tested, age: 7 d }
      7 d (%): { to: strength-activity-index, unit: "%", age: 7 d }
`
    const head = 'Lot,Produced,Tons,Cast,28 d date,28 d (%),7 d date,7 d (%)'
    const first = imported(`${head}\nA-1,2026-01-10,900,2026-01-14,,,2026-01-21,84\n`, map, {})
    expect(errorsOf(first)).toEqual([])
    const tests = [
      {
        sample: 'C',
        condition: 'c311',
        laboratory: 'quay',
        cast: '2026-01-14',
        strength: [{ age: '7 d' }, { age: '28 d' }],
      },
    ]
    expect(recordIn(first, 'lots/ash/A-1.yaml')['tests']).toEqual(tests)
    const onRecord = { 'lots/ash/A-1.yaml': written(first)['lots/ash/A-1.yaml'] ?? '' }
    const later = imported(`${head}\nA-1,2026-01-10,900,2026-01-14,2026-02-11,93,2026-01-21,84\n`, map, {
      onRecord,
    })
    expect(errorsOf(later)).toEqual([])
    expect(later.differences).toEqual([])
    expect(recordIn(later, 'lots/ash/A-1.yaml')['tests']).toEqual(tests)
  })
  it('says which blank ages nothing awaits, since no casting day is known', () => {
    const map = `
every: { source: ash, sample: C, sample-kind: composite, laboratory: quay, condition: c311, tested: 2026-01-21 }
tables:
  - holds: analyses
    columns:
      Lot: lot
      Produced: produced
      Tons: { to: quantity, unit: t }
      Cast: cast
      7 d (%): { to: strength-activity-index, unit: "%", age: 7 d }
      28 d (%): { to: strength-activity-index, unit: "%", age: 28 d }
`
    const { faults } = imported(
      [
        'Lot,Produced,Tons,Cast,7 d (%),28 d (%)',
        'A-1,2026-01-10,900,,84,',
        'A-2,2026-01-10,900,2026-01-14,84,',
        'A-3,2026-01-10,900,,84,93',
      ].join('\n'),
      map,
      {},
    )
    expect(faults).toMatchObject([
      {
        severity: 'note',
        place: { row: 2 },
        message: 'the lot has no index at 28 d and no casting day, so that age is not awaited',
      },
    ])
  })
  it('takes a mortar that is only cast without its control, and gives it one later', () => {
    const map = `
every: { source: ash, sample: C, laboratory: quay, condition: c311 }
tables: [{ holds: tests, planned: [7 d], columns: { Lot: lot, Cast: cast, Control: control, Load (kN): { to: load, age: 7 d } } }]
`
    const head = 'Lot,Cast,Control,Load (kN)'
    const lot = 'quantity: 900 t\n'
    const cast = imported(`${head}\nA-1,2026-01-14,,\n`, map, { onRecord: { 'lots/ash/A-1.yaml': lot } })
    expect(errorsOf(cast)).toEqual([])
    const onRecord = { 'lots/ash/A-1.yaml': written(cast)['lots/ash/A-1.yaml'] ?? '' }
    expect(
      recordIn(imported(`${head}\nA-1,2026-01-14,K-1,78.4\n`, map, { onRecord }), 'lots/ash/A-1.yaml'),
    ).toMatchObject({
      tests: [
        { control: 'K-1', cast: '2026-01-14', strength: [{ age: '7 d', specimens: { a: '78.4 kN' } }] },
      ],
    })
    expect(
      errorsOf(imported(`${head}\nA-1,2026-01-14,,78.4\n`, map, { onRecord: { 'lots/ash/A-1.yaml': lot } })),
    ).toEqual([expect.stringContaining('which control batch the mortar is compared with')])
  })
  it('knows a new lot of which a row was refused, so that nobody is sent to its other rows', () => {
    const map = `
every: { source: ash, sample: C, sample-kind: composite }
tables:
  - { holds: lots, columns: { Lot: lot, Produced: produced, Tons: { to: quantity, unit: t }, B/L: ignore, Date: ignore, Net: ignore } }
  - { holds: shipments, columns: { Lot: lot, Produced: ignore, Tons: ignore, B/L: bill, Date: date, Net: { to: mass, unit: t } } }
`
    const plan = imported(
      [
        'Lot,Produced,Tons,B/L,Date,Net',
        'A-1,2026-01-10,many,1,2026-01-12,24.8',
        'A-2,2026-01-10,900,2,2026-01-12,24.8',
      ].join('\n'),
      map,
      {},
    )
    expect(errorsOf(plan)).toEqual([expect.stringContaining('many')])
    expect(plan.changes.map(({ id, isPartial }) => [id, isPartial]).sort()).toEqual([
      ['ash/A-1', true],
      ['ash/A-2', false],
    ])
  })
  it('takes 200 shipments of a year to their lots, each bill as it is written', () => {
    const map = `
every: { source: ash }
dates: month-day-year
tables: [{ holds: shipments, columns: { Lot: lot, B/L: bill, Date: date, "Net (t)": mass } }]
`
    const rows = Array.from(
      { length: 200 },
      (_, n) => `A-${1 + (n % 12)},00${1000 + n},01/${1 + (n % 28)}/2026,24.${n % 10}`,
    )
    const lots = Object.fromEntries(
      Array.from({ length: 12 }, (_, n) => [`lots/ash/A-${n + 1}.yaml`, 'quantity: 900 t\n']),
    )
    const plan = imported(`Lot,B/L,Date,Net (t)\n${rows.join('\n')}\n`, map, { onRecord: lots })
    expect(errorsOf(plan)).toEqual([])
    const shipped = Object.keys(lots).flatMap(
      (path) => recordIn(plan, path)['shipments'] as { bill: string }[],
    )
    expect(shipped).toHaveLength(200)
    expect(shipped.map(({ bill }) => bill).sort()).toEqual(rows.map((row) => row.split(',')[1]).sort())
  })
  it('refuses each cell that is not what its column gives, by its address, all in one run', () => {
    const table = `${HEADINGS}\n${ROW.replace('53,10', '53.10 %?')}\nA-2;31.02.2026;11.01.2026;x;14.01.2026;1;ND;80;;\n`
    const errors = errorsOf(imported(table, MONTH))
    expect(errors.map((error) => error.split(':')[0])).toEqual(['F2', 'B3', 'D3'])
  })
  it('never guesses which of two numbers is the month', () => {
    const undecided = MONTH.replace('dates: day-month-year\n', '')
    const errors = errorsOf(imported(`${HEADINGS}\n${ROW.replaceAll('.01.2026', '.02.2026')}\n`, undecided))
    expect(errors.length).toBeGreaterThan(0)
    expect(errors.join()).toMatch(/B2: .*05\.02\.2026/)
  })
  it('names a heading that the map does not place, and one that the sheet has not', () => {
    const errors = errorsOf(imported(`${HEADINGS.replace('Remark', 'Colour')}\n${ROW}\n`, MONTH))
    expect(errors).toHaveLength(2)
    expect(errors.join('\n')).toMatch(/Remark[\s\S]*Colour|Colour[\s\S]*Remark/)
  })
  it('drops no row: each is in a record, or told with its place', () => {
    const cell = fc.constantFrom(
      '',
      'A-1',
      'A-2',
      '05.01.2026',
      '1,5',
      'ND',
      '<0,1',
      '82',
      'x',
      '-',
      '#N/A',
      'a;b',
    )
    let told = 0
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 10, maxLength: 10 }), { maxLength: 5 }), (rows) => {
        const quoted = rows.map((row) =>
          row.map((text) => (text.includes(';') ? `"${text}"` : text)).join(';'),
        )
        const plan = imported(`${HEADINGS}\n${quoted.join('\n')}\n`, MONTH)
        const places = new Set(plan.faults.map(({ place }) => place?.row))
        const lots = new Set(plan.changes.map(({ id }) => id.split('/')[1]))
        rows.forEach((row, index) => {
          if (row.slice(0, 9).every((text) => text === '')) return
          told += 1
          expect(places.has(index + 2) || lots.has(row[0])).toBe(true)
        })
      }),
      { numRuns: 300, seed: 9 },
    )
    expect(told).toBeGreaterThan(200)
  })
})

describe('readImportMap', () => {
  it('says where a map names a field that is none', () => {
    expect(() => mapOf('tables: [{ holds: lots, columns: { A: quantty } }]\n')).toThrow(
      /"quantty" is no field/,
    )
    expect(() => mapOf('tables: [{ holds: lots, columns: { A: undecided } }]\n')).toThrow(/not decided/)
  })
})
