/** What runs through all charts of a source: events, and changes of laboratory and control cement. */
import { ACROSS } from '../../charts/panel-axis.ts'
import { labelWidth, type PlacedLabel, placeLabels, rowsOf, shortened } from '../../charts/labels.ts'
import { period } from '../../words/dates.ts'
import type { PanelContext } from './source-panels.ts'

export interface Rail {
  /** Bands of events, in thousandths of the width. */
  readonly events: readonly { readonly x: number; readonly width: number; readonly label: PlacedLabel }[]
  readonly laboratories: readonly RailChange[]
  readonly cements: readonly RailChange[]
  /** Names of the rows, from the top; a row without a name is left out. */
  readonly names: readonly [events: string, laboratories: string, cements: string]
  /** Height of each row of labels in pixels, and of all. */
  readonly rows: {
    readonly events: number
    readonly laboratories: number
    readonly cements: number
    readonly height: number
  }
  /** All in words, for a narrow screen: "outage, unit 2 (6 to 24 October 2025)". */
  readonly words: readonly string[]
}

export interface RailChange {
  readonly x: number
  /** Begins with the axis: no line is drawn. */
  readonly first: boolean
  readonly label: PlacedLabel
}

/** Pixels that the axis is taken to have for its labels. */
const WIDTH = 660
const ROW = 14
/** An event of one day is drawn this wide, in thousandths. */
const THINNEST = 2

export function railOf(context: PanelContext): Rail {
  const events = eventsOf(context)
  const laboratories = changesOf(
    context,
    'laboratory',
    (id) => context.edition.laboratories.get(id)?.name ?? id,
  )
  const cements = changesOf(context, 'cement', (lot) => lot)
  return {
    events,
    laboratories,
    cements,
    names: ['events', 'lab.', 'cement'],
    rows: railRows(events, laboratories, cements),
    words: wordsOf(context, laboratories, cements),
  }
}

type Labelled = readonly { readonly label: PlacedLabel }[]

/** Where each row ends; a row takes a line at least. */
export function railRows(events: Labelled, laboratories: Labelled, cements: Labelled): Rail['rows'] {
  const [own, made, mixed] = [events, laboratories, cements].map(
    (row) => Math.max(1, rowsOf(row.map(({ label }) => label))) * ROW,
  ) as [number, number, number]
  return {
    events: own,
    laboratories: own + made,
    cements: own + made + mixed,
    height: own + made + mixed + 4,
  }
}

/** Labels that begin at their places and cover none of their neighbours. */
export function placed<At extends { readonly x: number; readonly text: string }>(
  items: readonly At[],
): (At & { label: PlacedLabel })[] {
  const scale = WIDTH / ACROSS
  const wishes = items.map(({ x, text }) => {
    const short = shortened(text, WIDTH / 3)
    return { text: short, width: labelWidth(short), x: x * scale + labelWidth(short) / 2 }
  })
  const labels = placeLabels(wishes, { left: 0, right: WIDTH })
  return items.map((item, place) => {
    const label = labels[place] as PlacedLabel
    return { ...item, label: { ...label, x: Math.round(label.x / scale) } }
  })
}

function eventsOf({ source, axis }: PanelContext): Rail['events'] {
  return placed(
    (source.record.events ?? []).flatMap(({ date, to = date, title }) => {
      const ends = axis.span(date.day, to.day)
      return ends === null ? [] : [{ x: ends[0], width: Math.max(THINNEST, ends[1] - ends[0]), text: title }]
    }),
  )
}

/** Where the lots' results change from one to the next; the index with a control tells the cement. */
function changesOf(
  { lots, axis }: PanelContext,
  what: 'laboratory' | 'cement',
  nameOf: (id: string) => string,
): RailChange[] {
  const found: { x: number; first: boolean; text: string }[] = []
  let before: string | undefined
  for (const lot of lots) {
    const now = [...lot.origins.values()].find((origin) => origin.cement !== undefined)?.[what]
    if (now === undefined || now === before) continue
    found.push({ x: axis.before(lot), first: before === undefined, text: nameOf(now) })
    before = now
  }
  return placed(found)
}

function wordsOf(
  { source, axis }: PanelContext,
  laboratories: readonly RailChange[],
  cements: readonly RailChange[],
): string[] {
  const events = (source.record.events ?? []).flatMap(({ title, date, to = date }) =>
    axis.span(date.day, to.day) === null ? [] : [`${title} (${period(date, to)})`],
  )
  const names = (changes: readonly RailChange[]) =>
    [...new Set(changes.map(({ label }) => label.text))].join(', then ')
  return [
    ...events,
    ...(laboratories.length > 1 ? [`laboratory: ${names(laboratories)}`] : []),
    ...(cements.length > 1 ? [`control cement: ${names(cements)}`] : []),
  ]
}
