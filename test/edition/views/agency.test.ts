import { describe, expect, it } from 'vitest'
import { AGENCY_CHECKS } from '../../../src/core/checks/agency-findings.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { agencyView } from '../../../src/edition/views/agency.ts'
import { agencyOfLot } from '../../../src/edition/views/agency-of-lot.ts'
import { loadRecords } from '../../../src/records/load.ts'

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })

describe('agencyView', () => {
  const view = agencyView(edition, 'skarnmere-ash')

  it('says that splits alone test the testing only', () => {
    expect(view.counts).toBe('0 independent samples, 5 splits on record')
    expect(view.caution).toBe('No independent sample on record: splits test the testing only')
  })

  it('states mean, interval, precision and sides of the splits of one test', () => {
    const loss = view.split.find(({ title }) => title.replaceAll(/\s/g, ' ') === 'Loss on ignition')
    // numpy and scipy on the five differences of the records, 0.56, 0.55, 0.48, 0.47 and 0.70: mean 0.552, 95 %
    // interval ± 0.114, p 0.0002.
    expect(loss?.sentences.map((text) => text.replaceAll(/\s/g, ' '))).toEqual([
      'Mean difference +0.552 points ± 0.114 points (95 %, 5 pairs, paired t: p below 0.001)',
      '1 of 5 beyond the limit of difference; about 0.2 expected by chance',
      '1 pair on opposite sides of a limit',
      'Differences add up to +2.76 points',
    ])
    expect(loss?.chart).toMatchObject({ hasBand: true, hasBeyond: true, hasRing: true, hasChange: true })
  })

  it('lists every pair with both values, independent samples first', () => {
    const { all, independent, split } = agencyView(edition, 'tarn-hollow-tuff')
    expect(all).toHaveLength([...independent, ...split].reduce((sum, { rows }) => sum + rows.length, 0))
    expect(all[0]?.kind).toBe('independent sample')
    expect(all.at(-1)?.kind).toBe('split sample')
  })

  it('shows an independent sample apart where the splits agree, with the power of what agrees', () => {
    const tuff = agencyView(edition, 'tarn-hollow-tuff')
    const said = (title: string) =>
      tuff.independent
        .find((one) => one.title.replaceAll(/\s/g, ' ') === title)
        ?.sentences.map((text) => text.replaceAll(/\s/g, ' '))
    expect(said('Residue on 45 µm, wet')?.at(2)).toContain('means differ at 1 %')
    expect(said('Loss on ignition')?.at(-1)).toBe(
      // scipy 1.17.1, noncentral t with 18 degrees of freedom: 0.4451.
      '4 against 16 at 1 % see a shift of 1.5 s in 45 % of cases: no difference shown is not agreement',
    )
  })
})

describe('agencyOfLot', () => {
  it('sets 6.00 % beside the agency’s 6.55 % with difference, limit and sides', () => {
    const rows = agencyOfLot(edition, edition.lot('skarnmere-ash/SA-2024-010'))?.rows ?? []
    const loss = rows.find(({ test }) => test.replaceAll(/\s/g, ' ') === 'Loss on ignition')
    const plain = (text = '') => text.replaceAll(/\s/g, ' ')
    expect([loss?.producer, loss?.agency, loss?.difference, loss?.allowed].map(plain)).toEqual([
      '6.00 %',
      '6.55 %',
      '+0.55 points',
      '0.57 points',
    ])
    expect(loss?.sides.map(plain)).toEqual([
      'at most 6.0 %: the producer’s meets, the agency’s would not meet',
    ])
  })

  it('is nothing for a lot that no agency tested', () => {
    expect(agencyOfLot(edition, edition.lot('skarnmere-ash/SA-2026-001'))).toBeNull()
  })
})

describe('an edition that does not publish verification', () => {
  const closed = computeEdition(
    { ...records, site: { ...records.site, publish: ['persons', 'findings'] } },
    { program: 'test' },
  )
  const shown = forAudience(closed, 'public')

  it('gives no agency result of a source or a lot', () => {
    expect(shown.source('skarnmere-ash').agency()).toBeNull()
    expect(agencyView(shown, 'skarnmere-ash')).toMatchObject({ published: false, all: [], counts: '' })
    expect(agencyOfLot(shown, shown.lot('skarnmere-ash/SA-2024-010'))).toBeNull()
  })

  it('gives no finding that they gave rise to, and the others all the same', () => {
    const codes = [...shown.lots.keys()].flatMap((id) =>
      shown.lot(id).findings.map(({ reason }) => reason.code),
    )
    const about = [...shown.sources.keys()].flatMap((id) =>
      shown.source(id).findings.map(({ reason }) => reason.code),
    )
    expect(
      [...codes, ...about].filter((code) => (AGENCY_CHECKS as readonly string[]).includes(code)),
    ).toEqual([])
    expect(codes).toContain('result-overdue')
    expect(closed.source('skarnmere-ash').findings.map(({ reason }) => reason.code)).toContain('split-bias')
  })

  it('gives them within the house', () => {
    expect(agencyView(closed, 'skarnmere-ash').split).not.toEqual([])
  })
})

describe('an edition as of an earlier day', () => {
  it('counts an agency’s result from the day on which it was known', () => {
    const asOf = (day: string) =>
      computeEdition(records, { program: 'test', asOf: readMoment(day) })
        .source('skarnmere-ash')
        .agency()?.splits
    expect([asOf('2024-07-24'), asOf('2024-07-25')]).toEqual([1, 2])
  })
})
