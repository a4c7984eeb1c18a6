/** Builds the certificate document of a lot from its records and today's computation. */
import { withTexts } from '../../core/measure/texts-of-times.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import { isUnconfirmed } from '../../core/criteria/criterion.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { compareMoments, isBy, type Moment } from '../../core/measure/moment.ts'
import type { Result } from '../../core/result/result.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { Records } from '../../records/load.ts'
import type {
  Control,
  Laboratory,
  Lot,
  ResistivityTest,
  StrengthTest,
} from '../../records/schema/loaded-records.ts'
import { accreditationFor, accreditationOn } from './accreditation.ts'
import { printedUnits, written } from '../../words/as-written.ts'
import { conditionParticulars } from '../shape/condition-particulars.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type {
  CertificateDocument,
  DocumentCriterion,
  DocumentMortar,
  DocumentReading,
  DocumentResult,
} from '../shape/document.ts'
import { intervalScopeWords } from '../../words/interval-words.ts'
import { resultReasonWords } from '../../words/result-reasons.ts'
import { riskSentence, ruleWords } from '../../words/rules.ts'
import { type WordedVerdict, wordedVerdict } from '../../words/worded-verdict.ts'
import { workingLines } from '../../words/working-lines.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import { knownRecord } from '../passes/known-record.ts'

/** Who issues which revision and why; absent for a draft. */
export interface Issue {
  readonly revision: number
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn: boolean
  readonly replacedBy: string | null
  readonly replaces: { readonly revision: number; readonly date: Moment } | null
}

/** Something is still awaited, so that the certificate is provisional. */
export function isProvisional(lot: Pick<JudgedLot, 'planned'>): boolean {
  return lot.planned.some((planned) => planned.overdueSince === undefined)
}

export function certificateDocument(
  lot: JudgedLot,
  records: Records,
  program: string,
  issue: Issue | null,
): CertificateDocument {
  const sourceId = sourceOf(lot.id)
  const source = records.sources.get(sourceId)
  const producer = source && records.producers.get(source.producer)
  if (source === undefined || producer === undefined)
    throw new RangeError(
      `certificateDocument needs a lot whose source and producer are on record, got ${lot.id}`,
    )
  const signatory = producer.signatories?.find((person) => person.name === issue?.by)
  return {
    format: 1,
    certificate: lot.id,
    revision: issue?.revision ?? null,
    state:
      issue === null
        ? 'draft'
        : issue.withdrawn
          ? 'withdrawn'
          : isProvisional(lot)
            ? 'provisional'
            : 'complete',
    issued: issue?.date.text ?? null,
    asOf: lot.asOf.text,
    by:
      issue === null
        ? null
        : {
            name: issue.by,
            function: issue.function,
            independent: independence(signatory?.['independent-of-production']),
          },
    reason: issue?.reason ?? null,
    replaces: issue === null ? null : replaced(issue),
    replacedBy: issue?.replacedBy ?? null,
    program,
    site: records.site.title,
    notice: records.site.notice ?? null,
    producer: {
      id: source.producer,
      name: producer.name,
      address: producer.address,
      plant: (source.plant === undefined ? undefined : producer.plants?.[source.plant]?.name) ?? null,
      marketingEntity: source['marketing-entity'] ?? null,
    },
    source: {
      id: sourceId,
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
    lot: lotIdentity(lot),
    samples: samples(lot.record),
    laboratories: laboratories(lot, records),
    conditions: conditionsOf(lot, records),
    results: lot.results
      .filter((result) => result.role === 'producer')
      .map((result) => documentResult(result, lot.record, records)),
    mortars: mortars(lot, records),
    deviations: deviations(lot),
    criteria: lot.criteria.map(documentCriterion),
    verdicts: wordedVerdicts(lot, records),
    history: lot.history,
    record: knownRecord(lot.record, records.controls, lot.asOf),
  }
}

function replaced({ replaces }: Issue): CertificateDocument['replaces'] {
  return replaces === null ? null : { ...replaces, date: replaces.date.text }
}

function independence(word: 'yes' | 'no' | undefined): boolean | null {
  return word === undefined ? null : word === 'yes'
}

function lotIdentity({ record, number, class: lotClass }: JudgedLot): CertificateDocument['lot'] {
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

function samples(record: Lot): CertificateDocument['samples'] {
  return record.samples.map((sample) => ({
    id: sample.id,
    kind: sample.kind,
    of: sample.of ?? null,
    taken: sample.taken ? `${sample.taken.from} to ${sample.taken.to}` : (sample.on?.text ?? null),
    place: sample.place ?? null,
    by: sample.by ?? null,
    method: sample.method ?? null,
    increments: sample.increments ?? null,
    mass: sample.mass ? written(sample.mass) : null,
    container: sample.container ?? null,
    represents: sample.represents ? written(sample.represents) : null,
    to: sample.to ?? null,
    received: sample.received?.text ?? null,
    retained: sample.retained
      ? [sample.retained.place, sample.retained.until && `until ${sample.retained.until}`]
          .filter(Boolean)
          .join(', ')
      : null,
  }))
}

function laboratories(lot: JudgedLot, records: Records): CertificateDocument['laboratories'] {
  const ids = [
    ...new Set(lot.results.filter((result) => result.role === 'producer').map((result) => result.laboratory)),
  ].sort()
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
          },
        ]
  })
}

function conditionsOf(lot: JudgedLot, records: Records): CertificateDocument['conditions'] {
  const ids = [...new Set([...(lot.record.tests ?? []).map((test) => test.condition)])].sort()
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
          },
        ]
  })
}

function documentResult(
  { working, begun: _begun, reasons, interval, ...result }: Result,
  record: Lot,
  records: Records,
): DocumentResult {
  const laboratory: Laboratory | undefined = records.laboratories.get(result.laboratory)
  const subcontracted = record.analyses?.find(
    (analysis) =>
      analysis.sample === result.sample &&
      compareMoments(analysis.tested, result.tested) === 0 &&
      result.condition === undefined,
  )?.subcontracted
  return {
    ...withTexts(result),
    reasons: reasons.map(resultReasonWords),
    ...optional('interval', interval && { ...interval, method: intervalScopeWords(interval) }),
    working: workingLines(working()),
    accredited: laboratory !== undefined && accreditationFor(laboratory, result) !== undefined,
    ...(subcontracted === undefined ? {} : { subcontracted }),
  }
}

function mortars({ record, asOf }: JudgedLot, records: Records): DocumentMortar[] {
  return (record.tests ?? [])
    .filter((test) => isBy(test.cast, asOf))
    .flatMap((test) => {
      const control = records.controls.get(test.control)
      if (control === undefined) return []
      return [
        {
          condition: test.condition,
          laboratory: test.laboratory,
          sample: test.sample,
          cast: test.cast.text,
          ...optional('flow', test.flow && written(test.flow)),
          ...optional('water', test.water && written(test.water)),
          ...optional('deviations', test.deviations),
          control: {
            id: test.control,
            cast: control.cast.text,
            ...optional('flow', control.flow && written(control.flow)),
            ...optional('water', control.water && written(control.water)),
            cementLot: control.cement.lot,
            ...optional('cementType', control.cement.type),
            ...optional(
              'cementAlkalis',
              control.cement['Na2O-equivalent'] && written(control.cement['Na2O-equivalent']),
            ),
          },
          readings: [
            ...readings('test', readingsBy(asOf, test)),
            ...readings('control', atAgesOf(test, readingsBy(asOf, control))),
          ],
        },
      ]
    })
}

interface Readings {
  readonly strength: readonly Tested<StrengthTest>[]
  readonly resistivity: readonly Tested<ResistivityTest>[]
}
type Tested<Reading> = Reading & { readonly tested: Moment }

function readingsBy(asOf: Moment, mortar: Pick<Control, 'strength' | 'resistivity'>): Readings {
  const known = <Reading extends { tested?: Moment }>(list: readonly Reading[] = []) =>
    list.filter(
      (reading): reading is Tested<Reading> => reading.tested !== undefined && isBy(reading.tested, asOf),
    )
  return { strength: known(mortar.strength), resistivity: known(mortar.resistivity) }
}

/** Of a control's readings those at an age at which the test mortar is tested. */
function atAgesOf(
  test: Pick<Control, 'strength' | 'resistivity'>,
  { strength, resistivity }: Readings,
): Readings {
  const hours = new Set([...(test.strength ?? []), ...(test.resistivity ?? [])].map(({ age }) => age.hours))
  return {
    strength: strength.filter(({ age }) => hours.has(age.hours)),
    resistivity: resistivity.filter(({ age }) => hours.has(age.hours)),
  }
}

function readings(of: 'test' | 'control', { strength, resistivity }: Readings): DocumentReading[] {
  return [
    ...strength.map((reading) => strengthReading(of, reading)),
    ...resistivity.map((reading) => resistivityReading(of, reading)),
  ]
}

function strengthReading(of: 'test' | 'control', reading: Tested<StrengthTest>): DocumentReading {
  return {
    of,
    what: 'strength',
    age: reading.age.text,
    tested: reading.tested.text,
    ...optional('deviations', reading.deviations),
    specimens: specimens(reading, (specimen) => specimen.load ?? specimen.strength),
  }
}

function resistivityReading(of: 'test' | 'control', reading: Tested<ResistivityTest>): DocumentReading {
  return {
    of,
    what: 'resistivity',
    age: reading.age.text,
    tested: reading.tested.text,
    ...optional('deviations', reading.deviations),
    ...optional('temperature', reading.temperature && written(reading.temperature)),
    ...optional('endContact', reading['end-contact'] && written(reading['end-contact'])),
    ...optional('frequency', reading.frequency && written(reading.frequency)),
    ...optional('conditioning', reading.conditioning),
    ...optional('saturation', reading.saturation),
    ...optional(
      'verification',
      reading.verification &&
        `${written(reading.verification.read)} on a known ${written(reading.verification.known)}`,
    ),
    specimens: specimens(reading, (specimen) => specimen.resistance ?? specimen.resistivity),
  }
}

/** Readings of single specimens as written, or the mean where only that is on record. */
function specimens<Detailed extends { excluded?: string }>(
  reading: { mean?: Quantity; of?: number; specimens?: { [mark: string]: Quantity | Detailed } },
  readingOf: (specimen: Detailed) => Quantity | undefined,
): DocumentReading['specimens'] {
  if (reading.mean !== undefined)
    return [{ mark: `mean of ${reading.of ?? '?'}`, reading: written(reading.mean) }]
  return Object.entries(reading.specimens ?? {}).map(([mark, specimen]) =>
    'written' in specimen
      ? { mark, reading: written(specimen) }
      : {
          mark,
          reading: printedUnits(readingOf(specimen)?.written ?? 'no reading'),
          ...optional('size', sizeInWords(specimen)),
          ...optional('excluded', specimen.excluded),
        },
  )
}

function sizeInWords(specimen: object): string | undefined {
  const sizes = Object.entries(specimen)
    .filter(([key]) => ['side', 'other-side', 'length', 'diameter', 'area'].includes(key))
    .map(([key, size]) => `${key.replace('-', ' ')} ${printedUnits((size as { written: string }).written)}`)
  return sizes.length === 0 ? undefined : sizes.join(', ')
}

function deviations({ record, asOf }: JudgedLot): string[] {
  const analyses = (record.analyses ?? [])
    .filter((analysis) => isBy(analysis.tested, asOf))
    .map((analysis) => analysis.deviations)
  const tests = (record.tests ?? []).filter((test) => isBy(test.cast, asOf))
  const readings = tests
    .flatMap((test) => [...(test.strength ?? []), ...(test.resistivity ?? [])])
    .filter((reading) => reading.tested !== undefined && isBy(reading.tested, asOf))
  return [
    ...analyses,
    ...tests.map((test) => test.deviations),
    ...readings.map((reading) => reading.deviations),
  ].filter((text): text is string => text !== undefined)
}

/** A document holds its sentences as printed: what it says never changes. */
function wordedVerdicts({ criteria, verdicts }: JudgedLot, records: Records): WordedVerdict[] {
  return criteria.flatMap((criterion, place) => {
    const verdict = verdicts[place]
    return verdict === undefined
      ? []
      : [wordedVerdict(verdict, criterion, (id) => conditionTitle(records, id))]
  })
}

function documentCriterion(criterion: Criterion): DocumentCriterion {
  return {
    id: criterion.id,
    title: criterion.title,
    ...optional('designation', criterion.designation),
    edition: criterion.edition,
    ...optional('supersededBy', criterion.supersededBy),
    trial: isUnconfirmed(criterion),
    decisionRule: ruleWords(criterion.decisionRule),
    risk: riskSentence(criterion),
  }
}

function optional<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V })
}
