/** What a revision says and what it changes, as a command prints it. */
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Changes } from '../edition/certificate/changes.ts'
import type { IssueRequest } from '../edition/certificate/issue.ts'
import { sharedShipments, shipmentsOf } from '../edition/passes/shipments.ts'
import type { IssuedDocument } from '../edition/shape/document.ts'
import type { ShipmentEntry } from '../edition/shape/edition.ts'
import type { Records } from '../records/records.ts'
import { outcomeChangeWords, recordChangeWords } from '../words/lot-findings.ts'
import { plainSpaces } from '../words/sentences.ts'
import { countWords, numberWords } from '../words/numbers.ts'
import { certificateStateWords } from '../words/standing.ts'
import type { UnitSystem } from '../words/unit-systems.ts'
import type { PlannedRevision } from './plan-issue.ts'
import { trialChangeWords } from './trial-notes.ts'

/** Record changes printed at most; more are counted. */
const SHOWN = 12

/** Who issues works on the records, and finds a set and its clause there by their ids. */
const BY_ID: Parameters<typeof outcomeChangeWords>[1] = {
  criterion: (id) => id,
  clause: (_, id) => `clause ${id}`,
}

/** What is printed of a revision once it is written: before, its digest may still change. */
export function digestLine({ request, revision }: PlannedRevision): string {
  return `${request.lot}, revision ${revision.document.revision}: ${revision.digest}\n`
}

/**
 * What a revision says and changes, without its digest; lines with a newline at the end of each.
 * @param records as they are today, which say who confirmed a set and what was shipped
 */
export function revisionSummary({ request, revision, changes }: PlannedRevision, records: Records): string {
  const { document } = revision
  return [
    `${request.lot}, revision ${document.revision}, ${standingWords(document)}`,
    ...otherVerdicts(document).map((line) => `  ${line}`),
    ...[...changeLines(changes, document, records), ...shippedLines(request, records)].map(
      (line) => `  ${line}`,
    ),
    '',
  ].join('\n')
}

/** The standing in the words of the certificate, with its state, which a withdrawn one says already. */
function standingWords({ state, printed, data: { verdict } }: IssuedDocument): string {
  const { standing } = printed.head
  const said = standing.charAt(0).toLowerCase() + standing.slice(1)
  const under = verdict === undefined ? 'no criterion applies' : `under ${verdict.criterion}`
  return `${state === 'withdrawn' ? '' : `${certificateStateWords(state, printed.mortars.mortars.length)}: `}${said} (${under})`
}

/** Under the sets that do not govern, as the certificate heads them: who issues must not read only the governing one. */
function otherVerdicts({ state, printed }: IssuedDocument): string[] {
  return state === 'withdrawn'
    ? []
    : printed.verdicts.others.map(({ headline }) => `also: ${plainSpaces(headline.text)}`)
}

/** Of a lot that is withdrawn: who issues must know what is already with customers. */
function shippedLines({ lot, date, withdrawn }: IssueRequest, records: Records): string[] {
  const record = records.lots.get(lot)
  if (!withdrawn || record === undefined) return []
  const shared = sharedShipments(records, sourceOf(lot), date)
  const { units } = records.site
  const own = [...shipmentsOf(lot, record, date), ...shared.ofOne(lot)]
  const possible = shared.severalOf(lot)
  return [
    ...(own.length === 0 ? [] : [`left from it by then: ${loads(own, units)}`]),
    ...(possible.length === 0 ? [] : [`left by then, perhaps from it: ${loads(possible, units)}`]),
  ]
}

function loads(shipments: readonly ShipmentEntry[], units: UnitSystem): string {
  const tonnes = shipments.reduce((total, { massT }) => total + massT, 0)
  return `${countWords(shipments.length, 'shipment')}, ${numberWords(tonnes, 1, 't', units)}`
}

/** @param changes null for a first revision */
function changeLines(changes: Changes | null, { printed }: IssuedDocument, { criteria }: Records): string[] {
  if (changes === null) return []
  const { state, outcomes, trials, record, values, printedOtherwise } = changes
  const words = (own: IssuedDocument['state']) => certificateStateWords(own, printed.mortars.mortars.length)
  const isNamed = state !== undefined || [outcomes, trials, record, values].some(({ length }) => length > 0)
  return [
    ...(state === undefined ? [] : [`state before: "${words(state.from)}"; now: "${words(state.to)}"`]),
    ...outcomes.map((change) => outcomeChangeWords(change, BY_ID)),
    ...trials.map((change) => trialChangeWords(change, criteria.get(change.criterion))),
    ...record.slice(0, SHOWN).map(recordChangeWords),
    ...(record.length > SHOWN ? [`and ${record.length - SHOWN} more changes to the record`] : []),
    ...values.slice(0, SHOWN).map(({ title, from, to }) => `${title}: ${to}, ${from} before`),
    ...(values.length > SHOWN ? [`and ${values.length - SHOWN} more printed values`] : []),
    ...(printedOtherwise && !isNamed
      ? [
          'names, units, conditions or limits are printed differently; the record, the values and the outcomes are unchanged',
        ]
      : []),
  ]
}
