/** The samples of a lot: marks, splits, and dates in order. */
import type { Moment } from '../../core/measure/moment.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { checkDate, checkOrder } from './dates.ts'
import { type AllRecords, checkReference } from './references.ts'

type Sample = Lot['samples'][number]

export function checkSamples(lot: Lot, all: AllRecords, report: FileReport): void {
  const ids = new Map<string, number>()
  lot.samples.forEach((sample, index) => {
    const at = `/samples/${index}`
    const first = ids.get(sample.id)
    if (first === undefined) ids.set(sample.id, index)
    else
      report.at(
        `${at}/id`,
        'duplicate-id',
        `two samples have the id ${sample.id}`,
        'give each sample its own id',
        [report.place(`/samples/${first}/id`, 'the first sample of this id')],
      )
    checkReference('laboratory', sample.to, `${at}/to`, all, report)
    checkSplit(lot, sample, `${at}/of`, report)
    checkSampleDates(sample, at, report)
  })
}

/** A split names the sample that was divided. */
function checkSplit(lot: Lot, { id, of }: Sample, pointer: string, report: FileReport): void {
  if (of === id)
    report.at(
      pointer,
      'reference-mismatch',
      `sample ${id} is a split of itself`,
      'name the sample that was divided',
    )
  else if (of !== undefined) checkSampleKnown(lot, of, pointer, report)
}

function checkSampleDates({ taken, on, received, retained }: Sample, at: string, report: FileReport): void {
  if (checkDate(taken?.from, `${at}/taken/from`, report) && checkDate(taken?.to, `${at}/taken/to`, report))
    checkOrder(
      {
        earlier: taken?.from,
        later: taken?.to,
        pointer: `${at}/taken/to`,
        earlierAt: `${at}/taken/from`,
        sentence: 'sampling ends before it begins',
      },
      report,
    )
  checkDate(on, `${at}/on`, report)
  checkDate(retained?.until, `${at}/retained/until`, report)
  if (checkDate(received, `${at}/received`, report))
    checkOrder(
      {
        earlier: taken?.to ?? on,
        later: received,
        pointer: `${at}/received`,
        earlierAt: taken?.to === undefined ? `${at}/on` : `${at}/taken/to`,
        sentence: 'received before it was taken',
      },
      report,
    )
}

/** When a sample was complete; a split was taken with the sample it is a split of. */
export function sampledEnd(lot: Lot, id: string): Moment | undefined {
  const sample = lot.samples.find((candidate) => candidate.id === id)
  const end = sample?.taken?.to ?? sample?.on
  return end === undefined && sample?.of !== undefined && sample.of !== id
    ? sampledEnd({ ...lot, samples: lot.samples.filter((other) => other.id !== id) }, sample.of)
    : end
}

/** Where that is written; undefined for a split, whose time is that of another sample. */
export function sampledEndAt(lot: Lot, id: string): string | undefined {
  const index = lot.samples.findIndex((candidate) => candidate.id === id)
  const sample = lot.samples[index]
  if (sample?.taken !== undefined) return `/samples/${index}/taken/to`
  return sample?.on === undefined ? undefined : `/samples/${index}/on`
}

/** Reports a sample that the lot does not have. */
export function checkSampleKnown(lot: Lot, sample: string, pointer: string, report: FileReport): void {
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
