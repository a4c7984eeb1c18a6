import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { departuresOf } from '../../../src/edition/certificate/departures.ts'

const dropped = {
  code: 'specimen-dropped',
  params: { mark: 'b', measure: 'range', of: 3, percent: 9.42, limitPercent: 8.7 },
} as const
const of = (property: string, reasons: readonly object[]) =>
  ({ property, condition: 'warm', age: readAge('28 d'), reasons }) as unknown as Result

describe('departuresOf', () => {
  it('names a dropped specimen once for a mean and its index, with condition and age', () => {
    const results = [of('compressive-strength', [dropped]), of('strength-activity-index', [dropped])]
    expect(departuresOf(results, () => '50 %, 50 °C', 'SI')).toEqual([
      {
        of: '50 %, 50 °C, 28 d',
        reason:
          'the range of 3 specimens is 9.4 % of the mean, over 8.7 %; specimen b, farthest from the mean, is dropped',
      },
    ])
  })
  it('names a retest, a specimen dropped of the control, and a value left out', () => {
    const retested = { code: 'replaced-by-retest', params: { retested: readMoment('2026-04-20') } }
    const ofControl = { code: 'control-fault', params: { control: 'K1', reason: dropped } }
    const excluded = { code: 'value-excluded', params: { why: 'wet crucible' } }
    const found = departuresOf(
      [of('compressive-strength', [retested, ofControl]), of('loss-on-ignition', [excluded])],
      (id) => id,
      'SI',
    )
    expect(found.map(({ of: what, reason }) => `${what}: ${reason.slice(0, 20)}`)).toEqual([
      'warm, 28 d: replaced by the rete',
      'warm, 28 d: control K1: the rang',
      'Loss on ignition: excluded: wet crucib',
    ])
  })
  it('leaves notes alone that are no departure', () => {
    const note = { code: 'saturation-not-stated', params: {} }
    expect(departuresOf([of('bulk-resistivity', [note])], (id) => id, 'SI')).toEqual([])
  })
})
