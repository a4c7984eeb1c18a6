import { describe, expect, it } from 'vitest'
import { parseAllowances, sift } from './allowed.ts'
import type { Difference } from './difference.ts'
import { WrongUse } from './wrong-use.ts'

const difference = (where: string, was: string | null = '1', is: string | null = '2'): Difference => ({
  where,
  pattern: where,
  was,
  is,
})
const allowed = (where: string, spot: string) =>
  sift([difference(spot)], [{ where, reason: 'wanted' }]).allowed.length === 1

describe('sift', () => {
  it.each([
    [
      'check:demo@2025-06-30:/lots/*/verdicts/*/reasonCodes',
      'check:demo@2025-06-30:/lots/tuff~1TL-1/verdicts/c618/reasonCodes',
      true,
    ],
    ['check:*:/lots/*/state', 'check:demo@2025-06-30:/lots/tuff~1TL-1/state', true],
    ['check:*:/lots/*/state', 'check:demo@2025-06-30:/lots/tuff~1TL-1/verdicts/state', false],
    ['check:**/reasonCodes', 'check:demo@2025-06-30:/lots/tuff~1TL-1/verdicts/c618/reasonCodes', true],
    ['check:**', 'site:index.html', false],
    ['site:lots/**', 'site:lots/tuff/TL-1/index.html', true],
    ['site:feed.xml', 'site:feedxxml', false],
    ['site:feed.xml', 'site:feed.xml.gz', false],
  ])('holds %s against %s', (where, spot, expected) => {
    expect(allowed(where, spot)).toBe(expected)
  })

  it('allows a change of words alone where the words are given', () => {
    const allowances = [{ where: 'site:**', was: 'mend', is: 'fix', reason: 'plain words' }]
    const sifted = sift(
      [
        difference('site:a', 'mend: mend it', 'fix: fix it'),
        difference('site:a', 'mend: 1', 'fix: 2'),
        difference('site:a', 'mend', null),
      ],
      allowances,
    )
    expect([sifted.allowed.length, sifted.unexpected.length]).toEqual([1, 2])
  })

  it('tells which allowances matched nothing', () => {
    const allowances = [
      { where: 'site:a', reason: 'wanted' },
      { where: 'site:b', reason: 'wanted once' },
    ]
    expect(sift([difference('site:a')], allowances).unused).toEqual([allowances[1]])
  })
})

describe('parseAllowances', () => {
  it.each([
    '{}',
    '[',
    '[{ "where": "site:a" }]',
    '[{ "where": "site:a", "reason": " " }]',
    '[{ "where": "a", "reason": "b", "was": "c" }]',
    '[{ "where": "a", "reason": "b", "wass": "c" }]',
    '[null]',
  ])('refuses %s', (text) => {
    expect(() => parseAllowances(text)).toThrow(WrongUse)
  })

  it('reads a list', () => {
    expect(parseAllowances('[{ "where": "site:a", "reason": "wanted" }]')).toHaveLength(1)
  })
})
