/** What a revision says and what it changes, as a command prints it. */
import type { Changes } from '../edition/certificate/changes.ts'
import type { IssuedDocument } from '../edition/shape/document.ts'
import { outcomeChangeWords, recordChangeWords } from '../words/lot-findings.ts'
import { certificateStateWords } from '../words/standing.ts'
import type { PlannedRevision } from './plan-issue.ts'

/** Record changes printed at most; more are counted. */
const SHOWN = 12

/** Who issues works on the records, and finds a set and its clause there by their ids. */
const BY_ID: Parameters<typeof outcomeChangeWords>[1] = {
  criterion: (id) => id,
  clause: (_, id) => `clause ${id}`,
}

/** Lines with a newline at the end of each. */
export function revisionSummary({ request, revision, changes }: PlannedRevision): string {
  const { document, digest } = revision
  return [
    `${request.lot}, revision ${document.revision}, ${standingWords(document)}`,
    ...(changes === null ? [] : changeLines(changes, document.printed.mortars.mortars.length)).map(
      (line) => `  ${line}`,
    ),
    `  ${digest}`,
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

/** @param mortars on the lot's record */
function changeLines({ state, outcomes, record, printedOtherwise }: Changes, mortars: number): string[] {
  const words = (own: IssuedDocument['state']) => certificateStateWords(own, mortars)
  const other = state === undefined && outcomes.length === 0 && record.length === 0 && printedOtherwise
  return [
    ...(state === undefined ? [] : [`state: ${words(state.from)} before, ${words(state.to)} now`]),
    ...outcomes.map((change) => outcomeChangeWords(change, BY_ID)),
    ...record.slice(0, SHOWN).map(recordChangeWords),
    ...(record.length > SHOWN ? [`and ${record.length - SHOWN} more changes to the record`] : []),
    ...(other
      ? [
          'names, units, conditions or limits are printed differently; the record and the outcomes are unchanged',
        ]
      : []),
  ]
}
