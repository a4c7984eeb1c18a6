/** Reads and judges what is on the bench, and shows what came of it. */
import type { UnpackedSource } from '../../core/evidence/source-evidence.ts'
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import { faultsByPlace } from '../../records/form/place-of-fault.ts'
import { plural } from '../../words/numbers.ts'
import { fullSentence } from '../../words/sentences.ts'
import { anchor, button, element } from '../elements.ts'
import type { SiteRecords } from './bench-records.ts'
import type { FormView } from './form-view.ts'
import { headlineOf, judgedElements, nextElements } from './judged-view.ts'
import { addresses, fillAnew, parts } from './parts.ts'
import { type BenchAsked, type BenchReading, readBench } from './read-bench.ts'
import type { TextView } from './text-view.ts'

/** What a lot is judged with, and where its faults are shown. */
export interface Bench {
  readonly site: SiteRecords
  readonly others: UnpackedSource
  readonly form: FormView
  readonly view: TextView
}

export function judgeNow(asked: BenchAsked, bench: Bench): void {
  const isEmpty = asked.text.trim() === ''
  const reading = isEmpty ? NOTHING : readBench(asked, bench.site.records, bench.others)
  showFaults(reading.diagnostics, asked.text, bench)
  showJudged(reading, asked, bench)
  if (isEmpty) fillAnew(parts.headline, [document.createTextNode('Nothing is written yet.')])
}

/** An empty sheet has no fault. */
const NOTHING: BenchReading = { diagnostics: [] }

/** In the text, at their fields, and in a list that leads to each. */
function showFaults(diagnostics: readonly Diagnostic[], text: string, { form, view }: Bench): void {
  view.showFaults(diagnostics)
  const isUnread = diagnostics.some(({ code }) => code.startsWith('yaml-') && code !== 'yaml-empty')
  form.showFaults(isUnread ? new Map() : faultsByPlace(text, diagnostics))
  parts.problems.replaceChildren(
    ...diagnostics.map(({ line, column, message, mend, code }) =>
      element('li', [
        button(`Line ${line}`, () => view.goTo(line, column)),
        ` ${fullSentence(`${message}; ${mend}`)} `,
        anchor(`${addresses.diagnostics}#${code}`, 'What this means'),
      ]),
    ),
  )
}

function showJudged({ diagnostics, judged }: BenchReading, { criterion }: BenchAsked, bench: Bench): void {
  const { units } = bench.site.records.site
  const shown = judged && { judged, criterion, conditionTitle: bench.others.conditionTitle, units }
  fillAnew(parts.headline, [
    shown === undefined ? document.createTextNode(whyNotJudged(diagnostics)) : headlineOf(shown),
  ])
  fillAnew(parts.next, judged === undefined ? [] : nextElements(judged))
  parts.judged.replaceChildren(...(shown === undefined ? [] : judgedElements(shown)))
}

function whyNotJudged(diagnostics: readonly Diagnostic[]): string {
  const errors = diagnostics.filter(({ severity }) => severity === 'error').length
  return errors === 0
    ? 'Not judged: the lot was not sampled by that day.'
    : `Not judged: ${plural(errors, 'place needs', 'places need')} correcting.`
}
