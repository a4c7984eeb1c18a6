import { readMoment } from '../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { found, warningOn } from '../../src/core/checks/finding.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import { wordedFinding } from '../../src/words/findings.ts'
import { PLAIN_NAMES } from '../words/plain-names.ts'
import type { Site } from '../../src/records/schema/loaded-records.ts'
import { finding, revision, shipment, tinyEdition, tinyLot, tinySource } from './tiny-edition.ts'
import { allShipments } from './all-shipments.ts'

/** A certified lot with a finding and a shipment, and a draft. */
function edition(site: object = {}): Edition {
  const point = (lot: string) => ({ lot, at: readMoment('2026-03-05'), value: 1, status: 'valid' as const })
  const points = [point('ash/1'), point('ash/2')]
  const ash = tinySource('ash', {
    findings: [finding('ash')],
    series: [
      { property: 'density', unit: 'g/cm3', decimals: 2, points },
      { property: 'SO3', unit: '%', decimals: 1, points: points.slice(1) },
    ],
  })
  const certified = tinyLot('ash/1', {
    state: 'complete',
    revisions: [revision(0, '2026-03-10')],
    findings: [finding('ash/1')],
    shipments: [{ ...shipment('ash/1', 'BL-1', '2026-03-12'), consignee: 'Quellan Mix', seal: '44871' }],
  })
  const draft = tinyLot('ash/2', { shipments: [shipment('ash/2', 'BL-2', '2026-03-13')] })
  return tinyEdition([ash], [certified, draft], {
    site: { title: 'Register', units: 'SI', criteria: [], ...site } as unknown as Site,
  })
}

describe('forAudience', () => {
  it('gives the internal audience the edition as it is', () => {
    const whole = edition()
    expect(forAudience(whole, 'internal')).toBe(whole)
  })

  it('leaves a draft out of rows, shipments and charts, and refuses to give it', () => {
    const shown = forAudience(edition(), 'public')
    expect([...shown.lots.keys()]).toEqual(['ash/1'])
    expect(shown.lotsOf('ash').map(({ id }) => id)).toEqual(['ash/1'])
    expect(allShipments(shown).map(({ bill }) => bill)).toEqual(['BL-1'])
    expect(shown.source('ash').series.map((series) => [series.property, series.points.length])).toEqual([
      ['density', 1],
    ])
    expect(shown.source('ash').unpublished).toBe(1)
    expect(() => shown.lot('ash/2')).toThrow('lot needs the id of a published lot, got ash/2')
  })

  it('makes a source or a lot once for all pages that ask for it while it is held', () => {
    const shown = forAudience(edition(), 'public')
    const [source, lot] = [shown.source('ash'), shown.lot('ash/1')]
    expect([shown.source('ash') === source, shown.lot('ash/1') === lot]).toEqual([true, true])
  })

  it('shows drafts where the site wants them', () => {
    const shown = forAudience(edition({ drafts: 'yes' }), 'public')
    expect([shown.lots.size, shown.lot('ash/2').id, shown.source('ash').unpublished]).toEqual([2, 'ash/2', 0])
  })

  it('names no draft in the finding of another lot', () => {
    const others = ['ash/1', 'ash/2']
    const twice = warningOn('ash/1', { code: 'bill-twice', params: { lot: 'ash/1', bill: 'BL-1', others } })
    const params = { lot: 'ash/1', of: 'oxides', sample: 'C', laboratory: 'quay', values: 8, others } as const
    const alike = warningOn('ash/1', { code: 'readings-alike', params })
    const ash = tinySource('ash', {})
    const lots = [
      tinyLot('ash/1', {
        state: 'complete',
        revisions: [revision(0, '2026-03-10')],
        findings: [twice, alike],
      }),
      tinyLot('ash/2', {}),
    ]
    const site = { title: 'Register', units: 'SI', criteria: [], publish: ['findings'] } as unknown as Site
    const { findings } = forAudience(tinyEdition([ash], lots, { site }), 'public').lot('ash/1')
    expect(findings.map((one) => wordedFinding(one, PLAIN_NAMES).sentence)).toEqual([
      'Bill BL-1 of lot 1 of ash is listed again under lot 1 of ash and a lot not yet issued',
      'All 8 oxides of sample C of lot 1 of ash are the same, to the last digit, in lot 1 of ash and a lot not yet issued',
    ])
    expect(JSON.stringify(findings)).not.toContain('ash/2')
  })

  it('takes the same out of a source’s record, and names no draft in it', () => {
    const secret = 'Hidden'
    const record = {
      ...tinySource('ash').record,
      shipments: [{ bill: 'BL-9', lots: ['1', '2'], to: secret, project: secret, seal: secret }],
      answers: [{ finding: 'f', by: secret, answer: secret, told: [{ who: secret }] }],
      diverted: [
        { reason: 'coarse', lot: '2' },
        { reason: 'coarse', lot: '1' },
      ],
      'verification-plan': [{ kind: 'split', sampler: secret }],
    } as never
    const shown = (publish: readonly string[]) => {
      const whole = edition({ publish })
      const given = { ...whole, source: () => tinySource('ash', { record }) }
      return forAudience(given, 'public').source('ash').record
    }
    expect(JSON.stringify(shown([]))).not.toContain(secret)
    expect(shown([]).diverted).toEqual([{ reason: 'coarse' }, { reason: 'coarse', lot: '1' }])
    expect(shown(['verification'])['verification-plan']).toEqual([{ kind: 'split' }])
    expect(shown(['findings']).answers).toEqual([
      { finding: 'f', answer: secret, by: expect.not.stringContaining(secret) },
    ])
    expect(shown(['findings', 'persons', 'consignee']).answers?.[0]).toMatchObject({
      by: secret,
      told: [{ who: secret }],
    })
  })

  it('names no draft beside a gap in the numbers of its source, and keeps what is no lot', () => {
    const neighbour = (lot: string) => ({ lot, number: lot.slice(4), sampled: '2026-03-05' })
    const params = {
      source: 'ash',
      first: '2',
      last: '2',
      missing: 1,
      apart: 0,
      before: neighbour('ash/1'),
      after: neighbour('ash/3'),
    }
    const ash = tinySource('ash', { findings: [found('ash', { code: 'number-gap', params }, '2')] })
    const issued = { state: 'complete', revisions: [revision(0, '2026-03-10')] } as const
    const lots = [tinyLot('ash/1', issued), tinyLot('ash/3', {})]
    const site = { title: 'Register', units: 'SI', criteria: [], publish: ['findings'] } as unknown as Site
    const [gap] = forAudience(tinyEdition([ash], lots, { site }), 'public').source('ash').findings
    expect(gap?.reason.params).toEqual({ ...params, after: null })
    expect(gap && wordedFinding(gap, PLAIN_NAMES).evidence[0]).toContain('after it: no lot that can be named')
  })

  it('says that a person or a seal differs from what was issued, and not which', () => {
    const change = (...path: readonly string[]) => ({
      path: ['lot', ...path],
      issued: 'A. Secret',
      today: '9',
    })
    const changes = [
      change('samples', '0', 'by'),
      change('samples', '0', 'seal'),
      change('samples', '1'),
      change('seals', '0'),
      change('samples', '0', 'place'),
    ]
    const params = { lot: 'ash/1', revision: 0, places: changes.length, changes }
    const altered = warningOn('ash/1', { code: 'changed-after-issue', params })
    const issued = { state: 'complete', revisions: [revision(0, '2026-03-10')] } as const
    const evidence = (...publish: readonly string[]) => {
      const site = { title: 'Register', units: 'SI', criteria: [], publish } as unknown as Site
      const whole = tinyEdition([tinySource('ash')], [tinyLot('ash/1', { ...issued, findings: [altered] })], {
        site,
      })
      const [one] = forAudience(whole, 'public').lot('ash/1').findings
      return one === undefined ? [] : wordedFinding(one, PLAIN_NAMES).evidence
    }
    const withheld = (place: string) => `${place}: differs; what stands there is not published`
    expect(evidence('findings')).toEqual([
      withheld('sample 1 › by'),
      withheld('sample 1 › seal'),
      withheld('sample 2'),
      withheld('seal 1'),
      'sample 1 › place: A. Secret when issued, 9 today',
    ])
    expect(evidence('findings', 'persons', 'seals').filter((text) => text.includes('not published'))).toEqual(
      [],
    )
    expect(evidence('findings', 'seals').filter((text) => text.includes('not published'))).toEqual([
      withheld('sample 1 › by'),
      withheld('sample 2'),
    ])
  })

  it('tells of an agency’s samples only with what they gave, wherever the record lists it', () => {
    const samples = [
      { id: 'C', kind: 'composite' },
      { id: 'S', kind: 'split' },
      { id: 'I', kind: 'independent' },
    ]
    const lot = tinyLot('ash/1', { state: 'complete', revisions: [revision(0, '2026-03-10')] })
    const record = {
      ...lot.record,
      samples,
      analyses: [{ sample: 'S' }],
      tests: [{ sample: 'C' }],
    } as unknown as typeof lot.record
    const shown = (...publish: readonly string[]) => {
      const site = { title: 'Register', units: 'SI', criteria: [], publish } as unknown as Site
      const whole = tinyEdition([tinySource('ash')], [{ ...lot, record }], { site })
      return forAudience(whole, 'public')
        .lot('ash/1')
        .record.samples.map(({ id }) => id)
    }
    expect([shown(), shown('verification')]).toEqual([['C'], ['C', 'S', 'I']])
  })

  it('counts the checks of what is shown: not those of an agency whose results are not published', () => {
    const looks = [
      { check: 'number-gap', looked: 2, found: 0, expected: null },
      { check: 'split-bias', looked: 3, found: 1, expected: 0.03 },
    ] as const
    const expectedByChance = { low: 0, expected: 0.03, high: 1 }
    const source = tinySource('ash', { checks: { run: 2, lots: 2, looks, tests: 3, expectedByChance } })
    const issued = { state: 'complete', revisions: [revision(0, '2026-03-10')] } as const
    const shown = (...publish: readonly string[]) => {
      const site = { title: 'Register', units: 'SI', criteria: [], publish } as unknown as Site
      const lots = [tinyLot('ash/1', issued), tinyLot('ash/2', {})]
      const {
        run,
        lots: counted,
        tests,
      } = forAudience(tinyEdition([source], lots, { site }), 'public').source('ash').checks
      return [run, counted, tests]
    }
    expect([shown(), shown('verification')]).toEqual([
      [1, 1, 0],
      [2, 1, 3],
    ])
  })

  it('leaves out a sum over lots where one is not shown', () => {
    const params = { source: 'ash', silo: null, month: '2026-03' } as never
    const off = found('ash', { code: 'balance-off', params })
    const issued = { state: 'complete', revisions: [revision(0, '2026-03-10')] } as const
    const site = { title: 'Register', units: 'SI', criteria: [], publish: ['findings'] } as unknown as Site
    const shown = (...lots: Parameters<typeof tinyEdition>[1]) =>
      forAudience(tinyEdition([tinySource('ash', { findings: [off] })], lots, { site }), 'public').source(
        'ash',
      ).findings.length
    expect([shown(tinyLot('ash/1', issued)), shown(tinyLot('ash/1', issued), tinyLot('ash/2', {}))]).toEqual([
      1, 0,
    ])
  })

  it('publishes nothing that is found on an agency’s sample where its results are not', () => {
    const params = { lot: 'ash/1', sample: 'S' } as never
    const findings = [found('ash/1', { code: 'specimens-equal', params }), finding('ash/1')]
    const issued = { state: 'complete', revisions: [revision(0, '2026-03-10')], findings } as const
    const lot = tinyLot('ash/1', issued)
    const record = { ...lot.record, samples: [{ id: 'S', kind: 'split' }] } as unknown as typeof lot.record
    const shown = (...publish: readonly string[]) => {
      const site = { title: 'Register', units: 'SI', criteria: [], publish } as unknown as Site
      const whole = tinyEdition([tinySource('ash')], [{ ...lot, record }], { site })
      const edition = forAudience(whole, 'public')
      return [edition.lot('ash/1').findings.length, edition.lots.get('ash/1')?.findingCount]
    }
    expect([shown('findings'), shown('findings', 'verification')]).toEqual([
      [1, 1],
      [2, 2],
    ])
  })

  it('takes findings, persons, consignees and seals out of rows and entries alike', () => {
    const shown = forAudience(edition(), 'public')
    expect([shown.lots.get('ash/1')?.findingCount, shown.sources.get('ash')?.findingCount]).toEqual([0, 0])
    expect([shown.lot('ash/1').findings, shown.source('ash').findings]).toEqual([[], []])
    expect(shown.lot('ash/1').revisions[0]?.by).toBe('name not published')
    for (const line of [allShipments(shown)[0], shown.lot('ash/1').shipments[0]])
      expect([line?.bill, line?.consignee, line?.seal]).toEqual(['BL-1', undefined, undefined])
  })

  it('keeps what the site publishes', () => {
    const shown = forAudience(edition({ publish: ['findings', 'persons', 'consignee', 'seals'] }), 'public')
    expect(shown.lots.get('ash/1')?.findingCount).toBe(1)
    expect(shown.lot('ash/1').revisions[0]?.by).toBe('M. Okafor')
    expect(allShipments(shown)[0]).toMatchObject({ consignee: 'Quellan Mix', seal: '44871' })
  })
})
