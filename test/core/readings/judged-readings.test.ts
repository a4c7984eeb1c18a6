import { describe, expect, it } from 'vitest'
import type { MortarReading } from '../../../src/core/mortar/mortar.ts'
import {
  type JudgedReading,
  judgedReadings,
  readingAt,
  readingsTakenBy,
  validReadingAt,
} from '../../../src/core/readings/judged-readings.ts'
import { BULK_RESISTIVITY } from '../../../src/core/resistivity/resistivity-measurement.ts'
import { COMPRESSIVE_STRENGTH } from '../../../src/core/strength/compressive-strength.ts'
import { q, resistance, strength, WARM, worded } from './fixture.ts'

const mortar = { condition: 'warm', laboratory: 'quay', cast: '2026-03-11T09:20' }

describe('readingsTakenBy', () => {
  const mean = q('40 MPa', 'stress')

  it('takes a reading on the very date, whatever its clock, and none of the day after', () => {
    const evening = { age: '28 d', tested: '2026-04-08T23:59', mean }
    const next = { age: '28 d', tested: '2026-04-09T00:00', mean }
    expect(readingsTakenBy('2026-04-08', [evening, next])).toEqual([evening])
  })
  it('takes specimens or a mean, and leaves out what has no reading or no date', () => {
    const specimens = { age: '28 d', tested: '2026-04-08', specimens: { a: q('100 kN', 'force') } }
    expect(
      readingsTakenBy('2026-04-08', [
        specimens,
        { age: '7 d' },
        { age: '7 d', tested: '2026-03-18' },
        { age: '7 d', mean },
      ]),
    ).toEqual([specimens])
    expect(readingsTakenBy('2026-04-08', undefined)).toEqual([])
  })
})

describe('judgedReadings', () => {
  const judged = (
    readings: Parameters<typeof strength>[1][],
    loads: readonly string[] = ['100 kN'],
    asOf = '2026-05-01',
  ) =>
    judgedReadings(
      COMPRESSIVE_STRENGTH,
      { ...mortar, strength: readings.map((more) => strength(loads, more)) },
      WARM,
      asOf,
    ).map(worded)

  it('judges each reading taken by its specimens, its age and its retest', () => {
    expect(judged([{}])).toMatchObject([{ valid: true, reasons: [], specimens: { mean: 40, n: 1 } }])
    expect(judged([{}], ['90 kN', '110 kN'])).toMatchObject([{ valid: false }])
    expect(judged([{ tested: '2026-04-10T09:40' }])).toMatchObject([
      { valid: false, reasons: ['tested at 30.01 d, outside 28 d ± 12 h'] },
    ])
    const retest = { tested: '2026-04-08T12:00', 'retest-of': '2026-04-08T09:40' }
    expect(judged([{}, retest]).map(({ valid, reasons }) => [valid, reasons])).toEqual([
      [false, ['replaced by the retest of 2026-04-08T12:00']],
      [true, []],
    ])
  })
  it('does not know of a retest made later than the date', () => {
    const retest = { tested: '2026-04-09T08:00', 'retest-of': '2026-04-08' }
    expect(judged([{}, retest], ['100 kN'], '2026-04-08')).toMatchObject([{ valid: true, reasons: [] }])
  })
  it('keeps a reading valid for a note alone', () => {
    const noted = { resistivity: { ...WARM.resistivity, saturation: 'stated' } } as Pick<
      typeof WARM,
      'resistivity'
    >
    const read = judgedReadings(
      BULK_RESISTIVITY,
      { ...mortar, resistivity: [resistance(['874 ohm'])] },
      { ...WARM, ...noted },
      '2026-05-01',
    ).map(worded)
    expect(read).toMatchObject([
      { valid: true, reasons: ['how saturated the specimens were when read is not stated'] },
    ])
  })
  it('says what was wrong in order: specimens, age, notes, the reading itself, a retest', () => {
    const condition = { ...WARM, resistivity: { ...WARM.resistivity, saturation: 'stated' } } as typeof WARM
    const first = resistance(['874 ohm'], {
      specimens: { a: q('874 ohm', 'resistance'), b: { excluded: 'cracked' } },
      tested: '2026-04-08',
      temperature: q('30 degC', 'temperature'),
    })
    const again = resistance(['874 ohm'], { tested: '2026-04-08T15:00', 'retest-of': '2026-04-08' })
    const [read] = judgedReadings(
      BULK_RESISTIVITY,
      { ...mortar, resistivity: [first, again] },
      condition,
      '2026-05-01',
    ).map(worded)
    expect(read).toMatchObject({
      valid: false,
      reasons: [
        'specimen b excluded: cracked',
        'the age cannot be verified: a clock time is missing',
        'how saturated the specimens were when read is not stated',
        'read at 30 °C, outside 23 °C ± 2 °C',
        'replaced by the retest of 2026-04-08T15:00',
      ],
    })
  })
  it('gives none for a mortar without that test', () => {
    expect(judgedReadings(COMPRESSIVE_STRENGTH, mortar, WARM, '2026-05-01')).toEqual([])
  })
})

describe('readingAt and validReadingAt', () => {
  const read = (age: string, valid: boolean, tested: string): JudgedReading => {
    const reading: MortarReading = { age, tested }
    return { reading, valid, reasons: [] } as unknown as JudgedReading
  }
  const moment = (found: JudgedReading | undefined) => found?.reading.tested

  it('take the last valid reading of the age', () => {
    const readings = [read('28 d', true, 'a'), read('28 d', true, 'b'), read('28 d', false, 'c')]
    expect([moment(readingAt(readings, '28 d')), moment(validReadingAt(readings, '28 d'))]).toEqual([
      'b',
      'b',
    ])
  })
  it('differ where none is valid: the last of them stands for the mortar, and none is valid', () => {
    const readings = [read('28 d', false, 'a'), read('28 d', false, 'b'), read('7 d', true, 'c')]
    expect([moment(readingAt(readings, '28 d')), validReadingAt(readings, '28 d')]).toEqual(['b', undefined])
  })
  it('find nothing at an age that was not read', () => {
    const readings = [read('7 d', true, 'a'), read('7 d', false, 'b')]
    expect([readingAt(readings, '28 d'), validReadingAt(readings, '28 d')]).toEqual([undefined, undefined])
  })
})
