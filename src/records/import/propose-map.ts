/**
 * A map proposed from the headings of a file. It says of each column how sure it is; what may mean two things is left to
 * a person, with both named. Longer than most files: what a heading may be called stands here in one list.
 */
import { isPropertyKey, PROPERTIES } from '../../core/measure/properties.ts'
import { isFinishable, isMortarResult } from '../../core/measure/ratio-indices.ts'
import { tradeWord } from '../../core/measure/trade-words.ts'
import { isFault, KINDS, readPerhapsAbove } from '../../core/measure/units.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import { type Field, fieldOf, fieldNames, TABLE_KINDS, type TableKind } from './fields.ts'
import type { Sheet } from './grid.ts'
import { shownText } from './cell-value.ts'
import { type Column, UNDECIDED } from './import-map.ts'
import { viewOf, type SheetView } from './sheet-view.ts'
import { unitInHeading } from './table-rows.ts'

/** How a column was placed: for sure, by a guess that a person looks at, or not at all. */
export type Certainty = 'sure' | 'guessed' | 'open'

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

/** Tables of the sheets in which a row of headings is found. */
export function proposeTables(sheets: readonly Sheet[]): ProposedTable[] {
  return sheets.flatMap((sheet) => {
    const headings = headingRows(sheet)
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

/** What laboratories and mills call the fields that are no properties; each name for sure, in small letters and digits. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  lot: ['lot', 'lotno', 'lotnumber', 'lotid', 'lotnr', 'batchno', 'silolot', 'certificateno'],
  source: ['source', 'plant', 'plantname'],
  number: ['printednumber', 'printedlotnumber'],
  class: ['class'],
  produced: ['produced', 'production', 'productiondate', 'dateproduced', 'dateofproduction'],
  'produced-from': ['from', 'producedfrom', 'start', 'productionstart', 'periodfrom', 'begin'],
  'produced-to': ['to', 'producedto', 'end', 'productionend', 'periodto', 'until'],
  quantity: ['quantity', 'lotquantity', 'lotsize', 'lotmass', 'tonnage', 'tons', 'tonnes', 'productiont'],
  silo: ['silo', 'bin', 'silono'],
  sample: ['sample', 'sampleid', 'sampleno', 'samplenumber', 'samplemark'],
  'sample-kind': ['samplekind', 'sampletype', 'kindofsample'],
  sampled: ['sampled', 'sampledate', 'datesampled', 'dateofsampling', 'samplingdate'],
  'sampled-by': ['sampledby', 'sampler'],
  laboratory: ['laboratory', 'lab', 'testedat'],
  tested: [
    'tested',
    'datetested',
    'testdate',
    'dateoftest',
    'analysisdate',
    'analysed',
    'analyzed',
    'broken',
  ],
  reported: ['reported', 'datereported', 'reportdate'],
  condition: ['condition', 'testcondition'],
  control: ['control', 'controlbatch', 'controlid', 'controlmix'],
  cast: ['cast', 'castdate', 'datecast', 'dateofcasting', 'mixed', 'mixdate', 'moulded', 'molded'],
  flow: ['flow', 'flowtable'],
  water: ['water', 'mixwater', 'mixingwater'],
  age: ['age', 'testage', 'aged'],
  specimen: ['specimen', 'specimenno', 'cube', 'cubeno', 'specimenid'],
  load: [
    'load',
    'loads',
    'cubeload',
    'cubeloads',
    'maxload',
    'maximumload',
    'failureload',
    'breakingload',
    'peakload',
    'loadkn',
    'loadlbf',
  ],
  resistance: ['resistance', 'resistances', 'measuredresistance', 'r'],
  temperature: ['temperature', 'temp', 'specimentemperature'],
  bill: [
    'bill',
    'bl',
    'blno',
    'billno',
    'billoflading',
    'bol',
    'bolno',
    'ticket',
    'ticketno',
    'ladingno',
    'deliverynote',
  ],
  date: ['date', 'shipdate', 'dateshipped', 'shipped', 'deliverydate', 'loaded'],
  mass: [
    'mass',
    'net',
    'netmass',
    'netweight',
    'netweightt',
    'weight',
    'nettons',
    'nett',
    'shortton',
    'netshortton',
  ],
  to: ['consignee', 'customer', 'shipto', 'deliveredto', 'receiver'],
  project: ['project', 'contract', 'job', 'jobno', 'projectno'],
  seal: ['seal', 'sealno'],
  vehicle: ['vehicle', 'truck', 'railcar', 'truckno', 'car'],
  note: ['note', 'remarks', 'remark', 'comment', 'comments'],
}

const BY_NAME = new Map(
  Object.entries(NAMES).flatMap(([field, names]) => names.map((name) => [name, field] as const)),
)

interface Meaning {
  readonly to: string
  readonly certainty: Certainty
  readonly why: string | null
}

/** What a heading means, whatever table it heads. */
function meaningOf(heading: string): Meaning {
  const bare = bareName(heading)
  const field = BY_NAME.get(bare)
  // One numbered reading of several: "Cube 1", "Load 3".
  const [, numbered = ''] = /^(.*?)[#\d]+[a-c]?$/.exec(bare) ?? []
  const reading = BY_NAME.get(numbered)
  const word = tradeWord(withoutJoint(heading)) ?? tradeWord(heading)
  if (word !== undefined && 'sure' in word) return { to: word.sure, certainty: 'sure', why: null }
  if (word !== undefined)
    return { to: UNDECIDED, certainty: 'open', why: `${word.why}: ${word.either.join(' or ')}` }
  if (field !== undefined) return { to: field, certainty: 'sure', why: null }
  const own = heading
    .replace(/\s*\([^)]*\)\s*$/, '')
    .toLowerCase()
    .replaceAll(' ', '-')
  if (TABLE_KINDS.some((kind) => fieldNames(kind).includes(own)))
    return { to: own, certainty: 'sure', why: null }
  if (reading !== undefined && ['load', 'specimen', 'resistance'].includes(reading))
    return {
      to: reading === 'resistance' ? 'resistance' : 'load',
      certainty: 'guessed',
      why: 'one reading of several',
    }
  const near = nearNames(bare, BY_NAME.keys())
  const [, nearest] = /^did you mean (\w+)/.exec(near) ?? []
  const guess = nearest === undefined || bare.length < 4 ? undefined : BY_NAME.get(nearest)
  return guess === undefined
    ? { to: UNDECIDED, certainty: 'open', why: null }
    : { to: guess, certainty: 'guessed', why: 'by a name that is near' }
}

const AGE_IN = /\b(\d{1,3})\s*-?\s*d(?:ays?)?\b/i

/** The part of a joined heading that names the column, without its age and unit. */
function withoutJoint(heading: string): string {
  return (
    heading.split(' / ').filter((part) => !/^\d{1,3}\s*-?\s*d(?:ays?)?$/i.test(part.trim()))[0] ?? heading
  )
}

function bareName(heading: string): string {
  return heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[([][^)\]]*[)\]]/g, ' ')
    .replace(/\b\d{1,3}\s*-?\s*d(?:ays?)?\b/g, ' ')
    .replace(/_(?:kn|n|lbf|d|h|mpa|ohm|t)$/, '')
    .replace(/,\s*(?:kn|n|lbf|mpa|psi|ohm|t|%)\s*(?=$|\/)/g, ' ')
    .replace(/[^a-z0-9#]/g, '')
}

function proposeTable(sheet: Sheet, headings: readonly number[]): ProposedTable {
  const view = viewOf(sheet, { headings })
  const meanings = [...view.headings].map(([at, heading]) => ({ at, heading, ...meaningOf(heading) }))
  const { holds, why } = kindOf(meanings.map(({ to }) => to))
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
  if (field === undefined) return elsewhere(heading, to, holds)
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

/** "To" heads the end of production in one table and the consignee in another. */
function elsewhere(heading: string, to: string, holds: TableKind): ProposedColumn {
  return to === 'produced-to' && holds === 'shipments'
    ? { heading, column: { to: 'to' }, certainty: 'guessed', why: 'the consignee' }
    : {
        heading,
        column: { to: UNDECIDED },
        certainty: 'open',
        why: `"${to}" is no field of a table of ${holds}`,
      }
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
  const isOfKind = (unit: string) => !isFault(readPerhapsAbove(`1 ${unit}`, reads.kind))
  const stated = unitInHeading(written)
  if (stated !== undefined && isOfKind(stated)) return { column: { unit: stated }, why: null, open: false }
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
