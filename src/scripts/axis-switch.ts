/** Puts a source's charts on another axis without leaving the page, and keeps the axis in the address. */
import { readCharts } from './chart-readings.ts'

const PARAMETER = 'axis'

const choices = document.querySelector<HTMLElement>('.axis-switch[data-in-place]')
const place = document.querySelector<HTMLElement>('[data-charts]')

if (choices !== null && place !== null) switchIn(choices, place)

function switchIn(choices: HTMLElement, place: HTMLElement): void {
  const links = [...choices.querySelectorAll<HTMLAnchorElement>('a[data-axis]')]
  const first = links.find((link) => link.getAttribute('aria-current') === 'true')
  const own = { axis: first?.dataset['axis'] ?? '', charts: [...place.childNodes] }
  let asked = own.axis
  const note = choices.querySelector<HTMLElement>('[role="status"]')
  const show = async (axis: string) => {
    const link = links.find((candidate) => candidate.dataset['axis'] === axis)
    if (link === undefined) return
    asked = axis
    const charts = axis === own.axis ? own.charts : await chartsAt(link.href)
    // Whoever chose again meanwhile waits for that axis alone.
    if (asked !== axis) return
    if (charts === null) {
      location.assign(link.href)
      return
    }
    place.replaceChildren(...charts)
    if (axis !== own.axis) readCharts(place)
    for (const each of links)
      if (each === link) each.setAttribute('aria-current', 'true')
      else each.removeAttribute('aria-current')
    if (note !== null) note.textContent = `Charts by ${link.textContent}`
  }
  choices.addEventListener('click', (event) => {
    const link =
      event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('a[data-axis]') : null
    if (link === null || event.ctrlKey || event.metaKey || event.shiftKey) return
    event.preventDefault()
    const axis = link.dataset['axis'] ?? ''
    history.pushState(null, '', addressOf(axis, own.axis))
    void show(axis)
  })
  addEventListener('popstate', () => void show(chosenAxis() ?? own.axis))
  const given = chosenAxis()
  if (given !== null && given !== own.axis) void show(given)
}

function chosenAxis(): string | null {
  return new URLSearchParams(location.search).get(PARAMETER)
}

/** The page's own axis needs no word; what else the address says stays. */
function addressOf(axis: string, own: string): string {
  const address = new URL(location.href)
  if (axis === own) address.searchParams.delete(PARAMETER)
  else address.searchParams.set(PARAMETER, axis)
  address.hash = 'charts'
  return address.href
}

/** The charts of a page that has them on its axis; null where it cannot be had. */
async function chartsAt(address: string): Promise<Node[] | null> {
  try {
    const answer = await fetch(address)
    if (!answer.ok) return null
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html')
    const charts = page.querySelector('[data-charts]')
    return charts === null ? null : [...charts.childNodes].map((node) => document.adoptNode(node))
  } catch {
    return null
  }
}
