import { describe, expect, it } from 'vitest'
import { certificateView } from '../../../src/edition/views/certificate-view.ts'
import { certificate, clause, editionAround, entry, verdict } from './certificate-fixture.ts'

describe('certificateView', () => {
  it('names a certificate with its revision, a draft as such', () => {
    expect(certificateView(editionAround(), entry(), certificate()).name).toBe(
      'certificate hill/H-1, revision 1',
    )
    const draft = certificate({ revision: null, state: 'draft' })
    expect(certificateView(editionAround(), entry({ revisions: [] }), draft).name).toBe(
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
    const view = certificateView(editionAround(), entry(), certificate({ verdicts: [verdict(clauses)] }))
    expect(view.neutral).toBe('Wet sieving: not invoked; Ash alone: not applicable.')
    expect(view.record).toEqual([{ outcome: 'meets', text: 'Fuel: Stated: coal.' }])
  })
  it('leaves empty parts out', () => {
    expect(certificateView(editionAround(), entry(), certificate())).toMatchObject({
      neutral: null,
      record: [],
      history: null,
      annex: null,
    })
  })
})
