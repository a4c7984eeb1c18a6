import { describe, expect, it } from 'vitest'
import { fact } from '../../../src/edition/printed/fact.ts'
import { identification, printedOrigin } from '../../../src/edition/printed/identification.ts'
import { certificate } from '../certificate-fixture.ts'

const document = certificate()
const of = (more: Parameters<typeof certificate>[0] = {}) => {
  const facts = certificate(more)
  const { before, after } = printedOrigin(facts)
  return new Map([...before, ...identification(facts), ...after].map((own) => [own.label, own]))
}

describe('identification', () => {
  it('names producer, source, class with its set, period and quantity', () => {
    const facts = of()
    expect(facts.get('Producer')?.text).toBe('Hill Pozzolans, Mill Lane 2, Hill')
    expect(facts.get('Plant or terminal; unit')?.text).toBe('Mill 2')
    expect(facts.get('Source')).toMatchObject({
      lead: { text: 'Hill tuff', to: { kind: 'source', id: 'hill' } },
      text: '',
    })
    expect(facts.get('Material, class')?.text).toBe('raw natural pozzolan, class N of VALE 1, edition 1')
    expect(facts.get('Produced')?.text).toBe('2 to 8\u00a0March 2026')
    expect(facts.get('Quantity')?.text).toBe('1450\u00a0t (1598\u00a0short\u00a0tons)')
  })
  it('prints how to reach the producer, the agencies’ numbers and the purchase order where they are on record', () => {
    const labels = ['Telephone, mail', 'Agency’s number of the source', 'Purchase order']
    expect(labels.filter((label) => of().has(label))).toEqual([])
    const facts = of({
      producer: { ...document.producer, telephone: '+1 555 0100', mail: 'office@hill.example' },
      source: { ...document.source, agencyNumbers: [{ agency: 'Vale Roads', number: 'P-77' }] },
      lot: { ...document.lot, purchaseOrder: '4500-1' },
    })
    expect(facts.get('Telephone, mail')?.contacts).toEqual([
      { text: '+1 555 0100', to: { kind: 'telephone', id: '+1 555 0100' } },
      { text: 'office@hill.example', to: { kind: 'mail', id: 'office@hill.example' } },
    ])
    expect(facts.get('Agency’s number of the source')?.text).toBe('P-77 (Vale Roads)')
    expect(facts.get('Purchase order')?.text).toBe('4500-1')
  })
  it('leaves what is not recorded out and keeps its place', () => {
    expect(of().get('Safety data sheet')?.text).toBeUndefined()
    expect(of({ lot: { ...document.lot, class: null } }).get('Material, class')?.text).toBe(
      'raw natural pozzolan, no class claimed',
    )
  })
  it('asks an ash for its coal and a pozzolan for its deposit', () => {
    expect(of().get('Deposit')?.text).toBe('Bench 3')
    const ash = of({
      source: { ...document.source, kind: 'harvested-coal-ash', coalSources: ['Pit 1', 'Pit 2'] },
    })
    expect([ash.has('Deposit'), ash.get('Storage cell')?.text]).toEqual([false, 'Bench 3'])
    expect(ash.get('Coal sources')?.text).toBe('Pit 1, Pit 2')
    expect(ash.get('Co-firing; additives')?.text).toBeUndefined()
  })
  it('adds what only some lots have, the note over the whole width', () => {
    expect([...of().keys()]).not.toContain('Seals')
    const facts = of({
      lot: {
        ...document.lot,
        seals: ['1', '2'],
        blend: [
          { source: 'a', share: '40 %' },
          { source: 'b', share: '60 %' },
        ],
        note: 'wet feed',
      },
    })
    expect(facts.get('Seals')?.text).toBe('1, 2')
    expect(facts.get('Blended from')?.text).toBe('40 % a, 60 % b')
    expect(facts.get('Note')).toEqual({ label: 'Note', text: 'wet feed', wide: true })
  })
})

describe('fact', () => {
  it('joins what is known and is null without any of it', () => {
    expect(fact('Plant', ['Mill', null, '', '2'], '; ').text).toBe('Mill; 2')
    expect(fact('Plant', [null, '']).text).toBeUndefined()
  })
})
