/** Names beside points of a scatter, off every mark and every other name. */
import { labelWidth } from './labels.ts'
import { type Plot, rounded } from './plot.ts'

export interface NamedPoint {
  readonly x: number
  readonly y: number
  readonly name: string
}

export interface PlacedName {
  readonly name: string
  /** Start of the text, and its base line. */
  readonly x: number
  readonly y: number
  /** To its mark, where the name does not stand right beside it. */
  readonly leader: string | null
}

export interface Point {
  readonly x: number
  readonly y: number
}

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Half a mark with its rim, and the height of a name. */
const MARK = 6
const LINE = 12
const DISTANCES = [9, 16, 26, 38, 52]
/** Right first, then left, then above and below. */
const WAYS = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [0.8, -0.8],
  [0.8, 0.8],
  [-0.8, -0.8],
  [-0.8, 0.8],
] as const

/**
 * @param named in order of worth: the first ones are placed first
 * @param marks all points, which no name may cover, nor its leader but for its own
 * @param kept boxes of other texts, and of lines, that no name may cover
 * @param plot that names stay within
 * @returns in the order of `named`, without those for which no place is free
 */
export function besidePoints(
  named: readonly NamedPoint[],
  { marks, kept }: { readonly marks: readonly Point[]; readonly kept: readonly Box[] },
  plot: Plot,
): PlacedName[] {
  const markBoxes = marks.map((mark) => boxAbout(mark, MARK))
  const names: Box[] = []
  return named.flatMap((point): PlacedName[] => {
    const width = labelWidth(point.name) + 2
    for (const distance of DISTANCES)
      for (const [across, down] of WAYS) {
        const box = boxAt(point, width, { across: across * distance, down: down * distance })
        if (!isWithin(box, plot) || [...markBoxes, ...kept, ...names].some((other) => overlap(box, other)))
          continue
        const leader = distance === DISTANCES[0] ? null : leaderOf(point, box)
        const way = leader === null ? [] : dotsOf(leader)
        const others = [...marks.filter((mark) => mark.x !== point.x || mark.y !== point.y)]
        if (
          way.some((dot) =>
            [...names, ...others.map((mark) => boxAbout(mark, 4))].some((other) => overlap(dot, other)),
          )
        )
          continue
        names.push(box, ...way)
        return [
          {
            name: point.name,
            x: rounded(box.left + 1, 1),
            y: rounded(box.bottom - 2.5, 1),
            leader: leader === null ? null : pathOf(leader),
          },
        ]
      }
    return []
  })
}

function boxAt(
  { x, y }: NamedPoint,
  width: number,
  { across, down }: { readonly across: number; readonly down: number },
): Box {
  const left = across === 0 ? x - width / 2 : 0 < across ? x + across - 1 : x + across - width + 1
  // Above and below, the name's near edge keeps the distance.
  const middle = down === 0 ? y : y + down + Math.sign(down) * (across === 0 ? LINE / 2 - 1 : 0)
  return { left, right: left + width, top: middle - LINE / 2, bottom: middle + LINE / 2 }
}

interface Leader {
  readonly start: Point
  readonly end: Point
}

/** From the rim of the mark to the nearest edge of its name. */
function leaderOf({ x, y }: NamedPoint, box: Box): Leader {
  const end = { x: Math.min(Math.max(x, box.left), box.right), y: Math.min(Math.max(y, box.top), box.bottom) }
  const length = Math.hypot(end.x - x, end.y - y) || 1
  return { start: { x: x + (6 * (end.x - x)) / length, y: y + (6 * (end.y - y)) / length }, end }
}

function pathOf({ start, end }: Leader): string {
  return `M${rounded(start.x, 1)} ${rounded(start.y, 1)}L${rounded(end.x, 1)} ${rounded(end.y, 1)}`
}

function dotsOf({ start, end }: Leader): Box[] {
  return alongLine(start, end, 4).map((point) => boxAbout(point, 1))
}

/** A square about a point. @param half half its width */
export function boxAbout({ x, y }: Point, half: number): Box {
  return { left: x - half, right: x + half, top: y - half, bottom: y + half }
}

/** Points of a line from end to end. @param apart most distance of two, pixels */
export function alongLine(start: Point, end: Point, apart: number): Point[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(end.x - start.x, end.y - start.y) / apart))
  return Array.from({ length: steps + 1 }, (_, step) => ({
    x: start.x + ((end.x - start.x) * step) / steps,
    y: start.y + ((end.y - start.y) * step) / steps,
  }))
}

/** Whether a box lies within a plot. */
function isWithin(box: Box, plot: Plot): boolean {
  return plot.left <= box.left && box.right <= plot.right && plot.top <= box.top && box.bottom <= plot.bottom
}

/** Whether two boxes have room in common. */
export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}
