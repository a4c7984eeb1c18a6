/**
 * The mark of each outcome, and of a lot whose outcome does not stand alone, in a box of 16 pixels: its own shape,
 * so that it is told in grey and in print.
 */
import type { StandingMark } from '../words/standing.ts'

interface Ink {
  readonly fill: 'currentColor' | 'none'
  readonly stroke?: 'currentColor'
  readonly 'stroke-width'?: number
  readonly 'stroke-dasharray'?: string
}
/** An element of the drawing with its attributes. */
export type MarkPart =
  | { readonly tag: 'circle'; readonly attributes: { cx: number; cy: number; r: number } & Ink }
  | {
      readonly tag: 'rect'
      readonly attributes: { x: number; y: number; width: number; height: number } & Ink
    }
  | { readonly tag: 'path'; readonly attributes: { d: string } & Partial<Ink> }

export function outcomeMark(mark: StandingMark): readonly MarkPart[] {
  return MARKS[mark]
}

const MARKS: Readonly<Record<StandingMark, readonly MarkPart[]>> = {
  meets: [disc(8, 6)],
  'meets-by-approval': [ring(6.2, 1.4), disc(8, 3.4)],
  'does-not-meet': [{ tag: 'path', attributes: { d: 'M8 0.8 15.2 8 8 15.2 0.8 8Z', fill: 'currentColor' } }],
  inconclusive: [
    ring(6, 1.6),
    { tag: 'path', attributes: { d: 'M8 2a6 6 0 0 0 0 12Z', fill: 'currentColor' } },
  ],
  pending: [dashedRing()],
  'not-reported': [{ tag: 'rect', attributes: { x: 2.5, y: 2.5, width: 11, height: 11, ...outline(1.7) } }],
  'insufficient-history': [disc(2.6, 1.7), disc(8, 1.7), disc(13.4, 1.7)],
  'not-valid': [
    { tag: 'rect', attributes: { x: 2.2, y: 2.2, width: 11.6, height: 11.6, ...outline(1.5) } },
    stroked('M4.8 4.8 11.2 11.2M11.2 4.8 4.8 11.2', 1.5),
  ],
  'not-applicable': [stroked('M3 8H13', 1.7)],
  'not-invoked': [ring(3.4, 1.5)],
  'meets-so-far': [dashedRing(), disc(8, 3)],
  draft: [stroked('M4 1.8H10L13 4.8V14.2H4ZM6.4 7.4H10.6M6.4 10.6H10.6', 1.4)],
  withdrawn: [ring(6.2, 1.6), stroked('M3.6 12.4 12.4 3.6', 1.6)],
  reported: [{ tag: 'rect', attributes: { x: 4.6, y: 4.6, width: 6.8, height: 6.8, fill: 'currentColor' } }],
}

function outline(width: number): Ink {
  return { fill: 'none', stroke: 'currentColor', 'stroke-width': width }
}

function dashedRing(): MarkPart {
  return {
    tag: 'circle',
    attributes: { cx: 8, cy: 8, r: 6, ...outline(1.7), 'stroke-dasharray': '2.2 2.5' },
  }
}

function disc(x: number, r: number): MarkPart {
  return { tag: 'circle', attributes: { cx: x, cy: 8, r, fill: 'currentColor' } }
}

function ring(r: number, width: number): MarkPart {
  return { tag: 'circle', attributes: { cx: 8, cy: 8, r, ...outline(width) } }
}

function stroked(d: string, width: number): MarkPart {
  return { tag: 'path', attributes: { d, stroke: 'currentColor', 'stroke-width': width } }
}
