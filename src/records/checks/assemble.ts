/** Cross references and checks beyond one file, then the typed records; a record with an error stays out. */
import { presentId } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import type { ReferenceTest } from '../../core/studies/reference/reference-tests.ts'
import type { StudyReading } from '../../core/studies/study-reading.ts'
import { compileCriteria } from '../criteria/compile.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition, Records } from '../records.ts'
import type {
  Condition,
  Control,
  CriterionRecord,
  Laboratory,
  Lot,
  Producer,
  Site,
  Source,
  Study,
} from '../schema/loaded-records.ts'
import { RECORD_KINDS, type RecordKind } from '../schema/schemas.ts'
import type { MethodPage } from '../yaml/method-page.ts'
import { checkClassClaimed } from './class-claimed.ts'
import { checkCondition } from './condition.ts'
import { checkDate } from './dates.ts'
import { faultyNumbers } from './faulty-numbers.ts'
import { checkFormers } from './former-ids.ts'
import {
  checkHappenings,
  controlHappenings,
  criterionHappenings,
  lotHappenings,
  sourceHappenings,
  type ReadOn,
} from './happenings.ts'
import { checkLaboratory } from './laboratory.ts'
import { laboratoryHappenings } from './laboratory-years.ts'
import { checkLot } from './lot.ts'
import { checkPhysical } from './physical.ts'
import type { AllRecords } from './references.ts'
import { checkSite } from './site.ts'
import { checkSetBy, routesOf } from '../studies/check-set-by.ts'
import { studyHappenings } from '../studies/check-coverage.ts'
import { checkPlanDigest } from '../studies/check-plan-digest.ts'
import { checkStudy } from '../studies/check-study.ts'
import { writtenConditions } from '../studies/crossed-conditions.ts'
import { checkControl, checkSource } from './source-and-control.ts'

/** Stands in where site.yaml cannot be read, so that everything else is still checked. */
export const NO_SITE: Site = {
  title: '',
  units: 'SI',
  criteria: [],
  grace: { kind: 'duration', value: 0, unit: 'h', written: '0 h', decimals: 0 },
}

/** A record with where its faults go. */
interface Loaded<T> {
  readonly record: T
  readonly report: FileReport
}

/** Records as their files were read, by kind and id. */
interface LoadedRecords {
  readonly site: Map<string, Loaded<Site>>
  readonly producer: Map<string, Loaded<Producer>>
  readonly laboratory: Map<string, Loaded<Laboratory>>
  readonly source: Map<string, Loaded<Source>>
  readonly condition: Map<string, Loaded<Condition>>
  readonly control: Map<string, Loaded<Control>>
  readonly criterion: Map<string, Loaded<CriterionRecord>>
  readonly lot: Map<string, Loaded<Lot>>
  readonly study: Map<string, Loaded<Study>>
}

/** Everything that was read from a content folder, one file at a time. */
export interface ReadFiles {
  readonly contentDir: string
  readonly loaded: LoadedRecords
  /**
   * Ids of all files by kind, those with a fault included: a reference to one of them is no fault of its own.
   */
  readonly ids: Readonly<Record<RecordKind, Set<string>>>
  readonly methods: MethodPage[]
  /** Readings of studies, by the id of the study. */
  readonly studyReadings: Map<string, readonly StudyReading[]>
  /** Reference tests of studies, likewise. */
  readonly studyReference: Map<string, readonly ReferenceTest[]>
}

/** Nothing read yet. */
export function noFiles(contentDir: string): ReadFiles {
  const byKind = <T>(make: () => T) => Object.fromEntries(RECORD_KINDS.map((kind) => [kind, make()]))
  return {
    contentDir,
    loaded: byKind(() => new Map()) as unknown as LoadedRecords,
    ids: byKind(() => new Set<string>()) as ReadFiles['ids'],
    methods: [],
    studyReadings: new Map(),
    studyReference: new Map(),
  }
}

/**
 * @param files each of which has its record and a report; all faults found go to the reports
 * @param today stands in where the site states no as-of date
 * @param asked a day to read the records on; an earlier one is a question about the past, and changes nothing here
 */
export function assemble(files: ReadFiles, today?: Moment, asked?: Moment): Records {
  const { loaded } = files
  const records = typedRecords(files)
  const isOfLot = (id: string) => presentId(records.lots, id) !== undefined
  const asOf = records.site['as-of'] ?? today
  const all: AllRecords = {
    ...records,
    has: (kind, id) => files.ids[kind].has(id) || (kind === 'lot' && isOfLot(id)),
    names: (kind) => files.ids[kind],
    place: (kind, id, pointer, message) =>
      kind === 'method' ? undefined : loaded[kind].get(id)?.report.place(pointer, message),
  }
  checkAll(loaded, all, asOf)
  checkFormers(loaded.lot, files.ids.lot)
  checkAhead(loaded, all, readOn(asOf, asked, records.site['as-of'] !== undefined))
  return {
    ...records,
    lots: faultless(records.lots, loaded.lot),
    controls: faultless(records.controls, loaded.control),
    sources: faultless(records.sources, loaded.source),
    conditions: faultless(records.conditions, loaded.condition),
    announcedConditions: faultless(records.announcedConditions, loaded.condition),
    laboratories: faultless(records.laboratories, loaded.laboratory),
    studies: faultless(records.studies, loaded.study),
    faultyNumbers: faultyNumbers(files),
  }
}

function typedRecords({
  contentDir,
  loaded,
  ids,
  methods,
  studyReadings,
  studyReference,
}: ReadFiles): Records {
  const conditions = [...recordsOf(loaded.condition)]
  return {
    contentDir,
    unsoundDocuments: new Set(),
    faultyNumbers: new Map(),
    site: recordsOf(loaded.site).get('site') ?? NO_SITE,
    producers: recordsOf(loaded.producer),
    laboratories: recordsOf(loaded.laboratory),
    sources: recordsOf(loaded.source),
    conditions: new Map(
      conditions.flatMap(([id, condition]) => (isDescribed(condition) ? [[id, condition]] : [])),
    ),
    announcedConditions: new Map(conditions.filter(([, condition]) => !isDescribed(condition))),
    controls: recordsOf(loaded.control),
    criteria: compileCriteria(criterionSources(loaded.criterion), {
      conditions: ids.condition,
      criteria: ids.criterion,
    }),
    lots: recordsOf(loaded.lot),
    studies: new Map(
      [...recordsOf(loaded.study)].map(([id, record]) => [
        id,
        { record, readings: studyReadings.get(id) ?? [], reference: studyReference.get(id) ?? [] },
      ]),
    ),
    methods: [...methods].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1)),
  }
}

function criterionSources(criteria: LoadedRecords['criterion']): Parameters<typeof compileCriteria>[0] {
  return new Map(
    [...criteria].map(([id, { record, report }]) => [
      id,
      { record, report: (pointer, { code, message, mend }) => report.at(pointer, code, message, mend) },
    ]),
  )
}

/** The records alone, in order of their ids. */
function recordsOf<T>(loaded: ReadonlyMap<string, Loaded<T>>): Map<string, T> {
  return new Map(
    [...loaded].map(([id, { record }]) => [id, record] as const).sort(([a], [b]) => (a < b ? -1 : 1)),
  )
}

/** The schema asks for the details of every standing but one. */
function isDescribed(condition: Condition): condition is DescribedCondition {
  return condition.standing !== 'details-to-be-entered'
}

/** Kinds of record that state quantities. */
const PHYSICAL = ['site', 'condition', 'control', 'criterion', 'lot', 'laboratory', 'source'] as const

/** Each kind of record against itself and all others. */
function checkAll(loaded: LoadedRecords, all: AllRecords, asOf: Moment | undefined): void {
  for (const kind of PHYSICAL)
    for (const { record, report } of loaded[kind].values()) checkPhysical(kind, record, report)
  // What a programme crosses is checked where its levels stand.
  for (const { record, report } of loaded.study.values())
    checkPhysical('study', { ...record, programme: {}, conditions: writtenConditions(record) }, report)
  for (const { record, report } of loaded.site.values()) checkSite(record, all, report)
  for (const { record, report } of loaded.condition.values())
    if (isDescribed(record)) checkCondition(record, report)
  for (const { record, report } of loaded.criterion.values())
    checkDate(record.confirmed?.date, '/confirmed/date', report)
  for (const [id, { record, report }] of loaded.laboratory) checkLaboratory(id, record, all, report)
  for (const [id, { record, report }] of loaded.source) checkSource(id, record, all, report)
  for (const { record, report } of loaded.control.values()) checkControl(record, all, report)
  for (const [id, { record, report }] of loaded.study) {
    checkStudy(record, all, report)
    checkPlanDigest(record, all.studies.get(id)?.readings.length ?? 0, report)
  }
  checkClassClaimed(loaded.source, loaded.lot, all)
  checkOrigins(loaded, all, asOf)
  const numbers = new Map<string, string>()
  for (const [id, { record, report }] of loaded.lot) checkLot(id, record, all, report, numbers)
}

/** What set the limits of the criteria; a study with a fault says nothing of them. */
function checkOrigins(loaded: LoadedRecords, all: AllRecords, asOf: Moment | undefined): void {
  const studies = faultless(all.studies, loaded.study)
  const routes = routesOf(studies, asOf)
  for (const [id, { record, report }] of loaded.criterion)
    checkSetBy([id, record], { ...all, studies }, routes, report)
}

function readOn(asOf: Moment | undefined, asked: Moment | undefined, isOfSite: boolean): ReadOn | undefined {
  if (asOf !== undefined && (asked === undefined || isBy(asked, asOf))) return { asOf, isOfSite }
  return asOf === undefined || asked === undefined ? undefined : { asOf: asked, isOfSite: false }
}

/** What has happened, of every kind of record that tells it. */
function checkAhead(loaded: LoadedRecords, all: AllRecords, on: ReadOn | undefined): void {
  for (const { record, report } of loaded.lot.values()) checkHappenings(lotHappenings(record), on, report)
  for (const { record, report } of loaded.control.values())
    checkHappenings(controlHappenings(record), on, report)
  for (const { record, report } of loaded.criterion.values())
    checkHappenings(criterionHappenings(record), on, report)
  for (const { record, report } of loaded.source.values())
    checkHappenings(sourceHappenings(record), on, report)
  for (const { record, report } of loaded.laboratory.values())
    checkHappenings(laboratoryHappenings(record), on, report)
  for (const [id, { report }] of loaded.study) {
    const study = all.studies.get(id)
    if (study !== undefined) checkHappenings(studyHappenings(study), on, report)
  }
}

function faultless<T>(
  records: ReadonlyMap<string, T>,
  loaded: ReadonlyMap<string, Loaded<unknown>>,
): ReadonlyMap<string, T> {
  return new Map([...records].filter(([id]) => loaded.get(id)?.report.count() === 0))
}
