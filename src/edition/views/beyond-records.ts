/** What no record of this program holds, so that no check can ask about it. */
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { UncheckedCode } from './source-unchecked.ts'

const COAL: readonly MaterialKind[] = ['coal-fly-ash', 'coal-bottom-ash', 'harvested-coal-ash']
const NATURAL: readonly MaterialKind[] = ['raw-natural-pozzolan', 'calcined-natural-pozzolan']

/** Of a material of the kind, in the order in which an auditor would ask. */
export function beyondRecords(kind: MaterialKind): UncheckedCode[] {
  const isCoal = COAL.includes(kind)
  const asked: readonly (readonly [UncheckedCode, boolean])[] = [
    ['no-history-of-records', true],
    ['no-notice-of-change', isCoal || NATURAL.includes(kind)],
    ['no-recipe', kind === 'blend'],
    ['no-carbon-or-colour', isCoal],
    ['no-ammonia-or-sorbents', isCoal],
    ['few-readings-alike', true],
  ]
  return asked.flatMap(([code, isAsked]) => (isAsked ? [code] : []))
}
