/** Marks of sources on a paired chart, told apart by outline alone. */
import { rounded } from './plot.ts'

type Draw = (x: number, y: number, scale: number) => string
type Corner = readonly [across: number, down: number]

/** The mark of a source. */
export interface PairedMark {
  /** Names the shape in legend and table. */
  readonly word: string
  /** Where a shape comes again: "b" the second time. */
  readonly letter: string
  /** Path of the mark around a place, enlarged by a scale. */
  readonly draw: Draw
}

/*
 * Own outlines: of d3's symbols only circle and square are the same pictures. Its diamond is slimmer, its
 * cross thicker, its triangle stands a little higher; it has no triangle pointing down and no bars.
 */
function polygon([first = [0, 0], ...others]: readonly Corner[]): Draw {
  return (x, y, scale) => {
    // From corner to corner: the same text in every mark, which a page of thousands of marks packs small.
    const steps = others.map(([across, down], place) => {
      const [left, up] = others[place - 1] ?? first
      return `${rounded(scale * (across - left))},${rounded(scale * (down - up))}`
    })
    return `M${rounded(x + scale * first[0])},${rounded(y + scale * first[1])}l${steps.join(' ')}Z`
  }
}

function circle(radius: number): Draw {
  return (x, y, scale) => {
    const r = rounded(radius * scale)
    const half = (width: number) => `a${r},${r} 0 1,0 ${rounded(width)},0`
    return `M${rounded(x - r)},${rounded(y)}${half(2 * r)}${half(-2 * r)}Z`
  }
}

function bar(half: number, tall: number): Draw {
  return polygon([
    [-half, -tall],
    [half, -tall],
    [half, tall],
    [-half, tall],
  ])
}

/** Half the width of an arm of the plus, and its length from the middle. */
const ARM = 1.4
const TIP = 4.8

const SHAPES: readonly Omit<PairedMark, 'letter'>[] = [
  { word: 'circle', draw: circle(3.8) },
  { word: 'square', draw: bar(3.5, 3.5) },
  {
    word: 'triangle',
    draw: polygon([
      [0, -4.8],
      [4.6, 3.2],
      [-4.6, 3.2],
    ]),
  },
  {
    word: 'diamond',
    draw: polygon([
      [0, -5.2],
      [4.4, 0],
      [0, 5.2],
      [-4.4, 0],
    ]),
  },
  {
    word: 'plus',
    draw: polygon([
      [-ARM, -TIP],
      [ARM, -TIP],
      [ARM, -ARM],
      [TIP, -ARM],
      [TIP, ARM],
      [ARM, ARM],
      [ARM, TIP],
      [-ARM, TIP],
      [-ARM, ARM],
      [-TIP, ARM],
      [-TIP, -ARM],
      [-ARM, -ARM],
    ]),
  },
  {
    word: 'triangle pointing down',
    draw: polygon([
      [0, 4.8],
      [4.6, -3.2],
      [-4.6, -3.2],
    ]),
  },
  {
    word: 'triangle pointing right',
    draw: polygon([
      [4.8, 0],
      [-3.2, 4.6],
      [-3.2, -4.6],
    ]),
  },
  {
    word: 'triangle pointing left',
    draw: polygon([
      [-4.8, 0],
      [3.2, 4.6],
      [3.2, -4.6],
    ]),
  },
  { word: 'upright bar', draw: bar(1.9, 5.2) },
  { word: 'flat bar', draw: bar(5.2, 1.9) },
]

/** The mark of the n-th source, from 0; outlines come again, then with a letter, where they run out. */
export function pairedMark(place: number): PairedMark {
  const shape = SHAPES[place % SHAPES.length] as (typeof SHAPES)[number]
  const round = Math.floor(place / SHAPES.length)
  return { ...shape, letter: round === 0 ? '' : String.fromCharCode(97 + round) }
}
