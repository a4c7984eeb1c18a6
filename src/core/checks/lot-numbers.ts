/** Audit check: numbers of lots that nobody bears, between those that are on record. */
import { kept } from '../measure/kept.ts'
import { dateOf } from '../measure/moment.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import type { NumberedLot } from './completeness-findings.ts'
import { type Finding, found } from './finding.ts'
import { type LotNumberForm, lotNumberForm } from './lot-number-form.ts'

interface Numbered {
  readonly source: string
  /** As the source writes it; undefined where it states none. */
  readonly pattern: string | undefined
  /** Numbers as printed that were given and not used, those of lots whose records have a fault, and former names of lots. */
  readonly accounted: readonly string[]
  /** In order of sampling. */
  readonly lots: readonly Pick<AuditedLot, 'id' | 'number' | 'sampled'>[]
}

/** A running number, with its lot unless it is only accounted for. */
interface Run {
  readonly at: number
  readonly lot?: NumberedLot
}

/**
 * A warning for each gap in the running numbers of a source, between two lots that follow one another.
 * @returns nothing looked at where the source states no pattern, or one without a running number
 * Notes: 1. numbers run within a year where the pattern has one and they begin anew; the first year may have begun
 * before the records; 2. numbers that the source says it did not use are no gap, nor are former names, those of drafts
 * and of lots whose records have a fault.
 */
export function numberGaps(of: Numbered): Checked {
  const form = of.pattern === undefined ? null : lotNumberForm(of.pattern)
  if (form === null) return { check: 'number-gap', looked: 0, findings: [] }
  const runs = runsOf(of, form)
  const findings = [...runs].flatMap(([year, all], place) =>
    gapsOf(of, all, beginOf(runs, place), (at) => form.written(year, at)),
  )
  return { check: 'number-gap', looked: of.lots.length, findings }
}

/** Running numbers by year, both in order. */
function runsOf({ lots, accounted }: Numbered, { read }: LotNumberForm): Map<string, Run[]> {
  const runs = new Map<string, Run[]>()
  const add = (number: string, lot?: NumberedLot) => {
    const own = read(number)
    if (own === null) return
    kept(runs, own.year, (): Run[] => []).push(lot === undefined ? { at: own.at } : { at: own.at, lot })
  }
  for (const { id, number, sampled } of lots) add(number, { lot: id, number, sampled: dateOf(sampled).text })
  for (const number of accounted) add(number)
  return new Map(
    [...runs]
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([year, own]) => [year, own.toSorted((a, b) => a.at - b.at)]),
  )
}

/**
 * Where a year's numbers begin: at one where they fall back from those of the year before, else after those; the first
 * year may have begun before the records.
 */
function beginOf(runs: ReadonlyMap<string, readonly Run[]>, place: number): number {
  const years = [...runs.values()]
  const [before, own] = [years[place - 1]?.at(-1), years[place]?.[0]]
  if (before === undefined || own === undefined) return own?.at ?? 1
  return own.at <= before.at ? 1 : before.at + 1
}

/** Numbers between two lots that no lot bears; some of them may be explained as not used. */
interface Gap {
  /** The first of them, explained or not. */
  readonly begin: number
  readonly missing: number[]
  readonly before: NumberedLot | null
}

function gapsOf(
  { source }: Numbered,
  runs: readonly Run[],
  begin: number,
  written: (at: number) => string,
): Finding[] {
  let gap: Gap = { begin, missing: [], before: null }
  let expected = begin
  const findings: Finding[] = []
  for (const { at, lot } of runs) {
    for (; expected < at; expected += 1) gap.missing.push(expected)
    expected = at + 1
    if (lot === undefined) continue
    findings.push(...gapFinding(source, gap, lot, written))
    gap = { begin: expected, missing: [], before: lot }
  }
  // Numbers given up after the last lot part nothing: the next lot will tell.
  return findings
}

/** Its id is that of the whole gap, so that an answer holds on when some of the numbers are explained. */
function gapFinding(
  source: string,
  { begin, missing, before }: Gap,
  after: NumberedLot,
  written: (at: number) => string,
): Finding[] {
  const [first, last] = [missing[0], missing.at(-1)]
  if (first === undefined || last === undefined) return []
  const numbers = { first: written(first), last: written(last), missing: missing.length }
  const params = { source, ...numbers, apart: last - first + 1 - missing.length, before, after }
  return [found(source, { code: 'number-gap', params }, written(begin))]
}
