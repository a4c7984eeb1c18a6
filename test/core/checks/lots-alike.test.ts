import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { lotsAlike } from '../../../src/core/checks/lots-alike.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const PROPERTIES = ['density', 'loss-on-ignition', 'moisture', 'residue-45um']

function lot(name: string, ...written: readonly string[]): AuditedLot {
  const results = written.map((text, place) => ({
    property: PROPERTIES[place],
    role: 'producer',
    valid: true,
    written: text,
  }))
  return { id: `vale/${name}`, results } as unknown as AuditedLot
}

const LOTS = [
  lot('A', '2.31 g/cm3', '2.10 %', '0.1 %', '17.2 %'),
  lot('B', '2.32 g/cm3', '2.11 %', '0.2 %', '17.3 %'),
  lot('C', '2.33 g/cm3', '2.12 %', '0.3 %', '17.4 %'),
  lot('D', '2.34 g/cm3', '2.13 %', '0.4 %', '17.5 %'),
]

describe('lotsAlike', () => {
  it('asks about two lots that agree in four values where one of ten pairs agrees in each', () => {
    // Of 10 pairs of 5 lots, 1 in 10 agrees in each of four values: 10 × 0.1⁴ = 0.001 pairs by chance.
    const copied = lot('E', '2.31 g/cm3', '2.10 %', '0.1 %', '17.2 %')
    const [finding] = lotsAlike('vale', [...LOTS, copied]).findings
    expect(finding?.id).toBe('lots-alike/vale/A/E')
    expect(finding?.reason.params).toMatchObject({ expected: expect.closeTo(0.001, 12) })
    expect(finding && wordedFinding(finding, PLAIN_NAMES).sentence).toBe(
      'All 4 measured values of 2 lots of vale are the same, to the last digit: A and E',
    )
  })
  it('asks nothing where one digit differs, nor where so few values agree often', () => {
    expect(
      lotsAlike('vale', [...LOTS, lot('E', '2.31 g/cm3', '2.10 %', '0.1 %', '17.3 %')]).findings,
    ).toEqual([])
    // Three values that half of all pairs share agree by chance in 1.25 of 10 pairs.
    const coarse = ['A', 'B', 'C', 'D', 'E'].map((name) => lot(name, '2.3 g/cm3', '2 %', '0.1 %'))
    expect(lotsAlike('vale', coarse)).toMatchObject({ looked: 1, findings: [] })
    expect(
      lotsAlike('vale', [lot('A', '2.31 g/cm3', '2.10 %'), lot('B', '2.31 g/cm3', '2.10 %')]).looked,
    ).toBe(0)
  })
})
