import { describe, expect, it } from 'vitest'
import {
  printedCertificate,
  printedLot,
  printedShared,
} from '../../../src/edition/printed/printed-certificate.ts'
import { certificate, clause, verdict } from '../certificate-fixture.ts'

describe('printedCertificate', () => {
  it('names a certificate with its revision, a draft as such', () => {
    expect(printedCertificate(certificate()).name).toBe('certificate hill/H-1, revision 1')
    expect(printedCertificate(certificate({ revision: null, state: 'draft' })).name).toBe(
      'certificate hill/H-1, draft',
    )
  })
  it('says which clauses need no result, and what the record fulfils', () => {
    const clauses = [
      clause({ id: 'wet', title: 'Wet sieving', outcome: 'not-invoked' }),
      clause({ id: 'ash', title: 'Ash alone', outcome: 'not-applicable' }),
      clause({
        id: 'fuel',
        title: 'Fuel',
        kind: 'fact',
        property: undefined as never,
        reason: 'stated: coal',
      }),
    ]
    const printed = printedCertificate(certificate({ verdicts: [verdict(clauses)] }))
    expect(printed.neutral).toBe('Wet sieving: not invoked; Ash alone: not applicable.')
    expect(printed.record).toEqual([{ outcome: 'meets', text: 'Fuel: Stated: coal.' }])
  })
  it('signs with name, function, independence and date, and leaves a draft unsigned', () => {
    const by = (independent: boolean | null) =>
      printedCertificate(certificate({ by: { name: 'M. Okafor', function: 'chemist', independent } }))
        .signature
    expect(by(true)).toEqual({
      name: 'M. Okafor',
      particulars: 'chemist, independent of production; 8\u00a0April 2026',
    })
    expect(by(false)?.particulars).toContain('not independent of production')
    expect(by(null)?.particulars).toContain('independence from production not recorded')
    expect(printedCertificate(certificate({ issued: null, by: null }))).not.toHaveProperty('signature')
  })
  it('has no member for what the certificate has no use for', () => {
    const printed = printedCertificate(certificate())
    expect(printed).not.toHaveProperty('neutral')
    expect(printed).not.toHaveProperty('withdrawal')
    expect(JSON.stringify(printed)).not.toContain('null')
  })
})

describe('printedLot and printedShared', () => {
  it('hold analyses apart from the activity of mortars, and all words of the day', () => {
    const facts = certificate()
    expect(printedLot(facts).tables.map(({ title }) => title)).toEqual(['Composition'])
    expect(printedCertificate(facts).tables).toEqual([])
    expect(printedShared(facts)).toMatchObject({
      site: 'Register of the vale',
      set: { rule: 'As specified. Half of such lots are accepted.' },
      words: { outcomes: { meets: 'meets' } },
    })
  })
})
