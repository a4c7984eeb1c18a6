/** The table behind a chart: what the drawing shows, in figures. */

export interface ChartTable {
  readonly summary: string
  readonly heads: readonly ChartTableHead[]
  readonly rows: readonly ChartTableRow[]
}

export interface ChartTableHead {
  readonly text: string
  readonly numeric: boolean
}

export interface ChartTableRow {
  /** Certificate that the first cell leads to, SOURCE/LOT; null where it leads nowhere. */
  readonly lot: string | null
  /** In the order of the heads. */
  readonly cells: readonly string[]
}

/** Rows of a table on a page; the file has every result. */
const ROWS = 40

/** The newest of a chart's points, the latest first. @param points in order of the drawing */
export function newestTable<Point>(
  points: readonly Point[],
  of: { readonly heads: readonly ChartTableHead[]; readonly row: (point: Point) => ChartTableRow },
): ChartTable {
  const newest = points.slice(-ROWS).reverse()
  return {
    summary:
      newest.length < points.length ? `Newest ${newest.length} of ${points.length} as a table` : 'As a table',
    heads: of.heads,
    rows: newest.map(of.row),
  }
}

export function textHead(text: string): ChartTableHead {
  return { text, numeric: false }
}

export function numberHead(text: string): ChartTableHead {
  return { text, numeric: true }
}
