import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { ageReasons, checkAge } from '../../../src/core/mortar/age-tolerance.ts'
import { q } from '../readings/fixture.ts'

const CAST = '2026-03-11T09:20'
const AGES = {
  ages: [
    { age: readAge('7 d'), within: q('3 h', 'duration') },
    { age: readAge('28 d'), within: q('12 h', 'duration') },
  ],
}
const at = (tested: string, age = '28 d') =>
  ageReasons(readMoment(CAST), { age: readAge(age), tested: readMoment(tested) }, AGES)

describe('ageReasons', () => {
  // 28 d after 11 March 09:20 is 8 April 09:20; 12 h to either side are 7 April 21:20 and 8 April 21:20.
  it('finds nothing on the very tolerance, early or late', () => {
    expect(at('2026-04-07T21:20')).toEqual({ valid: true, reasons: [] })
    expect(at('2026-04-08T21:20')).toEqual({ valid: true, reasons: [] })
  })
  it('finds a test one minute beyond it, with its age in hours: 672 h and 12 h and a minute', () => {
    const late = at('2026-04-08T21:21')
    expect(late.valid).toBe(false)
    expect(late.reasons).toMatchObject([
      { code: 'age-outside', params: { age: '28 d', writtenTolerance: '12 h' } },
    ])
    const [reason] = late.reasons
    expect(reason?.code === 'age-outside' ? reason.params.testedHours : null).toBeCloseTo(684 + 1 / 60, 9)
    expect(at('2026-04-07T21:19').valid).toBe(false)
  })
  it('takes the tolerance of the age that was tested', () => {
    // 7 d is 18 March 09:20: four hours late is beyond 3 h, and within 12 h.
    expect(at('2026-03-18T13:20', '7 d').valid).toBe(false)
    expect(at('2026-04-08T13:20', '28 d').valid).toBe(true)
  })
  it('counts a test whose dates alone cannot tell, and says so', () => {
    expect(at('2026-04-08')).toEqual({
      valid: true,
      reasons: [{ code: 'age-cannot-be-verified', params: {} }],
    })
  })
  it('finds a test whose dates alone put it out of reach: 30 d less a day is beyond 28 d and 12 h', () => {
    expect(at('2026-04-10')).toEqual({
      valid: false,
      reasons: [{ code: 'age-outside', params: { testedHours: 720, age: '28 d', writtenTolerance: '12 h' } }],
    })
  })
  it('checks neither an age that the condition does not list nor a test not yet made', () => {
    expect(at('2026-06-09T09:20', '90 d')).toEqual({ valid: true, reasons: [] })
    expect(ageReasons(readMoment(CAST), { age: readAge('28 d') }, AGES)).toEqual({ valid: true, reasons: [] })
  })
})

describe('checkAge', () => {
  const check = (cast: string, tested: string) =>
    checkAge(readMoment(cast), readMoment(tested), readAge('7 d'), 3).check
  it('is within on the very limit of the tolerance and outside a minute beyond', () => {
    expect(check('2026-03-11T09:00', '2026-03-18T12:00')).toBe('within')
    expect(check('2026-03-11T09:00', '2026-03-18T12:01')).toBe('outside')
    expect(check('2026-03-11T09:00', '2026-03-18T06:00')).toBe('within')
  })
  it('cannot be verified from dates alone, unless they put the age out of reach', () => {
    expect(check('2026-03-11', '2026-03-18')).toBe('cannot-be-verified')
    expect(check('2026-03-11', '2026-03-20')).toBe('outside')
  })
  it('finds the tolerance of an age under either of its texts', () => {
    const day = { ages: [{ age: readAge('3 d'), within: q('1 h', 'duration') }] }
    const reading = { age: readAge('72 h'), tested: readMoment('2026-03-14T11:00') }
    expect(ageReasons(readMoment('2026-03-11T09:00'), reading, day).valid).toBe(false)
  })
})
