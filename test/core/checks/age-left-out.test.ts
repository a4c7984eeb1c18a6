import { describe, expect, it } from 'vitest'
import { agesLeftOut } from '../../../src/core/checks/age-left-out.ts'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

function lot(name: string, ages: readonly string[], planned: readonly string[] = []): AuditedLot {
  const test = { property: 'strength-activity-index', condition: 'c311', role: 'producer' }
  const of = (list: readonly string[]) => list.map((age) => ({ ...test, age: readAge(age) }))
  return { id: `vale/${name}`, results: of(ages), planned: of(planned) } as unknown as AuditedLot
}

const BOTH = ['7 d', '28 d']

describe('agesLeftOut', () => {
  it('asks for the 7 d index of a lot that has 28 d alone, where most lots have both', () => {
    const { findings } = agesLeftOut('vale', [lot('A', BOTH), lot('B', BOTH), lot('C', ['28 d'])])
    expect(findings.map((finding) => wordedFinding(finding, PLAIN_NAMES).sentence)).toEqual([
      '1 of 3 lots of vale with a 28 d strength activity index (c311) has none at 7 d',
    ])
  })
  it('asks nothing where 28 d alone is the habit, or where the age is planned', () => {
    expect(agesLeftOut('vale', [lot('A', ['28 d']), lot('B', ['28 d']), lot('C', BOTH)]).findings).toEqual([])
    expect(agesLeftOut('vale', [lot('A', BOTH), lot('B', ['28 d'], ['7 d'])]).findings).toEqual([])
  })
})
