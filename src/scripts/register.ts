/** The register's filter over the column file: plain tables of a hundred rows, sortable by each column. */
import { periodOf } from './period.ts'
import { type LotColumns, readLotColumns } from './columns.ts'
import { anchor, element, marked, shownAnyway } from './elements.ts'
import { keepInAddress } from './form-address.ts'
import {
  type Filter,
  filteredLots,
  type LotRow,
  lotRow,
  type Sort,
  sortedLots,
  sortIn,
  sortText,
} from './lot-filter.ts'
import { shortDate } from '../words/dates.ts'

const ROWS = 100
/** Sampling date, among the columns of the table. */
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
  // Before the columns arrive: what a reader chooses meanwhile is not overwritten.
  takeFromAddress(form)
  const answer = await fetch(form.dataset['index'] ?? '')
  if (!answer.ok) return
  const data = readLotColumns(await answer.json())
  let page = Math.max(0, Number(asked('page')) - 1 || 0)
  let sort = sortIn(asked('sort')) ?? NEWEST_FIRST
  /** Paper has no pages to turn: it gets every row that was found. */
  let most = ROWS
  const draw = () => {
    const filter = filterOf(form)
    const rows = sortedLots(filteredLots(data, filter), data, filter.criterion, sort)
    const last = Math.max(0, Math.ceil(rows.length / most) - 1)
    page = Math.min(page, last)
    const label = pages.querySelector('span')
    if (label !== null) label.textContent = `page ${page + 1} of ${last + 1}`
    for (const button of pages.querySelectorAll('button'))
      button.disabled = page + Number(button.value) < 0 || last < page + Number(button.value)
    pages.hidden = last === 0
    count.textContent = rows.length === 1 ? '1 lot found' : `${rows.length} lots found`
    tellPrinted(form, count.textContent, sort)
    markSorted(result, sort)
    keepInAddress(form, {
      sort: sortText(sort) === sortText(NEWEST_FIRST) ? '' : sortText(sort),
      page: page === 0 ? '' : String(page + 1),
    })
    result
      .querySelector('tbody')
      ?.replaceChildren(
        ...rows.slice(page * most, (page + 1) * most).map((index) => rowElement(data, form, index)),
      )
  }
  form.addEventListener('input', () => {
    page = 0
    draw()
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  result.querySelectorAll('thead th').forEach((head, column) => {
    head.querySelector('button')?.addEventListener('click', () => {
      sort = { column, descending: sort.column === column && !sort.descending }
      draw()
    })
  })
  for (const button of pages.querySelectorAll('button')) {
    button.addEventListener('click', () => {
      page = Math.max(0, page + Number(button.value))
      draw()
    })
  }
  onPaper((rows) => {
    const shown = page
    most = rows
    draw()
    page = shown
  })
  shownAnyway(form, result, count, document.querySelector('#filter-title'))
  draw()
}

/** @param draw told how many rows a page takes */
function onPaper(draw: (rows: number) => void): void {
  addEventListener('beforeprint', () => {
    draw(Number.MAX_SAFE_INTEGER)
  })
  addEventListener('afterprint', () => {
    draw(ROWS)
  })
}

/** The column that a fresh page is sorted by. */
const NEWEST_FIRST: Sort = { column: SAMPLED, descending: true }

/** A member of the address that is no field of the form. */
function asked(name: 'sort' | 'page'): string {
  return new URLSearchParams(location.search).get(name) ?? ''
}

function markSorted(result: HTMLElement, { column, descending }: Sort): void {
  result.querySelectorAll('thead th').forEach((head, place) => {
    head.setAttribute('aria-sort', place !== column ? 'none' : descending ? 'descending' : 'ascending')
  })
}

/** A printed register shows no form: it says what was asked for. */
function tellPrinted(form: HTMLFormElement, found: string, sort: Sort): void {
  const line = document.querySelector('#filter-printed')
  if (line === null) return
  const chosen = [...form.querySelectorAll('label')].flatMap((label) => {
    const field = label.querySelector<HTMLInputElement | HTMLSelectElement>('input, select')
    if (field === null || field.value === '') return []
    const value = field instanceof HTMLSelectElement ? field.selectedOptions[0]?.textContent : field.value
    return [`${label.firstChild?.textContent?.trim() ?? ''} ${value ?? ''}`]
  })
  const order = sortText(sort) === sortText(NEWEST_FIRST) ? 'newest first' : `sorted by ${sortText(sort)}`
  line.textContent = `${found}${chosen.length === 0 ? '' : ` with ${chosen.join(', ')}`}, ${order}.`
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

/** Beside each cell where a phone sets the row out as lines. */
const LABELS = ['Sampled', 'State', 'Class', 'Source']

function labelledCell(cell: string | Node, label: string): HTMLTableCellElement {
  const made = element('td', [cell])
  made.dataset['label'] = label
  return made
}

function standingCell({ mark, standing, shortfall }: LotRow): HTMLElement {
  const word = marked(mark, [standing])
  return shortfall === null ? word : element('div', [word, element('div', [shortfall], 'small')])
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
    standingCell(row),
    row.class,
    sourceName(form, row.source),
  ]
  return element('tr', [head, ...cells.map((cell, place) => labelledCell(cell, LABELS[place] ?? ''))])
}
