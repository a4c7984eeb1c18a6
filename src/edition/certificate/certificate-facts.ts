/** What a certificate states of a lot, from its records and their judgement on a day. */
import { isProvisional } from '../shape/due.ts'
import { producersRecord, producersResults } from '../shape/producers-results.ts'
import { type Criterion, isAsRead, isUnconfirmed } from '../../core/criteria/criterion.ts'
import { verdictStanding } from '../../core/criteria/verdict-standing.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { inForce, type Moment } from '../../core/measure/moment.ts'
import { awaitedTests } from '../../core/result/awaited-test.ts'
import type { Records } from '../../records/load.ts'
import type { Producer, Source } from '../../records/schema/loaded-records.ts'
import { replacementWords } from '../../words/condition-words.ts'
import { scopeWords } from '../../words/outcomes.ts'
import { riskSentence, ruleWords } from '../../words/rules.ts'
import { NOT_PUBLISHED, UNISSUED_LOT } from '../../words/withheld.ts'
import { titlesOf, type WordedVerdict, wordedVerdict } from '../../words/worded-verdict.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import type { CertificateCriterion, CertificateFacts, Reachable } from '../shape/certificate-facts.ts'
import { conditionParticulars } from '../shape/condition-particulars.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import { accreditationOn, hasAccreditation } from '../passes/accreditation.ts'
import { namedTest } from '../shape/standing.ts'
import { departuresOf } from './departures.ts'
import { deviationFacts, mortarFacts } from './mortar-facts.ts'
import { type IsIssued, withheldRecord, type Withholding, withoutDrafts } from './withheld.ts'
import { lotIdentity, statedSamples } from './lot-facts.ts'
import { statedResult } from './result-facts.ts'

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
export function certificateFacts(judged: JudgedLot, stating: Stating): CertificateFacts {
  const lot = { ...judged, record: producersRecord(judged.record) }
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
      ...reachable(producer),
      ...defined({ letterhead: producer.letterhead }),
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
      ...agencyNumbers(source, lot.asOf),
    },
    lot: lotIdentity(lot, record),
    samples: statedSamples(record, records),
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

function reachable({ telephone, mail }: Pick<Producer, 'telephone' | 'mail'>): Reachable {
  return defined({ telephone, mail })
}

/** Absent where none is in force, so that a document without one stays as it is. */
function agencyNumbers(source: Source, on: Moment): Pick<CertificateFacts['source'], 'agencyNumbers'> {
  const numbers = (source['agency-numbers'] ?? [])
    .filter((entry) => inForce(entry, on))
    .map(({ agency, number }) => ({ agency, number }))
  return numbers.length === 0 ? {} : { agencyNumbers: numbers }
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
            ...reachable(laboratory),
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
  const titleOf = titlesOf(criterion, (id) => conditionTitle(records, id), records.site.units)
  return {
    id: criterion.id,
    title: criterion.title,
    edition: criterion.edition,
    trial: isUnconfirmed(criterion),
    decisionRule: ruleWords(criterion.decisionRule),
    risk: riskSentence(criterion, verdict?.clauses ?? [], titleOf),
    ...(verdict && verdictStanding(verdict)),
    ...defined({
      designation: criterion.designation,
      supersededBy: criterion.supersededBy,
      scope: scopeWords(criterion) ?? undefined,
      asRead: !isUnconfirmed(criterion) && isAsRead(criterion) ? (true as const) : undefined,
      lacks: criterion.lacks.length === 0 ? undefined : criterion.lacks.length,
    }),
  }
}
