import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/result/result.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { workingView } from '../../../src/edition/views/working.ts'
import { loadRecords } from '../../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'pozzolans 9' })
const lot = edition.lot('quellan-ash/QA-2024-003')

describe('workingView', () => {
  const view = workingView(edition, lot)

  it('gives indices first, and no working to what an index’s own working holds already', () => {
    const names = view?.results.map(({ name }) => name) ?? []
    expect(names[0]).toMatch(/^Strength activity index, .+, 7 d$/)
    expect(names.filter((name) => /^(Compressive strength|Bulk resistivity)/.test(name))).toEqual([])
    expect(names.slice(-1)[0]).not.toContain('index')
  })
  it('prints each step with its value, then what every set makes of the result', () => {
    const [first] = view?.results ?? []
    expect(first?.value).toBe('97.1\u00a0%')
    // Loads of the record over 4 square inches: (16430 + 16370 + 16820) / 3 / 4 = 4135 psi, that is 28.51 MPa;
    // the mould's sides make 29.43 MPa of them (test/published/ holds the geometry).
    expect(first?.lines.some(({ value }) => value === '29.43\u00a0MPa')).toBe(true)
    expect(first?.lines.at(-1)).toMatchObject({ outcome: 'meets', value: '' })
    expect(first?.lines.filter(({ outcome }) => outcome !== null).map(({ label }) => label)).toContain(
      'ASTM C618, edition 12a',
    )
  })
  it('names the program that computed it', () => expect(view?.program).toBe('pozzolans 9'))
  it('is null without a result of the producer', () => {
    const other = lot.results.map((result): Result => ({ ...result, role: 'verification' }))
    expect(workingView(edition, { results: other, verdicts: [] })).toBeNull()
    expect(workingView(edition, { results: [], verdicts: [] })).toBeNull()
  })
})
