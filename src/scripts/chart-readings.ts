/**
 * Adds the reading of the nearest result to a chart, by pointer or by arrow keys; the table beneath has the
 * same without it.
 */
import { type Middle, nearestPlace, placesOf, steppedIndex } from './places.ts'

/** A stretched drawing has a thousand units across, and pixels down. */
const ACROSS = 1000

/** Every chart of a document or of a part of it. */
export function readCharts(part: ParentNode): void {
  for (const chart of part.querySelectorAll<HTMLElement>('[data-readings]')) enhance(chart)
}

/** The wide and the narrow drawing show the same results at places of their own. */
function enhance(chart: HTMLElement): void {
  const readings = (chart.dataset['readings'] ?? '').split('\n')
  const line = chart.querySelector<HTMLElement>('.reading')
  if (line === null) return
  for (const picture of chart.querySelectorAll<SVGSVGElement>('svg[data-places]'))
    follow(picture, placesOf(picture.dataset['places'] ?? ''), (index) => {
      line.textContent = readings[index] ?? ''
    })
}

function follow(picture: SVGSVGElement, places: readonly Middle[], tell: (index: number) => void): void {
  const ring = document.createElementNS('http://www.w3.org/2000/svg', 'circle')
  ring.setAttribute('class', 'chosen')
  ring.setAttribute('r', '6')
  let chosen = -1
  const choose = (index: number) => {
    const place = places[index]
    if (place === undefined || index === chosen) return
    chosen = index
    ring.setAttribute('cx', isStretched(picture) ? `${(100 * place[0]) / ACROSS}%` : String(place[0]))
    ring.setAttribute('cy', String(place[1]))
    picture.append(ring)
    tell(index)
  }
  const scattered = picture.closest('.paired') !== null
  const point = (event: PointerEvent) => {
    const [x, y] = pointed(picture, event)
    choose(nearestPlace(places, x, scattered ? y : undefined))
  }
  picture.addEventListener('pointermove', point)
  picture.addEventListener('pointerdown', point)
  picture.setAttribute('tabindex', '0')
  // A screen reader hands the arrow keys on to an application, not to a picture; the line below is read out.
  picture.setAttribute('role', 'application')
  picture.setAttribute('aria-roledescription', 'chart, read result by result with the arrow keys')
  picture.addEventListener('keydown', (event) => {
    const next = steppedIndex(event.key, chosen, places.length)
    if (next === null) return
    event.preventDefault()
    choose(next)
  })
}

function isStretched(picture: SVGSVGElement): boolean {
  return !picture.hasAttribute('viewBox')
}

/** Where the pointer is, in the drawing's own units. */
function pointed(picture: SVGSVGElement, event: PointerEvent): Middle {
  const box = picture.getBoundingClientRect()
  const [x, y] = [event.clientX - box.left, event.clientY - box.top]
  if (isStretched(picture)) return [(x * ACROSS) / box.width, y]
  const unit = picture.viewBox.baseVal.width / box.width
  return [x * unit, y * unit]
}
