/** The tables of every lot of the demo, held against the results that they are made from. */
import { beforeAll, describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { certificateFacts } from '../../../src/edition/certificate/certificate-facts.ts'
import { judgeLot } from '../../../src/edition/passes/judge-lot.ts'
import { sourceStates } from '../../../src/edition/passes/source-state.ts'
import { resultTables } from '../../../src/edition/printed/result-rows.ts'
import type { CertificateFacts } from '../../../src/edition/shape/certificate-facts.ts'
import { loadRecords } from '../../../src/records/load.ts'

const AS_OF = readMoment('2026-04-10')
let facts: CertificateFacts[] = []

beforeAll(() => {
  const { records } = loadRecords('content')
  const stating = { records, issue: null, withholding: new Set<never>(), isIssued: () => true }
  facts = [...sourceStates(records, AS_OF).values()].flatMap((state) =>
    state.lots.map((_, place) => certificateFacts(judgeLot(records, state, place, AS_OF), stating)),
  )
})

describe('resultTables', () => {
  it('shows every result of a lot once, judged or not', () => {
    expect(facts.length).toBeGreaterThan(150)
    for (const own of facts) {
      const tables = resultTables(own)
      const shown = tables.flatMap((table) => [
        ...table.rows.filter((row) => row.kind === 'value').flatMap((row) => row.result ?? []),
        ...[...table.plain, ...table.others].flatMap((line) => line.results),
      ])
      const inDeviations = tables.flatMap((table) =>
        table.rows.filter((row) => row.kind === 'deviation').flatMap((row) => row.result ?? []),
      )
      expect(new Set([...shown, ...inDeviations]), own.certificate).toEqual(new Set(own.results))
      expect(shown.length, own.certificate).toBe(new Set(shown).size)
    }
  })
  it('sets a uniformity clause under its property', () => {
    for (const own of facts) {
      const rows = resultTables(own).flatMap((table) => table.rows)
      const place = rows.findIndex((row) => row.property === 'residue-45um' && row.kind === 'deviation')
      if (0 <= place)
        expect(rows[place - 1], own.certificate).toMatchObject({ property: 'residue-45um', kind: 'value' })
    }
  })
})
