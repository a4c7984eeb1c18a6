/** A further set that a lot, or the project of a shipment, invokes: that lot is judged under it, and no other. */
import { describe, expect, it } from 'vitest'
import { unpackSource } from '../../src/core/evidence/source-evidence.ts'
import { judge } from '../../src/core/judging/verdict.ts'
import { lotData, sourceEvidenceData } from '../../src/edition/writers/lot-data.ts'
import { ALONE, told, TUFF } from './fields-front-door.ts'
import { lotText, SHARED } from './front-door.ts'

const SITE = new Map(SHARED).get('site.yaml') ?? ''
const STRICT = `title: Viaduct demands
edition: "1"
kinds: [raw-natural-pozzolan]
clauses:
  - { clause: wet, property: moisture, at-most: 1.0 % }
  - { clause: iron, property: Fe2O3, at-most: 9.0 %, optional: yes }
`
const files = (lots: readonly [string, string], site = '') => ({
  'site.yaml': `${SITE}drafts: yes\n${site}`,
  'criteria/alone.yaml': ALONE,
  'criteria/strict.yaml': STRICT,
  'sources/tuff.yaml': TUFF,
  'lots/tuff/L1.yaml': lotText({ more: lots[0] }, 1),
  'lots/tuff/L2.yaml': lotText({ more: lots[1] }, 0),
})
const PROJECT = 'projects: [{ name: Viaduct, criteria: [{ set: strict, requested: [iron] }] }]\n'
const shipped = (project: string, date = '2026-03-05') =>
  `shipments: [{ bill: B1, date: ${date}, mass: 20 t, project: ${project} }]`
const judged = ({ report }: ReturnType<typeof told>) =>
  report.lots.map(({ verdicts }) => verdicts.map(({ criterion, outcome }) => `${criterion}: ${outcome}`))

describe('a set that a lot invokes', () => {
  it('judges that lot beside the listed ones, which go on governing', () => {
    const found = told(files(['criteria: [{ set: strict }]', '']))
    expect(found.diagnostics).toEqual([])
    expect(judged(found)).toEqual([['alone: meets', 'strict: does-not-meet'], ['alone: meets']])
    expect(found.internal.site.criteria).toEqual(['alone'])
    const { governing, others } = found.public.lot('tuff/L1').certificate().printed.verdicts
    expect(governing?.outcome).toBe('meets')
    expect(others.map(({ headline }) => headline.text)).toEqual([expect.stringContaining('Viaduct demands')])
    expect(found.public.lot('tuff/L2').certificate().printed.verdicts.others).toEqual([])
  })
  it('may ask for its optional clauses', () => {
    const clause = (lines: string) =>
      told(files([lines, ''])).report.lots[0]?.verdicts[1]?.clauses.find(({ id }) => id === 'iron')?.outcome
    expect(clause('criteria: [{ set: strict }]')).toBe('not-invoked')
    expect(clause('criteria: [{ set: strict, requested: [iron] }]')).toBe('not-reported')
  })
  it('gives a reader’s browser the same verdict', () => {
    const { internal } = told(files(['criteria: [{ set: strict, requested: [iron] }]', '']))
    const { evidenceOf } = unpackSource(JSON.parse(JSON.stringify(sourceEvidenceData(internal, 'tuff'))))
    const strict = internal.criteria.get('strict')
    if (strict === undefined) throw new RangeError('the set is on record')
    expect(judge(strict, evidenceOf(0))).toEqual(internal.lot('tuff/L1').verdicts[1])
    expect(judge(strict, evidenceOf(1)).clauses[1]?.outcome).toBe('not-invoked')
  })
  it('must be one for its material', () => {
    const slag = { 'criteria/strict.yaml': STRICT.replace('raw-natural-pozzolan', 'slag') }
    expect(told({ ...files(['criteria: [{ set: strict }]', '']), ...slag }).diagnostics).toEqual([
      expect.stringMatching(
        /L1\.yaml:\d+ reference-mismatch: the specification strict does not judge raw-natural-pozzolan$/,
      ),
    ])
  })
  it('is not judged twice where it is listed already', () => {
    expect(judged(told(files(['criteria: [{ set: alone }]', ''])))[0]).toEqual(['alone: meets'])
  })
})

describe('a set that a project asks for', () => {
  it('judges a lot that was shipped to it, from the day of the shipment on', () => {
    const found = told(files([shipped('Viaduct'), shipped('Dam')], PROJECT))
    expect(found.diagnostics).toEqual([])
    expect(judged(found)).toEqual([['alone: meets', 'strict: does-not-meet'], ['alone: meets']])
    const later = told(files([shipped('Viaduct', '2026-03-11'), ''], PROJECT))
    expect(judged(later)[0]).toEqual(['alone: meets'])
  })
  it('judges every lot that a shipment may be of', () => {
    const source = `${TUFF}shipments: [{ bill: B9, date: 2026-03-05, mass: 20 t, lots: [L1, L2], project: Viaduct }]\n`
    const found = told({ ...files(['', ''], PROJECT), 'sources/tuff.yaml': source })
    expect(judged(found).map(([, second]) => second)).toEqual([
      'strict: does-not-meet',
      'strict: does-not-meet',
    ])
  })
  it('tells the public of no project that is not published, in rows, pages and certificates', () => {
    const lines = [shipped('Viaduct'), ''] as const
    const seen = (edition: ReturnType<typeof told>['public']) =>
      JSON.stringify([
        edition.lots.get('tuff/L1'),
        edition.lot('tuff/L1').verdicts,
        edition.lot('tuff/L1').certificate(),
        edition.sources.get('tuff'),
        edition.source('tuff').criteria,
        lotData(edition, edition.lot('tuff/L1')),
      ])
    const hidden = told(files(lines, PROJECT))
    expect(seen(hidden.public)).not.toMatch(/strict|Viaduct/)
    // The certificate is one and the same for everybody; the internal edition judges all the same.
    expect(JSON.stringify(hidden.internal.lot('tuff/L1').certificate())).not.toMatch(/Viaduct/)
    expect(hidden.internal.lot('tuff/L1').verdicts).toHaveLength(2)
    const open = told(files(lines, `${PROJECT}publish: [project]\n`))
    expect(open.public.lot('tuff/L1').verdicts).toHaveLength(2)
    expect(JSON.stringify(open.public.lot('tuff/L1').certificate())).toContain('Viaduct demands')
  })
})
