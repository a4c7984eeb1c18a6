/** What a certificate states of one result. */
import { defined } from '../../core/measure/defined.ts'
import { compareMoments } from '../../core/measure/moment.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { withTexts } from '../../core/measure/texts-of-times.ts'
import type { Result } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { WorkingStep } from '../../core/result/working.ts'
import { intervalScopeWords } from '../../words/interval-words.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import type { CertificateResult } from '../shape/certificate-facts.ts'
import { accreditationFor } from '../passes/accreditation.ts'

export function statedResult(
  { working, begun: _begun, reasons, interval, ...result }: Result,
  record: Lot,
  records: Records,
): CertificateResult {
  const laboratory = records.laboratories.get(result.laboratory)
  return {
    ...withTexts(result),
    reasons: reasons.map((reason) => resultReasonIn(reason, records.site.units)),
    accredited:
      laboratory !== undefined && accreditationFor(laboratory, result, records.conditions) !== undefined,
    ...defined({
      interval: interval && { ...interval, method: intervalScopeWords(interval) },
      subcontracted: subcontractorOf(result, record),
      mortars: isOfTwoMortars(result) ? meansOf(working()) : undefined,
    }),
  }
}

/** A control may be known by its strength alone, and has no id then. */
function isOfTwoMortars({
  control,
  property,
  finished,
}: Pick<Result, 'control' | 'property' | 'finished'>): boolean {
  return control !== undefined || (property in RATIO_OF && finished !== true)
}

/** Undefined for an index that its laboratory finished itself. */
function meansOf(steps: readonly WorkingStep[]): CertificateResult['mortars'] {
  const ratio = steps.find((step) => step.step === 'ratio')
  if (ratio?.step !== 'ratio') return undefined
  const { unit, decimals } = ratio
  // A working has a decimal more than a result is reported with.
  const figure = (value: number) => ({ value, unit, decimals: Math.max(0, decimals - 1) })
  return { test: figure(ratio.test), control: figure(ratio.control) }
}

function subcontractorOf(
  { sample, tested, condition }: Pick<Result, 'sample' | 'tested' | 'condition'>,
  record: Lot,
): string | undefined {
  if (condition !== undefined) return undefined
  return record.analyses?.find(
    (analysis) => analysis.sample === sample && compareMoments(analysis.tested, tested) === 0,
  )?.subcontracted
}
