import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { findingsView } from '../../../src/edition/views/findings.ts'
import { finding, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash', { findings: [finding('ash')] })],
  [
    tinyLot('ash/1', { findings: [finding('ash/1'), finding('ash/1', 'blocks')] }),
    tinyLot('ash/2', { sampled: readMoment('2026-03-06'), findings: [finding('ash/2')] }),
  ],
)

describe('findingsView', () => {
  it('groups by severity, the gravest first, sources before lots and the newest lot before older ones', () => {
    const { published, groups } = findingsView(edition)
    expect(published).toBe(true)
    expect(groups.map(({ heading, findings }) => [heading, findings.map(({ about }) => about)])).toEqual([
      ['Blocks', ['ash/1']],
      ['Warnings', ['ash', 'ash/2', 'ash/1']],
    ])
  })

  it('leads to the certificate of a lot, and to none from a finding about a source', () => {
    const [, warnings] = findingsView(edition).groups
    expect(warnings?.findings.map(({ lot }) => lot)).toEqual([undefined, 'ash/2', 'ash/1'])
  })

  it('says so where the public may not see findings', () => {
    expect(findingsView({ ...edition, audience: 'public' }).published).toBe(false)
  })
})
