/** Verification results against the lot's samples. */
import { dateOf } from '../../core/measure/moment.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { checkDate, checkOrder } from './dates.ts'

/** Kind, number and day of taking of each verification result; everything else is checked as of any analysis. */
export function checkVerification({ verification = [], samples }: Lot, report: FileReport): void {
  const sampleOf = new Map<string, string>()
  for (const [index, { kind, sample, number, taken, tested }] of verification.entries()) {
    const at = `/verification/${index}`
    const own = samples.find(({ id }) => id === sample)
    if (own?.kind === OTHER[kind])
      report.at(
        `${at}/kind`,
        'reference-mismatch',
        `the result is of ${kind === 'split' ? 'a split' : 'an independent sample'}, and sample ${sample} is recorded as ${OTHER[kind]}`,
        'correct the kind here or that of the sample: splits test the testing, independent samples the material as well',
        [report.place(`/samples/${samples.indexOf(own)}/kind`, 'the kind of the sample')],
      )
    const other = number === undefined ? undefined : sampleOf.get(number)
    if (number !== undefined && other !== undefined && other !== sample)
      report.at(
        `${at}/number`,
        'duplicate-id',
        `the agency’s number ${number} is that of sample ${other} too`,
        'correct one of the numbers: an agency numbers each sample once',
      )
    if (number !== undefined) sampleOf.set(number, sample)
    if (checkDate(taken, `${at}/taken`, report) && taken !== undefined)
      checkOrder(
        {
          earlier: dateOf(taken),
          later: dateOf(tested),
          pointer: `${at}/tested`,
          earlierAt: `${at}/taken`,
          sentence: 'tested before the agency took the sample',
        },
        report,
      )
  }
}

/** A result may be on a composite of the producer's, of which the agency had a part; these two exclude each other. */
const OTHER = { split: 'independent', independent: 'split' } as const
