/** The order in which findings are read: the gravest first, and of two as grave the one that weighs more. */
import { CHECKS } from './catalogue.ts'
import type { Finding } from './finding.ts'

const GRAVEST_FIRST: readonly Finding['severity'][] = ['blocks', 'warning', 'information']

/**
 * Compares two findings for a list; what the order leaves alike stays in the order of the list.
 * @returns negative where the first is read before the second
 * Note: within a severity a change after issue that turns a failure into a pass comes first, then what practice would
 * have block a verdict, though no reading is at fault.
 */
export function byReadingOrder(a: Finding, b: Finding): number {
  return GRAVEST_FIRST.indexOf(a.severity) - GRAVEST_FIRST.indexOf(b.severity) || weightOf(a) - weightOf(b)
}

function weightOf({ reason }: Finding): number {
  if (reason.code === 'would-now-be-judged-otherwise' && reason.params.changes.some(isMended)) return 0
  return CHECKS[reason.code].first === true ? 1 : 2
}

function isMended({ issued, today }: { readonly issued: string; readonly today: string | null }): boolean {
  return issued === 'does-not-meet' && (today === 'meets' || today === 'meets-by-approval')
}
