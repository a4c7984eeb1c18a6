import { describe, expect, it } from 'vitest'
import { grouped, sentence } from './listing.ts'

const change = (lot: number, was: string | null, is: string | null) => ({
  where: `check:demo:/lots/${lot}/state`,
  pattern: 'check:*:/lots/*/state',
  was,
  is,
})

describe('grouped', () => {
  it('shows ten examples of a pattern, then a count', () => {
    const lines = grouped(
      Array.from({ length: 25 }, (_, lot) => change(lot, `meets ${lot} clauses`, `pending ${lot} clauses`)),
    ).split('\n')
    expect(lines).toHaveLength(12)
    expect([lines[0], lines.at(-1)]).toEqual(['check:*:/lots/*/state: 25 differences', '  and 15 more'])
  })

  it('keeps a rare change apart from a frequent one at the same spots', () => {
    const text = grouped([
      ...Array.from({ length: 30 }, (_, lot) => change(lot, 'meets', 'pending')),
      change(40, 'meets', 'does-not-meet'),
    ])
    expect(text).toContain('check:demo:/lots/40/state: was meets, is does-not-meet')
  })
})

describe('sentence', () => {
  it('says what was added and what is gone', () => {
    expect(sentence(change(1, null, '2'))).toBe('check:demo:/lots/1/state: was not there, is 2')
    expect(sentence(change(1, '1', null))).toBe('check:demo:/lots/1/state: was 1, is gone')
  })

  it('shows the surroundings of the first difference in a long text', () => {
    const long = 'word '.repeat(100)
    expect(sentence(change(1, `${long}meets${long}`, `${long}pending${long}`))).toMatch(
      /was ….*meets.*…, is ….*pending.*…/,
    )
  })
})
