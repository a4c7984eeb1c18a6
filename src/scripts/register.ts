/** The register's filter over the column file: plain tables of a hundred rows, sortable by each column. */
import type { LotColumns } from './columns.ts'

const ROWS = 100
const form = document.querySelector<HTMLFormElement>('#filter')
const result = document.querySelector<HTMLElement>('#filter-result')
const count = document.querySelector<HTMLElement>('#filter-count')
const pages = document.querySelector<HTMLElement>('#filter-pages')

if (form !== null && result !== null && count !== null && pages !== null) void start(form, result, count, pages)

async function start(form: HTMLFormElement, result: HTMLElement, count: HTMLElement, pages: HTMLElement): Promise<void> {
  const data = await (await fetch(form.dataset['index'] ?? '')).json() as LotColumns
  let page = 0
  let sort = { column: 2, descending: true }
  const draw = () => {
    const rows = filtered(form, data)
    const keys = new Map(rows.map((index) => [index, cells(data, form, index)[sort.column] ?? '']))
    rows.sort((a, b) => compare(keys.get(a) ?? '', keys.get(b) ?? '') * (sort.descending ? -1 : 1) || a - b)
    const last = Math.max(0, Math.ceil(rows.length / ROWS) - 1)
    page = Math.min(page, last)
    const label = pages.querySelector('span')
    if (label !== null) label.textContent = `page ${page + 1} of ${last + 1}`
    pages.hidden = last === 0
    count.textContent = rows.length === 1 ? '1 lot found' : `${rows.length} lots found`
    result.querySelector('tbody')?.replaceChildren(...rows.slice(page * ROWS, (page + 1) * ROWS).map((index) => row(data, form, index)))
  }
  form.addEventListener('input', () => {
    page = 0
    draw()
  })
  form.addEventListener('submit', (event) => { event.preventDefault() })
  result.querySelectorAll('thead th').forEach((head, column) => {
    head.querySelector('button')?.addEventListener('click', () => {
      sort = { column, descending: sort.column === column && !sort.descending }
      result.querySelectorAll('thead th').forEach((other) => { other.setAttribute('aria-sort', other === head ? (sort.descending ? 'descending' : 'ascending') : 'none') })
      draw()
    })
  })
  for (const button of pages.querySelectorAll('button')) {
    button.addEventListener('click', () => {
      page = Math.max(0, page + Number(button.value))
      draw()
    })
  }
  form.hidden = false
  result.hidden = false
  draw()
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

function field(form: HTMLFormElement, name: string): string {
  return String(new FormData(form).get(name) ?? '')
}

function filtered(form: HTMLFormElement, { columns, sources, outcomes }: LotColumns): number[] {
  const [source, outcome, from, to, text] = ['source', 'outcome', 'from', 'to', 'text'].map((name) => field(form, name)) as [string, string, string, string, string]
  const judged = columns.outcome[field(form, 'criterion')] ?? []
  return columns.lot.flatMap((id, index) => {
    const sampled = columns.sampled[index] ?? ''
    const fits = (source === '' || sources[columns.source[index] ?? -1] === source) && (outcome === '' || outcomes[judged[index] ?? -1] === outcome)
      && (from === '' || from <= sampled) && (to === '' || sampled <= to) && (text === '' || `${id} ${columns.number[index]}`.toLowerCase().includes(text.toLowerCase()))
    return fits ? [index] : []
  })
}

function cells({ columns, sources, outcomes }: LotColumns, form: HTMLFormElement, index: number): string[] {
  const outcome = outcomes[columns.outcome[field(form, 'criterion')]?.[index] ?? -1] ?? 'not judged'
  return [columns.number[index] ?? '', sourceName(form, sources[columns.source[index] ?? -1] ?? ''), columns.sampled[index] ?? '', columns.class[index] ?? 'none', columns.state[index] ?? '', outcome.replaceAll('-', ' ')]
}

/** A source's name as the form's own list gives it. */
function sourceName(form: HTMLFormElement, id: string): string {
  return [...form.querySelectorAll<HTMLOptionElement>('select[name="source"] option')].find((option) => option.value === id)?.textContent ?? id
}

function row(data: LotColumns, form: HTMLFormElement, index: number): HTMLTableRowElement {
  const line = document.createElement('tr')
  const [number = '', ...rest] = cells(data, form, index)
  const head = document.createElement('th')
  head.scope = 'row'
  const link = document.createElement('a')
  link.href = `${form.dataset['lots'] ?? ''}${data.columns.lot[index]}/`
  link.textContent = number
  head.append(link)
  line.append(head, ...rest.map((text) => {
    const cell = document.createElement('td')
    cell.textContent = text
    return cell
  }))
  return line
}
