/** How a lot stands whose index may meet a limit at 7 d or at 28 d, when a result fails or never comes. */
import { describe, expect, it } from 'vitest'
import { mortar, mortarLot, reportOn, type TrialLot } from './front-door.ts'

const at = (age: string) =>
  `{ clause: at-${age}, property: strength-activity-index, condition: cool, age: ${age} d, at-least: 75 % }`
/** The control reached 30.0 MPa at 7 d. */
const at7 = (strength: string) => `{ age: 7 d, tested: 2026-01-12T09:00, mean: ${strength}, of: 3 }`
const late = '28 d strength activity index, modified (20 %, 23 °C) overdue since 10 February 2026'
const FINDING =
  'result-overdue: The 28 d strength activity index (20 %, 23 °C) of lot L1 of Trial has been overdue since 10 February 2026'

function standing(lot: TrialLot) {
  const report = reportOn({ clause: `any-of: [${at('7')}, ${at('28')}]`, lots: [lot] })
  return {
    words: report.standing,
    overdueSince: report.overdueSince,
    findings: report.findings.map(({ check, sentence }) => `${check}: ${sentence}`),
  }
}

describe('a lot without its 28 d result', () => {
  it('does not meet where 7 d failed and 28 d never came: it is not pending any more', () => {
    expect(standing(mortarLot(at7('20.0 MPa'), '{ age: 28 d }'))).toEqual({
      words: `Draft, never issued; would not meet on the results so far; ${late}; it can still meet the clause`,
      overdueSince: '2026-02-10',
      findings: [FINDING],
    })
  })

  it('meets so far where 7 d met, and is overdue all the same', () => {
    expect(standing(mortarLot(at7('27.0 MPa'), '{ age: 28 d }'))).toMatchObject({
      words: `Draft, never issued; would meet so far; ${late}`,
      findings: [FINDING],
    })
  })

  it('is pending until then, with the first date, and without a finding', () => {
    const cast = mortar('2026-03-05', ['{ age: 7 d }', '{ age: 28 d }'])
    expect(standing({ on: '2026-03-01', more: cast })).toEqual({
      words:
        'Draft, never issued; pending; 7 d strength activity index, modified (20 %, 23 °C) due 12 March 2026 (and 1 other result later)',
      overdueSince: null,
      findings: [],
    })
  })
})
