/** What is accredited where a laboratory's scope names whole standards: the method of each result decides. */
import { describe, expect, it } from 'vitest'
import { laboratoryPageView } from '../../src/edition/views/laboratory-page.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { told, withLines } from './fields-front-door.ts'
import { lotText, mortar, SHARED } from './front-door.ts'

const COOL = new Map(SHARED).get('conditions/cool.yaml') ?? ''
const scoped = (scope: string, standing = 'standard') =>
  told({
    'conditions/cool.yaml': COOL.replace('modified', standing),
    ...withLines(
      'laboratories/quay.yaml',
      `accreditation: [{ body: Board, number: B-1, from: 2025-01-01, ${scope} }]
methods:
  SO3: [{ method: ASTM C311, edition: "22" }]
  MgO: [{ method: ASTM C114 }]
  strength-activity-index: [{ method: ASTM C311, edition: "22" }]`,
    ),
    'lots/tuff/L1.yaml': lotText(
      {
        on: '2026-01-03',
        analyses: 'SO3: 2.0 %, MgO: 1.0 %, CaO: 3.0 %',
        more: mortar('2026-01-05', ['{ age: 7 d, tested: 2026-01-12T09:00, mean: 24.0 MPa, of: 3 }']),
      },
      0,
    ),
  })
/** What the certificate marks as not accredited: results with a line of their own, then those without a limit. */
const outside = ({ internal }: ReturnType<typeof told>) => {
  const { lot, printed } = internal.lot('tuff/L1').certificate()
  const marked = <T extends { readonly remarks: string }>(all: readonly T[]) =>
    all.filter(({ remarks }) => remarks.includes('not accredited'))
  const tables = [...lot.tables, ...printed.tables]
  return [
    ...tables.flatMap(({ lines }) => marked(lines).map(({ title }) => plainSpaces(title))),
    ...tables.flatMap(({ plain }) => marked(plain).flatMap(({ items }) => items.map(({ name }) => name))),
  ]
}

/** By no method on record. */
const MOISTURE = 'Moisture content'

describe('a scope that names a standard', () => {
  it('covers results by its method in any edition, and no others', () => {
    const found = scoped('standards: [ASTM C311]')
    expect(found.diagnostics).toEqual([])
    expect(outside(found)).toEqual([MOISTURE, 'CaO', 'MgO', 'Compressive strength'])
  })
  it('covers another standard and single properties named beside it', () => {
    expect(outside(scoped('standards: [ASTM C311, C114], scope: [CaO]'))).toEqual([
      MOISTURE,
      'Compressive strength',
    ])
  })
  it('does not cover a modified condition, unless it is listed', () => {
    const index = 'Strength activity index, modified (20 %, 23 °C), 7 d'
    expect(outside(scoped('standards: [ASTM C311]', 'modified'))).toContain(index)
    expect(outside(scoped('standards: [ASTM C311], conditions: [cool]', 'modified'))).not.toContain(index)
  })
  it('stands on the page of the laboratory', () => {
    const { internal } = scoped('standards: [ASTM C311], scope: [CaO]')
    expect(laboratoryPageView(internal, 'quay').accreditation[0]?.scope).toBe(
      'all of ASTM C311; Calcium oxide',
    )
  })
})
