/** Findings as pages list them: each with the certificate that it is about, its id and what was answered. */
import type { Finding } from '../../core/checks/finding.ts'
import { byReadingOrder } from '../../core/checks/reading-order.ts'
import { compareMoments } from '../../core/measure/moment.ts'
import { type AnswerPart, answerParts } from '../../words/answers.ts'
import { type WordedFinding, wordedFinding } from '../../words/findings.ts'
import { foundOf } from '../shape/found-of-source.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { paths } from '../shape/addresses.ts'
import { findingNames } from '../shape/finding-names.ts'
import {
  type AnswerReader,
  answerReader,
  answersLeftOver,
  answersOfAll,
  type RecordedAnswer,
} from './answers.ts'
import { type ChecksRunView, checksRunView } from './checks-run.ts'
import { type Linked, linked } from './linked.ts'

export interface ListedFinding extends WordedFinding {
  /** The lot that it is about, where it has a page. */
  readonly lot?: string
  readonly recorded: RecordedAnswer | null
  /** The answer part by part; none without one. */
  readonly answerParts: readonly AnswerPart[]
}

/** A finding of a list of all sources: the same one of several sources stands once. */
export interface JoinedFinding extends ListedFinding {
  /** Ids by which it is answered, one for each source. */
  readonly ids: readonly string[]
  /** Sources that it is about; none of a finding about a lot. */
  readonly sources: readonly Linked[]
}

/** Findings of one severity, or those that are closed. */
export interface FindingGroup {
  readonly heading: string
  readonly findings: readonly JoinedFinding[]
}

export interface FindingsView {
  /** Whether this audience may see findings at all. */
  readonly published: boolean
  /** Those there are: open ones, the gravest first, then what was answered and closed. */
  readonly groups: readonly FindingGroup[]
  /** Those about lots are too many for this page and stand by source and year. */
  readonly byYear: boolean
  /** Answers to findings that are no longer made. */
  readonly leftOver: readonly {
    readonly finding: string
    readonly about: Linked
    readonly parts: readonly AnswerPart[]
  }[]
  /** null where findings are not published. */
  readonly checks: ChecksRunView | null
}

const HEADINGS = { blocks: 'Blocks', warning: 'Warnings', information: 'Information' } as const

/** Findings that one page has room for. */
const ON_ONE_PAGE = 500

/** Whether those about lots stand on a page for each source and year. */
export function findingsByYear(edition: Edition): boolean {
  const counted = [...edition.sources.values(), ...edition.lots.values()]
  const count = counted.reduce((sum, { findingCount }) => sum + findingCount, 0)
  return findingsPublished(edition) && ON_ONE_PAGE < count
}

/** All findings of an edition: those about sources and laboratories, then those about lots, the newest lot first, as far as there is room. */
export function findingsView(edition: Edition): FindingsView {
  const published = findingsPublished(edition)
  if (!published) return { published, groups: [], byYear: false, leftOver: [], checks: null }
  const byYear = findingsByYear(edition)
  const found = [...edition.sources.keys()].map((id) => foundOf(edition, id))
  const ofLots = new Map(found.flatMap((one) => one.ofLots))
  const ofOthers = [
    ...found.flatMap(({ ofSource }) => ofSource),
    ...[...edition.laboratories.keys()].flatMap((id) => edition.laboratoryFindings(id)),
  ]
  const all = [
    ...ofOthers,
    ...[...edition.lots.values()].sort(newestFirst).flatMap(({ id }) => ofLots.get(id) ?? []),
  ]
  return {
    published,
    groups: groupsOf(edition, (byYear ? ofOthers : all).toSorted(byReadingOrder)),
    byYear,
    leftOver: answersLeftOver(edition, new Set(all.map(({ id }) => id))).map(({ about: id, answer }) => ({
      finding: answer.finding,
      about: linkTo(edition, id),
      parts: answerParts(answer),
    })),
    checks: checksRunView(edition),
  }
}

/** Open ones, the gravest first, then those closed; a group that has none is left out. @param findings in order */
export function groupsOf(edition: Edition, findings: readonly Finding[]): FindingGroup[] {
  const listed = joined(edition, listedFindings(edition, findings, answersOfAll(edition)))
  const isClosed = ({ recorded }: ListedFinding) => recorded?.closed !== undefined
  const open = (['blocks', 'warning', 'information'] as const).map((severity) => ({
    heading: HEADINGS[severity],
    findings: listed.filter((one) => one.severity === severity && !isClosed(one)),
  }))
  const closed = { heading: 'Answered and closed', findings: listed.filter(isClosed) }
  return [...open, closed].filter((group) => 0 < group.findings.length)
}

/** One laboratory or control batch serves several sources: what is found of it alike is asked once. */
function joined(edition: Edition, findings: readonly ListedFinding[]): JoinedFinding[] {
  const alike = Map.groupBy(findings, (finding) =>
    finding.lot === undefined && finding.recorded === null
      ? `${finding.severity}|${finding.check}|${finding.sentence}`
      : `${finding.severity}|${finding.id}`,
  )
  return [...alike.values()].flatMap((own) => {
    const [first] = own
    if (first === undefined) return []
    const evidence = [...new Set(own.flatMap((finding) => finding.evidence))]
    const ofSource = own.filter(({ about }) => edition.sources.has(about))
    return [
      {
        ...first,
        evidence,
        ids: own.map(({ id }) => id),
        sources: ofSource.map(({ about }) => linkTo(edition, about)),
      },
    ]
  })
}

function linkTo(edition: Edition, id: string): Linked {
  const source = edition.sources.get(id)
  return source === undefined
    ? linked(edition, edition.lots.get(id)?.number ?? id, paths.certificate(id))
    : linked(edition, source.name, paths.source(id))
}

/** Whether findings may be shown to the edition's audience. */
export function findingsPublished({ audience, site }: Pick<Edition, 'audience' | 'site'>): boolean {
  return audience === 'internal' || (site.publish ?? []).includes('findings')
}

/** Findings of lots, in the order of the lots. */
export function findingsOfLots(edition: Pick<Edition, 'lot'>, lots: readonly ListedLot[]): Finding[] {
  return lots.flatMap(({ id, findingCount }) => (findingCount === 0 ? [] : edition.lot(id).findings))
}

/** @param answerTo the answer to a finding, where the caller has all of them at hand */
export function listedFindings(
  edition: Edition,
  findings: readonly Finding[],
  answerTo: AnswerReader = answerReader(edition),
): ListedFinding[] {
  const names = findingNames(edition)
  return findings.map((finding) => {
    const recorded = answerTo(finding)
    const parts = recorded === null ? [] : answerParts(recorded)
    const listed = { ...wordedFinding(finding, names), recorded, answerParts: parts }
    return edition.lots.has(finding.about) ? { ...listed, lot: finding.about } : listed
  })
}

function newestFirst(a: ListedLot, b: ListedLot): number {
  return compareMoments(b.sampled, a.sampled)
}
