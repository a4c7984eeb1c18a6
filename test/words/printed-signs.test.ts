/** Everything that is said about the demo: no sentence has a date or a unit as a record writes it. */
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { loadRecords } from '../../src/records/load.ts'
import { clauseSentence } from '../../src/words/clause-sentences.ts'
import { workingLines } from '../../src/words/working-lines.ts'

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })

/** A date that is no part of an id, as "control BG-2026-10-05" is. */
const PLAIN_DATE = /(?<![\w-])\d{4}-\d{2}-\d{2}(?!-)/
const PLAIN_UNIT = /\bk?ohm\b|\bdeg ?[CF]\b|(?<![a-z])(?:mm|cm|m|in)[23]\b/

/** Members of the check report that are said, not stored. */
const SAID = [
  'reason',
  'reasons',
  'release',
  'doubt',
  'basis',
  'was',
  'sentence',
  'evidence',
  'note',
  'title',
]

function* saidIn(data: unknown): Generator<string> {
  if (typeof data !== 'object' || data === null) return
  for (const [member, value] of Object.entries(data)) {
    if (member === 'reasonCodes') continue
    if (SAID.includes(member)) yield* [value].flat().filter((text) => typeof text === 'string')
    yield* saidIn(value)
  }
}

function unprinted(sentences: readonly string[]): string[] {
  return sentences.filter((text) => PLAIN_DATE.test(text) || PLAIN_UNIT.test(text))
}

describe('sentences about the demo', () => {
  it('of its check report print dates and units', () => {
    const said = [...saidIn(JSON.parse([...checkReport(edition, [])].join('')))]
    expect(said).toContain('due 22\u00a0April 2026')
    expect(said.length).toBeGreaterThan(5000)
    expect(unprinted(said)).toEqual([])
  })
  it('of its criteria print units, where nobody wrote them by hand', () => {
    const said = [...records.criteria.values()].flatMap((set) =>
      set.clauses.map((clause) =>
        clauseSentence({ ...clause, basis: undefined, setBy: undefined }, set, (id) => id),
      ),
    )
    expect(said.some((text) => text.includes('after rounding to the nearest 0.1 m²/g'))).toBe(true)
    expect(unprinted(said)).toEqual([])
  })
  it('of its workings print units', () => {
    const said = [...edition.lots.keys()].flatMap((id) =>
      edition
        .lot(id)
        .results.flatMap((result) =>
          workingLines(result.working()).flatMap(({ label, expression, source = '' }) => [
            label,
            expression,
            source,
          ]),
        ),
    )
    expect(said.length).toBeGreaterThan(5000)
    expect(unprinted(said)).toEqual([])
  })
})
