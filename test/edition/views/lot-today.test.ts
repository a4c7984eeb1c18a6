import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { lotTodayView } from '../../../src/edition/views/lot-today.ts'
import { revision, shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

function today(more: Parameters<typeof tinyLot>[1]) {
  const lot = tinyLot('ash/1', more)
  const set = (id: string, kind: string) =>
    ({ id, title: id, edition: '1', kinds: [kind], clauses: [] }) as unknown as Criterion
  const criteria = new Map([
    ['for-ash', set('for-ash', 'coal-fly-ash')],
    ['for-slag', set('for-slag', 'slag')],
  ])
  return lotTodayView(tinyEdition([tinySource('ash')], [lot], { criteria }), lot)
}

describe('lotTodayView', () => {
  it('lists revisions newest first; the newest is the certificate’s own page', () => {
    const { revisions } = today({ revisions: [revision(0, '2026-03-10'), revision(1, '2026-04-02')] })
    expect(revisions.map(({ number, path }) => [number, path])).toEqual([
      [1, 'lots/ash/1/'],
      [0, 'lots/ash/1/revision/0/'],
    ])
  })

  it('adds up what was shipped, shows forty shipments and says how many more there are', () => {
    const shipments = Array.from({ length: 42 }, (_, index) =>
      shipment('ash/1', `BL-${index}`, '2026-03-12', 10),
    )
    const view = today({ shipments }).shipments
    expect(view?.summary.replaceAll(/[\u00a0\u2009]/g, ' ')).toBe(
      '42 shipments, 420 t (463 short tons) of 1000 t (1102 short tons).',
    )
    expect([view?.shown.length, view?.more, view?.named]).toEqual([40, 2, false])
  })

  it('says where a shipment went as far as that is published', () => {
    const view = today({
      shipments: [
        { ...shipment('ash/1', 'BL-1', '2026-03-12'), consignee: 'Quellan Mix', project: 'Bridge' },
        { ...shipment('ash/1', 'BL-2', '2026-03-13'), project: 'Bridge' },
      ],
    }).shipments
    expect([view?.named, view?.shown.map(({ to }) => to)]).toEqual([true, ['Quellan Mix, Bridge', 'Bridge']])
  })

  it('says which results came since the certificate, but not what stands in place of a printed one', () => {
    const head = { role: 'producer', laboratory: 'quay', sample: 'C', unit: '%', decimals: 2, valid: true }
    const loss = { ...head, key: 'loss', property: 'loss-on-ignition' }
    const strength = { ...head, property: 'strength-activity-index', condition: 'hot', age: readAge('7 d') }
    const results = [
      { ...loss, value: 2.19, tested: readMoment('2026-03-09') },
      { ...loss, value: 3.31, tested: readMoment('2026-05-20T10:00') },
      { ...loss, value: 9.9, tested: readMoment('2026-05-20'), valid: false },
      { ...loss, value: 2.5, tested: readMoment('2026-05-20'), role: 'verification' },
      { ...strength, key: 'sai', value: 95.88, tested: readMoment('2026-05-21') },
      { ...head, key: 'SO3', property: 'SO3', value: 0.5, tested: readMoment('2026-03-09') },
    ] as unknown as Result[]
    const changed = { property: 'strength-activity-index', condition: 'hot', age: '7 d' } as const
    const more = { results, changedValues: [{ ...changed, issued: '96.34 %', today: '95.88 %' }] }
    const issued = { ...more, revisions: [revision(0, '2026-03-10')], unstated: ['SO3'] }
    expect(today(issued).later.map(plainSpaces)).toEqual([
      'Known since revision 0, so not stated in it: loss on ignition 3.31 %, tested 20 May 2026.',
      'Known since revision 0, so not stated in it: sulfur trioxide 0.50 %, tested 9 March 2026.',
    ])
    expect(today({ results }).later).toEqual([])
  })

  it('says which value of the certificate is another today, or counts no more', () => {
    const strength = { property: 'strength-activity-index', condition: 'hot', age: '7 d' } as const
    const loss = { property: 'loss-on-ignition', condition: undefined, age: undefined } as const
    const { changed } = today({
      revisions: [revision(0, '2026-03-10'), revision(1, '2026-04-02')],
      changedValues: [
        { ...strength, issued: '96.34 %', today: '95.88 %' },
        { ...loss, issued: '2.1 %', today: null },
      ],
    })
    expect(changed).toEqual([
      'Revision 1 prints 96.34 % for 7 d strength activity index (hot); as known today, it is 95.88 %.',
      'Revision 1 prints 2.1 % for loss on ignition; as known today, no result of it counts.',
    ])
  })

  it('names a condition by its title where a record has one', () => {
    const lot = tinyLot('ash/1', {
      revisions: [revision(0, '2026-03-10')],
      changedValues: [
        {
          property: 'strength-activity-index',
          condition: 'hot',
          age: '7 d',
          issued: '96.34 %',
          today: '95.88 %',
        },
      ],
    })
    const conditions = new Map([['hot', { title: '50 %, 50 °C' }]]) as unknown as Edition['conditions']
    const edition = tinyEdition([tinySource('ash')], [lot], { conditions })
    expect(lotTodayView(edition, lot).changed).toEqual([
      'Revision 0 prints 96.34 % for 7 d strength activity index (50 %, 50 °C); as known today, it is 95.88 %.',
    ])
  })

  it('names the withdrawn lots that the lot replaces, and no others', () => {
    const lots = ['ash/1', 'ash/2', 'ash/3'].map((id) =>
      tinyLot(id, {
        revisions: [
          revision(0, '2026-03-10', id === 'ash/1' ? { state: 'withdrawn', replacedBy: 'ash/2' } : {}),
        ],
      }),
    )
    const edition = tinyEdition([tinySource('ash')], lots)
    const replaced = lots.map((lot) => lotTodayView(edition, lot).replaces.map(({ text }) => text))
    expect(replaced).toEqual([[], ['1'], []])
  })

  it('has no shipments where nothing was shipped, and offers the sets for the source’s material alone', () => {
    const view = today({})
    expect(view.shipments).toBeNull()
    expect(view.judgeUnder.sets.map(({ id }) => id)).toEqual(['for-ash'])
    expect(view.year).toBe('2026')
  })
})
