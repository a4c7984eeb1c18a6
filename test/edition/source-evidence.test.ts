import { describe, expect, it } from 'vitest'
import { judge } from '../../src/core/judging/verdict.ts'
import { unpackSource } from '../../src/core/evidence/source-evidence.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { sourceEvidenceData } from '../../src/edition/writers/lot-data.ts'
import { loadRecords } from '../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })

describe('the evidence file of a source', () => {
  it('gives every verdict of the demonstration content as the edition has it, after a way through JSON', () => {
    let judged = 0
    for (const id of edition.sources.keys()) {
      const own = edition.lotsOf(id).map((row) => edition.lot(row.id))
      const { evidenceOf, lots } = unpackSource(JSON.parse(JSON.stringify(sourceEvidenceData(edition, id))))
      expect(lots.map((lot) => lot.id)).toEqual(own.map((lot) => lot.id))
      own.forEach((lot, place) => {
        for (const verdict of lot.verdicts) {
          const criterion = edition.criteria.get(verdict.criterion)
          if (criterion === undefined) throw new Error(`no set ${verdict.criterion}`)
          expect(judge(JSON.parse(JSON.stringify(criterion)), evidenceOf(place))).toEqual(verdict)
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
