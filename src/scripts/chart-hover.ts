/** Adds the reading of the nearest result to a chart, by pointer or by arrow keys; the table beneath has the same without it. */

type Reading = readonly [x: number, y: number, text: string]

for (const figure of document.querySelectorAll<HTMLElement>('figure.chart')) enhance(figure)

function enhance(figure: HTMLElement): void {
  const readings = JSON.parse(figure.dataset['readings'] ?? '[]') as Reading[]
  const picture = figure.querySelector<SVGSVGElement>('svg.chart-wide')
  const line = figure.querySelector<HTMLElement>('.reading')
  if (picture === null || line === null || readings.length === 0) return
  const ring = document.createElementNS('http://www.w3.org/2000/svg', 'circle')
  ring.setAttribute('class', 'chosen')
  ring.setAttribute('r', '6')
  let chosen = -1
  const choose = (index: number) => {
    const reading = readings[index]
    if (reading === undefined || index === chosen) return
    chosen = index
    ring.setAttribute('cx', String(reading[0]))
    ring.setAttribute('cy', String(reading[1]))
    picture.append(ring)
    line.textContent = reading[2]
  }
  picture.addEventListener('pointermove', (event) => choose(nearest(readings, picture, event)))
  picture.setAttribute('tabindex', '0')
  picture.addEventListener('keydown', (event) => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
    if (step === 0) return
    event.preventDefault()
    choose(Math.min(readings.length - 1, Math.max(0, chosen < 0 ? readings.length - 1 : chosen + step)))
  })
}

function nearest(readings: readonly Reading[], picture: SVGSVGElement, event: PointerEvent): number {
  const box = picture.getBoundingClientRect()
  const x = (event.clientX - box.left) / box.width * picture.viewBox.baseVal.width
  let best = 0
  readings.forEach((reading, index) => {
    if (Math.abs(reading[0] - x) < Math.abs((readings[best]?.[0] ?? 0) - x)) best = index
  })
  return best
}
