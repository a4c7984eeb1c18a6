/** The register's filter over the column file: plain tables of a hundred rows, sortable by each column. */
import { periodOf } from './period.ts'
import { type LotColumns, readLotColumns } from './columns.ts'
import { anchor, element, marked } from './elements.ts'
import { keepInAddress } from './form-address.ts'
import { type Filter, filteredLots, lotRow, sortedLots } from './lot-filter.ts'
import { shortDate } from '../words/dates.ts'

const ROWS = 100
/** The column that a fresh page is sorted by: sampling date. */
const SAMPLED = 1

/** The parts of the page that the filter fills. */
interface RegisterParts {
  readonly form: HTMLFormElement
  readonly result: HTMLElement
  readonly count: HTMLElement
  readonly pages: HTMLElement
}

const form = document.querySelector<HTMLFormElement>('#filter')
const result = document.querySelector<HTMLElement>('#filter-result')
const count = document.querySelector<HTMLElement>('#filter-count')
const pages = document.querySelector<HTMLElement>('#filter-pages')

if (form !== null && result !== null && count !== null && pages !== null)
  void start({ form, result, count, pages })

async function start({ form, result, count, pages }: RegisterParts): Promise<void> {
  const answer = await fetch(form.dataset['index'] ?? '')
  if (!answer.ok) return
  const data = readLotColumns(await answer.json())
  let page = 0
  let sort = { column: SAMPLED, descending: true }
  const draw = () => {
    const filter = filterOf(form)
    const rows = sortedLots(filteredLots(data, filter), data, filter.criterion, sort)
    const last = Math.max(0, Math.ceil(rows.length / ROWS) - 1)
    page = Math.min(page, last)
    const label = pages.querySelector('span')
    if (label !== null) label.textContent = `page ${page + 1} of ${last + 1}`
    for (const button of pages.querySelectorAll('button'))
      button.disabled = page + Number(button.value) < 0 || last < page + Number(button.value)
    pages.hidden = last === 0
    count.textContent = rows.length === 1 ? '1 lot found' : `${rows.length} lots found`
    result
      .querySelector('tbody')
      ?.replaceChildren(
        ...rows.slice(page * ROWS, (page + 1) * ROWS).map((index) => rowElement(data, form, index)),
      )
  }
  form.addEventListener('input', () => {
    page = 0
    keepInAddress(form)
    draw()
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  result.querySelectorAll('thead th').forEach((head, column) => {
    head.querySelector('button')?.addEventListener('click', () => {
      sort = { column, descending: sort.column === column && !sort.descending }
      result.querySelectorAll('thead th').forEach((other) => {
        other.setAttribute(
          'aria-sort',
          other === head ? (sort.descending ? 'descending' : 'ascending') : 'none',
        )
      })
      draw()
    })
  })
  for (const button of pages.querySelectorAll('button')) {
    button.addEventListener('click', () => {
      page = Math.max(0, page + Number(button.value))
      draw()
    })
  }
  takeFromAddress(form)
  for (const part of [form, result, document.querySelector<HTMLElement>('#filter-title')])
    if (part !== null) part.hidden = false
  draw()
}

function filterOf(form: HTMLFormElement): Filter {
  const field = (name: string) => String(new FormData(form).get(name) ?? '')
  return {
    source: field('source'),
    criterion: field('criterion'),
    outcome: field('outcome'),
    sampled: periodOf(field),
    text: field('text'),
  }
}

/** A filter that was sent to somebody opens as it was. */
function takeFromAddress(form: HTMLFormElement): void {
  const given = new URLSearchParams(location.search)
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')) {
    const value = given.get(field.name)
    if (value === null) continue
    if (field instanceof HTMLSelectElement && ![...field.options].some((option) => option.value === value))
      continue
    field.value = value
  }
}

/** A source's name as the form's own list gives it. */
function sourceName(form: HTMLFormElement, id: string): string {
  return (
    [...form.querySelectorAll<HTMLOptionElement>('select[name="source"] option')].find(
      (option) => option.value === id,
    )?.textContent ?? id
  )
}

function rowElement(data: LotColumns, form: HTMLFormElement, index: number): HTMLTableRowElement {
  const row = lotRow(data, filterOf(form).criterion, index)
  const head = element('th', [anchor(`${form.dataset['lots'] ?? ''}${row.id}/`, row.number)])
  head.scope = 'row'
  const cells = [
    row.sampled === null ? '' : shortDate(row.sampled),
    marked(row.mark, [row.standing]),
    row.class,
    sourceName(form, row.source),
  ]
  return element('tr', [head, ...cells.map((cell) => element('td', [cell]))])
}
