/** A map proposed from the headings of a file. It says of each column how sure it is. */
import { isPropertyKey, PROPERTIES } from '../../core/measure/properties.ts'
import { isFinishable, isMortarResult } from '../../core/measure/ratio-indices.ts'
import { isFault, KINDS, readPerhapsAbove } from '../../core/measure/units.ts'
import { shownText } from './cell-value.ts'
import { type Field, fieldOf, TABLE_KINDS, type TableKind } from './fields.ts'
import type { Sheet } from './grid.ts'
import { type Certainty, type Meaning, meaningOf } from './heading-meaning.ts'
import { type Column, IGNORED, UNDECIDED } from './import-map.ts'
import { type SheetView, viewOf } from './sheet-view.ts'
import { isUnitOf, unitInHeading } from './unit-in-heading.ts'

export interface ProposedColumn {
  readonly heading: string
  readonly column: Column
  readonly certainty: Certainty
  /** Why, or what may be meant, as a comment beside the column. */
  readonly why: string | null
}

export interface ProposedTable {
  readonly sheet: string | null
  readonly headings: readonly number[]
  readonly holds: TableKind
  readonly why: string
  readonly columns: readonly ProposedColumn[]
  /** What the records need and no column gives. */
  readonly missing: readonly string[]
  /** Dates are written with figures, day or month first: whether a day beyond 12 shows which. */
  readonly dates: 'day-month-year' | 'month-day-year' | 'open' | null
  /** Numbers that stand as text have a comma. */
  readonly comma: boolean
}

/** Tables of the sheets in which a row of headings is found; hidden sheets hold lists and drafts, and are left out. */
export function proposeTables(sheets: readonly Sheet[]): ProposedTable[] {
  return sheets.flatMap((sheet) => {
    const headings = sheet.hidden === true ? null : headingRows(sheet)
    return headings === null ? [] : [proposeTable(sheet, headings)]
  })
}

/** Headings stand within the first rows of a sheet. */
const LAST_HEADING = 30

/** The row most of whose texts are known as headings, with the row above it where merged cells stand over it. */
function headingRows(sheet: Sheet): number[] | null {
  const scored = sheet.rows
    .filter(({ row }) => row <= LAST_HEADING)
    .map(({ row, cells }) => {
      const texts = [...cells.values()].filter(({ kind }) => kind === 'text').map(shownText)
      const known = texts.filter(
        (text) => meaningOf(text).certainty !== 'open' || meaningOf(text).why !== null,
      ).length
      return { row, score: known + texts.length / 100, texts: texts.length }
    })
    .filter(({ texts }) => 0 < texts)
  const best = scored.toSorted((a, b) => b.score - a.score || a.row - b.row)[0]
  if (best === undefined || best.score < 1) return null
  const above = sheet.merged.filter(({ rows, columns }) => rows[0] === rows[1] && columns[0] < columns[1])
  const below = sheet.rows.find(({ row }) => row === best.row + 1)
  if (above.some(({ rows }) => rows[0] === best.row) && below !== undefined) return [best.row, best.row + 1]
  return above.some(({ rows }) => rows[1] === best.row - 1) ? [best.row - 1, best.row] : [best.row]
}

function proposeTable(sheet: Sheet, headings: readonly number[]): ProposedTable {
  const view = viewOf(sheet, { headings })
  const meanings = [...view.headings].map(([at, heading]) => ({ at, heading, ...meaningOf(heading) }))
  // A heading that is not known says nothing of its table; one that may be two properties does.
  const known = meanings.filter(({ to, why }) => to !== UNDECIDED || why !== null)
  const { holds, why } = kindOf(known.map(({ to }) => to))
  const twice = new Set(
    [...Map.groupBy(meanings, ({ heading }) => heading)]
      .filter(([, own]) => 1 < own.length)
      .map(([heading]) => heading),
  )
  const columns = meanings
    .toSorted((a, b) => a.at - b.at)
    .map((meaning) =>
      proposedColumn(
        {
          ...meaning,
          heading: twice.has(meaning.heading) ? `@${view.columnName(meaning.at)}` : meaning.heading,
        },
        { holds, texts: columnTexts(view, meaning.at), written: meaning.heading },
      ),
    )
  const texts = view.rows
    .filter(({ row }) => view.headingRow < row)
    .flatMap(({ cells }) => [...cells.values()].filter(({ kind }) => kind === 'text').map(shownText))
  return {
    sheet: sheet.name,
    headings,
    holds,
    why,
    columns,
    missing: missingFields(holds, columns),
    dates: dateOrder(texts),
    comma: texts.some((text) => /^[<>]?\s*[+-]?\d+,\d+$/.test(text)),
  }
}

function columnTexts({ rows, headingRow }: SheetView, at: number): string[] {
  return rows.flatMap(({ row, cells }) => {
    const cell = cells.get(at)
    return row <= headingRow || cell === undefined ? [] : [shownText(cell)]
  })
}

function kindOf(fields: readonly string[]): { readonly holds: TableKind; readonly why: string } {
  const has = (...names: string[]) => names.some((name) => fields.includes(name))
  if (has('bill') || (has('mass') && has('to', 'vehicle')))
    return { holds: 'shipments', why: 'a bill of lading stands in each row' }
  if (has('load', 'resistance', 'specimen'))
    return has('lot')
      ? { holds: 'tests', why: 'readings of mortars stand in each row' }
      : { holds: 'controls', why: 'readings of mortars without a lot stand in each row' }
  if (fields.some((name) => isPropertyKey(name) || name === UNDECIDED)) {
    return has('sampled') && !has('produced', 'produced-from', 'quantity')
      ? { holds: 'samples', why: 'results of a sample with its day stand in each row' }
      : { holds: 'analyses', why: 'results stand in each row' }
  }
  if (has('sample-kind') && !has('produced', 'produced-from'))
    return { holds: 'samples', why: 'samples stand in its rows' }
  return { holds: 'lots', why: 'neither results nor readings nor bills stand in its rows' }
}

const AGE_IN = /\b(\d{1,3})\s*-?\s*d(?:ays?)?\b/i

interface ColumnOf {
  readonly holds: TableKind
  readonly texts: readonly string[]
  /** The heading, where the map names the column by its letter. */
  readonly written: string
}

function proposedColumn(
  { heading, to, certainty, why }: Meaning & { readonly heading: string },
  { holds, texts, written }: ColumnOf,
): ProposedColumn {
  if (to === UNDECIDED)
    return {
      heading,
      column: { to },
      certainty,
      why: why ?? 'not known: write what it gives, or ignore',
    }
  const field = fieldOf(holds, to)
  if (field === undefined) return elsewhere({ heading, to, written, holds })
  const age = AGE_IN.exec(written)?.[1]
  const aged = age !== undefined && takesAge(to, field) ? { age: `${Number(age)} d` } : {}
  const unit = unitFor(field, { written, texts })
  const mortar =
    isPropertyKey(to) && isMortarResult(to) && age === undefined ? 'the age stands in no heading' : null
  const column = {
    to,
    ...unit.column,
    ...aged,
    ...(field.reads.as === 'age' && unitInHeading(written) === 'd' ? { unit: 'd' } : {}),
  }
  const doubts = [why, unit.why, mortar].filter((doubt) => doubt !== null)
  return {
    heading,
    column,
    certainty: unit.open ? 'open' : certainty === 'sure' && doubts.length === 0 ? 'sure' : 'guessed',
    why: doubts.length === 0 ? null : doubts.join('; '),
  }
}

/** What a name means that tables of the kind have no field for: another field, or what is computed anyway. */
function elsewhere({ heading, to, written, holds }: Elsewhere): ProposedColumn {
  // "To" heads the end of production in one table and the consignee in another.
  if (to === 'produced-to' && holds === 'shipments')
    return { heading, column: { to: 'to' }, certainty: 'guessed', why: 'the consignee' }
  // A day with an age is the day of that test.
  const age = AGE_IN.exec(written)?.[1]
  if (to === 'date' && age !== undefined && fieldOf(holds, 'tested') !== undefined)
    return { heading, column: { to: 'tested', age: `${Number(age)} d` }, certainty: 'sure', why: null }
  if (isPropertyKey(to) && PROPERTIES[to].nature === 'derived')
    return {
      heading,
      column: { to: IGNORED },
      certainty: 'guessed',
      why: `${to} is computed from the other results`,
    }
  const others = TABLE_KINDS.filter((kind) => fieldOf(kind, to) !== undefined)
  const why =
    to === 'date'
      ? 'the day of what: tested, sampled or produced'
      : `"${to}" is a field of tables of ${others.join(', ')}: ignore it here, or read the sheet as such a table as well`
  return { heading, column: { to: UNDECIDED }, certainty: 'open', why }
}

interface Elsewhere extends Pick<Meaning, 'to'>, Pick<ColumnOf, 'written' | 'holds'> {
  readonly heading: string
}

function takesAge(to: string, { part }: Field): boolean {
  return part === 'age' || part === 'specimen' || (isPropertyKey(to) && isFinishable(to)) || to === 'tested'
}

/** The unit of a column where its cells have none: from the heading, else the stored one as a guess. */
function unitFor(
  { reads }: Field,
  { written, texts }: Pick<ColumnOf, 'written' | 'texts'>,
): {
  readonly column: { readonly unit?: string }
  readonly why: string | null
  readonly open: boolean
} {
  if (reads.as !== 'quantity') return { column: {}, why: null, open: false }
  const stated = unitInHeading(written, reads.kind)
  if (stated !== undefined && isUnitOf(stated, reads.kind))
    return { column: { unit: stated }, why: null, open: false }
  const carry = 0 < texts.length && texts.every((text) => !isFault(readPerhapsAbove(text, reads.kind)))
  if (carry) return { column: {}, why: null, open: false }
  const { stored, units } = KINDS[reads.kind]
  const accepted = units.map(({ symbol }) => symbol).join(', ')
  const why = stated === undefined ? 'the heading states no unit' : `"${stated}" is no unit of it`
  return PLAIN_UNIT.includes(reads.kind)
    ? { column: { unit: stored }, why: `${why}; it may be ${accepted}`, open: false }
    : { column: { unit: UNDECIDED }, why: `${why}: ${accepted}`, open: true }
}

/** Kinds of which nearly every sheet has one unit; of the others, a wrong guess would pass unseen. */
const PLAIN_UNIT: readonly string[] = ['fraction', 'density', 'points', 'heat', 'ratio']

/** What every record of a kind needs, by the names that give it. */
const NEEDED: Readonly<Record<TableKind, readonly (readonly string[])[]>> = {
  lots: [['source'], ['lot'], ['produced', 'produced-from'], ['quantity'], ['sample'], ['sample-kind']],
  samples: [['source'], ['lot'], ['sample', 'sampled'], ['laboratory'], ['tested']],
  analyses: [['source'], ['lot'], ['sample'], ['laboratory'], ['tested']],
  tests: [['source'], ['lot'], ['sample'], ['condition'], ['control'], ['laboratory'], ['cast'], ['tested']],
  controls: [['control'], ['condition'], ['laboratory'], ['cement'], ['cast'], ['tested']],
  shipments: [['source'], ['lot'], ['bill'], ['date'], ['mass']],
}

function missingFields(holds: TableKind, columns: readonly ProposedColumn[]): string[] {
  const given = new Set(columns.map(({ column }) => column.to))
  const figures = columns.some(
    ({ column: { to } }) => isPropertyKey(to) && isMortarResult(to) && PROPERTIES[to].nature === 'index',
  )
  // A row that says when a lot was made, or how large it is, makes it; and a lot has a sample.
  const makesLots = ['produced', 'produced-from', 'quantity'].some((name) => given.has(name))
  const needed = [
    ...NEEDED[holds],
    ...(makesLots && holds !== 'lots' ? [['sample-kind']] : []),
    ...(figures ? [['condition']] : []),
  ]
  const readings = columns.filter(({ column: { to } }) => ['load', 'strength', 'resistance'].includes(to))
  const unaged = readings.some(({ column: { age } }) => age === undefined) && !given.has('age')
  return [
    ...needed.filter((names) => !names.some((name) => given.has(name))).map(([name = '']) => name),
    ...(unaged ? ['age'] : []),
  ]
}

/** Which of day and month comes first, where a number beyond 12 shows it; null where no date is written so. */
function dateOrder(texts: readonly string[]): ProposedTable['dates'] {
  const dates = texts.flatMap((text) => {
    const found = /^(\d{1,2})[-/. ](\d{1,2})[-/. ]\d{4}\b/.exec(text)
    return found === null ? [] : [[Number(found[1]), Number(found[2])] as const]
  })
  if (dates.length === 0) return null
  const [day, month] = [dates.some(([first]) => 12 < first), dates.some(([, second]) => 12 < second)]
  return day === month ? 'open' : day ? 'day-month-year' : 'month-day-year'
}
