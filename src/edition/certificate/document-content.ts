/** What an issued document holds as data: results, outcomes with reasons as codes, the record as known. */
import { type Criterion, isUnconfirmed } from '../../core/criteria/criterion.ts'
import type { ClauseReasons } from '../../core/criteria/reason.ts'
import type { ClauseOutcome, Verdict } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { withTexts } from '../../core/measure/texts-of-times.ts'
import type { Result } from '../../core/result/result.ts'
import type { Interval } from '../../core/statistics/ratio-interval.ts'
import { writtenForm } from '../../records/schema/written.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import { type KnownRecord, knownRecord } from '../passes/known-record.ts'
import { printedCertificate, printedLot, printedShared } from '../printed/printed-certificate.ts'
import type { CertificateFacts, CertificateResult } from '../shape/certificate-facts.ts'
import type {
  DocumentBounds,
  DocumentClause,
  DocumentCriterion,
  DocumentInterval,
  DocumentOutcome,
  DocumentReference,
  DocumentResult,
  DocumentResults,
  DocumentVerdict,
  IssuedDocument,
} from '../shape/document.ts'
import { producersResults } from '../shape/producers-results.ts'
import type { Stating } from './certificate-facts.ts'
import { withheldRecord, withoutDrafts } from './withheld.ts'
import { toSignificant } from '../../core/measure/rounding.ts'

/** What an issued document holds of a lot, in the members that it is stored in. */
export type DocumentContent = Pick<IssuedDocument, 'shared' | 'lot' | 'controls' | 'printed' | 'data'>

/** @param facts what the certificate states of the same lot under the same withholding */
export function documentContent(
  judged: JudgedLot,
  facts: CertificateFacts,
  { records, withholding, isIssued }: Stating,
): DocumentContent {
  const groups = grouped(producersResults(judged), facts.results)
  const known = knownRecord(withheldRecord(judged.record, withholding), records.controls, judged.asOf)
  const { tests, ...record } = known.lot
  const [verdict, ...others] = withholding.has('drafts')
    ? judged.verdicts.map((own) => withoutDrafts(own, isIssued))
    : judged.verdicts
  return {
    shared: {
      printed: printedShared(facts),
      source: { producer: facts.producer, source: facts.source },
      laboratories: facts.laboratories,
      conditions: facts.conditions,
      criteria: judged.criteria.map(criterionData),
    },
    lot: {
      printed: printedLot(facts),
      results: groups.filter(isOfAnalysis).map(groupData),
      record,
    },
    controls: known.controls,
    printed: printedCertificate(facts),
    data: {
      class: judged.class,
      results: groups.filter((group) => !isOfAnalysis(group)).map(groupData),
      ...defined({ verdict: verdict && verdictData(verdict, placesOf(groups)) }),
      others: others.map(outcomeData),
      tests: tests ?? [],
    },
  }
}

/** The record that a document holds, as `knownRecord` gives today's. */
export function recordOf({ lot, data, controls }: DocumentContent): KnownRecord {
  const { tests } = data
  const mortars = Array.isArray(tests) && tests.length === 0 ? {} : { tests }
  return { lot: { ...(lot.record as object), ...mortars }, controls }
}

type Head = Omit<DocumentResults, 'values' | 'results'>
interface Group {
  readonly head: Head
  readonly members: readonly Result[]
}

/** Results of one analysis or one mortar together, those of analyses first. */
function grouped(results: readonly Result[], stated: readonly CertificateResult[]): Group[] {
  const statedOf = new Map(stated.map((result) => [result.key, result]))
  const together = Map.groupBy(results, (result) => {
    const { accredited, subcontracted } = statedOf.get(result.key) ?? {}
    const { laboratory, sample, condition, tested } = result
    const ofAnalysis = condition === undefined ? [tested.text, subcontracted] : []
    return [laboratory, sample, condition, accredited, ...ofAnalysis].join('|')
  })
  const groups = [...together.values()].flatMap((members) => {
    const [first] = members
    return first === undefined ? [] : [{ head: headOf(first, members, statedOf.get(first.key)), members }]
  })
  return [...groups.filter(isOfAnalysis), ...groups.filter((group) => !isOfAnalysis(group))]
}

function isOfAnalysis({ head }: Pick<Group, 'head'>): boolean {
  return head.condition === undefined
}

function headOf(
  { laboratory, sample, condition, method, basis, tested }: Result,
  members: readonly Result[],
  stated: CertificateResult | undefined,
): Head {
  return defined({
    laboratory,
    sample,
    condition,
    control: members.find(({ control }) => control !== undefined)?.control,
    tested: tested.text,
    method,
    basis,
    accredited: stated?.accredited === true ? (true as const) : undefined,
    subcontracted: stated?.subcontracted,
  })
}

function groupData({ head, members }: Group): DocumentResults {
  const results = members.map((result) => resultData(result, head))
  const plain = results.filter(isPlain)
  const others = results.filter((result) => !isPlain(result))
  return defined({
    ...head,
    values:
      plain.length === 0
        ? undefined
        : Object.fromEntries(plain.map(({ property, value }) => [property, value])),
    results: others.length === 0 ? undefined : others,
  })
}

/** Nothing to say of it but its value. */
function isPlain(result: DocumentResult): boolean {
  return Object.keys(result).length === 2
}

function resultData(result: Result, head: Head): DocumentResult {
  const { property, value, censored, interval, n, reasons, tested, method, basis } = result
  return defined({
    property,
    age: result.age?.text,
    value,
    censored,
    summaryOnly: result.summaryOnly,
    finished: result.finished,
    statedU: result.statedU,
    tested: tested.text === head.tested ? undefined : tested.text,
    method: method === head.method ? undefined : (method ?? null),
    basis: basis === head.basis ? undefined : (basis ?? null),
    n: n === 1 ? undefined : n,
    interval: interval && intervalData(interval),
    bounds: boundsData(result),
    valid: result.valid ? undefined : (false as const),
    reasons: reasons.length === 0 ? undefined : reasons,
  })
}

/** Of what the record does not write itself. */
function boundsData({ bounds, written }: Result): DocumentBounds | undefined {
  return bounds === undefined || written !== undefined ? undefined : { low: bounds.low, high: bounds.high }
}

/** Digits of what is an estimate of doubt and no value. */
const DIGITS = 6

function intervalData({ method, df, low, high, shape }: Interval): DocumentInterval {
  return defined({
    method,
    df: toDigits(df),
    low: low === null ? null : toDigits(low),
    high: high === null ? null : toDigits(high),
    shape: shape === 'bounded' ? undefined : shape,
  })
}

function toDigits(value: number): number {
  return toSignificant(value, DIGITS)
}

type Place = NonNullable<DocumentClause['result']>
type Places = ReadonlyMap<string, { readonly place: Place; readonly value: number }>

/** A retest shares the key of what it replaces: the valid one of them is judged. */
function placesOf(groups: readonly Group[]): Places {
  const placed = groups.flatMap(({ head, members }, group) => {
    let listed = 0
    return members.map((result) => {
      const place = isPlain(resultData(result, head)) ? result.property : listed++
      return {
        key: result.key,
        valid: result.valid,
        at: { place: [group, place] as const, value: result.value },
      }
    })
  })
  const [valid, others] = [placed.filter((own) => own.valid), placed.filter((own) => !own.valid)]
  return new Map([...others, ...valid].map(({ key, at }) => [key, at]))
}

function verdictData(verdict: Verdict, places: Places): DocumentVerdict {
  const { acceptedAs, reasons, release, clauses } = verdict
  return {
    ...outcomeData(verdict),
    ...defined({ acceptedAs, release: release && withTexts(release) }),
    reasons,
    clauses: clauses.map((clause) => clauseData(clause, places)),
  }
}

function clauseData(clause: ClauseOutcome, places: Places): DocumentClause {
  const { id, outcome, value, compared, due, against, uncertainty, band, acceptedAs, relaxed } = clause
  const judged = clause.result === null ? undefined : places.get(clause.result)
  return defined({
    id,
    outcome,
    result: judged?.place,
    value: value === null || value === judged?.value ? undefined : value,
    bounds: value === null || value === judged?.value ? undefined : clause.bounds,
    compared: compared ?? undefined,
    due: due?.text,
    against: against && referenceData(against),
    uncertainty: uncertainty && { ...uncertainty, u: toDigits(uncertainty.u) },
    band,
    acceptedAs,
    relaxedBy: relaxed?.by,
    reasons: reasonsData(clause.reasons),
    clauses: clause.clauses?.map((member) => clauseData(member, places)),
  })
}

function referenceData({
  mean,
  bounds,
  n,
  lots,
  values,
}: NonNullable<ClauseOutcome['against']>): DocumentReference {
  const reference = { mean, ...defined({ bounds }), n }
  return lots.length === 0 ? reference : { ...reference, lots: lots.map(nameInSource), values }
}

/** Reasons whose figures the clause itself holds. */
const TOLD_BY_CLAUSE: readonly string[] = ['compared-with-limit', 'deviation-reference', 'by-members']

function reasonsData(reasons: ClauseReasons): DocumentClause['reasons'] {
  if (reasons.length === 1 && reasons[0].code === 'compared-with-limit') return undefined
  return reasons.map(({ code, params }) =>
    TOLD_BY_CLAUSE.includes(code) || Object.keys(params).length === 0 ? code : { code, params },
  )
}

function criterionData(criterion: Criterion): DocumentCriterion {
  const { id, edition, decisionRule, clauses } = criterion
  return {
    id,
    edition,
    trial: isUnconfirmed(criterion),
    decisionRule: writtenForm(decisionRule),
    clauses: writtenForm(clauses),
  }
}

function outcomeData({ criterion, class: own, outcome, decidedBy }: Verdict): DocumentOutcome {
  return { criterion, class: own, outcome, ...(outcome === 'meets' ? {} : { decidedBy }) }
}
