import { describe, expect, it } from 'vitest'
import { retests } from '../../../src/core/checks/retests.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const test = (lot: string, retest: 'first' | 'retest' = 'first') => ({ lot, retest })

describe('retests', () => {
  it('counts retests among all tests and names their lots once', () => {
    const made = [
      test('vale/A'),
      test('vale/A', 'retest'),
      test('vale/A', 'retest'),
      test('vale/B', 'retest'),
    ]
    const { looked, findings } = retests('vale', made)
    expect([looked, findings.map((finding) => wordedFinding(finding, PLAIN_NAMES))]).toMatchObject([
      4,
      [
        {
          id: 'retested/vale',
          severity: 'information',
          sentence: '3 of 4 mortar tests of vale are retests, of 2 lots',
          evidence: ['A and B', expect.any(String)],
        },
      ],
    ])
  })
  it('says nothing where none was made again', () => {
    expect(retests('vale', [test('vale/A')])).toEqual({ check: 'retested', looked: 1, findings: [] })
  })
})
