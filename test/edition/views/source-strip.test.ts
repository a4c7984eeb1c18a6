/** What the statements at the head of a source's page are counted from. */
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { billsOf } from '../../../src/edition/views/source-bills.ts'
import { failedLots } from '../../../src/edition/views/source-failed.ts'
import { sourceListing } from '../../../src/edition/views/source-listing.ts'
import { lotTable } from '../../../src/edition/views/source-lot-table.ts'
import { sourceLots } from '../../../src/edition/views/source-lots.ts'
import { monthsOf } from '../../../src/edition/views/source-months.ts'
import { sourcePageView } from '../../../src/edition/views/source-page.ts'
import { chosenSplit } from '../../../src/edition/views/source-strip-agency.ts'
import { loadRecords } from '../../../src/records/load.ts'
import type { Source } from '../../../src/records/schema/loaded-records.ts'
import { saidText } from '../../../src/words/said.ts'
import { revision, shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })
const said = (id: string, label: string) => {
  const line = sourcePageView(edition, id).strip.find((one) => one.label === label)
  return [line?.says, line?.rest].map((pieces = []) => saidText(pieces).replaceAll('\u00a0', ' '))
}

describe('sourceListing', () => {
  const approved = (approvals: NonNullable<Source['approvals']>) => {
    const record = { ...tinySource('skarn').record, approvals }
    return sourceListing({ asOf: readMoment('2026-04-10') }, tinySource('skarn', { record })).now.replaceAll(
      '\u00a0',
      ' ',
    )
  }
  const roads = { from: readMoment('2024-05-01'), by: 'Roads', scope: 'Class F' }

  it('reads an approval of the source as a whole as a listing', () => {
    expect(approved([roads])).toBe('Listed by Roads since 1 May 2024: Class F')
    expect(approved([{ ...roads, to: readMoment('2027-04-30') }])).toBe(
      'Listed by Roads to 30 April 2027: Class F',
    )
  })

  it('names the agency of the approval, as a report does in its head', () => {
    const by = (approvals: NonNullable<Source['approvals']>) => {
      const record = { ...tinySource('skarn').record, approvals }
      return sourceListing({ asOf: readMoment('2026-04-10') }, tinySource('skarn', { record })).by
    }
    expect(by([roads])).toBe('Roads')
    expect(by([{ ...roads, set: 'a-set' }])).toBeNull()
  })

  it('does not read an approval for one set, or one that has not begun, as a listing', () => {
    expect(approved([{ ...roads, set: 'a-set' }])).toBe('No listing on record')
    expect(approved([{ ...roads, from: readMoment('2026-04-11') }])).toBe('No listing on record')
  })

  it('says that an approval ended', () => {
    expect(approved([{ ...roads, to: readMoment('2026-04-09') }])).toBe('Roads: approval ended on 9 Apr 2026')
  })
})

describe('billsOf', () => {
  it('has a shipment of several possible lots once, with all of them', () => {
    const shared = { ...shipment('skarn/A', '9', '2026-03-20'), lots: ['skarn/A', 'skarn/B'] }
    const own = shipment('skarn/A', '1', '2026-03-10')
    const lots = ['skarn/A', 'skarn/B'].map((id) =>
      tinyLot(id, { sharedShipments: [shared], ...(id === 'skarn/A' ? { shipments: [own] } : {}) }),
    )
    const bills = billsOf(sourceLots(tinyEdition([tinySource('skarn')], lots), 'skarn'))
    expect(bills.map((bill) => [bill.shipment.bill, bill.lots.map(({ row }) => row.lot)])).toEqual([
      ['1', ['A']],
      ['9', ['A', 'B']],
    ])
  })
})

describe('the latest lot', () => {
  it('says which age has missed its limit while the one that decides is awaited, and nothing once it is known', () => {
    // The 7 d index of the lot is 74 %, its 28 d index is read on 21 January.
    const sayOn = (day: string) => {
      const then = computeEdition(records, { program: 'test', asOf: readMoment(day) })
      const line = sourcePageView(then, 'tansgarth-ash').strip.find(({ label }) => label === 'Latest lot')
      return [line?.says, line?.rest].map((pieces = []) => saidText(pieces).replaceAll('\u00a0', ' '))
    }
    expect(sayOn('2026-01-20')).toEqual([
      'TG-2025-016, sampled 22 December 2025, 14:30: pending; 28 d strength activity index due 21 January 2026',
      'Strength activity index, 20 %, 23 °C, constant flow, 7 d does not meet: 74 % against ≥ 75 %, by 1 point; what is awaited decides. ',
    ])
    expect(sayOn('2026-01-22')[1]).toBe('')
  })
})

describe('a lot that misses at 7 d while its 28 d index is overdue', () => {
  it('is no failed lot: it is not yet judged in full', () => {
    const id = 'tansgarth-ash/TG-2025-016'
    const lot = records.lots.get(id)
    const tests = lot?.tests?.map((test) => ({
      ...test,
      ...(test.strength && {
        strength: test.strength.map((own) => (own.age.hours === 28 * 24 ? { age: own.age } : own)),
      }),
    }))
    if (lot === undefined || tests === undefined) throw new RangeError('the lot is not in the demo')
    const { revisions: _revisions, ...unissued } = lot
    const lots = new Map([...records.lots, [id, { ...unissued, tests }]])
    const late = computeEdition({ ...records, lots }, { program: 'test', asOf: readMoment('2026-03-20') })
    const [row] = sourceLots(late, 'tansgarth-ash').filter((own) => own.row.id === id)
    expect(row?.row.outcomes[0]).toMatchObject({ outcome: 'does-not-meet', soFar: true })
    const source = late.source('tansgarth-ash')
    const failed = failedLots(late, source, sourceLots(late, 'tansgarth-ash')).lots
    expect(failed.map((own) => own.id)).not.toContain(id)
  })
})

describe('chosenSplit', () => {
  const split = edition.source('skarnmere-ash').agency()?.split ?? []

  it('takes the governing property whatever its difference, else the one with most pairs', () => {
    const [some] = split
    expect(chosenSplit(split, `${some?.property}||`)?.property).toBe(some?.property)
    const most = Math.max(...split.map(({ n }) => n))
    expect(chosenSplit(split, 'none||')?.n).toBe(most)
    expect(chosenSplit([], 'none||')).toBeUndefined()
  })

  it('changes nothing when the differences do', () => {
    const turned = split.map((one) => ({ ...one, mean: -100 * (one.mean ?? 0) }))
    expect(chosenSplit(turned, null)?.property).toBe(chosenSplit(split, null)?.property)
  })
})

describe('the statement on an agency', () => {
  it('counts the properties compared, and names the one with a bias', () => {
    const { split = [] } = edition.source('skarnmere-ash').agency() ?? {}
    const count = new Set(split.map(({ property }) => property)).size
    expect(said('skarnmere-ash', 'Agency')[1]).toContain(
      `${count - 1} other properties in D; of ${count} compared, `,
    )
    expect(said('skarnmere-ash', 'Agency')[1]).toContain('loss on ignition')
  })
})

describe('the statement on what is late', () => {
  const numbered = (numbers: readonly (readonly [number: string, sampled: string])[], unpublished = 0) => {
    const record = { ...tinySource('skarn').record, 'lot-number-pattern': 'SK-####' }
    const source = tinySource('skarn', { record, unpublished })
    const lots = numbers.map(([number, sampled]) =>
      tinyLot(`skarn/${number}`, { sampled: readMoment(sampled) }),
    )
    const tiny = tinyEdition([source], lots)
    return monthsOf(tiny, source, sourceLots(tiny, 'skarn'))
  }

  it('counts the numbers missing before lots of the last twelve months', () => {
    const { gaps, lines } = numbered([
      ['SK-0001', '2025-01-10'],
      ['SK-0003', '2025-02-10'],
      ['SK-0004', '2025-06-10'],
      ['SK-0007', '2026-02-10'],
    ])
    expect(lines[0]?.month).toBe('2025-05')
    const sampled = readMoment('2026-02-10')
    expect(gaps).toEqual([{ first: 'SK-0005', last: 'SK-0006', missing: 2, sampled, month: '2026-02' }])
  })

  it('counts no gaps where lots are not shown, or no pattern is on record', () => {
    const numbers = [
      ['SK-0001', '2026-01-10'],
      ['SK-0003', '2026-02-10'],
    ] as const
    expect(numbered(numbers, 1).gaps).toBeNull()
    const source = tinySource('skarn')
    const tiny = tinyEdition([source], [tinyLot('skarn/SK-0001')])
    expect(monthsOf(tiny, source, sourceLots(tiny, 'skarn')).gaps).toBeNull()
  })
})

describe('the statement on open questions', () => {
  it('says how many checks looked at how many lots', () => {
    const { run, lots } = edition.source('skarnmere-ash').checks
    expect(said('skarnmere-ash', 'Open questions')[0]).toContain(`${run} checks on ${lots} lots`)
  })
})

describe('the statement on what was shipped', () => {
  it('adds up the shipments of lots of the last twelve months', () => {
    const from = edition.asOf.day - 365
    const mass = edition
      .lotsOf('skarnmere-ash')
      .filter(({ sampled }) => from < sampled.day)
      .flatMap(({ id }) => edition.lot(id).shipments)
      .reduce((sum, { massT }) => sum + massT, 0)
    expect(said('skarnmere-ash', 'Shipped')[0]?.replaceAll(/[\u202f\u2009]/g, '')).toMatch(
      new RegExp(`^${mass < 100 ? mass.toFixed(1) : Math.round(mass)} t of `),
    )
  })

  it('takes what was shipped and what it is a share of from the same lots', () => {
    // All 34 lots hold 47 750 t and shipped 3746.7 t; the withdrawn one 1500 t and 122.7 t of them.
    expect(said('tarn-hollow-tuff', 'Shipped')[1]?.replaceAll(/[\u202f\u2009]/g, ' ')).toMatch(
      /^Whole record: 3624 t of 46 250 t in lots with a certificate in force; 123 t more from lots withdrawn/,
    )
  })

  it('counts what left early as the question does, and the bills of several lots as perhaps', () => {
    // BL-96901 may be of TG-2025-012, known on 12 November, or of -013, known on 3 December; it left on 20 November.
    const asked = edition
      .source('tansgarth-ash')
      .findings.flatMap(({ reason }) =>
        reason.code === 'shipped-before-completion' ? [reason.params.count] : [],
      )
    expect(asked).toEqual([67])
    expect(said('tansgarth-ash', 'Shipped')[0]).toContain(
      '67, perhaps 68 bills left before the last result of their lot; 3, perhaps 4 bills from lots that do not meet',
    )
  })
})

describe('the months of a source', () => {
  const month = (name: string, stock?: string) => ({
    month: name,
    produced: { value: 900, unit: 't', written: '900 t' },
    ...(stock === undefined ? {} : { stock: { value: Number(stock), unit: 't', written: `${stock} t` } }),
  })
  const kept = (unpublished: number) => {
    const balance = [month('2026-01', '100'), month('2026-02', '150'), month('2026-03')]
    const on = readMoment('2026-02-03')
    const record = {
      ...tinySource('skarn').record,
      balance,
      'numbers-not-used': [{ number: 'SK-2', on, reason: 'form spoiled' }],
    } as Source
    const source = tinySource('skarn', { record, unpublished })
    const tiny = tinyEdition([source], [])
    return monthsOf(tiny, source, [])
  }

  it('say what the balance lacks, and show what was produced whatever it lacks', () => {
    const of = ({ lines }: ReturnType<typeof kept>) =>
      lines.slice(-4).map(({ month: name, producedT, balanceT }) => [name, producedT, balanceT])
    // 900 produced, nothing certified or diverted, 50 more in stock: 850 not accounted for.
    expect(of(kept(0))).toEqual([
      ['2026-01', 900, 'no-stock'],
      ['2026-02', 900, 850],
      ['2026-03', 900, 'no-stock'],
      ['2026-04', null, 'no-line'],
    ])
    expect(of(kept(1)).map(([, , lack]) => lack)).toEqual([
      'lots-not-shown',
      'lots-not-shown',
      'lots-not-shown',
      'no-line',
    ])
  })

  it('have the numbers that were given and not used', () => {
    expect(kept(0).unused.map(({ number }) => number)).toEqual(['SK-2'])
  })
})

describe('the statement on twelve months', () => {
  it('tells a draft, which is among the lots, from those that the counts are of', () => {
    // Six lots: four do not meet, one is pending, and TL-2026-001 was never issued.
    expect(said('tarn-hollow-limestone', 'Last 12 months')[0]).toContain(
      '6 lots sampled, 4 failed, 0 withdrawn, 0 not valid, 1 pending, 1 draft in none of these counts;',
    )
  })
})

describe('failedLots', () => {
  it('opens a lot withdrawn in the last twelve months, whenever it was sampled, as they are counted', () => {
    // TH-2025-004, sampled on 1 April 2025, was withdrawn on 9 February 2026.
    const { failed } = sourcePageView(edition, 'tarn-hollow-tuff')
    expect([failed.recent, failed.lots[0]?.number]).toEqual([1, 'TH-2025-004'])
    const lotOn = (id: string, sampled: string, withdrawn: string) =>
      tinyLot(`skarn/${id}`, {
        sampled: readMoment(sampled),
        state: 'withdrawn',
        withdrawn: readMoment(withdrawn),
        revisions: [revision(0, sampled)],
      })
    const tiny = tinyEdition(
      [tinySource('skarn')],
      [
        lotOn('A', '2024-01-05', '2026-02-01'),
        lotOn('B', '2024-02-05', '2024-03-01'),
        lotOn('C', '2025-06-05', '2026-02-01'),
      ],
    )
    const { lots, recent } = failedLots(tiny, tiny.source('skarn'), sourceLots(tiny, 'skarn'))
    expect([recent, lots.map(({ number }) => number)]).toEqual([2, ['C', 'A', 'B']])
  })

  it('leaves those of the last twelve months open, six at most', () => {
    const { failed } = sourcePageView(edition, 'skarnmere-ash')
    const since = edition.asOf.day - 365
    const recent = failed.lots.filter(({ id }) => since < (edition.lots.get(id)?.sampled.day ?? 0))
    expect(failed.recent).toBe(Math.min(6, recent.length))
    expect(failed.recent).toBeLessThan(failed.lots.length)
  })
})

describe('lotTable', () => {
  it('gives no margin of an age that another one stands in for, in a lot that fails otherwise', () => {
    const [lot] = sourceLots(edition, 'skarnmere-ash').filter(
      ({ row }) => row.id === 'skarnmere-ash/SA-2024-005',
    )
    const index = lot?.judged.filter(({ route }) => route !== null) ?? []
    const [early, late] = index
    if (lot === undefined || early === undefined || late === undefined)
      throw new RangeError('the lot has two ages')
    // It fails by the uniformity of its residue: 5.3 points from the mean, 0.3 beyond the limit.
    const missing = { ...early, outcome: 'does-not-meet', by: '1 point', margin: -1 } as const
    const judged = lot.judged.map((value) => (value === early ? missing : value))
    const [row] = lotTable(edition, [{ ...lot, judged }]).rows
    expect(row?.margin.replaceAll('\u00a0', ' ')).toBe('−0.3 points')
  })
  it('marks a value as missed only where its lot fails by it', () => {
    const lots = sourceLots(edition, 'skarnmere-ash')
    const { rows } = lotTable(edition, lots)
    const marked = rows.filter(({ cells }) => cells.some(({ missed }) => missed)).map(({ id }) => id)
    expect(marked.length).toBeGreaterThan(0)
    const failing = lots.filter(({ missed }) => 0 < missed.length).map(({ row }) => row.id)
    expect(failing).toEqual(expect.arrayContaining(marked))
    const outside = lots.filter(({ judged }) => judged.some(({ outcome }) => outcome === 'does-not-meet'))
    expect(outside.length).toBeGreaterThan(failing.length)
  })
})
