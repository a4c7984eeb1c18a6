import { describe, expect, it } from 'vitest'
import { classBesideCalcium } from '../../../src/core/checks/class-and-calcium.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

type Lots = Parameters<typeof classBesideCalcium>[1]

function lot(name: string, claimed: string | null, calcium: number): Lots[number] {
  const results = [{ property: 'CaO', role: 'producer', valid: true, value: calcium }]
  return { id: `vale/${name}`, class: claimed, results } as unknown as Lots[number]
}

describe('classBesideCalcium', () => {
  it('asks where lots lie on the other side of 18 % than their class; 18.0 % is class F', () => {
    const lots = [lot('A', 'C', 24.1), lot('B', 'C', 18.0), lot('C', 'C', 17.2), lot('D', 'C', 18.9)]
    const [finding] = classBesideCalcium('vale', lots).findings
    const worded = finding && wordedFinding(finding, PLAIN_NAMES)
    expect([worded?.id, worded?.sentence, worded?.evidence[0]]).toEqual([
      'class-beside-calcium/vale',
      '2 of 4 lots of vale, of class C, have CaO of 18 % or less, which is class F by calcium oxide',
      'B 18.0 %, C 17.2 %',
    ])
    expect(worded?.evidence[1]).toContain('3 of 4 lots within one point of 18 %')
  })
  it('asks nothing of lots on the side of their class, nor of other classes', () => {
    expect(classBesideCalcium('vale', [lot('A', 'F', 18.0), lot('B', 'C', 18.1)])).toMatchObject({
      looked: 2,
      findings: [],
    })
    expect(classBesideCalcium('vale', [lot('A', 'N', 24), lot('B', null, 24)]).looked).toBe(0)
  })
})
