/** What mills print on a certificate beside results: letterhead, contacts, numbers of agencies and of orders. */
import { describe, expect, it } from 'vitest'
import { shipmentsTable } from '../../src/edition/writers/tables.ts'
import { particulars, told, TUFF, withLines } from './fields-front-door.ts'
import { lotText, SHARED } from './front-door.ts'
import { allShipments } from '../edition/all-shipments.ts'

const ORDER = 'PO 4500-1'
const SHIPPED = 'PO 4500-2'
const SITE = new Map(SHARED).get('site.yaml') ?? ''

const files = (site = '') => ({
  'site.yaml': `${SITE}drafts: yes\n${site}`,
  'sources/tuff.yaml': `${TUFF}agency-numbers:
  - { agency: Vale Roads, number: P-77, from: 2025-01-01 }
  - { agency: Vale Roads, number: P-12, to: 2024-12-31 }
`,
  ...withLines(
    'producers/hill.yaml',
    'telephone: +1 555 0100 ext. 7\nmail: office@hill.example\nletterhead: [Hill Pozzolans, "Since the hill was quarried"]',
  ),
  ...withLines('laboratories/quay.yaml', 'telephone: (555) 0101'),
  'lots/tuff/L1.yaml': lotText(
    {
      more: `purchase-order: ${ORDER}\nshipments: [{ bill: B1, date: 2026-03-05, mass: 20 t, project: Dam, purchase-order: ${SHIPPED} }]`,
    },
    0,
  ),
})

describe('a certificate', () => {
  const { internal } = told(files())

  it('has the letterhead of the producer over it', () => {
    expect(internal.lot('tuff/L1').certificate().shared.letterhead).toEqual([
      'Hill Pozzolans',
      'Since the hill was quarried',
    ])
  })
  it('prints telephone, mail, the agency’s number in force and the purchase order', () => {
    const facts = particulars(internal, 'tuff/L1')
    expect(facts.get('Telephone, mail')?.contacts?.map(({ text }) => text)).toEqual([
      '+1 555 0100 ext. 7',
      'office@hill.example',
    ])
    expect(facts.get('Agency’s number of the source')?.text).toBe('P-77 (Vale Roads)')
    const [laboratory] = internal.lot('tuff/L1').certificate().shared.laboratories
    expect(laboratory?.contacts).toEqual([
      { text: '(555) 0101', to: { kind: 'telephone', id: '(555) 0101' } },
    ])
  })
  it('says nothing of what is not on record', () => {
    const { internal: bare } = told({ 'lots/tuff/L1.yaml': lotText({}, 0) })
    const { shared } = bare.lot('tuff/L1').certificate()
    expect(Object.keys(shared)).not.toContain('letterhead')
    expect(Object.keys(shared.laboratories[0] ?? {})).toEqual(['name', 'particulars'])
    expect([...particulars(bare, 'tuff/L1').keys()]).not.toContain('Purchase order')
  })
})

describe('a purchase order', () => {
  const everything = (edition: ReturnType<typeof told>['public']) => {
    const lot = edition.lot('tuff/L1')
    return JSON.stringify([
      lot.record,
      lot.shipments,
      allShipments(edition),
      [...shipmentsTable(edition)],
      lot.certificate(),
      edition.source('tuff').record,
    ])
  }

  it('reaches no public page, table or certificate unless the site publishes it', () => {
    const { public: shown, internal } = told(files())
    expect(everything(shown)).not.toMatch(/4500/)
    expect(particulars(shown, 'tuff/L1').get('Purchase order')?.text).toBe('number not published')
    expect(everything(internal)).toContain(SHIPPED)
  })
  it('is printed where the site publishes it', () => {
    const { public: shown } = told(files('publish: [purchase-order]\n'))
    expect(particulars(shown, 'tuff/L1').get('Purchase order')?.text).toBe(ORDER)
    expect(everything(shown)).toContain(SHIPPED)
    // A project is another matter.
    expect(everything(shown)).not.toContain('Dam')
  })
})
