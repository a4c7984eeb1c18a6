/** The record's text on the page, whichever way it is edited. */
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import { element } from '../elements.ts'

export interface TextView {
  /** Shows a text; of one that stands only what differs is exchanged, so that the caret stays. */
  readonly show: (text: string) => void
  readonly showFaults: (diagnostics: readonly Diagnostic[]) => void
  /** Puts the caret at a line and column, from 1. */
  readonly goTo: (line: number, column: number) => void
}

/** The first stretch of a text that another one has not: from, to, and what stands there instead. */
export function changedStretch(
  before: string,
  after: string,
): { readonly from: number; readonly to: number; readonly insert: string } {
  const shorter = Math.min(before.length, after.length)
  let from = 0
  while (from < shorter && before[from] === after[from]) from += 1
  let back = 0
  while (back < shorter - from && before.at(-1 - back) === after.at(-1 - back)) back += 1
  return { from, to: before.length - back, insert: after.slice(from, after.length - back) }
}

/** A plain field for the text, where the editor cannot be loaded. */
export function plainTextView(place: HTMLElement, typed: (text: string) => void): TextView {
  const area = element('textarea', [])
  area.spellcheck = false
  area.setAttribute('aria-label', 'The record as YAML')
  area.addEventListener('input', () => typed(area.value))
  place.replaceChildren(area)
  return {
    show: (text) => {
      if (area.value !== text) area.value = text
    },
    showFaults: (diagnostics) => area.setAttribute('aria-invalid', String(0 < diagnostics.length)),
    goTo: (line, column) => {
      const offset =
        area.value
          .split('\n')
          .slice(0, line - 1)
          .join('\n').length + (line > 1 ? 1 : 0)
      area.focus()
      area.setSelectionRange(offset + column - 1, offset + column - 1)
    },
  }
}
