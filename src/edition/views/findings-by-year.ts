/** Findings about lots by source and year of sampling, where they are too many for one page. */
import type { Finding } from '../../core/checks/finding.ts'
import { kept } from '../../core/measure/kept.ts'
import { yearOf } from '../../core/measure/moment.ts'
import { byReadingOrder } from '../../core/checks/reading-order.ts'
import { foundOf } from '../shape/found-of-source.ts'
import type { Edition } from '../shape/edition.ts'
import { type AnswerReader, answersOfAll } from './answers.ts'
import { type FindingGroup, findingsByYear, findingsOfLots, groupsOf } from './findings.ts'
import { sampledIn, yearsOf } from './years.ts'

/** A source and a year whose findings have a page. */
export interface FindingYear {
  readonly source: string
  readonly year: string
}

export interface FindingCount {
  readonly year: string
  readonly count: number
  /** Those that block and are not closed. */
  readonly blocks: number
}

export interface FindingsOfSource {
  readonly id: string
  readonly name: string
  /** In the order of the years. */
  readonly counts: readonly FindingCount[]
}

export interface FindingYears {
  /** The latest first. */
  readonly years: readonly string[]
  readonly sources: readonly FindingsOfSource[]
  /** Of all sources and years. */
  readonly total: Omit<FindingCount, 'year'>
}

export interface FindingYearView {
  readonly name: string
  readonly groups: readonly FindingGroup[]
}

/** Every page of a source and year; none where one page lists all findings. */
export function findingYears(edition: Edition): FindingYear[] {
  if (!findingsByYear(edition)) return []
  return [...edition.sources.keys()].flatMap((source) => {
    const asked = edition.lotsOf(source).filter(({ findingCount }) => 0 < findingCount)
    return yearsOf(asked.map(({ sampled }) => sampled)).map((year) => ({ source, year }))
  })
}

/** How many there are in each. */
export function countedByYear(edition: Edition): FindingYears {
  const answerTo = answersOfAll(edition)
  const byYear = new Map([...edition.sources.keys()].map((id) => [id, foundByYear(edition, id)]))
  const years = [...new Set([...byYear.values()].flatMap((own) => [...own.keys()]))].sort().reverse()
  const sources = [...edition.sources.values()].map(({ id, name }) => ({
    id,
    name,
    counts: years.map((year) => ({ year, ...counted(byYear.get(id)?.get(year) ?? [], answerTo) })),
  }))
  const counts = sources.flatMap((own) => own.counts)
  return {
    years,
    sources,
    total: {
      count: counts.reduce((sum, own) => sum + own.count, 0),
      blocks: counts.reduce((sum, own) => sum + own.blocks, 0),
    },
  }
}

function foundByYear(edition: Edition, source: string): Map<string, Finding[]> {
  const byYear = new Map<string, Finding[]>()
  for (const [id, findings] of foundOf(edition, source).ofLots) {
    const lot = edition.lots.get(id)
    if (lot !== undefined) kept(byYear, yearOf(lot.sampled), (): Finding[] => []).push(...findings)
  }
  return byYear
}

/** As a page lists them: the same one once. */
function counted(findings: readonly Finding[], answerTo: AnswerReader): Omit<FindingCount, 'year'> {
  const once = new Map(findings.map((finding) => [`${finding.severity}|${finding.id}`, finding]))
  const open = [...once.values()].filter(
    (finding) => finding.severity === 'blocks' && answerTo(finding)?.closed === undefined,
  )
  return { count: once.size, blocks: open.length }
}

/** Those about the lots sampled in the year, the newest lot first within each group. */
export function findingYearView(edition: Edition, { source, year }: FindingYear): FindingYearView {
  const findings = findingsOfLots(edition, sampledIn(edition.lotsOf(source), year))
  return {
    name: edition.sources.get(source)?.name ?? source,
    groups: groupsOf(edition, findings.sort(byReadingOrder)),
  }
}
