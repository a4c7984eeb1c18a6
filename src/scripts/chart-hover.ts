/**
 * Adds the reading of the nearest result to a chart, by pointer or by arrow keys; the table beneath has the
 * same without it.
 */
import { type Middle, nearestPlace, placesOf, steppedIndex } from './places.ts'

for (const figure of document.querySelectorAll<HTMLElement>('figure.chart')) enhance(figure)

/** The wide and the narrow drawing show the same results at places of their own. */
function enhance(figure: HTMLElement): void {
  const readings = (figure.dataset['readings'] ?? '').split('\n')
  const line = figure.querySelector<HTMLElement>('.reading')
  if (line === null) return
  for (const picture of figure.querySelectorAll<SVGSVGElement>('svg[data-places]'))
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
    ring.setAttribute('cx', String(place[0]))
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

/** Where the pointer is, in the drawing's own units. */
function pointed(picture: SVGSVGElement, event: PointerEvent): Middle {
  const box = picture.getBoundingClientRect()
  const unit = picture.viewBox.baseVal.width / box.width
  return [(event.clientX - box.left) * unit, (event.clientY - box.top) * unit]
}
