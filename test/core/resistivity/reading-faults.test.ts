import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { MortarCondition, ResistivityReading } from '../../../src/core/mortar/mortar.ts'
import { readingFaults, temperaturesApart } from '../../../src/core/resistivity/reading-faults.ts'
import { readingNotes } from '../../../src/core/resistivity/reading-notes.ts'
import type { ResultReason } from '../../../src/core/result/reason.ts'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'
import { q as quantity } from '../readings/fixture.ts'

const said = (reasons: readonly ResultReason[]) => reasons.map(resultReasonWords)
/** As sentences, so that codes and figures are held at once. */
const faults = (...asked: Parameters<typeof readingFaults>) => said(readingFaults(...asked))

describe('readingFaults', () => {
  const asked: { resistivity: NonNullable<MortarCondition['resistivity']> } = {
    resistivity: {
      specimen: { shape: 'cube' },
      conditioning: 'saturated-lime-water',
      saturation: 'stated',
      reading: {
        temperature: quantity('23 degC', 'temperature'),
        within: quantity('2 degC', 'temperature-difference'),
        'end-contact-at-most': quantity('5 %', 'fraction'),
        'verification-within': quantity('1 %', 'fraction'),
      },
    },
  }
  const reading: ResistivityReading = {
    age: readAge('28 d'),
    temperature: quantity('23 degC', 'temperature'),
    'end-contact': quantity('10 ohm', 'resistance'),
    saturation: 'saturated',
    verification: { known: quantity('1000 ohm', 'resistance'), read: quantity('1010 ohm', 'resistance') },
    specimens: { a: quantity('200 ohm', 'resistance'), b: quantity('400 ohm', 'resistance') },
  }

  it('takes contacts of 5 % and a meter off by 1 % on the very limit', () => {
    expect(faults(reading, asked)).toEqual([])
    expect(readingNotes(reading, asked)).toEqual([])
  })

  it('names contacts that are a larger share of the smallest reading, leaving excluded specimens out', () => {
    // 10 / 199 = 5.03 %.
    expect(faults({ ...reading, specimens: { a: quantity('199 ohm', 'resistance') } }, asked)).toEqual([
      'the end-contact resistance is 5.0 % of a reading, more than 5 %',
    ])
    expect(
      faults(
        {
          ...reading,
          specimens: {
            a: { resistance: quantity('100 ohm', 'resistance'), excluded: 'cracked' },
            b: quantity('400 ohm', 'resistance'),
          },
        },
        asked,
      ),
    ).toEqual([])
  })

  it('names a meter that is off, or that nobody verified', () => {
    expect(
      faults(
        {
          ...reading,
          verification: {
            known: quantity('1000 ohm', 'resistance'),
            read: quantity('1011 ohm', 'resistance'),
          },
        },
        asked,
      ),
    ).toEqual(['the meter read 1011 Ω on a resistor of 1000 Ω, off by more than 1 %'])
    const { verification: _none, ...unverified } = reading
    expect(faults(unverified, asked)).toEqual(['no reading on a known resistor is on record'])
  })

  it('notes a saturation that is not stated', () => {
    const { saturation: _none, ...unstated } = reading
    expect(said(readingNotes(unstated, asked))).toEqual([
      'the saturation of the specimens when read is not stated',
    ])
  })

  it('takes a temperature on either limit, and none a tenth beyond', () => {
    const at = (text: string) => faults({ ...reading, temperature: quantity(text, 'temperature') }, asked)
    expect([at('25 degC'), at('21 degC')]).toEqual([[], []])
    // 24.1 − 23 is 1.1 and binary dust.
    const narrow = { ...asked.resistivity.reading, within: quantity('1.1 degC', 'temperature-difference') }
    expect(
      faults(
        { ...reading, temperature: quantity('24.1 degC', 'temperature') },
        { resistivity: { ...asked.resistivity, reading: narrow } },
      ),
    ).toEqual([])
    expect(at('25.1 degC')).toEqual(['read at 25.1 °C, outside 23 °C ± 2 °C'])
    expect(at('20.9 degC')).toEqual(['read at 20.9 °C, outside 23 °C ± 2 °C'])
  })

  it('takes contacts on the very limit where the share is 5 % and binary dust: 1.1 Ω of 22 Ω', () => {
    const small = {
      ...reading,
      'end-contact': quantity('1.1 ohm', 'resistance'),
      specimens: { a: quantity('22 ohm', 'resistance') },
    }
    expect(faults(small, asked)).toEqual([])
    expect(faults({ ...small, specimens: { a: quantity('21.9 ohm', 'resistance') } }, asked)).toEqual([
      'the end-contact resistance is 5.0 % of a reading, more than 5 %',
    ])
  })

  it('compares contacts with resistances alone, among sizes too, and with the smallest of them', () => {
    const contacts = (specimens: NonNullable<ResistivityReading['specimens']>) =>
      faults({ ...reading, specimens }, asked)
    expect(contacts({ a: quantity('1 ohm m', 'resistivity') })).toEqual([])
    expect(contacts({ a: { resistivity: quantity('1 ohm m', 'resistivity') } })).toEqual([])
    // 10 Ω of 160 Ω are 6.25 %, printed half to even.
    expect(
      contacts({
        a: quantity('900 ohm', 'resistance'),
        b: { resistance: quantity('160 ohm', 'resistance') },
      }),
    ).toEqual(['the end-contact resistance is 6.2 % of a reading, more than 5 %'])
    const { specimens: _none, ...bare } = reading
    expect(faults(bare, asked)).toEqual([])
  })

  it('takes a meter off by 1 % either way, binary dust included: 101.101 Ω on 100.1 Ω', () => {
    const read = (text: string, known = '1000 ohm') =>
      faults(
        {
          ...reading,
          verification: { known: quantity(known, 'resistance'), read: quantity(text, 'resistance') },
        },
        asked,
      )
    expect([read('990 ohm'), read('101.101 ohm', '100.1 ohm')]).toEqual([[], []])
    expect(read('989 ohm')).toEqual(['the meter read 989 Ω on a resistor of 1000 Ω, off by more than 1 %'])
  })

  it('takes a billionth beyond a limit for binary dust, and two billionths for what they are', () => {
    // Off by exactly 2 °C, 5 % (10 Ω of 200 Ω) and 1 % (1010 Ω on 1000 Ω).
    const beyond = (dust: string) => {
      const limits = {
        ...asked.resistivity.reading,
        within: quantity(`1.99999999${dust} degC`, 'temperature-difference'),
        'end-contact-at-most': quantity(`4.99999999${dust} %`, 'fraction'),
        'verification-within': quantity(`0.99999999${dust} %`, 'fraction'),
      }
      return readingFaults(
        { ...reading, temperature: quantity('25 degC', 'temperature') },
        { resistivity: { ...asked.resistivity, reading: limits } },
      ).map(({ code }) => code)
    }
    expect(beyond('9')).toEqual([])
    expect(beyond('8')).toEqual(['temperature-outside', 'end-contacts-beyond', 'meter-off'])
  })

  it('asks for neither contacts nor meter where the condition limits none', () => {
    const { 'end-contact-at-most': _1, 'verification-within': _2, ...plain } = asked.resistivity.reading
    const silent = { resistivity: { ...asked.resistivity, reading: plain } }
    const { verification: _3, ...unverified } = reading
    expect(faults({ ...unverified, 'end-contact': quantity('199 ohm', 'resistance') }, silent)).toEqual([])
  })

  it('finds nothing wrong with contacts that are not on record', () => {
    const { 'end-contact': _none, ...uncontacted } = reading
    expect(faults(uncontacted, asked)).toEqual([])
  })

  it('holds the conditioning of the reading, else of the condition, against what the condition asks', () => {
    const { conditioning: _none, ...silent } = asked.resistivity
    const unasked = { resistivity: silent }
    expect(faults({ ...reading, conditioning: 'sealed' }, asked)).toEqual([
      'read sealed; the condition requires specimens to be read from saturated lime water',
    ])
    expect(faults({ ...reading, conditioning: 'saturated-lime-water' }, asked)).toEqual([])
    expect(faults({ ...reading, conditioning: 'sealed' }, unasked)).toEqual([])
    expect(faults(reading, unasked)).toEqual(['the conditioning when read is not on record'])
  })

  it('names every fault of one reading, conditioning and temperature first', () => {
    const { temperature: _1, verification: _2, ...worst } = reading
    expect(
      faults({ ...worst, conditioning: 'fog', 'end-contact': quantity('40 ohm', 'resistance') }, asked),
    ).toEqual([
      'read from fog; the condition requires specimens to be read from saturated lime water',
      'the temperature of the specimens when read is not on record',
      'the end-contact resistance is 20.0 % of a reading, more than 5 %',
      'no reading on a known resistor is on record',
    ])
  })

  it('has one fault where the condition describes no reading', () => {
    expect(faults(reading, {})).toEqual([
      'the condition describes no resistivity reading, so its geometry and temperature are not known',
    ])
  })

  it('asks for no saturation where the condition does not', () => {
    const { saturation: _1, ...unstated } = reading
    const { saturation: _2, ...silent } = asked.resistivity
    expect(readingNotes(unstated, { resistivity: silent })).toEqual([])
    expect(readingNotes(unstated, { resistivity: { ...silent, saturation: 'not-asked' } })).toEqual([])
    expect(readingNotes(unstated, {})).toEqual([])
  })
})

describe('temperaturesApart', () => {
  const at = (text: string): ResistivityReading => ({
    age: readAge('28 d'),
    temperature: quantity(text, 'temperature'),
  })
  const apart = (
    test: ResistivityReading,
    control: ResistivityReading,
    condition: Parameters<typeof temperaturesApart>[1] = {},
  ) => temperaturesApart({ test, control }, condition, 1)
  const stated = {
    resistivity: {
      specimen: { shape: 'cube' as const },
      reading: {
        temperature: quantity('23 degC', 'temperature'),
        within: quantity('2 degC', 'temperature-difference'),
        'control-and-test-within': quantity('1.1 degC', 'temperature-difference'),
      },
    },
  }

  it('finds nothing on the very limit, either way', () => {
    expect([apart(at('24 degC'), at('23 degC')), apart(at('23 degC'), at('24 degC'))]).toEqual([[], []])
  })
  it('finds a tenth beyond it, with both temperatures and what is allowed', () => {
    const params = { testCelsius: 24.1, controlCelsius: 23, withinCelsius: 1 }
    expect(apart(at('24.1 degC'), at('23 degC'))).toEqual([{ code: 'temperatures-apart', params }])
  })
  it('takes what the condition allows before the default, binary dust included', () => {
    expect(apart(at('21.1 degC'), at('20 degC'), stated)).toEqual([])
    expect(apart(at('21.2 degC'), at('20 degC'), stated)).toMatchObject([{ params: { withinCelsius: 1.1 } }])
  })
  it('takes a billionth beyond the limit for binary dust, and no more', () => {
    const within = (limit: number) =>
      temperaturesApart({ test: at('24 degC'), control: at('23 degC') }, {}, limit)
    expect(within(0.999999999)).toEqual([])
    expect(within(0.999999998)).toHaveLength(1)
  })
  it('leaves a temperature that is not on record to its own reading', () => {
    expect(apart({ age: readAge('28 d') }, at('50 degC'))).toEqual([])
    expect(apart(at('50 degC'), { age: readAge('28 d') })).toEqual([])
  })
})
