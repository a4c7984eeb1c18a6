/** A lot against the records it refers to, and its dates against each other. */
import { sourceOf } from '../../core/measure/lot-id.ts'
import { dateOf } from '../../core/measure/moment.ts'
import { checkDate, checkOrder } from './dates.ts'
import { checkReadings } from './readings.ts'
import { checkStated } from './source-and-control.ts'
import { checkMortarCondition, checkReference, type Known } from './known.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'

/** @param numbers printed lot numbers seen so far, "source|number" to the lot's id */
export function checkLot(
  id: string,
  lot: Lot,
  known: Known,
  report: FileReport,
  numbers: Map<string, string>,
): void {
  const source = sourceOf(id)
  if (!known.has('source', source))
    report.at(
      '',
      'reference-unknown',
      `the lot lies in the folder of source "${source}", which has no record`,
      nearNames(source, known.names('source')) || `write sources/${source}.yaml`,
    )
  checkNumber(id, source, lot, report, numbers)
  checkProduction(lot, report)
  checkSamples(lot, known, report)
  checkAnalyses(lot, known, report)
  checkTests(lot, known, report)
  checkShipments(lot, report)
  checkRevisions(lot, known, report)
  checkStated(lot, known, report)
  lot.blend?.forEach((part, index) => {
    checkReference('source', part.source, `/blend/${index}/source`, known, report)
  })
}

function checkNumber(
  id: string,
  source: string,
  lot: Lot,
  report: FileReport,
  numbers: Map<string, string>,
): void {
  const number = lot.number ?? id.slice(source.length + 1)
  const key = `${source}|${number.toLowerCase()}`
  const other = numbers.get(key)
  if (other !== undefined)
    report.at(
      lot.number === undefined ? '' : '/number',
      'duplicate-number',
      `the lot number ${number} is also that of ${other}`,
      'give each lot of a source its own number',
    )
  numbers.set(key, id)
}

function checkProduction(lot: Lot, report: FileReport): void {
  const { from, to } = lot.produced
  if (checkDate(from, '/produced/from', report) && checkDate(to, '/produced/to', report))
    checkOrder(
      { earlier: from, later: to, pointer: '/produced/to', sentence: 'production ends before it begins' },
      report,
    )
}

function checkSamples(lot: Lot, known: Known, report: FileReport): void {
  const ids = new Set<string>()
  lot.samples.forEach((sample, index) => {
    const at = `/samples/${index}`
    if (ids.has(sample.id))
      report.at(
        `${at}/id`,
        'duplicate-id',
        `there are two samples ${sample.id}`,
        'give each sample its own mark',
      )
    ids.add(sample.id)
    checkReference('laboratory', sample.to, `${at}/to`, known, report)
    if (sample.of === sample.id)
      report.at(
        `${at}/of`,
        'reference-mismatch',
        `sample ${sample.id} is a split of itself`,
        'name the sample that was divided',
      )
    else if (sample.of !== undefined && !lot.samples.some((other) => other.id === sample.of))
      report.at(
        `${at}/of`,
        'reference-unknown',
        `there is no sample "${sample.of}" in this lot`,
        nearNames(
          sample.of,
          lot.samples.map((other) => other.id),
        ),
      )
    if (
      checkDate(sample.taken?.from, `${at}/taken/from`, report) &&
      checkDate(sample.taken?.to, `${at}/taken/to`, report)
    ) {
      checkOrder(
        {
          earlier: sample.taken?.from,
          later: sample.taken?.to,
          pointer: `${at}/taken/to`,
          sentence: 'sampling ends before it begins',
        },
        report,
      )
    }
    checkDate(sample.on, `${at}/on`, report)
    checkDate(sample.retained?.until, `${at}/retained/until`, report)
    const taken = sample.taken?.to ?? sample.on
    if (checkDate(sample.received, `${at}/received`, report))
      checkOrder(
        {
          earlier: taken,
          later: sample.received,
          pointer: `${at}/received`,
          sentence: 'received before it was taken',
        },
        report,
      )
  })
}

/** When a sample was complete; a split was taken with the sample it is a split of. */
function sampledEnd(lot: Lot, id: string): string | undefined {
  const sample = lot.samples.find((candidate) => candidate.id === id)
  const end = sample?.taken?.to ?? sample?.on
  return end === undefined && sample?.of !== undefined && sample.of !== id
    ? sampledEnd({ ...lot, samples: lot.samples.filter((other) => other.id !== id) }, sample.of)
    : end
}

function checkSampleKnown(lot: Lot, sample: string, pointer: string, report: FileReport): void {
  if (lot.samples.some((candidate) => candidate.id === sample)) return
  report.at(
    pointer,
    'reference-unknown',
    `there is no sample "${sample}" in this lot`,
    nearNames(
      sample,
      lot.samples.map((candidate) => candidate.id),
    ),
  )
}

function checkAnalyses(lot: Lot, known: Known, report: FileReport): void {
  for (const what of ['analyses', 'verification'] as const) {
    ;(lot[what] ?? []).forEach((analysis, index) => {
      const at = `/${what}/${index}`
      checkReference('laboratory', analysis.laboratory, `${at}/laboratory`, known, report)
      checkSampleKnown(lot, analysis.sample, `${at}/sample`, report)
      if (checkDate(analysis.tested, `${at}/tested`, report))
        checkOrder(
          {
            earlier: dated(sampledEnd(lot, analysis.sample)),
            later: dateOf(analysis.tested),
            pointer: `${at}/tested`,
            sentence: 'tested before the sample was taken',
          },
          report,
        )
    })
  }
  lot.analyses?.forEach((analysis, index) => {
    checkReference('laboratory', analysis.subcontracted, `/analyses/${index}/subcontracted`, known, report)
  })
}

function dated(moment: string | undefined): string | undefined {
  return moment === undefined ? undefined : dateOf(moment)
}

function checkTests(lot: Lot, known: Known, report: FileReport): void {
  ;(lot.tests ?? []).forEach((test, index) => {
    const at = `/tests/${index}`
    checkSampleKnown(lot, test.sample, `${at}/sample`, report)
    checkReference('laboratory', test.laboratory, `${at}/laboratory`, known, report)
    checkMortarCondition(test.condition, `${at}/condition`, known, report)
    checkReference('control', test.control, `${at}/control`, known, report)
    const control = known.controls.get(test.control)
    if (control !== undefined && control.condition !== test.condition) {
      report.at(
        `${at}/control`,
        'reference-mismatch',
        `the control ${test.control} was made at the condition ${control.condition}, the test at ${test.condition}`,
        'name a control of the same condition; an index compares two mortars made alike',
      )
    }
    if (checkDate(test.cast, `${at}/cast`, report))
      checkOrder(
        {
          earlier: sampledEnd(lot, test.sample),
          later: test.cast,
          pointer: `${at}/cast`,
          sentence: 'cast before the sample was taken',
        },
        report,
      )
    checkReadings(test, at, known.conditions.get(test.condition), report)
  })
}

function checkShipments(lot: Lot, report: FileReport): void {
  ;(lot.shipments ?? []).forEach((shipment, index) => {
    if (checkDate(shipment.date, `/shipments/${index}/date`, report))
      checkOrder(
        {
          earlier: dateOf(lot.produced.from),
          later: shipment.date,
          pointer: `/shipments/${index}/date`,
          sentence: 'shipped before production began',
        },
        report,
      )
  })
}

function checkRevisions(lot: Lot, known: Known, report: FileReport): void {
  ;(lot.revisions ?? []).forEach((revision, index) => {
    const at = `/revisions/${index}`
    if (revision.number !== index)
      report.at(
        `${at}/number`,
        'revision-order',
        `revision ${revision.number} stands where ${index} belongs`,
        'number revisions from 0 in the order of issue',
      )
    checkReference('lot', revision['replaced-by'], `${at}/replaced-by`, known, report)
    if (checkDate(revision.date, `${at}/date`, report)) {
      checkOrder(
        {
          earlier: lot.revisions?.[index - 1]?.date,
          later: revision.date,
          pointer: `${at}/date`,
          sentence: 'issued before the earlier revision',
        },
        report,
      )
      checkOrder(
        {
          earlier: dateOf(lot.produced.from),
          later: revision.date,
          pointer: `${at}/date`,
          sentence: 'issued before production began',
        },
        report,
      )
    }
  })
}
