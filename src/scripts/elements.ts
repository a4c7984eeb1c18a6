/** Small makers of elements: text goes in as text, never as markup. */
import type { Outcome } from '../core/criteria/outcome.ts'
import { outcomeWords } from '../words/outcomes.ts'
import type { LotStanding, StandingMark } from '../words/standing.ts'

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

/** A button that does something on the page, whatever form it stands in. */
export function button(text: string, pressed: () => void): HTMLButtonElement {
  const made = element('button', [text])
  made.type = 'button'
  made.addEventListener('click', pressed)
  return made
}

/** A browser that does not know whether it runs scripts has hidden what only they fill. */
export function shownAnyway(...parts: readonly (Element | null)[]): void {
  for (const part of parts)
    if (part !== null && !matchMedia('(scripting: enabled)').matches) part.classList.remove('with-script')
}

/** An outcome with its mark. */
export function outcomeElement(outcome: Outcome): Node {
  return marked(outcome, [outcomeWords(outcome)])
}

/** State and verdict of a lot, and whether a result is overdue. */
export function briefElement({ mark, brief }: Pick<LotStanding, 'mark' | 'brief'>): Node {
  return marked(mark, [brief])
}

/** Words after the mark that stands for them. */
export function marked(mark: StandingMark | null, words: readonly Content[]): HTMLElement {
  const drawn = mark === null ? null : markElement(mark)
  return element('span', [...(drawn === null ? [] : [drawn]), ...words], `outcome outcome-${mark ?? 'none'}`)
}

/** A mark alone, copied from the page's template; null where the page has none. */
export function markElement(mark: StandingMark): Node | null {
  const drawn = document
    .querySelector<HTMLTemplateElement>('#outcome-marks')
    ?.content.querySelector(`[data-mark="${mark}"]`)?.firstElementChild
  return drawn?.cloneNode(true) ?? null
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
