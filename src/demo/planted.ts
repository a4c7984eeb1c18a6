/**
 * What is planted in the demo for an auditor to find, each in one lot (by source and place in its series),
 * and what is not.
 *
 * Left out on purpose: a strength in psi written as MPa. A stress of some 4500 MPa is not physical, so
 * reading refuses it; the case lies among the spoiled records of the tests instead.
 */
import { dateOfDay, dayOf } from './calendar.ts'
import type { LotModel } from './lot-model.ts'

/** What is planted in one lot; everything else is as usual. */
export interface Planted {
  /** Specimen factors of the c311 28 d strength cubes in place of scatter. */
  readonly cubes28?: readonly number[]
  readonly daysLate28?: number
  readonly hotReading?: true
  readonly missing28?: true
  /** The 7 d loads at the standard condition gather just above the limit. */
  readonly bunched?: true
  readonly oversizeShipment?: true
  readonly oxidesOf?: LotModel
  readonly lossOnIgnition?: number
  readonly CaO?: number
  readonly verification?: true
  readonly note?: string
}

export interface PlantedLot {
  readonly source: string
  readonly place: number
  readonly what: string
  readonly planted: Planted
}

export const PLANTED: readonly PlantedLot[] = [
  {
    source: 'skarnmere-ash',
    place: 33,
    what: 'fails: loss on ignition above 6 % after an outage',
    planted: { lossOnIgnition: 6.42 },
  },
  {
    source: 'skarnmere-ash',
    place: 12,
    what: 'on the limit: loss on ignition of exactly 6.0 %',
    planted: { lossOnIgnition: 6 },
  },
  {
    source: 'skarnmere-ash',
    place: 20,
    what: 'batch out of range, mended by dropping one cube',
    planted: { cubes28: [1.012, 0.995, 0.872] },
  },
  { source: 'skarnmere-ash', place: 24, what: 'copied oxide row of the lot before', planted: {} },
  { source: 'quellan-ash', place: 18, what: 'batch beyond repair', planted: { cubes28: [1.13, 1, 0.86] } },
  {
    source: 'quellan-ash',
    place: 25,
    what: 'class flip: calcium oxide below 18 % in a class C source',
    planted: { CaO: 17.62 },
  },
  {
    source: 'quellan-ash',
    place: 30,
    what: 'shipment larger than the lot',
    planted: { oversizeShipment: true },
  },
  { source: 'tarn-hollow-tuff', place: 14, what: '28-day cubes tested at 30 d', planted: { daysLate28: 2 } },
  { source: 'tarn-hollow-tuff', place: 30, what: '28-day strength overdue', planted: { missing28: true } },
  { source: 'skarnmere-reclaimed', place: 16, what: 'cubes read at 50 °C', planted: { hotReading: true } },
]

/** Numbers of a year left out, so that the sequence has a gap. */
export const SKIPPED_NUMBERS: Readonly<Record<string, readonly string[]>> = {
  'skarnmere-ash': ['SA-2024-009'],
}

/** Months without any sample of a source, "YYYY-MM". */
export const MISSING_MONTHS: Readonly<Record<string, readonly string[]>> = { 'quellan-ash': ['2025-01'] }

/**
 * A source whose 7-day index at the standard condition gathers just above the limit of 75: batches that come
 * out from `from` up to the limit are written with loads that land from `to[0]` to `to[1]`, all in percent.
 * It is done to the written loads, since the scatter of two mortars would wipe out a gathering of true values.
 */
export const BUNCHED = { source: 'skarnmere-reclaimed', from: 72.5, limit: 75, to: [75.1, 75.8] } as const

/** Places at which the agency took a split. */
export const SPLITS: Readonly<Record<string, readonly number[]>> = {
  'skarnmere-ash': [4, 12, 19, 27, 34],
  'quellan-ash': [6, 17, 28],
  'tarn-hollow-tuff': [5, 15, 26],
}

/** The lot that is withdrawn, and the one that replaces it. */
export const WITHDRAWN = {
  source: 'tarn-hollow-tuff',
  place: 20,
  replacement: 21,
  reason: 'sample of another silo had been tested in its place',
}

/** The lot whose record is altered after it was issued: the residue is made finer. */
export const ALTERED = {
  source: 'quellan-ash',
  place: 22,
  from: /residue-45um: (\d+\.\d) %/,
  to: 'residue-45um: 11.9 %',
}

/** The lot that is never issued. */
export const DRAFT = { source: 'tarn-hollow-limestone', place: 12 }

/** Something that became known only after a lot's certificate had been issued. */
export interface PlantedLater {
  readonly source: string
  readonly place: number
  readonly what: string
  /** Whether it stands in the control that the lot's standard mortar was tested beside. */
  readonly inControl?: true
  readonly edit: (text: string) => string
}

/** The line of the 28 d cubes at the standard condition, the first of its kind. */
const CUBES_28 = /^( {2,6})- \{ age: 28 d, tested: (\d{4}-\d\d-\d\d)T(\d\d:\d\d), specimens: (.*)$/m

export const PLANTED_LATER: readonly PlantedLater[] = [
  {
    source: 'skarnmere-ash',
    place: 5,
    what: 'a retest of the same day, reported after issue',
    edit: (text) =>
      text.replace(
        CUBES_28,
        (line, indent: string, date: string, time: string) =>
          `${line}\n${indent}- { age: 28 d, tested: ${date}T14:10, reported: ${daysAfter(date, 12)}, retest-of: ${date}T${time}, specimens: { g: 90.6 kN, h: 92.1 kN, i: 89.9 kN } }`,
      ),
  },
  {
    source: 'skarnmere-ash',
    place: 8,
    what: 'a second analysis after issue',
    edit: (text) =>
      text.replace(
        /( {2}- laboratory: (\S+)\n {4}sample: C\n {4}tested: (\S+)\n[\s\S]*?)\n\ntests:/,
        (_, first: string, laboratory: string, date: string) =>
          `${first}\n  - laboratory: ${laboratory}\n    sample: C\n    tested: ${daysAfter(date, 41)}\n    results:\n      loss-on-ignition: 3.31 %\n\ntests:`,
      ),
  },
  {
    source: 'skarnmere-ash',
    place: 10,
    what: 'a cube excluded three weeks after its test',
    edit: (text) =>
      text.replace(CUBES_28, (line, _, date: string) =>
        line.replace(
          /a: (\S+ kN)/,
          `a: { load: $1, excluded: mould found out of square, excluded-on: ${daysAfter(date, 21)} }`,
        ),
      ),
  },
  {
    source: 'skarnmere-ash',
    place: 7,
    what: 'a control of 28 d reported nine days after its test',
    inControl: true,
    edit: (text) =>
      text.replace(CUBES_28, (line, _, date: string) =>
        line.replace(', specimens:', `, reported: ${daysAfter(date, 9)}, specimens:`),
      ),
  },
  {
    source: 'skarnmere-ash',
    place: 24,
    what: 'an answer to the copied row of oxides, which closed the question',
    edit: (text) =>
      `${text}
answers:
  - finding: readings-alike/skarnmere-ash/SA-2025-005/oxides/north-quay/C/1
    date: 2025-09-15
    by: T. Vesterby
    answer: the row of the lot before was entered by mistake; the retained sample is to be analysed again
    cause: the sheet of the lot before was used as a form
    containment: nothing was shipped on the oxides of this lot alone
    told: [{ who: Varrow Vale Roads Authority, on: 2025-09-16 }]
    disposition: seen at the yearly visit
    disposed-by: A. Penrudd
    closed: 2025-10-20
`,
  },
  {
    source: 'quellan-ash',
    place: 30,
    what: 'an answer to the shipment larger than the lot, which left the question open',
    edit: (text) =>
      `${text}
answers:
  - finding: shipped-above-quantity/quellan-ash/QA-2025-013
    date: 2026-01-20
    by: R. Amadi
    answer: the weighbridge ticket is being looked for
    bills: [BL-88313]
`,
  },
]

function daysAfter(date: string, days: number): string {
  return dateOfDay(dayOf(date) + days)
}
