import { describe, expect, it } from 'vitest'
import type { Quantity } from '../../src/core/measure/units.ts'
import { conditionName, ratioText } from '../../src/words/studies.ts'

const share: Quantity = { kind: 'fraction', value: 30, unit: '%', written: '30 %', decimals: 0 }
const plain = (text: string) => text.replaceAll(/\s/g, ' ')

describe('conditionName', () => {
  const conditions = {
    A: { replacement: share, cement: 'C1', curing: 'fog' },
    B: { replacement: share, cement: 'C2', curing: 'fog' },
    C: { title: 'fifty', cement: 'C2' },
    D: { title: 'twice' },
    E: { title: 'twice' },
  }
  it('adds what tells a condition from another of the same words, and nothing else', () => {
    expect(plain(conditionName(conditions, 'A'))).toBe('30 %, cement C1')
    expect(plain(conditionName(conditions, 'B'))).toBe('30 %, cement C2')
    expect(conditionName(conditions, 'C')).toBe('fifty')
  })
  it('adds the code where nothing else tells two apart', () => {
    expect(conditionName(conditions, 'D')).toBe('twice, D')
    expect(conditionName(conditions, 'X')).toBe('X')
  })
})

describe('ratioText', () => {
  it('keeps apart what is close to one', () => {
    expect([1.0025, 1.28, 10.04].map((ratio) => plain(ratioText(ratio)))).toEqual([
      '× 1.002',
      '× 1.28',
      '× 10.0',
    ])
  })
})
