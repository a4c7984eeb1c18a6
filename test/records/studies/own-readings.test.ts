import { describe, expect, it } from 'vitest'
import { loadStudies, STUDY } from './study-folder.ts'

function read(readings: string, study = STUDY) {
  const { records, diagnostics } = loadStudies({ 'S.yaml': `${study}readings:\n${readings}` })
  return {
    told: diagnostics
      .filter(({ severity }) => severity === 'error')
      .map(({ line, column, code }) => `${line}:${column} ${code}`),
    readings: records.studies
      .get('S')
      ?.readings.map(({ material, batch, age, measure, value, above }) =>
        [material, batch, age, measure, above ? `> ${value}` : value].join(' '),
      ),
  }
}

describe('ownReadings', () => {
  it('reads every specimen of every measure, in the order of the file', () => {
    expect(
      read(
        `  - { material: control, age: 28 d, strength: [40 MPa, 41 MPa] }\n  - { material: A1, batch: 2a, age: 72 h, strength: [42 MPa], resistivity: ["> 900 ohm m"] }\n`,
      ),
    ).toEqual({
      told: [],
      readings: [
        'control 1 28 d strength 40',
        'control 1 28 d strength 41',
        'A1 2a 72 h strength 42',
        'A1 2a 72 h resistivity > 900',
      ],
    })
  })
  it.each([
    ['a number without a unit', '{ material: A1, age: 28 d, strength: ["40"] }', '12:44 quantity-unit'],
    ['a unit of another kind', '{ material: A1, age: 28 d, strength: [40 kN] }', '12:43 quantity-unit'],
    ['a bound', '{ material: A1, age: 28 d, strength: ["< 5 MPa"] }', '12:44 quantity-bound'],
    ['nought', '{ material: A1, age: 28 d, strength: [0 MPa] }', '12:43 quantity-range'],
    ['a negative', '{ material: A1, age: 28 d, strength: [-4 MPa] }', '12:43 quantity-range'],
    ['NaN', '{ material: A1, age: 28 d, strength: [NaN MPa] }', '12:43 quantity'],
    ['an age of nought', '{ material: A1, age: 0 d, strength: [40 MPa] }', '12:26 age-unknown'],
    ['an unlisted material', '{ material: A2, age: 28 d, strength: [40 MPa] }', '12:17 reference-unknown'],
    [
      'a name of a prototype',
      '{ material: constructor, age: 28 d, strength: [40 MPa] }',
      '12:17 reference-unknown',
    ],
    [
      'an unlisted laboratory',
      '{ material: A1, laboratory: L9, age: 28 d, strength: [40 MPa] }',
      '12:33 reference-unknown',
    ],
    [
      'an index of the control',
      '{ material: control, age: 28 d, strength-activity-index: [99 %] }',
      '12:63 schema',
    ],
  ])('refuses %s at its place', (_, entry, told) => {
    const found = read(`  - ${entry}\n`)
    expect(found.told[0]).toBe(told)
    expect(found.readings).toBeUndefined()
  })
  it('refuses a key of a prototype anywhere', () => {
    const { records, diagnostics } = loadStudies({
      'S.yaml': STUDY.replace('  Q1:', '  __proto__: { title: x }\n  Q1:'),
    })
    expect(diagnostics.map(({ code }) => code)).toContain('yaml-forbidden-key')
    expect(records.studies.has('S')).toBe(false)
  })
  it('refuses an index beside the readings that it was computed from', () => {
    expect(
      read(`  - { material: A1, age: 28 d, strength: [40 MPa], strength-activity-index: [99 %] }\n`).told,
    ).toEqual(['11:1 reading-twice'])
  })
})

describe('a study', () => {
  it('may have no reading yet', () => {
    expect(loadStudies({ 'S.yaml': STUDY })).toMatchObject({ diagnostics: [] })
  })
  it('that has both readings and a table is refused', () => {
    const text = `${STUDY}readings:\n  - { material: A1, age: 28 d, strength: [40 MPa] }\ntable: { file: S.csv }\n`
    const { diagnostics } = loadStudies({
      'S.yaml': text,
      'S.csv': 'material,age,strength (MPa)\nA1,28 d,40\n',
    })
    const faults = diagnostics.filter(({ severity }) => severity === 'error')
    expect(faults.map(({ code }) => code)).toEqual(['reading-twice'])
  })
  it('leaves a table that no study names unread, with a warning', () => {
    const { diagnostics } = loadStudies({ 'S.yaml': STUDY, 'T.csv': '\u0000' })
    expect(diagnostics).toMatchObject([
      { code: 'file-unexpected', severity: 'warning', file: 'studies/T.csv' },
    ])
  })
})
