/** Whether a study's readings reach as far as the study does: dates, classes, materials, controls. */
import { isSurelyBefore, type Moment } from '../../core/measure/moment.ts'
import { batchIndices } from '../../core/studies/batch-indices.ts'
import type { StudyReading } from '../../core/studies/study-reading.ts'
import { plural } from '../../words/numbers.ts'
import { UNMADE } from '../../words/studies.ts'
import type { Happening } from '../checks/happenings.ts'
import { checkOrder } from '../checks/dates.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { StudyRecord } from '../records.ts'
import type { Study } from '../schema/loaded-records.ts'
import { specimensOf } from './screening-asked.ts'

/** The plan, what left it, and the readings; of a table, the latest reading stands for all. */
export function* studyHappenings({ record, readings }: StudyRecord): Generator<Happening> {
  yield [record.plan.fixed, '/plan/fixed']
  for (const [place, { date }] of (record.departures ?? []).entries())
    yield [date, `/departures/${place}/date`]
  if (record.table === undefined)
    for (const [place, { tested }] of (record.readings ?? []).entries())
      yield [tested, `/readings/${place}/tested`]
  else {
    const latest = readings.reduce<StudyReading | undefined>(
      (last, one) => ((last?.tested?.day ?? -Infinity) < (one.tested?.day ?? -Infinity) ? one : last),
      undefined,
    )
    if (latest !== undefined)
      yield [latest.tested, '/table/file', `${latest.tested}, ${namedReading(latest)},`]
  }
}

function namedReading({ material, condition, batch, age }: StudyReading): string {
  return `the reading of ${material} (${condition}, batch ${batch}, ${age})`
}

/**
 * What a reader of the study would have to find out alone.
 * @param readings of the study, from wherever they came, without a fault
 */
export function checkCoverage(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  checkPlanFirst(study, readings, report)
  if (study.kind === 'screening') checkClasses(study, report)
  if (readings.length === 0) return
  checkMaterialsRead(study, readings, report)
  checkIndicesMade(study, readings, report)
}

/** What was fixed after the first reading is no plan, and nothing can leave a plan that is not there yet. */
function checkPlanFirst(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  const { plan, departures = [] } = study
  for (const [place, { date }] of departures.entries())
    checkOrder(
      {
        ...{ earlier: plan.fixed, later: date, pointer: `/departures/${place}/date` },
        sentence: 'a departure cannot come before the plan that it departs from',
      },
      report,
    )
  const early = readings.filter(({ tested }) => tested !== undefined && isSurelyBefore(tested, plan.fixed))
  const [first] = early.toSorted((a, b) => dayOf(a.tested) - dayOf(b.tested))
  if (first === undefined) return
  report.warnAt(
    '/plan/fixed',
    'dates-backwards',
    `${plural(early.length, 'reading was', 'readings were')} made before the plan was fixed on ${plan.fixed}; the first is ${namedReading(first)} on ${first.tested}`,
    'correct the dates, or say under departures that the plan was written after the readings',
  )
}

const dayOf = (moment: Moment | undefined) => moment?.day ?? 0

/** A comparison of classes needs two of them, and each class something that shows it. */
function checkClasses({ materials }: Study, report: FileReport): void {
  // A material in no class is told elsewhere: it may be of the one that seems empty.
  const classed = Object.values(materials).every((material) => material.class !== undefined)
  for (const wanted of ['inert', 'reactive'] as const)
    if (classed && !Object.values(materials).some((material) => material.class === wanted))
      report.warnAt(
        '/materials',
        'class-unfounded',
        `no material is ${wanted}, so no condition can tell reactive materials from inert ones`,
        `add a material of the class ${wanted}, or take the study for what it is: a list of indices`,
      )
  for (const [code, material] of Object.entries(materials))
    if (material.class !== undefined && material['shown-by'] === undefined)
      report.warnAt(
        `/materials/${code}/class`,
        'class-unfounded',
        `nothing says what shows that ${code} is ${material.class}`,
        'add shown-by: the test, other than the indices judged here, that shows it',
      )
}

function checkMaterialsRead(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  const read = new Set(readings.map(({ material }) => material))
  for (const code of Object.keys(study.materials))
    if (!read.has(code))
      report.warnAt(
        `/materials/${code}`,
        'reading-missing',
        `${code} has no reading in the study`,
        'add its readings, or say under departures why there are none',
      )
}

/** Batches that were tested and give no index, by the reason. */
function checkIndicesMade(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  const { unmade } = batchIndices(readings, specimensOf(study))
  for (const [why, own] of Map.groupBy(unmade, (one) => one.why)) {
    const test = own[0]?.test
    if (test === undefined) continue
    report.warnAt(
      study.table === undefined ? '/readings' : '/table',
      'reading-missing',
      `${plural(own.length, 'test batch has', 'test batches have')} no index, since ${UNMADE[why]}; the first is batch ${test.batch} of ${test.material} (${test.condition}, laboratory ${test.laboratory}, ${test.age})`,
      'add the control batch, or correct condition, laboratory, batch or age',
    )
  }
}
