/**
 * What a document prints of its verdicts, held against what it holds of them as data: whoever forges one of the
 * two has forged the other as well, or is found out.
 */
import type { Outcome } from '../../core/criteria/outcome.ts'
import { isHeadlineOfAnother } from '../../words/outcomes.ts'
import type { IssuedHead } from './issued-head.ts'

interface Judged {
  readonly outcome: Outcome
}

interface PrintedJudged extends Judged {
  readonly headline: string | { readonly text: string }
}

/** What is needed of a document in the form of schemas/issued.json. */
export interface JudgedDocument extends Pick<IssuedHead, 'certificate' | 'revision' | 'state'> {
  readonly printed: {
    readonly head: Readonly<Record<string, string>>
    readonly verdicts: { readonly governing?: PrintedJudged; readonly others: readonly PrintedJudged[] }
  }
  readonly data: { readonly verdict?: Judged; readonly others: readonly Judged[] }
}

/** A text that does not follow from the data. */
export interface PrintedMisfit {
  readonly printed: string
  readonly data: string
}

/** The first text that says something else than the data; null where all follow. */
export function printedMisfit({ printed, data, ...head }: JudgedDocument): PrintedMisfit | null {
  return (
    headMisfit(printed.head, head) ??
    verdictMisfit([printed.verdicts.governing, ...printed.verdicts.others], [data.verdict, ...data.others])
  )
}

function headMisfit(
  printed: Readonly<Record<string, string>>,
  { certificate, revision, state }: Pick<IssuedHead, 'certificate' | 'revision' | 'state'>,
): PrintedMisfit | null {
  const data: Readonly<Record<string, string>> = { certificate, revision: String(revision), state }
  const key = Object.keys(data).find((name) => printed[name] !== data[name])
  return key === undefined ? null : { printed: printed[key] ?? 'nothing', data: data[key] ?? 'nothing' }
}

function verdictMisfit(
  printed: readonly (PrintedJudged | undefined)[],
  data: readonly (Judged | undefined)[],
): PrintedMisfit | null {
  for (let place = 0; place < Math.max(printed.length, data.length); place++) {
    const [own, judged] = [printed[place], data[place]]
    const text = typeof own?.headline === 'object' ? own.headline.text : own?.headline
    const follows =
      own?.outcome === judged?.outcome &&
      (text === undefined || judged === undefined || !isHeadlineOfAnother(text, judged.outcome))
    if (!follows) return { printed: text ?? 'no verdict', data: judged?.outcome ?? 'no verdict' }
  }
  return null
}
