import { describe, expect, it } from 'vitest'
import type { BenchCondition } from '../../src/core/resistivity/bench-condition.ts'
import { type BenchDetail, benchDay } from '../../src/core/resistivity/bench-day.ts'
import { benchDetailWords, completenessWords, reproductionWords } from '../../src/words/bench-day.ts'
import { q } from '../core/readings/fixture.ts'

const celsius = (text: string) => q(text, 'temperature')
const kelvins = (text: string) => q(text, 'temperature-difference')
const time = (text: string) => q(text, 'duration')

/** Every detail, each with its sentence beside it below. */
const WHOLE: BenchCondition = {
  'first-day': {
    in: 'steel moulds under a lid',
    moist: 'yes',
    temperature: celsius('23 degC'),
    within: kelvins('1 degC'),
    for: time('24 h'),
  },
  curing: {
    medium: 'saturated-lime-water',
    temperature: celsius('50 degC'),
    within: kelvins('2 degC'),
    'control-and-test': 'apart',
    entry: { by: 'ramp', over: time('6 h') },
    bath: {
      vessel: 'lidded box of polypropylene',
      'liquid-to-specimens': 4,
      'solid-lime': 'kept',
      renewal: { at: 'intervals', every: time('7 d') },
      'materials-per-vessel': 1,
      evaporation: 'covered-and-topped-up',
      log: { 'bath-every': time('10 min'), 'core-every': time('1 h') },
    },
  },
  'before-test': {
    'cool-in': 'saturated-lime-water',
    to: celsius('23 degC'),
    within: kelvins('1 degC'),
    for: time('3 h'),
    'core-by': 'dummy-specimen',
    'control-and-test-within': time('15 min'),
  },
  control: {
    cement: { type: 'portland, one delivery' },
    'cement-alkalis': { 'at-least': q('0.50 %', 'fraction'), 'at-most': q('0.80 %', 'fraction') },
  },
  resistivity: {
    reading: {
      temperature: celsius('23 degC'),
      within: kelvins('2 degC'),
      'end-contact-at-most': q('5 %', 'fraction'),
    },
    frequency: q('1 kHz', 'frequency'),
    handling: {
      'out-of-liquid-at-most': time('5 min'),
      'control-and-test-within': time('2 min'),
      surface: 'surface-dry',
      'after-reading': 'read-once',
    },
    faces: 'moulded-only',
    directions: 2,
    measured: { sides: 'yes', mass: 'no' },
    meter: {
      'phase-at-most': q('5 deg', 'angle'),
      'contact-medium': 'wet-sponge',
      'contact-pressure': q('2 kPa', 'pressure'),
      'check-resistors': [q('100 ohm', 'resistance'), q('1 kohm', 'resistance'), q('10 kohm', 'resistance')],
      ceiling: q('18 kohm', 'resistance'),
    },
  },
}

/** Each with SI, and with US customary units where they differ. */
const SAID: Readonly<Record<BenchDetail, string | readonly [string, string]>> = {
  mould: 'steel moulds under a lid, moist',
  'first-temperature': ['23 °C ± 1 °C', '73.4 °F ± 1.8 °F'],
  'first-hours': 'for 24 h',
  entry: 'in a ramp over 6 h',
  'bath-temperature': ['saturated lime water at 50 °C ± 2 °C', 'saturated lime water at 122 °F ± 3.6 °F'],
  'bath-log': 'temperature of the bath logged every 10 min',
  'core-log': 'temperature of the core of a specimen logged every 1 h',
  vessel: 'lidded box of polypropylene',
  'liquid-to-specimens': '4 volumes of liquid to 1 of specimens',
  'solid-lime': 'solid lime throughout',
  renewal: 'liquid renewed every 7 d',
  'materials-per-vessel': 'each material in a vessel of its own',
  evaporation: 'covered and topped up',
  'control-cured': 'control and test apart',
  'cooled-in': 'in saturated lime water',
  'cooled-for': 'for 3 h',
  'cooled-to': ['to 23 °C ± 1 °C', 'to 73.4 °F ± 1.8 °F'],
  'core-when-read': 'core temperature by a dummy specimen',
  'cooled-alike': 'control and test cooled alike, within 15 min',
  'out-of-liquid': 'out of the liquid for at most 5 min, control and test within 2 min',
  surface: 'surface-dry: wiped until no film of water is left',
  faces: 'read across moulded faces only',
  directions: 'in 2 directions, averaged into one value of the specimen',
  sides: 'sides measured',
  mass: 'not weighed',
  frequency: '1 kHz',
  phase: 'phase angle at most 5°',
  'contact-medium': 'contact by wet sponge',
  // 2 kPa over 6.894757 kPa: 0.2901 psi.
  'contact-pressure': ['under 2 kPa', 'under 0.29 psi'],
  'contact-resistance': 'end contacts at most 5 % of a reading',
  'check-resistors': 'checked on 100 Ω, 1 kΩ and 10 kΩ',
  ceiling: 'ceiling 18 kΩ, above which a reading is written > 18 kΩ',
  'after-reading': 'each specimen is read once',
  'cement-type': 'portland, one delivery',
  'cement-alkalis': 'alkalis at least 0.50 % and at most 0.80 % as Na₂O',
}

const EMPTY: BenchCondition = {
  curing: { medium: 'saturated-lime-water', temperature: celsius('50 degC') },
  resistivity: { reading: { temperature: celsius('23 degC'), within: kelvins('2 degC') } },
}

describe('benchDetailWords', () => {
  it.each(Object.entries(SAID) as [BenchDetail, string | readonly [string, string]][])(
    'says %s as the record has it, in SI and in US customary units',
    (detail, said) => {
      const [si, us] = typeof said === 'string' ? [said, said] : said
      expect(benchDetailWords(detail, WHOLE, 'SI')).toBe(si)
      expect(benchDetailWords(detail, WHOLE, 'US')).toBe(us)
    },
  )
  it.each([
    ['entry', { entry: { by: 'step' } }, 'in one step'],
    ['solid-lime', { bath: { 'solid-lime': 'none' } }, 'no solid lime'],
    ['renewal', { bath: { renewal: { at: 'never' } } }, 'liquid never renewed'],
    ['renewal', { bath: { renewal: { at: 'each-age' } } }, 'liquid renewed after each age'],
    ['materials-per-vessel', { bath: { 'materials-per-vessel': 3 } }, 'at most 3 materials in a vessel'],
    ['liquid-to-specimens', { bath: { 'liquid-to-specimens': 1 } }, '1 volume of liquid to 1 of specimens'],
    ['evaporation', { bath: { evaporation: 'not-controlled' } }, 'evaporation not controlled'],
    ['control-cured', { 'control-and-test': 'together' }, 'control and test together'],
  ] as const)('says the other ways of curing: %s', (detail, curing, said) => {
    expect(benchDetailWords(detail, { ...EMPTY, curing: { ...EMPTY.curing, ...curing } }, 'SI')).toBe(said)
  })
  it.each([
    ['directions', { directions: 1 }, 'in 1 direction'],
    ['faces', { faces: 'trowelled-too' }, 'read across the trowelled face too'],
    ['sides', { measured: { sides: 'no' } }, 'nominal sides'],
    ['mass', { measured: { mass: 'yes' } }, 'weighed'],
    ['surface', { handling: { surface: 'damp' } }, 'wiped but damp'],
    [
      'after-reading',
      { handling: { 'after-reading': 'returned' } },
      'specimens return to the bath and are read again at later ages',
    ],
  ] as const)('says the other ways of reading: %s', (detail, resistivity, said) => {
    const reading = EMPTY.resistivity?.reading
    if (reading === undefined) throw new Error('no reading')
    expect(benchDetailWords(detail, { ...EMPTY, resistivity: { reading, ...resistivity } }, 'SI')).toBe(said)
  })
  it('says nothing of what is not recorded, and something of all that counts as recorded', () => {
    for (const condition of [EMPTY, WHOLE])
      for (const { detail, recorded } of benchDay(condition))
        if (recorded || detail !== 'bath-temperature')
          expect([detail, benchDetailWords(detail, condition, 'SI') !== undefined]).toEqual([
            detail,
            recorded,
          ])
  })
})

describe('completenessWords', () => {
  it('counts what is recorded and names what is not, in the order of the day', () => {
    expect(
      completenessWords([
        { detail: 'mould', recorded: true },
        { detail: 'entry', recorded: false },
        { detail: 'ceiling', recorded: false },
      ]),
    ).toBe(
      '1 of 3 details that reproduce the test are recorded; not recorded: entry to the bath (step or ramp), the meter’s ceiling',
    )
    expect(completenessWords(benchDay(WHOLE))).toBe('all 35 details that reproduce the test are recorded')
  })
  it('is short beside the name of a condition', () => {
    expect(reproductionWords(7, 35)).toBe('7 of 35 details that reproduce the resistivity test are recorded')
  })
})
