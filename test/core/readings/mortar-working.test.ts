import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { lotResults } from '../../../src/core/readings/lot-results.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { workingLines } from '../../../src/words/working-lines.ts'
import { evidence, q, resistance, strength } from './fixture.ts'

type Asked = Parameters<typeof evidence>[0]
const working = (asked: Asked, property: Result['property']) =>
  lotResults(evidence(asked))
    .results.find((result) => result.property === property)
    ?.working() ?? []
const lines = (asked: Asked, property: Result['property']) =>
  workingLines(working(asked, property)).map(
    ({ label, expression, value, decimals }) =>
      `${label}: ${expression}${value === undefined ? '' : ` = ${value.toFixed(decimals)}`}`,
  )

describe('the working of a strength activity index', () => {
  // 100, 102.5 and 111.25 kN on 2500 mm²: 40, 41, 44.5 MPa; the range 4.5 is 10.757 % of their mean, so that the
  // last is dropped; of 40 and 41 the range is 2.469 % of 40.5. The control: 124 and 126 kN, 49.6 and 50.4 MPa,
  // 0.8 of 50. Index 81.
  const asked: Asked = {
    test: { strength: [strength(['100.0 kN', '102.5 kN', '111.25 kN'])] },
    control: { strength: [strength(['124 kN', '126 kN'])] },
  }

  it('runs from specimens by range and mean to the ratio, what the control adds, and the interval', () => {
    const found = lines(asked, 'strength-activity-index')
    expect(found.slice(0, -1)).toEqual([
      'test s0: 100.0 kN / 2500 mm² = 40.00',
      'test s1: 102.5 kN / 2500 mm² = 41.00',
      'test s2: 111.25 kN / 2500 mm² = 44.50',
      'range: largest less smallest of 3, limit 8.7 % of the mean: beyond = 10.8',
      'range: largest less smallest of 2, limit 7.6 % of the mean: within = 2.5',
      'test mean: mean of s0, s1 = 40.50',
      'control s0: 124 kN / 2500 mm² = 49.60',
      'control s1: 126 kN / 2500 mm² = 50.40',
      'range: largest less smallest of 2, limit 7.6 % of the mean: within = 1.6',
      'control mean: mean of s0, s1 = 50.00',
      'index: 100 × 40.50 / 50.00 = 81.0',
      'control drift: a control 1 % higher would lower the index by 0.81 points',
    ])
    expect(found.at(-1)).toMatch(/^interval: 95 %: \d+\.\d % to \d+\.\d %, within this batch only$/)
  })
  it('is data: figures in stored units, marks of what is left, the figures of the ratio', () => {
    const steps = working(asked, 'strength-activity-index')
    expect(steps[0]).toEqual({
      step: 'specimen',
      of: 'test',
      mark: 's0',
      written: '100.0 kN',
      terms: [{ does: 'divided-by', value: 2500, unit: 'mm2' }],
      result: { value: 40, unit: 'MPa', decimals: 2 },
    })
    expect(steps[5]).toMatchObject({ step: 'mean', of: 'test', n: 2, marks: ['s0', 's1'] })
    expect(steps[10]).toMatchObject({
      step: 'ratio',
      test: 40.5,
      control: 50,
      unit: 'MPa',
      decimals: 2,
      result: { value: 81, unit: '%', decimals: 1 },
    })
    expect(steps[11]).toEqual({ step: 'control-drift', points: 0.81, decimals: 2 })
  })
  it('shows a mean as reported, and an excluded specimen with its reason', () => {
    const mean = {
      age: readAge('28 d'),
      tested: readMoment('2026-04-08T09:40'),
      mean: q('50 MPa', 'stress'),
      of: 3,
    }
    const specimens = {
      a: q('40 MPa', 'stress'),
      b: { load: q('10 kN', 'force'), excluded: 'broke' },
      c: { excluded: 'lost' },
    }
    expect(
      lines(
        { test: { strength: [strength([], { specimens })] }, control: { strength: [mean] } },
        'strength-activity-index',
      ).slice(0, 5),
    ).toEqual([
      'test a: 40 MPa as reported = 40.00',
      'test b: 10 kN / 2500 mm², excluded: broke = 4.00',
      'test c: no reading as reported, excluded: lost',
      'test mean: mean of a = 40.00',
      'control mortar: mean of 3 as reported; no specimens on record = 50.00',
    ])
  })
})

describe('the working of a resistivity index', () => {
  // (804.1 − 4.1) Ω on a 50 mm cube: 40 Ω m; 20 °C asked for 23 °C.
  const asked: Asked = {
    test: { resistivity: [resistance(['804.1 ohm'])] },
    control: { resistivity: [resistance(['0.4041 kohm'], { temperature: q('23 degC', 'temperature') })] },
  }

  it('takes the end contacts off, counts specimens, and says what each mean would be at the temperature asked for', () => {
    // 0.1 °C at about 2.7 % a degree: 40.1.
    expect(lines(asked, 'resistivity-index')).toEqual([
      'test s0: 804.1 Ω less 4.1 Ω end contact × 2500 mm² / 50 mm = 40.00',
      'test mean: mean of 1 = 40.00',
      'for information: read at 23.1 °C; at 23 °C it would be about (20 kJ/mol; the published range is wide) = 40.1',
      'control s0: 0.4041 kΩ less 4.1 Ω end contact × 2500 mm² / 50 mm = 20.00',
      'control mean: mean of 1 = 20.00',
      'index: 100 × 40.00 / 20.00 = 200',
      'control drift: a control 1 % higher would lower the index by 2.0 points',
      'interval: none: a single specimen, or a mean without its specimens, shows no scatter',
    ])
  })
  it('is that of one mortar alone for a bulk resistivity', () => {
    expect(lines(asked, 'bulk-resistivity')).toEqual([
      'test s0: 804.1 Ω less 4.1 Ω end contact × 2500 mm² / 50 mm = 40.00',
      'test mean: mean of 1 = 40.00',
    ])
  })
})
