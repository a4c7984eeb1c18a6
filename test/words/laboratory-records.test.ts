/** What a laboratory's record holds, in words. */
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../src/core/measure/moment.ts'
import {
  bridgeWords,
  closedWords,
  deviceWords,
  phaseWords,
  roundWords,
} from '../../src/words/laboratory-records.ts'

const on = readMoment
const said = (text: string) => text.replaceAll('\u00a0', ' ')

describe('deviceWords', () => {
  const device = {
    mark: 'P1',
    kind: 'press',
    every: { value: 365 * 24 },
    verified: [on('2024-05-21'), on('2025-05-19')],
  }
  it('says when the next verification is due, 365 days after the last, or was', () => {
    expect(said(deviceWords(device, on('2026-05-19')))).toBe(
      'P1, press: verified 19 May 2025, next due 19 May 2026',
    )
    expect(said(deviceWords(device, on('2026-05-20')))).toBe(
      'P1, press: verified 19 May 2025, next was due 19 May 2026',
    )
  })

  it('names the evidence, a last day of its own, and what is out of use', () => {
    const sand = {
      ...device,
      kind: 'standard sand',
      due: on('2025-12-31'),
      record: 'lot S-9',
      correction: '+4.2 %',
    }
    expect(said(deviceWords(sand, on('2026-01-01')))).toBe(
      'P1, standard sand: verified 19 May 2025 (lot S-9, correction +4.2 %), next was due 31 Dec 2025',
    )
    expect(said(deviceWords({ ...sand, used: { to: on('2025-11-30') } }, on('2026-01-01')))).toBe(
      'P1, standard sand: verified 19 May 2025 (lot S-9, correction +4.2 %), in use until 30 Nov 2025',
    )
  })
  it('takes the last whatever the order, and says what is not recorded', () => {
    const { every: _, ...free } = device
    expect(
      said(deviceWords({ ...free, verified: [on('2025-05-19'), on('2024-05-21')] }, on('2026-05-20'))),
    ).toBe('P1, press: verified 19 May 2025, no interval recorded')
    expect(deviceWords({ ...device, verified: [] }, on('2026-05-20'))).toBe(
      'P1, press: no verification recorded',
    )
  })
})

describe('what else a record holds', () => {
  it('is said with its days', () => {
    expect(said(closedWords({ from: on('2025-12-24'), to: on('2025-12-26') }))).toBe('24 to 26 December 2025')
    expect(bridgeWords({ from: 'MC-2', to: 'MC-3', pairs: [{}, {}] })).toBe(
      'MC-2 to MC-3: 2 pairs of control batches',
    )
    const phase = { title: 'after the outage', from: on('2025-03-02'), to: on('2025-06-30') }
    expect(said(phaseWords({ ...phase, properties: ['density'] }))).toBe(
      'after the outage: 2 March 2025 to 30 June 2025, for Density',
    )
    const round = { round: 'Round 3', date: on('2025-06-13'), property: 'density', z: -3.2 } as const
    expect(said(roundWords({ ...round, cause: 'bath too warm', closed: on('2025-07-04') }))).toBe(
      'Round 3, 13 Jun 2025, Density: z −3.2 (bath too warm; closed 4 Jul 2025)',
    )
  })
})
