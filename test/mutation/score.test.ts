import { describe, expect, it } from 'vitest'
import { idleEquivalents, type MutationReport, ofRooms, scores, scoreTable, survivorLines } from './score.ts'

type Mutants = MutationReport['files'][string]['mutants']

const at = (line: number, from: number, to: number, endLine = line) => ({
  start: { line, column: from },
  end: { line: endLine, column: to },
})
const file = (source: string, ...mutants: Mutants) => ({ source, mutants })

const REPORT: MutationReport = {
  files: {
    'src/core/mortar/water.ts': file(
      'a < b\nfoo(\n  1,\n)\n',
      { mutatorName: 'EqualityOperator', replacement: 'a <= b', status: 'Survived', location: at(1, 1, 6) },
      { mutatorName: 'EqualityOperator', replacement: 'a >= b', status: 'Killed', location: at(1, 1, 6) },
      { mutatorName: 'CallRemoval', replacement: '', status: 'NoCoverage', location: at(2, 1, 2, 4) },
      { mutatorName: 'CallRemoval', replacement: 'x', status: 'Ignored', location: at(2, 1, 2, 4) },
    ),
    'src/core/age/age.ts': file('1 + 2', {
      mutatorName: 'ArithmeticOperator',
      replacement: '1 - 2',
      status: 'Timeout',
      location: at(1, 1, 6),
    }),
  },
}

const SAME = {
  file: 'src/core/mortar/water.ts',
  original: 'a < b',
  replacement: 'a <= b',
  reason: 'never equal',
}

describe('ofRooms', () => {
  it('keeps the sub-rooms named, or all', () => {
    expect(Object.keys(ofRooms(REPORT, ['age']).files)).toEqual(['src/core/age/age.ts'])
    expect(ofRooms(REPORT, [])).toEqual(REPORT)
  })
})

describe('scores', () => {
  it('counts each sub-room: a timeout is a notice, what was never run is left out', () => {
    expect(scores(REPORT, [])).toEqual([
      { room: 'age', killed: 1, survived: 0, noCoverage: 0, equivalent: 0 },
      { room: 'mortar', killed: 1, survived: 1, noCoverage: 1, equivalent: 0 },
    ])
  })
  it('takes out what is known to be equivalent', () => {
    expect(scores(REPORT, [SAME])[1]).toEqual({
      room: 'mortar',
      killed: 1,
      survived: 0,
      noCoverage: 1,
      equivalent: 1,
    })
  })
})

describe('scoreTable', () => {
  it('prints a line for each sub-room and one for all', () => {
    expect(
      scoreTable(scores(REPORT, [SAME]))
        .split('\n')
        .map((line) => line.split(/ {2,}/)),
    ).toEqual([
      ['sub-room', 'mutants', 'killed', 'survived', 'no coverage', 'equivalent', 'score'],
      ['age', '1', '1', '0', '0', '0', '100.0 %'],
      ['mortar', '2', '1', '0', '1', '1', '50.0 %'],
      ['all', '3', '2', '0', '1', '1', '66.7 %'],
    ])
  })
})

describe('survivorLines', () => {
  it('names place, change and whether any test runs it, on one line each', () => {
    expect(survivorLines(REPORT, [])).toEqual([
      'src/core/mortar/water.ts:1:1 EqualityOperator: a < b → a <= b',
      'src/core/mortar/water.ts:2:1 CallRemoval (no test runs it): foo( 1, ) → ',
    ])
    expect(survivorLines(REPORT, [SAME])).toHaveLength(1)
  })
})

describe('idleEquivalents', () => {
  it('finds entries that no survivor of a file in the report is', () => {
    const changed = { ...SAME, original: 'a < c' }
    const elsewhere = { ...SAME, file: 'src/core/other/other.ts' }
    const killed = { ...SAME, replacement: 'a >= b' }
    expect(idleEquivalents(REPORT, [SAME, changed, elsewhere, killed])).toEqual([changed, killed])
  })
})
