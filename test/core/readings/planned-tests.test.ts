import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { ControlMortar, LotEvidence, TestMortar } from '../../../src/core/mortar/mortar.ts'
import { plannedTests } from '../../../src/core/readings/planned-tests.ts'
import { evidence, resistance, strength } from './fixture.ts'

function planned(
  test: Partial<TestMortar>,
  control: Partial<ControlMortar> = {},
  more: Partial<LotEvidence> = {},
) {
  const lot = evidence({ test, control, more })
  return lot.tests.flatMap((mortar) => plannedTests(mortar, lot))
}
const names = (tests: ReturnType<typeof planned>) => tests.map(({ property, age }) => `${property} ${age}`)

describe('plannedTests', () => {
  it('awaits mean and index of each age listed, once, strength before resistivity', () => {
    expect(
      names(
        planned({
          resistivity: [{ age: readAge('28 d') }],
          strength: [{ age: readAge('7 d') }, { age: readAge('28 d') }, { age: readAge('7 d') }],
        }),
      ),
    ).toEqual([
      'compressive-strength 7 d',
      'strength-activity-index 7 d',
      'compressive-strength 28 d',
      'strength-activity-index 28 d',
      'bulk-resistivity 28 d',
      'resistivity-index 28 d',
    ])
  })
  it('awaits the index alone where the test mortar was read and its control was not, or is not on record', () => {
    const read = { resistivity: [resistance(['874 ohm'])] }
    expect(names(planned(read))).toEqual(['resistivity-index 28 d'])
    expect(names(planned(read, {}, { controls: new Map() }))).toEqual(['resistivity-index 28 d'])
    expect(planned(read, { resistivity: [resistance(['874 ohm'])] })).toEqual([])
  })
  it('takes a reading at another age, or of another kind, for no reading of the control', () => {
    const read = { strength: [strength(['100 kN'])] }
    expect(names(planned(read, { strength: [strength(['100 kN'], { age: readAge('7 d') })] }))).toEqual([
      'strength-activity-index 28 d',
    ])
    expect(names(planned(read, { resistivity: [resistance(['874 ohm'])] }))).toEqual([
      'strength-activity-index 28 d',
    ])
  })
  it('says whose reading is missing: of a mean the lot’s, of an index the lot’s, the control’s or both', () => {
    const [own, none] = [{ strength: [strength(['100 kN'])] }, { strength: [{ age: readAge('28 d') }] }]
    const unread = (test: Partial<TestMortar>, control: Partial<ControlMortar>) =>
      planned(test, control).map((result) => result.unread)
    expect(unread(none, none)).toEqual(['lot', 'both'])
    expect(unread(none, own)).toEqual(['lot', 'lot'])
    expect(unread(own, none)).toEqual(['control'])
  })
  it('says of an index without a control on record that the result is missing: a finished figure may be it', () => {
    const bare = planned({ strength: [{ age: readAge('28 d') }], control: undefined as never })
    expect(bare.map((result) => result.unread)).toEqual(['lot', 'result'])
  })
  it('says when it is due and of which sample it is', () => {
    expect(
      planned({ strength: [{ age: readAge('7 d') }] }, {}, { asOf: readMoment('2026-03-20') })[0],
    ).toEqual({
      property: 'compressive-strength',
      condition: 'warm',
      age: readAge('7 d'),
      unread: 'lot',
      laboratory: 'quay',
      sample: 'C',
      sampleKind: 'composite',
      begun: readMoment('2026-03-11T09:20'),
      due: readMoment('2026-03-18'),
    })
  })
  it('is overdue since the first day on which it is said, the one after 18 March, 3 h and 168 h', () => {
    const since = (asOf: string) =>
      planned({ strength: [{ age: readAge('7 d') }] }, {}, { asOf: readMoment(asOf) })[0]?.overdueSince?.text
    expect([since('2026-03-25'), since('2026-03-26')]).toEqual([undefined, '2026-03-26'])
  })
  it('is awaited for the tolerance of its own age: 28 d and 12 h, 7 d and 3 h', () => {
    // 8 April 09:20 and 12 h are 21:20: 2 h of grace stay within the day, 3 h do not. 18 March 09:20 and 3 h are
    // 12:20: 11 h stay, 12 h do not.
    const since = (age: string, graceHours: number) =>
      planned({ strength: [{ age: readAge(age) }] }, {}, { asOf: readMoment('2026-05-01'), graceHours })[0]
        ?.overdueSince?.text
    expect([since('28 d', 2), since('28 d', 3)]).toEqual(['2026-04-09', '2026-04-10'])
    expect([since('7 d', 11), since('7 d', 12)]).toEqual(['2026-03-19', '2026-03-20'])
  })
  it('has no tolerance at an age that the condition does not list', () => {
    // 91 d after 11 March 09:20 are 10 June 09:20; 15 h of grace reach the next day at 00:20, 14 h do not.
    const since = (graceHours: number) =>
      planned({ strength: [{ age: readAge('91 d') }] }, {}, { asOf: readMoment('2026-06-12'), graceHours })[0]
        ?.overdueSince?.text
    expect([since(14), since(15)]).toEqual(['2026-06-11', '2026-06-12'])
  })
  it('plans from the day of casting on, and nothing at a condition that is not on record', () => {
    const test = { strength: [{ age: readAge('7 d') }] }
    expect(planned(test, {}, { asOf: readMoment('2026-03-10') })).toEqual([])
    expect(planned(test, {}, { asOf: readMoment('2026-03-11') })).toHaveLength(2)
    expect(planned(test, {}, { conditions: new Map() })).toEqual([])
  })
})
