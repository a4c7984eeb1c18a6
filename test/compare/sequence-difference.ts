/** Where two sequences of lines or tokens differ, stretch by stretch. */

export interface Stretch {
  /** Place of the first element in the reference sequence, from 0. */
  readonly at: number
  readonly was: readonly string[]
  readonly is: readonly string[]
}

/** How far ahead the sequences are searched for the point where they agree again. */
const WINDOW = 300

/** This many equal elements in a row count as agreement; fewer may be chance, such as a closing tag. */
const AGREEMENT = 3

/**
 * Every element that differs lies in a stretch; an equal one may too, where no agreement is found.
 * @returns stretches in order; where both sides have as many elements, one stretch for each pair that differs
 */
export function sequenceDifferences(was: readonly string[], is: readonly string[]): Stretch[] {
  const stretches: Stretch[] = []
  let [x, y] = [0, 0]
  while (x < was.length || y < is.length) {
    if (x < was.length && y < is.length && was[x] === is[y]) {
      x += 1
      y += 1
      continue
    }
    const [skipWas, skipIs] = nextAgreement(was, x, is, y)
    stretches.push(...pairs({ at: x, was: was.slice(x, x + skipWas), is: is.slice(y, y + skipIs) }))
    x += skipWas
    y += skipIs
  }
  return stretches
}

/** How many elements to pass over on each side; the fewest in all. */
function nextAgreement(
  was: readonly string[],
  x: number,
  is: readonly string[],
  y: number,
): [number, number] {
  for (let skipped = 1; skipped <= WINDOW; skipped += 1) {
    for (let skipWas = 0; skipWas <= skipped; skipWas += 1) {
      if (agree(was, x + skipWas, is, y + skipped - skipWas)) return [skipWas, skipped - skipWas]
    }
  }
  return [Math.min(WINDOW, was.length - x), Math.min(WINDOW, is.length - y)]
}

function agree(was: readonly string[], x: number, is: readonly string[], y: number): boolean {
  if (was.length < x || is.length < y) return false
  for (let place = 0; place < AGREEMENT; place += 1) {
    if (was[x + place] !== is[y + place]) return false
    if (was[x + place] === undefined) return true
  }
  return true
}

function pairs(stretch: Stretch): Stretch[] {
  if (stretch.was.length !== stretch.is.length) return [stretch]
  return stretch.was
    .map((element, place) => ({
      at: stretch.at + place,
      was: [element],
      is: stretch.is.slice(place, place + 1),
    }))
    .filter((pair) => pair.was[0] !== pair.is[0])
}
