/** A severity that the site lowers: the finding says so, and the question stays open. */
import { describe, expect, it } from 'vitest'
import { sourceQuestions } from '../../src/edition/views/source-questions.ts'
import { uncheckedOf } from '../../src/edition/views/source-unchecked.ts'
import { uncheckedWords } from '../../src/words/unchecked.ts'
import { finding, tinyEdition, tinySource } from '../edition/tiny-edition.ts'
import { auditOf } from './audit-front-door.ts'

const NUMBERED = 'lot-number-pattern: T-YYYY-###'
const LOTS = { 'T-2026-001': {}, 'T-2026-003': {} }

describe('a severity that site.yaml lowers', () => {
  const gap = (site: string) => {
    const [found] = auditOf({ lots: LOTS, source: NUMBERED, site }).filter(
      ({ check }) => check === 'number-gap',
    )
    return [found?.severity, (found as { loweredFrom?: string } | undefined)?.loweredFrom]
  }

  it('is told with the finding, and what is not lowered says nothing of it', () => {
    expect(gap('checks: { number-gap: information }')).toEqual(['information', 'warning'])
    expect(gap('checks: { number-gap: warning }')).toEqual(['warning', undefined])
    expect(gap('')).toEqual(['warning', undefined])
  })

  it('leaves the question open on the page of its source', () => {
    const lowered = { ...finding('ash', 'information'), loweredFrom: 'warning' as const }
    const source = tinySource('ash', { findings: [lowered, finding('ash', 'information')] })
    const { open, closed } = sourceQuestions(tinyEdition([source], []), source)
    expect([open.length, closed.length]).toEqual([1, 1])
  })

  it('stands among what the source’s page says could not be checked', () => {
    const source = tinySource('ash')
    const whole = tinyEdition([source], [])
    const site = { ...whole.site, checks: { 'number-gap': 'information', 'report-late': 'information' } }
    const said = (of: typeof whole) => uncheckedOf(of, source, []).map(uncheckedWords)
    const lowered = (texts: readonly string[]) => texts.filter((text) => text.startsWith('Severity'))
    expect(lowered(said({ ...whole, site } as never))).toEqual([
      'Severity: this site shows the findings of 1 check as information though they are warnings by default: number-gap. They stay open questions.',
    ])
    expect(lowered(said(whole))).toEqual([])
    expect(said(whole).filter((text) => text.startsWith('Earlier texts'))).toHaveLength(1)
  })
})
