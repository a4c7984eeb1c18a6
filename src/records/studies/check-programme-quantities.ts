/** Quantities of a programme that no bench would weigh in, wait for or assume. */
import type { Quantity } from '../../core/measure/units.ts'
import { checkPhysical } from '../checks/physical.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { writtenConditions } from './crossed-conditions.ts'

interface Range {
  readonly from: number
  readonly to: number
  readonly words: string
}

/** A control is no test mortar, and mortar without cement is none. */
const REPLACEMENT: Range = { from: 0.1, to: 99, words: 'from 0.1 to 99 %' }
const SCATTER: Range = { from: 0.01, to: 100, words: 'from 0.01 to 100 %' }
/** Below a half a difference is rather missed than seen, and nothing is seen for certain. */
const POWER: Range = { from: 50, to: 99.9, words: 'from 50 to 99.9 %' }
const IN_MOULD: Range = { from: 1, to: 720, words: 'from 1 h to 30 d' }

export function checkProgrammeQuantities(
  study: Study,
  programme: NonNullable<Study['programme']>,
  report: FileReport,
): void {
  const before = report.count()
  const conditions = writtenConditions(study)
  checkPhysical('study', { programme }, report)
  if (before < report.count()) return
  const { crossed, every, assumed } = programme
  for (const [level, share] of Object.entries(crossed?.replacement ?? {}))
    checkRange(share, REPLACEMENT, below('/programme/crossed/replacement', level), report)
  for (const [code, { replacement }] of Object.entries(conditions))
    checkRange(replacement, REPLACEMENT, `/conditions/${code}/replacement`, report)
  checkRange(every?.replacement, REPLACEMENT, '/programme/every/replacement', report)
  for (const property of ['strength-activity-index', 'resistivity-index'] as const)
    checkRange(assumed?.[property], SCATTER, `/programme/assumed/${property}`, report)
  checkRange(assumed?.power, POWER, '/programme/assumed/power', report)
  checkRange(programme['in-mould'], IN_MOULD, '/programme/in-mould', report)
}

function checkRange(
  quantity: Quantity | undefined,
  { from, to, words }: Range,
  pointer: string,
  report: FileReport,
) {
  if (quantity === undefined || (from <= quantity.value && quantity.value <= to)) return
  report.at(pointer, 'quantity-range', `${quantity.written} is out of range here`, `write a value ${words}`)
}
