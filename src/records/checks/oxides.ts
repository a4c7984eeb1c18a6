/** The oxides of one analysis are parts of one whole. */
import { OXIDES } from '../../core/composition/oxides.ts'
import { isPropertyKey } from '../../core/measure/properties.ts'
import { figuresOf, type ReportedValue } from '../../core/mortar/mortar.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { fixedDigits } from '../../words/numbers.ts'

/** Per cent; what lies between it and 100 is a finding, since methods err by some points: own choice. */
const IMPOSSIBLE = 110

/** Reports oxides that no material holds together, loss on ignition left out: it may be of another whole. */
export function checkOxides(
  results: Readonly<Record<string, ReportedValue | undefined>>,
  at: string,
  report: FileReport,
): void {
  let sum = 0
  for (const [key, value] of Object.entries(results))
    if (value !== undefined && isPropertyKey(key) && OXIDES.includes(key))
      // One that is impossible by itself has its own fault.
      for (const { value: part, excluded } of figuresOf(value))
        if (part.censored === undefined && excluded === undefined && part.value <= 100) sum += part.value
  if (sum <= IMPOSSIBLE) return
  report.at(
    at,
    'quantity-range',
    `the oxides add up to ${fixedDigits(sum, 1)} %, more than the whole`,
    'check the figures and their units; exclude those that are wrong, with the reason',
  )
}
