/** What a certificate states of a lot, from its records and their judgement on a day. */
import { type Criterion, isAsRead, isUnconfirmed } from '../../core/criteria/criterion.ts'
import { hasNoClass } from '../../core/criteria/no-class.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { dutyOf } from '../../core/measure/duty.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { regularSamples } from '../../core/mortar/regular-samples.ts'
import { withTexts } from '../../core/measure/texts-of-times.ts'
import { awaitedTests } from '../../core/result/awaited-test.ts'
import type { Result } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Producer, Source } from '../../records/schema/loaded-records.ts'
import { written } from '../../words/as-written.ts'
import { replacementWords } from '../../words/condition-words.ts'
import { date } from '../../words/dates.ts'
import type { WorkingStep } from '../../core/result/working.ts'
import { intervalScopeWords } from '../../words/interval-words.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import { scopeWords } from '../../words/outcomes.ts'
import { riskSentence, ruleWords } from '../../words/rules.ts'
import { NOT_PUBLISHED, UNISSUED_LOT } from '../../words/withheld.ts'
import { titlesOf, type WordedVerdict, wordedVerdict } from '../../words/worded-verdict.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import type { CertificateCriterion, CertificateFacts, CertificateResult } from '../shape/certificate-facts.ts'
import { conditionParticulars } from '../shape/condition-particulars.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import { accreditationFor, accreditationOn, hasAccreditation } from '../passes/accreditation.ts'
import { namedTest } from '../shape/standing.ts'
import { departuresOf } from './departures.ts'
import { deviationFacts, mortarFacts } from './mortar-facts.ts'
import { type IsIssued, withheldRecord, type Withholding, withoutDrafts } from './withheld.ts'

/** Who issues which revision and why; absent for a draft. */
export interface Issue {
  readonly revision: number
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn: boolean
  readonly replacedBy: string | null
  readonly replaces: { readonly revision: number; readonly date: Moment; readonly digest: string } | null
}

/** Something is still awaited, in time or overdue, so that the certificate is provisional. */
export function isProvisional({ planned }: Pick<JudgedLot, 'planned'>): boolean {
  return 0 < planned.length
}

/** How a certificate is stated. */
export interface Stating {
  readonly records: Records
  /** null for a draft. */
  readonly issue: Issue | null
  readonly withholding: Withholding
  /** Whether a lot had been issued by the day. */
  readonly isIssued: IsIssued
}

/** @throws RangeError for a lot whose source and producer are not on record */
export function certificateFacts(lot: JudgedLot, stating: Stating): CertificateFacts {
  const { records, issue, withholding } = stating
  const record = withheldRecord(lot.record, withholding)
  const { source, producer } = originOf(lot, records)
  return {
    certificate: lot.id,
    revision: issue?.revision ?? null,
    state: stateOf(lot, issue),
    issued: issue?.date.text ?? null,
    awaited: awaitedTests(lot.planned).map((test) => namedTest(records, test)),
    asOf: lot.asOf.text,
    by: issuer(issue, producer, withholding),
    reason: issue?.reason ?? null,
    replaces: issue === null ? null : replaced(issue),
    replacedBy: replacement(stating),
    site: records.site.title,
    notice: records.site.notice ?? null,
    units: records.site.units,
    producer: {
      id: source.producer,
      name: producer.name,
      address: producer.address,
      plant: (source.plant === undefined ? undefined : producer.plants?.[source.plant]?.name) ?? null,
      marketingEntity: source['marketing-entity'] ?? null,
    },
    source: {
      id: sourceOf(lot.id),
      name: source.name,
      kind: source.kind as MaterialKind,
      tradeName: source['trade-name'] ?? null,
      unit: source.unit ?? null,
      deposit: source.deposit ?? null,
      coalSources: source['coal-sources'] ?? [],
      coFiring: source['co-firing'] ?? null,
      additives: source.additives ?? null,
      safetyDataSheet: source['safety-data-sheet'] ?? null,
    },
    lot: lotIdentity(lot, record),
    samples: samples(record, records),
    laboratories: laboratories(lot, records),
    conditions: conditionsOf(lot, records),
    results: producersResults(lot).map((result) => statedResult(result, lot.record, records)),
    mortars: mortarFacts(lot, records),
    departures: departuresOf(producersResults(lot), (id) => conditionTitle(records, id), records.site.units),
    deviations: deviationFacts(lot),
    criteria: lot.criteria.map((criterion, place) =>
      statedCriterion(criterion, lot.verdicts[place], records),
    ),
    verdicts: wordedVerdicts(lot, stating),
  }
}

/** The results that a certificate is about. */
export function producersResults({ results }: Pick<JudgedLot, 'results'>): Result[] {
  return results.filter((result) => result.role === 'producer')
}

function originOf({ id }: JudgedLot, records: Records): { source: Source; producer: Producer } {
  const source = records.sources.get(sourceOf(id))
  const producer = source && records.producers.get(source.producer)
  if (source === undefined || producer === undefined)
    throw new RangeError(`certificateFacts needs a lot whose source and producer are on record, got ${id}`)
  return { source, producer }
}

function stateOf(lot: JudgedLot, issue: Issue | null): CertificateFacts['state'] {
  if (issue === null) return 'draft'
  if (issue.withdrawn) return 'withdrawn'
  return isProvisional(lot) ? 'provisional' : 'complete'
}

function issuer(issue: Issue | null, producer: Producer, withholding: Withholding): CertificateFacts['by'] {
  if (issue === null) return null
  const signatory = producer.signatories?.find((person) => person.name === issue.by)
  return {
    name: withholding.has('persons') ? NOT_PUBLISHED.name : issue.by,
    function: issue.function,
    independent: independence(signatory?.['independent-of-production']),
  }
}

function replacement({ records, issue, withholding, isIssued }: Stating): CertificateFacts['replacedBy'] {
  const id = issue?.replacedBy ?? null
  if (id === null) return null
  if (withholding.has('drafts') && !isIssued(id)) return { id: null, text: UNISSUED_LOT }
  return { id, text: records.lots.get(id)?.number ?? nameInSource(id) }
}

function replaced({ replaces }: Issue): CertificateFacts['replaces'] {
  return replaces === null ? null : { revision: replaces.revision, date: replaces.date.text }
}

function independence(word: 'yes' | 'no' | undefined): boolean | null {
  return word === undefined ? null : word === 'yes'
}

function lotIdentity({ number, class: lotClass }: JudgedLot, record: Lot): CertificateFacts['lot'] {
  const feed = [
    record.feed?.cell,
    record.feed?.moisture && `feed moisture ${written(record.feed.moisture)}`,
    record.feed?.note,
  ].filter(Boolean)
  return {
    number,
    class: lotClass,
    produced: { from: record.produced.from.text, to: record.produced.to.text },
    quantityT: record.quantity.value,
    quantity: written(record.quantity),
    silo: record.silo ?? null,
    seals: record.seals ?? [],
    feed: feed.length === 0 ? null : feed.join(', '),
    blend: (record.blend ?? []).map((part) => ({ source: part.source, share: written(part.share) })),
    note: record.note ?? null,
  }
}

function samples(record: Lot, { laboratories }: Records): CertificateFacts['samples'] {
  return inOrderOfTaking(record.samples).map((sample) => ({
    id: sample.id,
    kind: sample.kind,
    duty: dutyOf({ sampleKind: sample.kind, ...defined({ duty: sample.duty }) }),
    of: sample.of ?? null,
    taken: takenWords(sample),
    begun: dateOrNull(sample.taken?.from ?? sample.on),
    ended: dateOrNull(sample.taken?.to ?? sample.on),
    place: sample.place ?? null,
    by: sample.by ?? null,
    method: sample.method ?? null,
    increments: sample.increments ?? null,
    mass: sample.mass ? written(sample.mass) : null,
    container: sample.container ?? null,
    represents: sample.represents ? written(sample.represents) : null,
    to: sample.to === undefined ? null : (laboratories.get(sample.to)?.name ?? sample.to),
    received: sample.received === undefined ? null : date(sample.received),
    retained: sample.retained
      ? [sample.retained.place, sample.retained.until && `until ${date(sample.retained.until)}`]
          .filter(Boolean)
          .join(', ')
      : null,
  }))
}

/** Regular samples, which may be many, in order of their taking, others in their places. */
function inOrderOfTaking(all: Lot['samples']): Lot['samples'] {
  const times = regularSamples({ samples: all }) ?? {}
  const timed = all.filter(({ id }) => times[id] !== undefined)
  const inOrder = timed
    .toSorted((a, b) => compareMoments(times[a.id] as Moment, times[b.id] as Moment))
    .values()
  return all.map((sample) => (timed.includes(sample) ? (inOrder.next().value ?? sample) : sample))
}

function dateOrNull(moment: Moment | undefined): string | null {
  return moment === undefined ? null : date(moment)
}

function takenWords({ taken, on }: Lot['samples'][number]): string | null {
  if (taken !== undefined) return `${date(taken.from)} to ${date(taken.to)}`
  return on === undefined ? null : date(on)
}

function laboratories(lot: JudgedLot, records: Records): CertificateFacts['laboratories'] {
  const ids = [...new Set(producersResults(lot).map((result) => result.laboratory))].sort()
  return ids.flatMap((id) => {
    const laboratory = records.laboratories.get(id)
    return laboratory === undefined
      ? []
      : [
          {
            id,
            name: laboratory.name,
            address: laboratory.address,
            standing: laboratory.standing,
            accreditation: accreditationOn(laboratory, lot.asOf),
            ...defined({ accreditationUnknown: hasAccreditation(laboratory) ? undefined : (true as const) }),
          },
        ]
  })
}

function conditionsOf(lot: JudgedLot, records: Records): CertificateFacts['conditions'] {
  const tested = (lot.record.tests ?? []).map(({ condition }) => condition)
  const reported = producersResults(lot).flatMap(({ condition }) => condition ?? [])
  const ids = [...new Set([...tested, ...reported])].sort()
  return ids.flatMap((id) => {
    const condition = records.conditions.get(id)
    return condition === undefined
      ? []
      : [
          {
            id,
            title: condition.title,
            standing: condition.standing,
            particulars: conditionParticulars(condition),
            replacement: replacementWords(condition),
          },
        ]
  })
}

function statedResult(
  { working, begun: _begun, reasons, interval, ...result }: Result,
  record: Lot,
  records: Records,
): CertificateResult {
  const laboratory = records.laboratories.get(result.laboratory)
  return {
    ...withTexts(result),
    reasons: reasons.map((reason) => resultReasonIn(reason, records.site.units)),
    accredited: laboratory !== undefined && accreditationFor(laboratory, result) !== undefined,
    ...defined({
      interval: interval && { ...interval, method: intervalScopeWords(interval) },
      subcontracted: subcontractorOf(result, record),
      mortars: result.control === undefined ? undefined : meansOf(working()),
    }),
  }
}

/** Undefined for an index that its laboratory finished itself. */
function meansOf(steps: readonly WorkingStep[]): CertificateResult['mortars'] {
  const ratio = steps.find((step) => step.step === 'ratio')
  if (ratio?.step !== 'ratio') return undefined
  const { unit, decimals } = ratio
  // A working has a decimal more than a result is reported with.
  const figure = (value: number) => ({ value, unit, decimals: Math.max(0, decimals - 1) })
  return { test: figure(ratio.test), control: figure(ratio.control) }
}

function subcontractorOf(
  { sample, tested, condition }: Pick<Result, 'sample' | 'tested' | 'condition'>,
  record: Lot,
): string | undefined {
  if (condition !== undefined) return undefined
  return record.analyses?.find(
    (analysis) => analysis.sample === sample && compareMoments(analysis.tested, tested) === 0,
  )?.subcontracted
}

function wordedVerdicts({ criteria, verdicts }: JudgedLot, stating: Stating): WordedVerdict[] {
  const { records, withholding, isIssued } = stating
  return criteria.flatMap((criterion, place) => {
    const verdict = verdicts[place]
    if (verdict === undefined) return []
    const named = withholding.has('drafts') ? withoutDrafts(verdict, isIssued) : verdict
    return [wordedVerdict(named, criterion, (id) => conditionTitle(records, id), records.site.units)]
  })
}

/** @param outcomes under the set, by whose uncertainties the risk is computed */
function statedCriterion(
  criterion: Criterion,
  verdict: Verdict | undefined,
  records: Records,
): CertificateCriterion {
  const titleOf = titlesOf(criterion, (id) => conditionTitle(records, id))
  return {
    id: criterion.id,
    title: criterion.title,
    edition: criterion.edition,
    trial: isUnconfirmed(criterion),
    decisionRule: ruleWords(criterion.decisionRule),
    risk: riskSentence(criterion, verdict?.clauses ?? [], titleOf),
    ...defined({
      noClass: verdict !== undefined && hasNoClass(verdict) ? (true as const) : undefined,
      designation: criterion.designation,
      supersededBy: criterion.supersededBy,
      scope: scopeWords(criterion) ?? undefined,
      asRead: !isUnconfirmed(criterion) && isAsRead(criterion) ? (true as const) : undefined,
      lacks: criterion.lacks.length === 0 ? undefined : criterion.lacks.length,
    }),
  }
}
