/**
 * What a certificate leaves out for a reader who may not see it: names of persons, seals, purchase orders, and
 * which lot it is that was not yet issued. A text stands in the place of each, so that the certificate keeps its shape.
 */
import { defined } from '../../core/measure/defined.ts'
import type { ClauseReason } from '../../core/criteria/reason.ts'
import type { ClauseOutcome, Verdict } from '../../core/criteria/verdict.ts'
import type { Withheld } from '../../records/issued/private-part.ts'
import type { Lot, Site } from '../../records/schema/loaded-records.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import { NOT_PUBLISHED, UNISSUED_LOT } from '../../words/withheld.ts'

/** The groups that a certificate withholds. */
export type Withholding = ReadonlySet<Withheld>

/** A lot's record with the names, seals and numbers that it withholds replaced. */
export function withheldRecord(lot: Lot, withholding: Withholding): Lot {
  const person = (name: string) => (withholding.has('persons') ? NOT_PUBLISHED.name : name)
  const seal = (number: string) => (withholding.has('seals') ? NOT_PUBLISHED.seal : number)
  const order = withholding.has('purchase-order') ? NOT_PUBLISHED.order : lot['purchase-order']
  return {
    ...lot,
    ...defined({
      seals: lot.seals?.map(seal),
      'purchase-order': lot['purchase-order'] === undefined ? undefined : order,
    }),
    samples: lot.samples.map((sample) => ({
      ...sample,
      ...defined({
        by: sample.by === undefined ? undefined : person(sample.by),
        seal: sample.seal === undefined ? undefined : seal(sample.seal),
      }),
    })),
  }
}

/**
 * A lot without the verdicts that tell of a project which the site does not publish: a certificate that named them
 * would name the project, and it is one and the same for every audience.
 */
export function withoutProjects(judged: JudgedLot, { publish = [] }: Pick<Site, 'publish'>): JudgedLot {
  const { criteria, ofProjects, verdicts } = judged
  if (ofProjects.length === 0 || publish.includes('project')) return judged
  return {
    ...judged,
    criteria: criteria.filter(({ id }) => !ofProjects.includes(id)),
    verdicts: verdicts.filter(({ criterion }) => !ofProjects.includes(criterion)),
  }
}

/** Says whether a lot had been issued by the day of the certificate. */
export type IsIssued = (lot: string) => boolean

/**
 * The groups of which a certificate has something to withhold.
 * @param verdicts of the lot, as judged
 * @param named ids of other lots that the certificate names
 */
export function concernedGroups(
  { record, verdicts }: { readonly record: Lot; readonly verdicts: readonly Verdict[] },
  named: readonly string[],
  isIssued: IsIssued,
): Withheld[] {
  const { seals = [], samples } = record
  const isSealed = 0 < seals.length || samples.some(({ seal }) => seal !== undefined)
  const lots = [...named, ...verdicts.flatMap(({ clauses }) => clauses.flatMap(lotsNamed))]
  // Whoever issues a certificate stands in it.
  return [
    'persons',
    ...(isSealed ? (['seals'] as const) : []),
    ...(record['purchase-order'] === undefined ? [] : (['purchase-order'] as const)),
    ...(lots.every(isIssued) ? [] : (['drafts'] as const)),
  ]
}

function lotsNamed({ against, clauses = [], reasons: [reason] }: ClauseOutcome): string[] {
  const gaps = reason.code === 'sampled-too-seldom' ? reason.params.gaps : []
  return [
    ...(against?.lots ?? []),
    ...gaps.flatMap(({ since }) => since ?? []),
    ...clauses.flatMap(lotsNamed),
  ]
}

/** A verdict without the ids of lots that were not yet issued. */
export function withoutDrafts(verdict: Verdict, isIssued: IsIssued): Verdict {
  return { ...verdict, clauses: verdict.clauses.map((clause) => clauseWithoutDrafts(clause, isIssued)) }
}

function clauseWithoutDrafts(clause: ClauseOutcome, isIssued: IsIssued): ClauseOutcome {
  const { against, clauses, reasons } = clause
  const [first, ...added] = reasons
  return {
    ...clause,
    reasons: [reasonWithoutDrafts(first, isIssued), ...added],
    ...defined({
      against: against && {
        ...against,
        lots: against.lots.map((lot) => (isIssued(lot) ? lot : UNISSUED_LOT)),
      },
      clauses: clauses?.map((member) => clauseWithoutDrafts(member, isIssued)),
    }),
  }
}

function reasonWithoutDrafts(reason: ClauseReason, isIssued: IsIssued): ClauseReason {
  if (reason.code !== 'sampled-too-seldom') return reason
  const gaps = reason.params.gaps.map((gap) =>
    gap.since === undefined || isIssued(gap.since) ? gap : { ...gap, since: UNISSUED_LOT },
  )
  return { code: reason.code, params: { ...reason.params, gaps } }
}
