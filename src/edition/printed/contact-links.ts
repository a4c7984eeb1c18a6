/** How to reach a producer or a laboratory: texts as recorded, each with what a program is given for it. */
import type { Reachable } from '../shape/certificate-facts.ts'
import type { PrintedLink } from '../shape/printed-certificate.ts'

/** Telephone first; empty where neither is on record. */
export function contactLinks({ telephone, mail }: Reachable): PrintedLink[] {
  return [
    ...(telephone === undefined
      ? []
      : [{ text: telephone, to: { kind: 'telephone' as const, id: telephone } }]),
    ...(mail === undefined ? [] : [{ text: mail, to: { kind: 'mail' as const, id: mail } }]),
  ]
}
