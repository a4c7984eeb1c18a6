import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Comparison } from '../../../src/core/criteria/criterion.ts'
import { limitsForClass } from '../../../src/core/criteria/limits-for-class.ts'
import { compareWithLimit, type JudgedValue } from '../../../src/core/judging/compare-with-limit.ts'
import { limitAsSpecified } from '../../../src/core/judging/limit-as-specified.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { setOf } from './fixture.ts'

function specified(written: WrittenClause, judged: JudgedValue) {
  const clause = setOf([written]).clauses[0] as Comparison
  const [limit] = limitsForClass(clause.limits, null)
  if (limit === undefined) throw new Error('the clause needs a limit')
  const compared = compareWithLimit(judged, limit.operator, limit.quantities)
  return limitAsSpecified({ clause, limit, judged, compared })
}
const residue: WrittenClause = { clause: 'c', property: 'residue-45um', 'at-most': '34 %' }
const limit = { operator: 'at-most', written: ['34 %'] }
const figure = (value: number) => ({ value, decimals: 0, unit: '%' })

describe('limitAsSpecified', () => {
  it('limitAsSpecified states the value before rounding only where rounding changed it', () => {
    expect(specified(residue, { value: 34.4 })).toEqual({
      outcome: 'meets',
      reason: {
        code: 'compared-with-limit',
        params: { subject: 'value', compared: figure(34), unrounded: 34.4, met: true, limit },
      },
    })
    expect(specified(residue, { value: 35 })).toEqual({
      outcome: 'does-not-meet',
      reason: {
        code: 'compared-with-limit',
        params: { subject: 'value', compared: figure(35), met: false, limit },
      },
    })
  })

  it('limitAsSpecified states no value before rounding where it is shown in another unit', () => {
    // 2.4244 g/cm3 is 2424.4 kg/m3, compared as 2424.
    const dense: WrittenClause = { clause: 'c', property: 'density', 'at-least': '2400 kg/m3' }
    expect(specified(dense, { value: 2.4244 }).reason.params).toEqual({
      subject: 'value',
      compared: { value: 2424, decimals: 0, unit: 'kg/m3' },
      met: true,
      limit: { operator: 'at-least', written: ['2400 kg/m3'] },
    })
  })

  it('limitAsSpecified states none in another unit, though both show whole numbers', () => {
    // 203.7 ohm m is 20.37 kohm cm.
    const dense: WrittenClause = {
      clause: 'c',
      property: 'bulk-resistivity',
      condition: 'c311',
      age: readAge('28 d'),
      'at-least': '20 kohm cm',
    }
    expect(specified(dense, { value: 203.7 }).reason.params).toEqual({
      subject: 'value',
      compared: { value: 20, decimals: 0, unit: 'kohm cm' },
      met: true,
      limit: { operator: 'at-least', written: ['20 kohm cm'] },
    })
  })

  it('limitAsSpecified shows the value in the unit of the end that decides', () => {
    const range: WrittenClause = { clause: 'c', property: 'density', between: ['2000 kg/m3', '2.40 g/cm3'] }
    const compared = (value: number) => {
      const { params } = specified(range, { value }).reason
      return 'compared' in params ? params.compared : undefined
    }
    expect([compared(1.9), compared(2.5)]).toEqual([
      { value: 1900, decimals: 0, unit: 'kg/m3' },
      { value: 2.5, decimals: 2, unit: 'g/cm3' },
    ])
  })

  it('limitAsSpecified does not report what a censored value leaves open', () => {
    const below = (value: number) => specified(residue, { value, censored: 'below' })
    expect([below(34).outcome, below(40).outcome]).toEqual(['meets', 'not-reported'])
    expect(below(40).reason).toEqual({
      code: 'censored-with-limit',
      params: { below: figure(40), answer: 'cannot-decide', limit },
    })
  })

  it.each([
    ['value', {}],
    [
      'deviation',
      {
        'deviation-from': { declared: 'yes' },
        'at-most': undefined,
        'magnitude-at-most': '34 percentage points',
      },
    ],
    ['declared', { statistic: { declared: 'yes' } }],
    ['mean', { statistic: { 'rolling-mean': 3 } }],
  ])('limitAsSpecified names what is compared: %s', (subject, more) => {
    const { 'at-most': _, ...rest } = residue
    const written = 'at-most' in more ? { ...rest, ...more } : { ...residue, ...more }
    expect(specified(written as WrittenClause, { value: 1 }).reason.params).toMatchObject({ subject })
  })
})
