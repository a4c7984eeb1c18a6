import { describe, expect, it } from 'vitest'
import { readAge } from '../../src/core/measure/age.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { nextSpecimensWords, type NextSpecimens } from '../../src/words/next-specimens.ts'

const LIMIT = { operator: 'at-least', written: ['75 %'], from: 74.5, controlMPa: 40 } as const
const RULE = { of: 3, rangePercent: 8.7 }
const NEXT: NextSpecimens = {
  age: readAge('28 d'),
  read: 2,
  planned: 3,
  needed: { left: 1, each: 31.001, rule: RULE, inRange: { from: 28.001, to: 31.009 } },
  load: { unit: 'kN', decimals: 1 },
  areaMm2: 2500,
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
    expect(said({ load: { unit: 'lbf', decimals: 0 } })[0]).toContain('must reach 17424 lbf')
  })

  it('gives strengths where no load was read', () => {
    const { load: _load, ...stated } = NEXT
    expect(nextSpecimensWords({ ...stated, areaMm2: null }).map(plainSpaces)[0]).toContain(
      'must reach 31.1 MPa',
    )
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

  it('says the range alone where no limit is known', () => {
    expect(said({ needed: { left: 1, rule: RULE, inRange: { from: 28, to: 31 } } })).toEqual([
      expect.stringMatching(/^All 3 stay within/),
    ])
  })
})
