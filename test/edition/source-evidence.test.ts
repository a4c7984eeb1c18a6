import type { WithTexts } from '../../src/core/measure/texts-of-times.ts'
import { readCriterion } from '../../src/core/criteria/read-criterion.ts'
import { describe, expect, it } from 'vitest'
import { judge } from '../../src/core/judging/verdict.ts'
import { unpackSource } from '../../src/core/evidence/source-evidence.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import type { Criterion } from '../../src/core/criteria/criterion.ts'
import { wordsOfVerdict } from '../../src/edition/shape/verdict-words.ts'
import { criterionData } from '../../src/edition/writers/criterion-data.ts'
import { sourceEvidenceData } from '../../src/edition/writers/lot-data.ts'
import { wordedVerdict } from '../../src/words/worded-verdict.ts'
import { loadRecords } from '../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })
/** Sets as a reader's browser has them. */
const sets = JSON.parse(JSON.stringify(criterionData(edition))) as {
  criteria: Record<string, WithTexts<Criterion>>
}

describe('the evidence file of a source', () => {
  it('gives every verdict of the demonstration content as the edition has it, after a way through JSON', () => {
    let judged = 0
    for (const id of edition.sources.keys()) {
      const own = edition.lotsOf(id).map((row) => edition.lot(row.id))
      const { evidenceOf, conditionTitle, lots } = unpackSource(
        JSON.parse(JSON.stringify(sourceEvidenceData(edition, id))),
      )
      expect(lots.map((lot) => lot.id)).toEqual(own.map((lot) => lot.id))
      own.forEach((lot, place) => {
        for (const verdict of lot.verdicts) {
          const read = readCriterion(sets.criteria[verdict.criterion] as WithTexts<Criterion>)
          const again = judge(read, evidenceOf(place))
          expect(again).toEqual(verdict)
          expect(wordedVerdict(again, read, conditionTitle)).toEqual(wordsOfVerdict(edition, verdict))
          judged += 1
        }
      })
    }
    expect(judged).toBeGreaterThan(600)
  })

  it('carries the reasons of results as data, which come back as they went', () => {
    let carried = 0
    for (const id of edition.sources.keys()) {
      const { lots } = unpackSource(JSON.parse(JSON.stringify(sourceEvidenceData(edition, id))))
      edition.lotsOf(id).forEach((row, place) => {
        const own = edition
          .lot(row.id)
          .results.filter(({ role }) => role === 'producer')
          .map(({ reasons }) => reasons)
        expect(lots[place]?.results.map(({ reasons }) => reasons)).toEqual(own)
        carried += own
          .flat()
          .filter(({ code }) => code === 'specimen-dropped' || code === 'control-fault').length
      })
    }
    expect(carried).toBeGreaterThan(0)
  })

  it('holds no lot and no word of the workings twice: it stays small beside the lots’ own files', () => {
    const bytes = [...edition.sources.keys()].map(
      (id) => JSON.stringify(sourceEvidenceData(edition, id)).length / edition.lotsOf(id).length,
    )
    expect(Math.max(...bytes)).toBeLessThan(4000)
  })
})
