import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
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

const mortar = { condition: 'warm', laboratory: 'quay', cast: readMoment('2026-03-11T09:20') }

describe('readingsTakenBy', () => {
  const mean = q('40 MPa', 'stress')

  it('takes a reading on the very date, whatever its clock, and none of the day after', () => {
    const evening = { age: readAge('28 d'), tested: readMoment('2026-04-08T23:59'), mean }
    const next = { age: readAge('28 d'), tested: readMoment('2026-04-09T00:00'), mean }
    expect(readingsTakenBy(readMoment('2026-04-08'), [evening, next])).toEqual([evening])
  })
  it('takes specimens or a mean, and leaves out what has no reading or no date', () => {
    const specimens = {
      age: readAge('28 d'),
      tested: readMoment('2026-04-08'),
      specimens: { a: q('100 kN', 'force') },
    }
    expect(
      readingsTakenBy(readMoment('2026-04-08'), [
        specimens,
        { age: readAge('7 d') },
        { age: readAge('7 d'), tested: readMoment('2026-03-18') },
        { age: readAge('7 d'), mean },
      ]),
    ).toEqual([specimens])
    expect(readingsTakenBy(readMoment('2026-04-08'), undefined)).toEqual([])
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
      readMoment(asOf),
    ).map(worded)

  it('judges each reading taken by its specimens, its age and its retest', () => {
    expect(judged([{}])).toMatchObject([{ valid: true, reasons: [], specimens: { mean: 40, n: 1 } }])
    expect(judged([{}], ['90 kN', '110 kN'])).toMatchObject([{ valid: false }])
    expect(judged([{ tested: readMoment('2026-04-10T09:40') }])).toMatchObject([
      { valid: false, reasons: ['tested at 30 d 20 min, outside 28 d ± 12 h'] },
    ])
    const retest = { tested: readMoment('2026-04-08T12:00'), 'retest-of': readMoment('2026-04-08T09:40') }
    expect(judged([{}, retest]).map(({ valid, reasons }) => [valid, reasons])).toEqual([
      [false, ['replaced by the retest of 8\u00a0April 2026, 12:00']],
      [true, []],
    ])
  })
  it('does not know of a retest made later than the date', () => {
    const retest = { tested: readMoment('2026-04-09T08:00'), 'retest-of': readMoment('2026-04-08') }
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
      readMoment('2026-05-01'),
    ).map(worded)
    expect(read).toMatchObject([
      { valid: true, reasons: ['the saturation of the specimens when read is not stated'] },
    ])
  })
  it('says what was wrong in order: specimens, age, notes, the reading itself, a retest', () => {
    const condition = { ...WARM, resistivity: { ...WARM.resistivity, saturation: 'stated' } } as typeof WARM
    const first = resistance(['874 ohm'], {
      specimens: { a: q('874 ohm', 'resistance'), b: { excluded: 'cracked' } },
      tested: readMoment('2026-04-08'),
      temperature: q('30 degC', 'temperature'),
    })
    const again = resistance(['874 ohm'], {
      tested: readMoment('2026-04-08T15:00'),
      'retest-of': readMoment('2026-04-08'),
    })
    const [read] = judgedReadings(
      BULK_RESISTIVITY,
      { ...mortar, resistivity: [first, again] },
      condition,
      readMoment('2026-05-01'),
    ).map(worded)
    expect(read).toMatchObject({
      valid: false,
      reasons: [
        'specimen b excluded: cracked',
        'the age cannot be verified to the hour: a clock time is missing',
        'the saturation of the specimens when read is not stated',
        'read at 30 °C, outside 23 °C ± 2 °C',
        'replaced by the retest of 8\u00a0April 2026, 15:00',
      ],
    })
  })
  it('gives none for a mortar without that test', () => {
    expect(judgedReadings(COMPRESSIVE_STRENGTH, mortar, WARM, readMoment('2026-05-01'))).toEqual([])
  })
})

describe('readingAt and validReadingAt', () => {
  const read = (age: string, valid: boolean, tested: string): JudgedReading => {
    const reading: MortarReading = { age: readAge(age), tested: readMoment(tested) }
    return { reading, valid, reasons: [] } as unknown as JudgedReading
  }
  const moment = (found: JudgedReading | undefined) => found?.reading.tested.text

  it('take the last valid reading of the age', () => {
    const readings = [
      read('28 d', true, '2026-04-08'),
      read('28 d', true, '2026-04-09'),
      read('28 d', false, '2026-04-10'),
    ]
    expect([
      moment(readingAt(readings, readAge('28 d'))),
      moment(validReadingAt(readings, readAge('28 d'))),
    ]).toEqual(['2026-04-09', '2026-04-09'])
  })
  it('differ where none is valid: the last of them stands for the mortar, and none is valid', () => {
    const readings = [
      read('28 d', false, '2026-04-08'),
      read('28 d', false, '2026-04-09'),
      read('7 d', true, '2026-04-10'),
    ]
    expect([moment(readingAt(readings, readAge('28 d'))), validReadingAt(readings, readAge('28 d'))]).toEqual(
      ['2026-04-09', undefined],
    )
  })
  it('find nothing at an age that was not read', () => {
    const readings = [read('7 d', true, '2026-04-08'), read('7 d', false, '2026-04-09')]
    expect([readingAt(readings, readAge('28 d')), validReadingAt(readings, readAge('28 d'))]).toEqual([
      undefined,
      undefined,
    ])
  })
})
