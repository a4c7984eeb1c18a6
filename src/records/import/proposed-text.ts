/** A proposed map as the text of a YAML file, with what is sure, guessed and open said beside each column. */
import { flowEntry, flowValue, type Plain } from '../edit/write-yaml.ts'
import type { Certainty } from './heading-meaning.ts'
import { UNDECIDED } from './import-map.ts'
import type { ProposedColumn, ProposedTable } from './propose-map.ts'

export interface ProposalContext {
  readonly file: string
  /** The only source and laboratory on record, where there is one alone. */
  readonly source: string | null
  readonly laboratory: string | null
  /** The only condition that is a standard's. */
  readonly condition: string | null
  /** The file is text in an older encoding. */
  readonly encoding: 'windows-1252' | null
}

const WORDS: Readonly<Record<Certainty, string>> = { sure: 'sure', guessed: 'guessed', open: 'to decide' }

export function proposedText(tables: readonly ProposedTable[], context: ProposalContext): string {
  const lines = [
    ...(context.encoding === null
      ? []
      : [`encoding: ${context.encoding}   # guessed: the file is not UTF-8`]),
    'tables:',
    ...tables.flatMap((table) => tableLines(table, context)),
  ]
  const counts = Object.values(WORDS).map(
    (word) => `${lines.filter((line) => saysOf(line, word)).length} ${word}`,
  )
  return [
    `# A map of ${context.file}, proposed from its headings: ${counts.join(', ')}.`,
    '# Correct it once and use it again for every file of this form. "undecided" must be decided before the import.',
    ...lines,
    '',
  ].join('\n')
}

/** Lines of a proposed map that somebody has to decide. */
export function linesToDecide(text: string): number {
  return text.split('\n').filter((line) => saysOf(line, WORDS.open)).length
}

/** Whether the comment behind a line says how sure it is in this word. */
function saysOf(line: string, word: string): boolean {
  return line.includes(`   # ${word}`)
}

function tableLines(table: ProposedTable, context: ProposalContext): string[] {
  const { holds, why, sheet, headings, dates, comma, columns, missing } = table
  const [only] = headings
  return [
    `  - holds: ${holds}   # guessed: ${why}`,
    ...(sheet === null ? [] : [`    ${flowEntry('sheet', sheet)}`]),
    `    headings: ${headings.length === 1 ? only : flowValue([...headings])}`,
    ...(dates === 'open'
      ? [
          '    # Write dates: day-month-year or dates: month-day-year; the dates of the file do not show which.',
        ]
      : dates === null
        ? []
        : [`    dates: ${dates}   # sure: a number beyond 12 shows it`]),
    ...(comma ? ['    numbers: { decimal: comma }   # guessed: it might separate thousands'] : []),
    ...(missing.length === 0 ? [] : ['    every:', ...missing.map((name) => constantLine(name, context))]),
    '    columns:',
    ...columns.map(columnLine),
  ]
}

/** Names of fields and what to write for them, where nothing on record says it. */
const ASKED: Readonly<Record<string, string>> = {
  source: 'id of the source',
  laboratory: 'id of the laboratory',
  lot: 'no column names the lot; write its id here, or name its column',
  condition: 'id of the condition',
  control: 'id of the control batch',
  cast: 'when the mortar was cast, such as 2026-03-11T09:20',
  tested: 'day of the test; for readings by age, cast + age counts it from casting',
  cement: 'lot of the cement',
  produced: 'day of production',
  quantity: 'quantity of the lot, such as 900 t',
  bill: 'number of the bill of lading',
  date: 'day of the shipment',
  mass: 'net mass, such as 25 t',
  age: 'age of the readings, such as 28 d',
}

function constantLine(name: string, context: ProposalContext): string {
  const known: Readonly<Record<string, string | null>> = {
    source: context.source,
    laboratory: context.laboratory,
    condition: context.condition,
    sample: 'C',
    'sample-kind': 'composite',
  }
  const value = known[name] ?? null
  if (value === null)
    return `      ${name}: ${UNDECIDED}   # to decide: ${ASKED[name] ?? 'no column gives it'}`
  const why = ['sample', 'sample-kind'].includes(name)
    ? 'one composite sample a lot'
    : 'the only one on record'
  return `      ${flowEntry(name, value)}   # guessed: ${why}`
}

function columnLine({ heading, column, certainty, why }: ProposedColumn): string {
  const { to, ...more } = column
  const value: Plain = Object.keys(more).length === 0 ? to : ({ to, ...more } as unknown as Plain)
  const comment = why === null ? WORDS[certainty] : `${WORDS[certainty]}: ${why}`
  return `      ${flowEntry(heading, value)}   # ${comment.replaceAll(/\s+/g, ' ')}`
}
