import { readLotColumns, readShipmentColumns } from '../../src/scripts/columns.ts'
import { describe, expect, it } from 'vitest'
import { matches } from '../../src/scripts/match.ts'

const MEETS = { mark: 'meets', text: 'Meets' } as const
const WITHDRAWN = { mark: 'withdrawn', text: 'Withdrawn; was: meets' } as const
const SO_FAR = { mark: 'meets-so-far', text: 'Meets so far; 28 d strength due 4 July 2026' } as const
/** Nothing was unknown when either of two shipments left. */
const LEFT = [-1, -1]
const LOTS = readLotColumns({
  criteria: [],
  sources: ['ash', 'tuff'],
  standings: [MEETS, WITHDRAWN, SO_FAR],
  sets: ['ASTM C618, class F', 'ASTM C618, class N (trial judgement)'],
  formerly: {},
  columns: {
    lot: ['ash/A-1', 'tuff/T-1', 'tuff/T-10'],
    number: ['A-1', 'T-1', 'T-10'],
    source: [0, 1, 1],
    sampled: ['2026-01-01', '2026-01-02', '2026-01-03'],
    class: ['F', 'N', 'N'],
    standing: {},
    governingStanding: [0, 1, 2],
    governingSet: [0, 1, -1],
    governingShortfall: [],
  },
})
const SHIPMENTS = readShipmentColumns({
  left: [],
  several: [],
  columns: { bill: ['BL-7', 'BL-77'], date: ['2026-02-01', '2026-02-02'], lot: [1, 2], left: LEFT },
})

describe('matches', () => {
  it('finds a lot by its printed number, whatever the case, with how it stands', () => {
    expect(matches(' t-1 ', LOTS, SHIPMENTS)).toEqual([
      {
        lots: ['tuff/T-1'],
        standing: WITHDRAWN,
        under: 'ASTM C618, class N (trial judgement)',
        because: 'lot T-1',
        left: '',
        note: null,
      },
    ])
  })
  it('finds a lot by certificate number and by bill of lading', () => {
    expect(matches('tuff/T-10', LOTS, SHIPMENTS).map((found) => found.lots[0])).toEqual(['tuff/T-10'])
    expect(matches('BL-77', LOTS, SHIPMENTS)).toEqual([
      {
        lots: ['tuff/T-10'],
        standing: SO_FAR,
        under: '',
        because: 'bill of lading BL-77 of 2\u00a0Feb\u00a02026',
        left: '',
        note: null,
      },
    ])
  })
  it('finds a lot by an id that it had before, with or without its source', () => {
    const renamed = { ...LOTS, formerly: { 'old-tuff/T-7': 1 } }
    expect(matches('old-tuff/t-7', renamed, SHIPMENTS)).toEqual([
      {
        lots: ['tuff/T-1'],
        standing: WITHDRAWN,
        under: 'ASTM C618, class N (trial judgement)',
        because: 'lot T-1, formerly old-tuff/T-7',
        left: '',
        note: null,
      },
    ])
    expect(matches('T-7', renamed, SHIPMENTS).map((found) => found.lots[0])).toEqual(['tuff/T-1'])
  })
  it.each(['BL-77', 'bl77', 'BL 77', 'bl–77', '\uff22\uff2c\uff0d\uff17\uff17', '77', '\uff17\uff17'])(
    'finds the bill BL-77 written as %s, and no other',
    (written) => {
      expect(matches(written, LOTS, SHIPMENTS).map(({ because }) => because)).toEqual([
        'bill of lading BL-77 of 2\u00a0Feb\u00a02026',
      ])
    },
  )
  it.each([
    'BL No 077',
    'bl-0077',
    'Bill of lading BL 77',
    'T 010',
    'tuff/T-10/0',
    'T-10 rev 1',
    'Lot no. T-010',
  ])('finds %s, though it differs in words, noughts or a revision', (written) => {
    expect(matches(written, LOTS, SHIPMENTS).map(({ lots }) => lots)).toEqual([['tuff/T-10']])
  })
  it('says of a bill what was not known on the day that it left, and under which set its lot is judged', () => {
    const bills = readShipmentColumns({
      left: ['Before the 28 d result was known'],
      several: [],
      columns: { bill: ['BL-7', 'BL-8'], date: ['2026-02-01', '2026-02-02'], lot: [0, 0], left: [0, -1] },
    })
    expect(['bl7', 'bl8'].map((bill) => matches(bill, LOTS, bills)[0])).toMatchObject([
      { left: 'Before the 28 d result was known', under: 'ASTM C618, class F' },
      { left: '', under: 'ASTM C618, class F' },
    ])
  })
  it('lists every bill that comes to the same letters and digits', () => {
    const bills = readShipmentColumns({
      left: [],
      several: [],
      columns: { bill: ['BL-1-12', 'BL-11-2'], date: ['2026-02-01', '2026-02-02'], lot: [0, 2], left: LEFT },
    })
    expect(matches('bl112', LOTS, bills)).toHaveLength(2)
  })
  it('gives a shipment of several lots with each possible lot and the worst of them', () => {
    const bills = readShipmentColumns({
      left: [],
      columns: { bill: ['BL-9'], date: ['2026-02-01'], lot: [-1], left: LEFT },
      several: [
        { shipment: 0, lots: [0, 1], mark: 'withdrawn', standing: WITHDRAWN.text, note: 'no one lot' },
      ],
    })
    expect(matches('bl9', LOTS, bills)).toEqual([
      {
        lots: ['ash/A-1', 'tuff/T-1'],
        standing: WITHDRAWN,
        under: '',
        because: 'bill of lading BL-9 of 1\u00a0Feb\u00a02026',
        left: '',
        note: 'no one lot',
      },
    ])
  })
  it('offers what holds the text only where nothing is exact', () => {
    expect(matches('BL', LOTS, SHIPMENTS).map((found) => found.lots[0])).toEqual(['tuff/T-10', 'tuff/T-1'])
    expect(matches('l-7', LOTS, SHIPMENTS).map((found) => found.because)).toEqual([
      'bill of lading BL-77 of 2\u00a0Feb\u00a02026',
      'bill of lading BL-7 of 1\u00a0Feb\u00a02026',
    ])
    expect(matches('nothing of the kind', LOTS, SHIPMENTS)).toEqual([])
    expect(matches('  ', LOTS, SHIPMENTS)).toEqual([])
  })
  it('puts what begins with the text before what only holds it, and gives each answer once', () => {
    const bills = readShipmentColumns({
      left: [],
      several: [],
      columns: { bill: ['XT-1', 'T-100'], date: ['2026-02-01', '2026-02-02'], lot: [0, 2], left: LEFT },
    })
    expect(matches('t-', LOTS, bills).map((found) => found.because)).toEqual([
      'lot T-10',
      'lot T-1',
      'bill of lading T-100 of 2\u00a0Feb\u00a02026',
      'bill of lading XT-1 of 1\u00a0Feb\u00a02026',
    ])
  })
  it('gives every answer, so that the page can say how many there are', () => {
    const bills = readShipmentColumns({
      left: [],
      several: [],
      columns: {
        bill: Array.from({ length: 40 }, (_, index) => `BL-${index}`),
        date: Array.from({ length: 40 }, () => '2026-02-01'),
        lot: Array.from({ length: 40 }, () => 0),
        left: Array.from({ length: 40 }, () => -1),
      },
    })
    expect(matches('bl-', LOTS, bills)).toHaveLength(40)
  })
})
