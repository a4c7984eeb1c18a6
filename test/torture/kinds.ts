/** What the readers are tortured with, one case for each seed and number. */
import { corpora } from './corpus.ts'
import { spoiledDocumentFaults } from './spoiled-document.ts'
import { readSpoiled } from './read-spoiled.ts'
import { spoiledRecord } from './spoiled-record.ts'
import { wholeWayFaults } from './whole-way.ts'

/** Faults of a case; empty where all is well. */
export type RunCase = (seed: number, number: number) => readonly string[]

/** Kinds of torture that need neither another process nor another folder than a temporary one. */
export const READING_KINDS = ['readers', 'whole-way', 'documents'] as const
export type ReadingKind = (typeof READING_KINDS)[number]

/** Made once for each process: the records are read from the disk, then never again. */
export function caseRunner(kind: ReadingKind): RunCase {
  const of = corpora()
  switch (kind) {
    case 'readers':
      return (seed, number) => readSpoiled(spoiledRecord(of, seed, number), 'what it refers to').faults
    case 'whole-way':
      return (seed, number) => {
        const spoiled = spoiledRecord(of, seed, number)
        const { records, diagnostics, faults } = readSpoiled(spoiled, 'enough to judge')
        return records === undefined ? faults : [...faults, ...wholeWayFaults(records, diagnostics, spoiled)]
      }
    case 'documents':
      return spoiledDocumentFaults()
  }
}

/** The text of a case and what reading it tells, to look at. */
export function describeCase(kind: ReadingKind, seed: number, number: number): string {
  if (kind === 'documents') return `document ${number} of seed ${seed}\n`
  const spoiled = spoiledRecord(corpora(), seed, number)
  const { diagnostics } = readSpoiled(spoiled, 'enough to judge')
  const told = diagnostics.map(({ file, line, column, code, message, mend }) =>
    JSON.stringify({ file, line, column, code, message, mend }),
  )
  return [`${spoiled.record.path}: ${spoiled.ways.join(', ')}`, spoiled.text, ...told, ''].join('\n')
}
