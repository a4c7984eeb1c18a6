/** The score of each sub-room of core, from Stryker's report. */

/** Of the report what is read here; https://github.com/stryker-mutator/mutation-testing-elements */
export interface MutationReport {
  readonly files: Readonly<
    Record<string, { readonly source: string; readonly mutants: readonly ReportedMutant[] }>
  >
}

interface ReportedMutant {
  readonly mutatorName: string
  readonly replacement?: string
  readonly status:
    | 'Killed'
    | 'Timeout'
    | 'Survived'
    | 'NoCoverage'
    | 'Ignored'
    | 'CompileError'
    | 'RuntimeError'
    | 'Pending'
  /** Lines and columns from 1. */
  readonly location: { readonly start: Position; readonly end: Position }
}

interface Position {
  readonly line: number
  readonly column: number
}

/** A change that no test can notice, since the program does the same with it. */
export interface Equivalent {
  readonly file: string
  /** The text that is changed, and what is put in its place, both on one line. */
  readonly original: string
  readonly replacement: string
  readonly reason: string
}

export interface Score {
  readonly room: string
  readonly killed: number
  readonly survived: number
  readonly noCoverage: number
  readonly equivalent: number
}

/** A mutant with its texts on one line. */
interface Mutant {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly mutator: string
  readonly original: string
  readonly replacement: string
  readonly fate: 'killed' | 'survived' | 'noCoverage'
}

/** The part of a report that is on these sub-rooms; all of it where none is named. */
export function ofRooms({ files }: MutationReport, rooms: readonly string[]): MutationReport {
  const asked = Object.entries(files).filter(([file]) => rooms.length === 0 || rooms.includes(roomOf(file)))
  return { files: Object.fromEntries(asked) }
}

function roomOf(file: string): string {
  return file.split('/')[2] ?? ''
}

/** Sub-rooms in order of their names. Mutants that were never run, those of load time, are left out. */
export function scores(report: MutationReport, equivalents: readonly Equivalent[]): Score[] {
  const byRoom = Map.groupBy(mutantsOf(report), ({ file }) => roomOf(file))
  return [...byRoom]
    .map(([room, mutants]) => {
      const judged = mutants.filter((mutant) => !isEquivalent(mutant, equivalents))
      const count = (fate: Mutant['fate']) => judged.filter((mutant) => mutant.fate === fate).length
      return {
        room,
        killed: count('killed'),
        survived: count('survived'),
        noCoverage: count('noCoverage'),
        equivalent: mutants.length - judged.length,
      }
    })
    .sort((a, b) => (a.room < b.room ? -1 : 1))
}

/** One line a sub-room, and one for all. */
export function scoreTable(all: readonly Score[]): string {
  const total = all.reduce(
    (sum, score) => ({
      room: 'all',
      killed: sum.killed + score.killed,
      survived: sum.survived + score.survived,
      noCoverage: sum.noCoverage + score.noCoverage,
      equivalent: sum.equivalent + score.equivalent,
    }),
    { room: 'all', killed: 0, survived: 0, noCoverage: 0, equivalent: 0 },
  )
  const head = ['sub-room', 'mutants', 'killed', 'survived', 'no coverage', 'equivalent', 'score']
  const rows = [...all, total].map((score) => {
    const { killed, survived, noCoverage, equivalent } = score
    const judged = killed + survived + noCoverage
    const percent = judged === 0 ? '' : `${((100 * killed) / judged).toFixed(1)} %`
    return [score.room, ...[judged, killed, survived, noCoverage, equivalent].map(String), percent]
  })
  return [head, ...rows].map((row) => row.map(padded).join('  ')).join('\n')
}

function padded(text: string, column: number): string {
  return column === 0 ? text.padEnd(12) : text.padStart(11)
}

/** "src/core/room/file.ts:12:5 Mutator: original → replacement", in order of file and line. */
export function survivorLines(report: MutationReport, equivalents: readonly Equivalent[]): string[] {
  return mutantsOf(report)
    .filter((mutant) => mutant.fate !== 'killed' && !isEquivalent(mutant, equivalents))
    .sort((a, b) => (a.file === b.file ? a.line - b.line || a.column - b.column : a.file < b.file ? -1 : 1))
    .map(({ file, line, column, mutator, original, replacement, fate }) => {
      const how = fate === 'noCoverage' ? ' (no test runs it)' : ''
      return `${file}:${line}:${column} ${mutator}${how}: ${original} → ${replacement}`
    })
}

/** Entries that no mutant of the files in the report is: the code they speak of has changed. */
export function idleEquivalents(report: MutationReport, equivalents: readonly Equivalent[]): Equivalent[] {
  const mutants = mutantsOf(report)
  return equivalents.filter(
    (entry) =>
      report.files[entry.file] !== undefined && !mutants.some((mutant) => isEquivalent(mutant, [entry])),
  )
}

function isEquivalent(mutant: Mutant, equivalents: readonly Equivalent[]): boolean {
  return (
    mutant.fate !== 'killed' &&
    equivalents.some(
      ({ file, original, replacement }) =>
        mutant.file === file && mutant.original === original && mutant.replacement === replacement,
    )
  )
}

const FATES: Readonly<Partial<Record<ReportedMutant['status'], Mutant['fate']>>> = {
  Killed: 'killed',
  Timeout: 'killed',
  Survived: 'survived',
  NoCoverage: 'noCoverage',
}

function mutantsOf({ files }: MutationReport): Mutant[] {
  return Object.entries(files).flatMap(([file, { source, mutants }]) =>
    mutants.flatMap((mutant) => {
      const fate = FATES[mutant.status]
      const { location, mutatorName, replacement = '' } = mutant
      if (fate === undefined) return []
      const original = oneLine(textAt(source, location))
      return [
        { file, ...location.start, mutator: mutatorName, original, replacement: oneLine(replacement), fate },
      ]
    }),
  )
}

function textAt(source: string, { start, end }: ReportedMutant['location']): string {
  const lines = source.split('\n').slice(start.line - 1, end.line)
  const last = lines.length - 1
  return lines
    .map((line, index) =>
      line.slice(index === 0 ? start.column - 1 : 0, index === last ? end.column - 1 : undefined),
    )
    .join('\n')
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim()
}
