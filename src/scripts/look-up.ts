/** Answers the look-up form from the column files, without leaving the page. */
import { type LotColumns, readLotColumns, readShipmentColumns, type ShipmentColumns } from './columns.ts'
import { anchor, element, marked } from './elements.ts'
import { type Found, matches } from './match.ts'

/**
 * Answers shown at most: a longer list is no answer, and the count beside it says that more text is needed.
 */
const SHOWN = 30

const place = document.querySelector<HTMLElement>('#found')
const form = document.querySelector<HTMLFormElement>('main form')
const field = form?.querySelector<HTMLInputElement>('input[name="q"]')

if (place !== null && form !== null && field !== null && field !== undefined) {
  const answer = async (query: string) => {
    try {
      const [lots, shipments] = await Promise.all(
        [place.dataset['index'] ?? '', place.dataset['shipments'] ?? ''].map(async (address) =>
          (await fetch(address)).json(),
        ),
      )
      show(place, query, readLotColumns(lots), readShipmentColumns(shipments))
    } catch {
      place.textContent = 'The list of lots could not be fetched: try again, or find the lot in the register.'
    }
  }
  const given = new URLSearchParams(location.search).get('q')
  if (given !== null && given !== '') {
    field.value = given
    void answer(given)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    history.replaceState(null, '', `?q=${encodeURIComponent(field.value)}`)
    void answer(field.value)
  })
}

function show(place: HTMLElement, query: string, lots: LotColumns, shipments: ShipmentColumns): void {
  const answers = matches(query, lots, shipments)
  const items = answers
    .slice(0, SHOWN)
    .map((answer) => element('li', answerNodes(answer, place.dataset['lots'] ?? '')))
  const head = element('p', [countInWords(answers.length, query)])
  head.tabIndex = -1
  place.replaceChildren(head, element('ul', items))
  // Whoever reads by keyboard or by ear goes on from the answer, not from the top of the page.
  head.focus()
}

function answerNodes(
  { lots, standing, under, because, left, note }: Found,
  address: string,
): (string | Node)[] {
  const links = lots.flatMap((lot, place): (string | Node)[] => [
    ...(place === 0 ? [] : [', ']),
    anchor(`${address}${lot}/`, `Certificate ${lot}`),
  ])
  return [
    ...(standing.text === '' ? [] : [element('strong', [marked(standing.mark, [standing.text])])]),
    ...(under === '' ? [] : [element('div', [under], 'small soft')]),
    ...(left === '' ? [] : [element('div', [`When it left: ${left}`], 'small')]),
    element('div', [...links, ` (${because})`]),
    ...(note === null ? [] : [element('div', [note], 'small soft')]),
  ]
}

function countInWords(count: number, query: string): string {
  if (count === 0)
    return `Nothing found for “${query}”. Type less of the number, or find the lot in the register by source and year.`
  return SHOWN < count
    ? `${count} found for “${query}”, the first ${SHOWN} shown:`
    : `${count} found for “${query}”:`
}
