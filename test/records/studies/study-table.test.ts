import { describe, expect, it } from 'vitest'
import { LARGEST_BYTES } from '../../../src/records/files.ts'
import { loadStudies, STUDY } from './study-folder.ts'

/** A study with a table; what is said of the table may follow the file's name. */
function read(table: string, said = '', study = STUDY) {
  const text = `${study}table: { file: S.csv${said} }\n`
  const { records, diagnostics } = loadStudies({ 'S.yaml': text, 'S.csv': table })
  const told = diagnostics
    .filter(({ severity, message }) => severity === 'error' && !message.endsWith('has faults of its own'))
    .map(({ file, line, column, code }) => `${file}:${line}:${column} ${code}`)
  return {
    told,
    first: diagnostics.find(({ file }) => file === 'studies/S.csv'),
    readings: records.studies
      .get('S')
      ?.readings.map(({ material, batch, age, measure, value, above }) =>
        [material, batch, age, measure, above ? `> ${value}` : value].join(' '),
      ),
  }
}

const GOOD = ['control 1 28 d strength 40', 'A1 1 28 d strength 42']

describe('tableReadings reads', () => {
  it.each([
    ['plain rows', 'material,age,strength (MPa)\ncontrol,28 d,40\nA1,28 d,42\n'],
    ['ages as plain numbers of days', 'material,age,strength (MPa)\ncontrol,28,40\nA1,028,42\n'],
    ['a byte order mark and CRLF', '\uFEFFmaterial,age,strength (MPa)\r\ncontrol,28 d,40\r\nA1,28 d,42\r\n'],
    ['a table without a last line end', 'material,age,strength (MPa)\ncontrol,28 d,40\nA1,28 d,42'],
    ['blanks about cells', ' material , age, strength (MPa)\n control ,28 d, 40 \nA1 , 28 d,42\n'],
    ['empty lines and rows', '\nmaterial,age,strength (MPa)\n\n,,\ncontrol,28 d,40\n\nA1,28 d,42\n'],
    ['empty cells as no reading', 'material,age,strength (MPa)\ncontrol,28 d,40\nA1,28 d,42\nQ1,28 d,\n'],
    [
      'quoted cells with commas and doubled quotes',
      'note,material,age,strength (MPa)\n"a, ""b""",control,28 d,"40"\n,A1,28 d,42\n',
    ],
    ['another unit of the kind', 'material,age,strength (N/mm2)\ncontrol,28 d,40\nA1,28 d,42\n'],
    [
      'a heading without a blank before its unit',
      'material,age,strength(MPa)\ncontrol,28 d,40\nA1,28 d,42\n',
    ],
  ])('%s', (_, table) => {
    expect(read(table)).toMatchObject({ told: [], readings: GOOD })
  })
  it('columns under their own headings, and what holds for every row', () => {
    const table = 'mix,fc\ncontrol,40\nA1,42\n'
    const said = ', columns: { mix: material, fc: strength (MPa) }, every: { age: 28 d, batch: 2a }'
    expect(read(table, said)).toMatchObject({
      told: [],
      readings: ['control 2a 28 d strength 40', 'A1 2a 28 d strength 42'],
    })
  })
  it('materials under the names that the table has for them', () => {
    const table = 'material,age,strength (MPa)\nplain,28 d,40\nfly ash,28 d,42\n'
    expect(read(table, ', materials: { plain: control, fly ash: A1 }')).toMatchObject({
      told: [],
      readings: GOOD,
    })
    expect(read(table, ', materials: { plain: control, fly ash: A2 }').told).toContain(
      'studies/S.yaml:11:61 reference-unknown',
    )
  })
  it('a cell before what holds for every row', () => {
    const table = 'material,age,strength (MPa)\ncontrol,7 d,40\nA1,,42\n'
    expect(read(table, ', every: { age: 28 d }').readings).toEqual([
      'control 1 7 d strength 40',
      'A1 1 28 d strength 42',
    ])
  })
  it('readings above a ceiling', () => {
    const table = 'material,age,resistivity (ohm m)\ncontrol,28 d,80\nA1,28 d,> 900\nA1,28 d,above 900\n'
    expect(read(table).readings?.slice(1)).toEqual([
      'A1 1 28 d resistivity > 900',
      'A1 1 28 d resistivity > 900',
    ])
  })
  // 4.2 kip is 4.2 × 4.4482216152605 kN.
  it('a heading’s unit into that which is stored', () => {
    const study = `${STUDY}specimens: { cube: 50 mm }\n`
    expect(read('material,age,load (kip)\nA1,28 d,4.2\n', '', study).readings).toEqual([
      `A1 1 28 d load ${Number((4.2 * 4.4482216152605).toPrecision(14))}`,
    ])
  })
})

const HEAD = 'material,age,batch,tested,strength (MPa)\n'

describe('tableReadings refuses, at its line and column', () => {
  it.each([
    ['a row with a cell too few', `${HEAD}A1,28 d,1,40\n`, 'S.csv:2:1 schema'],
    ['a row with a cell too many', `${HEAD}A1,28 d,1,,40,41\n`, 'S.csv:2:1 schema'],
    ['a material that is not listed', `${HEAD}\nA2,28 d,1,,40\n`, 'S.csv:3:1 reference-unknown'],
    ['a name of a prototype as a material', `${HEAD}constructor,28 d,1,,40\n`, 'S.csv:2:1 reference-unknown'],
    ['a prototype as a material', `${HEAD}__proto__,28 d,1,,40\n`, 'S.csv:2:1 reference-unknown'],
    ['a prototype as a batch', `${HEAD}A1,28 d,__proto__,,40\n`, 'S.csv:2:9 schema'],
    ['a batch with a blank', `${HEAD}A1,28 d,1 a,,40\n`, 'S.csv:2:9 schema'],
    ['a batch that is too long', `${HEAD}A1,28 d,${'b'.repeat(17)},,40\n`, 'S.csv:2:9 schema'],
    ['a formula as a batch', `${HEAD}A1,28 d,=1+1,,40\n`, 'S.csv:2:9 schema'],
    ['a formula as a reading', `${HEAD}A1,28 d,1,,=1+1\n`, 'S.csv:2:12 quantity'],
    ['an age without a number', `${HEAD}A1,old,1,,40\n`, 'S.csv:2:4 age-unknown'],
    ['an age of nought', `${HEAD}A1,0,1,,40\n`, 'S.csv:2:4 age-unknown'],
    ['a broken age', `${HEAD}A1,28.5,1,,40\n`, 'S.csv:2:4 age-unknown'],
    ['an age of no mortar', `${HEAD}A1,99999999999999999999,1,,40\n`, 'S.csv:2:4 age-unknown'],
    ['no age', `${HEAD}A1,,1,,40\n`, 'S.csv:2:4 key-missing'],
    ['a day that is none', `${HEAD}A1,28 d,1,2026-02-30,40\n`, 'S.csv:2:11 date'],
    ['a bound', `${HEAD}A1,28 d,1,,< 5\n`, 'S.csv:2:12 quantity-bound'],
    ['nought', `${HEAD}A1,28 d,1,,0\n`, 'S.csv:2:12 quantity-range'],
    ['a negative', `${HEAD}A1,28 d,1,,-3\n`, 'S.csv:2:12 quantity-range'],
    [
      'a number larger than any reading',
      `${HEAD}A1,28 d,1,,${'9'.repeat(40)}\n`,
      'S.csv:2:12 quantity-range',
    ],
    ['an exponent', `${HEAD}A1,28 d,1,,4e1\n`, 'S.csv:2:12 quantity'],
    ['NaN', `${HEAD}A1,28 d,1,,NaN\n`, 'S.csv:2:12 quantity'],
    ['a word for no reading', `${HEAD}A1,28 d,1,,n/a\n`, 'S.csv:2:12 quantity'],
    ['Infinity', `${HEAD}A1,28 d,1,,Infinity\n`, 'S.csv:2:12 quantity'],
    ['a unit in the cell', `${HEAD}A1,28 d,1,,40 MPa\n`, 'S.csv:2:12 quantity'],
    ['a decimal comma', `${HEAD}A1,28 d,1,,"40,1"\n`, 'S.csv:2:12 quantity-comma'],
    ['a quote that does not close', `${HEAD}A1,28 d,1,,"40\n41"\n`, 'S.csv:2:12 schema'],
    ['a quote in the middle', `${HEAD}A1,28 d,1,,"40"1\n`, 'S.csv:2:12 schema'],
    ['a control character', `${HEAD}A1,28 d,1\u0007,,40\n`, 'S.csv:2:10 text-character'],
    [
      'a mark that turns the direction of writing',
      `${HEAD}A1,28 d,\u202e1,,40\n`,
      'S.csv:2:9 text-character',
    ],
    ['line ends of carriage returns alone', 'material,age\rA1,28 d\r', 'S.csv:1:13 text-character'],
    ['a cell as long as a file', `${HEAD}${'A'.repeat(100_000)},28 d,1,,40\n`, 'S.csv:2:1 schema'],
    ['a column of a near name', 'materail,age,strength (MPa)\nA1,28 d,40\n', 'S.csv:1:1 key-unknown'],
    [
      'a column of a prototype’s name',
      'constructor,age,strength (MPa)\nA1,28 d,40\n',
      'S.csv:1:1 key-unknown',
    ],
    ['a column without a heading', 'material,age,,strength (MPa)\nA1,28 d,,40\n', 'S.csv:1:14 key-unknown'],
    ['a measure without a unit', 'material,age,strength\nA1,28 d,40\n', 'S.csv:1:14 quantity-unit'],
    ['a unit of another kind', 'material,age,strength (kN)\nA1,28 d,40\n', 'S.csv:1:14 quantity-unit'],
    [
      'two columns of one place',
      'material,age,age,strength (MPa)\nA1,28 d,7 d,40\n',
      'S.csv:1:14 duplicate-id',
    ],
    ['no column of readings', 'material,age\nA1,28 d\n', 'S.csv:1:1 key-missing'],
    ['semicolons', 'material;age;strength (MPa)\nA1;28 d;40\n', 'S.csv:1:1 schema'],
    ['nothing at all', '', 'S.csv:1:1 yaml-empty'],
    ['a byte order mark alone', '\uFEFF\r\n', 'S.csv:1:1 yaml-empty'],
  ])('%s', (_, table, told) => {
    const found = read(table)
    expect(found.told[0]).toBe(`studies/${told}`)
    expect(found.readings).toBeUndefined()
  })
  it('a specimen that has its reading already, with the line of the first', () => {
    const table = 'material,age,specimen,strength (MPa)\nA1,28 d,1,40\nA1,28 d,2,41\nA1,28 d,1,40\n'
    const { told, first } = read(table)
    expect(told).toEqual(['studies/S.csv:4:11 duplicate-id'])
    expect(first?.message).toBe('specimen 1 of this batch has its strength on line 2 already')
  })
  it('a load beside the strength that follows from it', () => {
    const table = 'material,age,load (kN),strength (MPa)\nA1,28 d,100,40\n'
    expect(read(table, '', `${STUDY}specimens: { cube: 50 mm }\n`).told).toEqual([
      'studies/S.yaml:12:1 reading-twice',
    ])
  })
  it('an index of the control mortar', () => {
    const table = 'material,age,strength-activity-index (%)\ncontrol,28 d,100\n'
    expect(read(table).told).toEqual(['studies/S.csv:2:14 schema'])
  })
  it('a load without the shape of the specimens', () => {
    expect(read('material,age,load (kN)\nA1,28 d,100\n').told).toEqual(['studies/S.yaml:1:1 key-missing'])
  })
  it('the name of a column that the table does not have', () => {
    const table = 'mixture,age,strength (MPa)\nA1,28 d,40\n'
    const { told } = read(table, ', columns: { mixtur: material }')
    expect(told).toContain('studies/S.yaml:11:34 reference-unknown')
  })
  it('the rows after many faults, in one line', () => {
    const { told } = read(`${HEAD}${'A2,28 d,1,,40\n'.repeat(20_000)}`)
    expect(told).toHaveLength(61)
    expect(told.at(-1)).toBe('studies/S.csv:61:1 schema')
  })
  it('a table that is too large, a table that is not there', () => {
    expect(read('a'.repeat(LARGEST_BYTES + 1)).told).toEqual(['studies/S.yaml:11:16 reference-unknown'])
    const { diagnostics } = loadStudies({ 'S.yaml': `${STUDY}table: { file: S.csv }\n` })
    expect(diagnostics.map(({ code }) => code)).toEqual(['reference-unknown'])
  })
  it('what it says in words that name the cell', () => {
    expect(read(`${HEAD}A1,28 d,1,,=1+1\n`).first).toMatchObject({
      message: 'found "=1+1"; a number in MPa was expected',
      mend: 'write the number alone; leave the cell empty where there is no reading',
    })
    expect(read(`${HEAD}A1,28 d,1,,"40,1"\n`).first?.mend).toBe('write a decimal point: 40.1')
    expect(read(`${HEAD}A1,28 d,1,,"40,100"\n`).first?.mend).toMatch(/40\.100, or 40100/)
  })
})
