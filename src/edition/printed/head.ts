/** The head of a certificate: what it is, which one, in which state. */
import { statedStanding } from '../../core/criteria/verdict-standing.ts'
import { defined } from '../../core/measure/defined.ts'
import { readMoment } from '../../core/measure/moment.ts'
import { date } from '../../words/dates.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { fullSentence, sentence } from '../../words/sentences.ts'
import { lotStanding } from '../../words/standing.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { PrintedHead, PrintedWithdrawal } from '../shape/printed-certificate.ts'

type Headed = Pick<
  CertificateFacts,
  | 'certificate'
  | 'revision'
  | 'state'
  | 'issued'
  | 'replaces'
  | 'reason'
  | 'lot'
  | 'source'
  | 'verdicts'
  | 'criteria'
  | 'awaited'
>

export function printedHead(facts: Headed): PrintedHead {
  const { revision, issued, replaces, reason, source } = facts
  return defined({
    lot: facts.lot.number,
    material: materialWords(source),
    certificate: facts.certificate,
    revision: revision === null ? 'none, never issued' : String(revision),
    state: facts.state,
    standing: standingOf(facts),
    issued: issued === null ? 'not issued' : date(issued),
    replaces: replaces === null ? undefined : `revision ${replaces.revision} of ${date(replaces.date)}`,
    reason: reason === null ? undefined : sentence(reason),
  })
}

/** A source that bears the name of its kind says it once. */
function materialWords({ kind, name }: Pick<Headed['source'], 'kind' | 'name'>): string {
  const words = sentence(kindWords(kind))
  return name.toLowerCase() === words.toLowerCase() ? words : `${words}, ${name}`
}

function standingOf({ state, verdicts, criteria, awaited, issued }: Headed): string {
  return lotStanding({
    state,
    outcome: verdicts[0]?.outcome ?? null,
    ...(criteria[0] && statedStanding(criteria[0])),
    awaited: state === 'withdrawn' ? [] : awaited,
    ...(state === 'withdrawn' && issued !== null ? { withdrawn: readMoment(issued) } : {}),
  }).text
}

type Withdrawn = Pick<CertificateFacts, 'state' | 'issued' | 'reason' | 'replacedBy'>

/** @returns undefined for a certificate that does not withdraw */
export function printedWithdrawal(facts: Withdrawn): PrintedWithdrawal | undefined {
  const { state, issued, reason, replacedBy } = facts
  if (state !== 'withdrawn') return undefined
  return defined({
    on: `${date(issued ?? '')}.`,
    reason: fullSentence(reason ?? ''),
    replacement: replacedBy === null ? undefined : replacement(replacedBy),
  })
}

function replacement({ id, text }: NonNullable<Withdrawn['replacedBy']>): PrintedWithdrawal['replacement'] {
  return id === null ? { text } : { text, to: { kind: 'certificate', id } }
}
