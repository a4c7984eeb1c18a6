/** Small makers of elements: text goes in as text, never as markup. */
import type { Outcome } from '../core/criteria/outcome.ts'
import { outcomeWords } from '../words/outcomes.ts'

type Content = string | Node

/** An element with its content and, where given, a class. */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  content: readonly Content[],
  className = '',
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name)
  if (className !== '') made.className = className
  made.append(...content)
  return made
}

export function anchor(href: string, text: string): HTMLAnchorElement {
  const made = element('a', [text])
  made.href = href
  return made
}

/** An outcome with its mark, copied from the page's template. */
export function outcomeElement(outcome: Outcome): Node {
  const mark = document
    .querySelector<HTMLTemplateElement>('#outcome-marks')
    ?.content.querySelector(`[data-outcome="${outcome}"]`)?.firstElementChild
  return mark === null || mark === undefined
    ? document.createTextNode(outcomeWords(outcome))
    : mark.cloneNode(true)
}

/** An outcome's mark alone, for a heading that says the word itself. */
export function markElement(outcome: Outcome): Node {
  const whole = outcomeElement(outcome)
  return whole instanceof Element ? (whole.querySelector('svg') ?? whole) : whole
}

/** A table with a head and rows; the first cell of a row heads it. */
export function tableOf(
  caption: string,
  head: readonly string[],
  rows: readonly (readonly Content[])[],
): HTMLElement {
  const table = element(
    'table',
    [
      element('caption', [caption]),
      element('thead', [
        element(
          'tr',
          head.map((text) => {
            const cell = element('th', [text])
            cell.scope = 'col'
            return cell
          }),
        ),
      ]),
      element(
        'tbody',
        rows.map((cells) =>
          element(
            'tr',
            cells.map((content, column) => rowCell(content, head[column] ?? '', column)),
          ),
        ),
      ),
    ],
    'rows stack',
  )
  return element('div', [table], 'table-wrap')
}

function rowCell(content: Content, label: string, column: number): HTMLTableCellElement {
  if (column > 0) {
    const cell = element('td', [content], label === 'Sampled' ? 'nowrap' : '')
    cell.dataset['label'] = label
    return cell
  }
  const head = element('th', [content], content instanceof HTMLAnchorElement ? 'nowrap' : '')
  head.scope = 'row'
  return head
}
