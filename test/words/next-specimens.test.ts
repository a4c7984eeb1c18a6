import { describe, expect, it } from 'vitest'
import { readAge } from '../../src/core/measure/age.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { nextSpecimensWords, type NextSpecimens } from '../../src/words/next-specimens.ts'

const LIMIT = { operator: 'at-least', written: ['75 %'], from: 74.5, onIndex: true, control: 40 } as const
const LOAD = { kind: 'force', unit: 'kN', decimals: 1, factor: 2.5, plus: 0 } as const
const RULE = { of: 3, rangePercent: 8.7 }
const NEXT: NextSpecimens = {
  of: 'strength',
  age: readAge('28 d'),
  read: 2,
  planned: 3,
  needed: { left: 1, each: 31.001, rule: RULE, inRange: { from: 28.001, to: 31.009 } },
  asRead: LOAD,
  limit: LIMIT,
}

const said = (next: Partial<NextSpecimens>) => nextSpecimensWords({ ...NEXT, ...next }).map(plainSpaces)

describe('nextSpecimensWords', () => {
  // 31.001 MPa on 2500 mm² are 77.5025 kN; 28.001 MPa 70.0025 kN; 31.009 MPa 77.5225 kN.
  it('gives loads, rounded to the side on which they still hold', () => {
    expect(said({})).toEqual([
      '28 d strength, 2 of 3 specimens read: the specimen left must reach 77.6 kN for an index of at least 75 % (74.5 % before rounding, control 40.00 MPa).',
      'All 3 stay within the permissible range of 8.7 % of the mean if it reads 70.1 kN to 77.5 kN.',
    ])
  })

  // One pound-force is 4.4482216152605 N.
  it('gives them in pounds-force where they are read so', () => {
    expect(said({ asRead: { ...LOAD, unit: 'lbf', decimals: 0 } })[0]).toContain('must reach 17424 lbf')
  })

  it('gives strengths where no load was read', () => {
    const { asRead: _asRead, ...stated } = NEXT
    expect(nextSpecimensWords(stated).map(plainSpaces)[0]).toContain('must reach 31.1 MPa')
  })

  it('says where the limit lies beyond the range, where no value keeps it, and where any will do', () => {
    expect(said({ needed: { left: 1, each: 33, rule: RULE, inRange: { from: 28, to: 31 } } })[1]).toMatch(
      /77\.5 kN, which does not reach the limit\.$/,
    )
    expect(said({ needed: { left: 2, each: 33, rule: RULE, inRange: null } })[1]).toMatch(
      /no value keeps all 3 within/,
    )
    expect(said({ needed: { left: 2, each: -1 } })).toEqual([
      expect.stringContaining('is reached whatever each of the 2 specimens left gives'),
    ])
  })

  // 40 ohm m over 100 mm between sections of 2500 mm² read 40 x 1000 x 100 / 2500 = 1600 ohm, with 25 ohm of contacts 1625.
  it('gives resistances with their end contacts, and says whose number of specimens it counts', () => {
    const resistivity: NextSpecimens = {
      ...{ of: 'resistivity', age: readAge('28 d'), read: 2, planned: 3, asControl: true },
      needed: { left: 1, each: 40.0001 },
      asRead: { kind: 'resistance', unit: 'ohm', decimals: 0, factor: 40, plus: 25 },
      limit: { operator: 'at-least', written: ['200 %'], from: 199.5, onIndex: true, control: 19.25 },
    }
    const words = (next: Partial<NextSpecimens>) =>
      nextSpecimensWords({ ...resistivity, ...next }).map(plainSpaces)
    expect(words({})).toEqual([
      '28 d resistivity, 2 of 3 specimens read, counting as many as of the control: the specimen left must reach 1626 Ω for an index of at least 200 % (199.5 % before rounding, control 19.25 Ω·m).',
    ])
    const { asRead: _, ...stated } = resistivity
    const onMean = { operator: 'at-least', written: ['38 ohm m'], from: 37.5, onIndex: false } as const
    expect(nextSpecimensWords({ ...stated, limit: onMean }).map(plainSpaces)).toEqual([
      expect.stringMatching(
        /must reach 40\.1 Ω·m for a mean of at least 38 Ω·m \(37\.50 Ω·m before rounding\)\.$/,
      ),
    ])
  })

  it('says the range alone where no limit is known', () => {
    expect(said({ needed: { left: 1, rule: RULE, inRange: { from: 28, to: 31 } } })).toEqual([
      expect.stringMatching(/^All 3 stay within/),
    ])
  })
})
