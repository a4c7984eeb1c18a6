/** What a revision says and what it changes, as a command prints it. */
import type { Changes } from '../edition/certificate/changes.ts'
import type { IssuedDocument } from '../edition/shape/document.ts'
import type { Criterion } from '../core/criteria/criterion.ts'
import { outcomeChangeWords, recordChangeWords } from '../words/lot-findings.ts'
import { certificateStateWords } from '../words/standing.ts'
import type { PlannedRevision } from './plan-issue.ts'
import { trialChangeWords } from './trial-notes.ts'

/** Record changes printed at most; more are counted. */
const SHOWN = 12

/** Who issues works on the records, and finds a set and its clause there by their ids. */
const BY_ID: Parameters<typeof outcomeChangeWords>[1] = {
  criterion: (id) => id,
  clause: (_, id) => `clause ${id}`,
}

type Criteria = ReadonlyMap<string, Criterion>

/**
 * Lines with a newline at the end of each.
 * @param criteria as they are today, which say who confirmed them
 */
export function revisionSummary({ request, revision, changes }: PlannedRevision, criteria: Criteria): string {
  const { document, digest } = revision
  return [
    `${request.lot}, revision ${document.revision}, ${standingWords(document)}`,
    ...changeLines(changes, document, criteria).map((line) => `  ${line}`),
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

/** @param changes null for a first revision */
function changeLines(changes: Changes | null, { printed }: IssuedDocument, criteria: Criteria): string[] {
  if (changes === null) return []
  const { state, outcomes, trials, record, printedOtherwise } = changes
  const words = (own: IssuedDocument['state']) => certificateStateWords(own, printed.mortars.mortars.length)
  const isNamed = state !== undefined || [outcomes, trials, record].some(({ length }) => length > 0)
  return [
    ...(state === undefined ? [] : [`state: ${words(state.from)} before, ${words(state.to)} now`]),
    ...outcomes.map((change) => outcomeChangeWords(change, BY_ID)),
    ...trials.map((change) => trialChangeWords(change, criteria.get(change.criterion))),
    ...record.slice(0, SHOWN).map(recordChangeWords),
    ...(record.length > SHOWN ? [`and ${record.length - SHOWN} more changes to the record`] : []),
    ...(printedOtherwise && !isNamed
      ? [
          'names, units, conditions or limits are printed differently; the record and the outcomes are unchanged',
        ]
      : []),
  ]
}
