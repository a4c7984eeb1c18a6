/** A lot against the records it refers to, and its dates against each other. */
import { sourceOf } from '../../core/measure/lot-id.ts'
import { dateOf } from '../../core/measure/moment.ts'
import { checkAnswers } from './answers.ts'
import { checkLotClass } from './class-known.ts'
import { checkInvoked } from './clause-reference.ts'
import { checkDate, checkOrder } from './dates.ts'
import { checkVerification } from './verification.ts'
import { checkAnalyses, checkTests } from './lot-tests.ts'
import { checkSamples } from './samples.ts'
import { checkStated } from './source-and-control.ts'
import { type AllRecords, checkReference } from './references.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'

/** @param numbers printed lot numbers seen so far, "source|number" to the lot's id */
export function checkLot(
  id: string,
  lot: Lot,
  all: AllRecords,
  report: FileReport,
  numbers: Map<string, string>,
): void {
  const source = sourceOf(id)
  if (!all.has('source', source))
    report.at(
      '',
      'reference-unknown',
      `the lot is in the folder of source "${source}", which has no record`,
      nearNames(source, all.names('source')) || `write sources/${source}.yaml`,
    )
  checkNumber({ id, source, lot }, all, report, numbers)
  checkProduction(lot, report)
  checkSamples(lot, all, report)
  checkAnalyses(lot, all, report)
  checkVerification(lot, report)
  checkTests(lot, all, report)
  checkShipments(lot, report)
  checkRevisions(lot, all, report)
  checkStated(lot, all, report)
  checkLotClass(id, lot, all, report)
  checkInvoked(lot.criteria ?? [], '/criteria', all, report)
  checkApplies(source, lot, all, report)
  checkAnswers(lot.answers, report)
  lot.blend?.forEach((part, index) => {
    checkReference('source', part.source, `/blend/${index}/source`, all, report)
  })
}

/** A set that a lot invokes judges its kind of material; else nothing would come of it, and nobody would be told. */
function checkApplies(source: string, { criteria = [] }: Lot, all: AllRecords, report: FileReport): void {
  const kind = all.sources.get(source)?.kind
  for (const [index, { set }] of criteria.entries()) {
    const kinds = all.criteria.get(set)?.kinds
    if (kind !== undefined && kinds !== undefined && !kinds.includes(kind))
      report.at(
        `/criteria/${index}/set`,
        'reference-mismatch',
        `the specification ${set} does not judge ${kind}`,
        `name one for this material; ${set} is for ${kinds.join(', ')}`,
      )
  }
}

function checkNumber(
  { id, source, lot }: { readonly id: string; readonly source: string; readonly lot: Lot },
  all: AllRecords,
  report: FileReport,
  numbers: Map<string, string>,
): void {
  const number = lot.number ?? id.slice(source.length + 1)
  // One number typed in full width or with a ligature reads as the other.
  const key = `${source}|${number.normalize('NFKC').toLowerCase()}`
  const other = numbers.get(key)
  if (other !== undefined)
    report.at(
      lot.number === undefined ? '' : '/number',
      'duplicate-number',
      `the lot number ${number} is already used by ${other}`,
      'give each lot of a source its own number',
      [
        all.place('lot', other, '/number', 'the lot that has it') ??
          all.place('lot', other, '', 'the lot that has it'),
      ],
    )
  numbers.set(key, id)
}

function checkProduction(lot: Lot, report: FileReport): void {
  const { from, to } = lot.produced
  if (checkDate(from, '/produced/from', report) && checkDate(to, '/produced/to', report))
    checkOrder(
      {
        ...{ earlier: from, later: to, pointer: '/produced/to', earlierAt: '/produced/from' },
        sentence: 'production ends before it begins',
      },
      report,
    )
}

function checkShipments(lot: Lot, report: FileReport): void {
  ;(lot.shipments ?? []).forEach((shipment, index) => {
    if (checkDate(shipment.date, `/shipments/${index}/date`, report))
      checkOrder(
        {
          earlier: dateOf(lot.produced.from),
          later: shipment.date,
          pointer: `/shipments/${index}/date`,
          earlierAt: '/produced/from',
          sentence: 'shipped before production began',
        },
        report,
      )
  })
}

function checkRevisions(lot: Lot, all: AllRecords, report: FileReport): void {
  ;(lot.revisions ?? []).forEach((revision, index) => {
    const at = `/revisions/${index}`
    if (revision.number !== index)
      report.at(
        `${at}/number`,
        'revision-order',
        `found revision ${revision.number} where revision ${index} was expected`,
        'number revisions from 0 in the order of issue',
      )
    if (lot.revisions?.[index - 1]?.withdrawn === 'yes' && revision.withdrawn !== 'yes')
      report.at(
        at,
        'revision-order',
        `revision ${revision.number} follows the withdrawal of the lot`,
        'record another lot in its place: a withdrawn lot stays withdrawn',
      )
    checkReference('lot', revision['replaced-by'], `${at}/replaced-by`, all, report)
    if (!checkDate(revision.date, `${at}/date`, report)) return
    for (const [earlier, sentence, earlierAt] of [
      [
        lot.revisions?.[index - 1]?.date,
        'issued before the earlier revision',
        `/revisions/${index - 1}/date`,
      ],
      [dateOf(lot.produced.from), 'issued before production began', '/produced/from'],
    ] as const)
      checkOrder({ earlier, later: revision.date, pointer: `${at}/date`, sentence, earlierAt }, report)
  })
}
