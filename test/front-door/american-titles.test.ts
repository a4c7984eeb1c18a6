/** Mills in the United States print the residue as fineness: so does a site in their units. */
import { describe, expect, it } from 'vitest'
import { plainSpaces } from '../../src/words/sentences.ts'
import { told, TUFF } from './fields-front-door.ts'
import { lotText, SHARED } from './front-door.ts'

const certificate = (units: 'SI' | 'US', clause: string) => {
  const { internal, report } = told({
    'site.yaml': (new Map(SHARED).get('site.yaml') ?? '').replace('units: SI', `units: ${units}`),
    'sources/tuff.yaml': TUFF,
    'criteria/alone.yaml': `title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, ${clause} }\n`,
    'lots/tuff/L1.yaml': lotText({ analyses: 'residue-45um: 36.0 %' }, 0),
  })
  const { lot } = internal.lot('tuff/L1').certificate()
  const names = lot.tables.flatMap(({ lines, plain }) => [
    ...lines.map(({ title }) => title),
    ...plain.flatMap(({ items }) => items.map(({ name }) => name)),
  ])
  const reasons = internal.lot('tuff/L1').certificate().printed.verdicts.governing?.reasons ?? []
  return { names: names.map(plainSpaces), reasons: reasons.map(plainSpaces).join(' '), report }
}
const LIMITED = 'property: residue-45um, at-most: 34 %'

describe('the residue on the 45 µm sieve', () => {
  it('is fineness, retained on No. 325, in US units, beside a limit and without one', () => {
    expect(certificate('US', LIMITED).names).toContain('Fineness, retained on No. 325')
    expect(certificate('US', 'property: moisture, at-most: 3 %').names).toContain(
      'Fineness, retained on No. 325',
    )
    expect(certificate('US', LIMITED).reasons).toContain('Fineness, retained on No. 325: 36 %')
  })
  it('keeps its own name in SI', () => {
    expect(certificate('SI', LIMITED).names).toContain('Residue on 45 µm, wet')
    expect(certificate('SI', LIMITED).reasons).not.toContain('325')
  })
})
