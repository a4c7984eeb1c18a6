/** What only a resistance reading says: when the specimens left the bath, and readings at the meter's ceiling. */
import type { Moment } from '../../core/measure/moment.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { isQuantity } from '../../core/mortar/mortar.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'
import type { ResistivitySpecimen, ResistivityTest } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { checkDate, checkOrder } from './dates.ts'

/** @param at pointer of the readings */
export function checkHandling(
  { cast, resistivity = [] }: { readonly cast: Moment; readonly resistivity?: readonly ResistivityTest[] },
  at: string,
  condition: DescribedCondition | undefined,
  report: FileReport,
): void {
  resistivity.forEach((reading, index) => {
    checkLeft(cast, reading, `${at}/${index}/left-bath`, report)
    const ceiling = condition?.resistivity?.meter?.ceiling
    // A ceiling of nothing is a fault of the condition.
    if (ceiling === undefined || ceiling.value <= 0) return
    for (const [mark, specimen] of Object.entries(reading.specimens ?? {}))
      checkCeiling(specimen, ceiling, below(`${at}/${index}/specimens`, mark), report)
  })
}

/** Casting, leaving the bath and reading follow each other. */
function checkLeft(
  cast: Moment,
  { 'left-bath': left, tested }: ResistivityTest,
  pointer: string,
  report: FileReport,
): void {
  if (left === undefined || !checkDate(left, pointer, report)) return
  checkOrder({ earlier: cast, later: left, pointer, sentence: 'out of the bath before it was cast' }, report)
  checkOrder({ earlier: left, later: tested, pointer, sentence: 'read before it left the bath' }, report)
}

function checkCeiling(
  specimen: ResistivitySpecimen,
  ceiling: Quantity,
  at: string,
  report: FileReport,
): void {
  if (isQuantity(specimen)) {
    checkRead(specimen, ceiling, at, report)
    return
  }
  if (specimen.resistance !== undefined) checkRead(specimen.resistance, ceiling, `${at}/resistance`, report)
  for (const [direction, read] of Object.entries(specimen.directions ?? {}))
    checkRead(read, ceiling, below(`${at}/directions`, direction), report)
}

/** A reading that the meter cannot give is an error; a ceiling below the condition's may be that of another meter. */
function checkRead(read: Quantity, ceiling: Quantity, at: string, report: FileReport): void {
  if (read.kind !== 'resistance') return
  if (read.above !== true && ceiling.value <= read.value)
    report.at(
      at,
      'reading-at-ceiling',
      `${read.written} is at or above the meter’s ceiling of ${ceiling.written}`,
      `write "> ${ceiling.written}", in quotes`,
    )
  if (read.above === true && read.value < ceiling.value)
    report.warnAt(
      at,
      'reading-at-ceiling',
      `"${read.written}" lies below the meter’s ceiling of ${ceiling.written}, so the meter could read it`,
      `write the value read, or "> ${ceiling.written}", in quotes`,
    )
}
