/** Sources and control batches against the other records. */
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { isFault, readQuantity } from '../../core/measure/units.ts'
import { checkAnswers } from './answers.ts'
import { checkSourceClass } from './class-known.ts'
import { checkClause, checkRequested } from './clause-reference.ts'
import { checkDate, checkEnds, checkPeriod } from './dates.ts'
import { checkYears } from './listing-and-reports.ts'
import { checkMaterial } from './material.ts'
import { reportRange, within } from './physical.ts'
import { checkReadings } from './readings.ts'
import { checkMortarCondition, checkReference, type AllRecords } from './references.ts'
import { checkWater } from './water.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { reportQuantity } from '../schema/quantity-faults.ts'
import type { Control, Source } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'

/** @param id of the source */
export function checkSource(id: string, source: Source, all: AllRecords, report: FileReport): void {
  checkReference('producer', source.producer, '/producer', all, report)
  checkPlant(source, all, report)
  source.criteria?.forEach((entry, index) => {
    checkReference('criterion', entry.set, `/criteria/${index}/set`, all, report)
    checkPeriod(entry, `/criteria/${index}`, report)
    checkRequested(
      entry.set,
      entry.requested,
      { set: `/criteria/${index}/set`, list: `/criteria/${index}/requested` },
      all,
      report,
    )
  })
  source.approvals?.forEach((approval, index) => {
    checkApproval(approval, `/approvals/${index}`, all, report)
  })
  source['agency-numbers']?.forEach((entry, index) => {
    checkPeriod(entry, `/agency-numbers/${index}`, report)
  })
  checkStated(source, all, report)
  checkSourceClass(source, all, report)
  source.events?.forEach((event, index) => {
    const at = `/events/${index}`
    checkEnds(
      { from: event.date, to: event.to, fromPointer: `${at}/date`, toPointer: `${at}/to` },
      'the event ends before it begins',
      report,
    )
  })
  for (const [key, text] of Object.entries(source.declared ?? {}))
    checkDeclared(key as PropertyKey, text as string, report)
  checkYears(id, source, all, report)
  checkMaterial(id, source, all, report)
  checkAnswers(source.answers, report)
}

function checkPlant(source: Source, all: AllRecords, report: FileReport): void {
  const plants = Object.keys(all.producers.get(source.producer)?.plants ?? {})
  if (source.plant !== undefined && all.producers.has(source.producer) && !plants.includes(source.plant)) {
    report.at(
      '/plant',
      'reference-unknown',
      `the producer has no plant "${source.plant}"`,
      plants.length === 0 ? 'add the plant to the producer’s record' : `known: ${plants.join(', ')}`,
    )
  }
}

type SourceApproval = NonNullable<Source['approvals']>[number]

/**
 * An approval of a value over a plain limit names the set and the clause; one of the source as a whole names
 * neither.
 */
function checkApproval(approval: SourceApproval, at: string, all: AllRecords, report: FileReport): void {
  checkPeriod(approval, at, report)
  const { set, clause } = approval
  if (set !== undefined && clause !== undefined)
    checkClause({ set, clause }, { set: `${at}/set`, clause: `${at}/clause` }, all, report)
  else if (set !== undefined || clause !== undefined)
    report.atKey(
      at,
      'key-missing',
      `the approval names a ${set === undefined ? 'clause' : 'set'} but no ${set === undefined ? 'set' : 'clause'}`,
      'name both, or neither for an approval of the source as a whole',
    )
}

/** Documents in order of time, and sets that exist: what a lot and a source state alike. */
export function checkStated(
  stated: Pick<Source, 'documents' | 'class-under'>,
  all: AllRecords,
  report: FileReport,
): void {
  stated.documents?.forEach((document, index) => {
    checkPeriod(document, `/documents/${index}`, report)
  })
  for (const set of Object.keys(stated['class-under'] ?? {}))
    checkReference('criterion', set, below('/class-under', set), all, report)
}

/** A declared value is written with its unit; which unit the schema cannot say, for it depends on the key. */
function checkDeclared(key: PropertyKey, text: string, report: FileReport): void {
  const { kind, bounds } = property(key)
  const quantity = readQuantity(text, kind)
  const pointer = below('/declared', key)
  if (isFault(quantity)) reportQuantity(pointer, quantity, [kind], report)
  else if (!within(quantity.value, bounds)) reportRange(pointer, quantity, bounds, report)
}

export function checkControl(control: Control, all: AllRecords, report: FileReport): void {
  checkMortarCondition(control.condition, '/condition', all, report)
  checkReference('laboratory', control.laboratory, '/laboratory', all, report)
  checkDate(control.cast, '/cast', report)
  const condition = all.conditions.get(control.condition)
  checkWater(control.water, condition?.batch, '/water', report)
  checkReadings(control, '', condition, report)
  for (const [index, reading] of (control.strength ?? []).entries())
    if (reading.control !== undefined)
      report.at(
        `/strength/${index}/control`,
        'reading-twice',
        'a reading of a control states the strength of a control beside it',
        'write it as "mean:", or take it out',
      )
}
