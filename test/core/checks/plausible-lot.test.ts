import { describe, expect, it } from 'vitest'
import { implausibleLot } from '../../../src/core/checks/plausible-lot.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const lot = { id: 'vale/V-1', number: 'V-1', quantity: { value: 500, written: '500 t' }, mortars: [] }
const grams = (value: number) => ({ value, written: `${value} g` })
const mortarWith = (water: number, control: number) => ({
  ...lot,
  mortars: [
    { condition: 'c311', control: 'K1', sample: 'C', water: grams(water), controlWater: grams(control) },
  ],
})

describe('implausibleLot', () => {
  it('implausibleLot warns of water that is less than half or more than twice its control’s', () => {
    // 23 / 242 is 9.5 %.
    const [finding] = implausibleLot(mortarWith(23, 242))
    expect(finding && wordedFinding(finding, PLAIN_NAMES)).toMatchObject({
      id: 'water-out-of-proportion/vale/V-1/c311/K1/C',
      severity: 'warning',
      sentence:
        'The mixing water of a mortar of lot V-1 of vale (c311) is 10 % of that of its control K1, outside the plausible range of 50 to 200 %',
      evidence: [
        '23\u00a0g beside 242\u00a0g',
        'the range is this program’s own choice; check the record and, if it is right, leave it',
      ],
    })
    expect(implausibleLot(mortarWith(121, 242))).toEqual([])
    expect(implausibleLot(mortarWith(484, 242))).toEqual([])
    expect(implausibleLot(mortarWith(485, 242))).toHaveLength(1)
  })

  it('implausibleLot takes every sign of a pattern but YYYY and # for itself', () => {
    const withNumber = (number: string) => implausibleLot({ ...lot, number, pattern: 'V.YYYY-##' })
    expect([withNumber('V.2026-01'), withNumber('v.2026-01')]).toEqual([[], []])
    for (const number of ['Vx2026-01', 'V.2026-1', 'V.2026-012', 'V.26-01'])
      expect(withNumber(number)).toHaveLength(1)
  })
})
