/** The analyses and tests of a lot against its samples and the records that they refer to. */
import { defined } from '../../core/measure/defined.ts'
import { dateOf, type Moment } from '../../core/measure/moment.ts'
import { fieldsUnlike } from '../../core/mortar/made-alike.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { checkDate, checkExclusions, checkOrder, checkReported } from './dates.ts'
import { checkAgesReached, checkFinished } from './finished-results.ts'
import { checkOxides } from './oxides.ts'
import { checkReadings } from './readings.ts'
import { type AllRecords, checkMortarCondition, checkReference } from './references.ts'
import { checkSampleKnown, sampledEnd, sampledEndAt } from './samples.ts'
import { checkWater } from './water.ts'

export function checkAnalyses(lot: Lot, all: AllRecords, report: FileReport): void {
  for (const what of ['analyses', 'verification'] as const) {
    ;(lot[what] ?? []).forEach((analysis, index) => {
      const at = `/${what}/${index}`
      checkReference('laboratory', analysis.laboratory, `${at}/laboratory`, all, report)
      checkSampleKnown(lot, analysis.sample, `${at}/sample`, report)
      if (checkDate(analysis.tested, `${at}/tested`, report))
        checkOrder(
          {
            earlier: dated(sampledEnd(lot, analysis.sample)),
            later: dateOf(analysis.tested),
            pointer: `${at}/tested`,
            ...defined({ earlierAt: sampledEndAt(lot, analysis.sample) }),
            sentence: 'tested before the sample was taken',
          },
          report,
        )
      checkReported(analysis, at, report)
      checkExclusions(analysis.results, analysis.tested, `${at}/results`, report)
      checkOxides(analysis.results, `${at}/results`, report)
      checkFinished(analysis.results, `${at}/results`, all, report)
      checkAgesReached({ lot, analysis, at }, all, report)
    })
  }
  lot.analyses?.forEach((analysis, index) => {
    checkReference('laboratory', analysis.subcontracted, `/analyses/${index}/subcontracted`, all, report)
  })
}

function dated(moment: Moment | undefined): Moment | undefined {
  return moment === undefined ? undefined : dateOf(moment)
}

export function checkTests(lot: Lot, all: AllRecords, report: FileReport): void {
  ;(lot.tests ?? []).forEach((test, index) => {
    const at = `/tests/${index}`
    checkSampleKnown(lot, test.sample, `${at}/sample`, report)
    checkReference('laboratory', test.laboratory, `${at}/laboratory`, all, report)
    checkMortarCondition(test.condition, `${at}/condition`, all, report)
    checkReference('control', test.control, `${at}/control`, all, report)
    checkMadeAlike(test, at, all, report)
    checkOneControl(test, at, report)
    if (checkDate(test.cast, `${at}/cast`, report))
      checkOrder(
        {
          earlier: sampledEnd(lot, test.sample),
          later: test.cast,
          pointer: `${at}/cast`,
          ...defined({ earlierAt: sampledEndAt(lot, test.sample) }),
          sentence: 'cast before the sample was taken',
        },
        report,
      )
    const condition = all.conditions.get(test.condition)
    checkWater(test.water, condition?.batch, `${at}/water`, report)
    checkReadings(test, at, condition, report)
  })
}

/** The strength of a control stands in the batch's record, or beside the reading where there is none. */
function checkOneControl(
  { control, strength = [] }: NonNullable<Lot['tests']>[number],
  at: string,
  report: FileReport,
): void {
  if (control === undefined) return
  for (const [index, reading] of strength.entries())
    if (reading.control !== undefined)
      report.at(
        `${at}/strength/${index}/control`,
        'reading-twice',
        `the test names the control ${control} and states the strength of a control beside its reading`,
        'take the strength out, or take "control:" out of the test where the batch has no record',
      )
}

/** A control mortar holds no material: its condition may have another replacement, and nothing else. */
function checkMadeAlike(
  test: NonNullable<Lot['tests']>[number],
  at: string,
  all: AllRecords,
  report: FileReport,
): void {
  if (test.control === undefined) return
  const control = all.controls.get(test.control)
  if (control === undefined || control.condition === test.condition) return
  const [made, asked] = [all.conditions.get(control.condition), all.conditions.get(test.condition)]
  if (made === undefined || asked === undefined) return
  const fields = fieldsUnlike(made, asked)
  if (fields.length === 0) return
  report.at(
    `${at}/control`,
    'reference-mismatch',
    `the control ${test.control} was made under the condition ${control.condition}, which differs from ${test.condition} in ${fields.join(', ')}`,
    'name a control that was made, cured and tested in the same way; only the replacement may differ',
    [all.place('control', test.control, '/condition', 'the condition of the control')],
  )
}
