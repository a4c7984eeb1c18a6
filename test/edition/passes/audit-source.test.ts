import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { loadRecords } from '../../../src/records/load.ts'
import type { Lot } from '../../../src/records/schema/loaded-records.ts'

const { records } = loadRecords(resolve(import.meta.dirname, '../../../content'))
const SOURCE = 'skarnmere-ash'
const OLD = `${SOURCE}/SA-2024-012`

/** Gaps in the numbers of the source once a lot bears another name. */
function gapsWithRenamed(more: Partial<Lot>): string[] {
  const lots = [...records.lots].map(([id, lot]) =>
    id === OLD ? ([`${SOURCE}/SA-2024-012-AGAIN`, { ...lot, ...more }] as const) : ([id, lot] as const),
  )
  const edition = computeEdition({ ...records, lots: new Map(lots) }, { program: 'test' })
  const found = edition.source(SOURCE).findings.map(({ id }) => id)
  return found.filter((id) => id.startsWith('number-gap/'))
}

it('the former name of a lot is no gap in the numbers of its source', () => {
  expect(records.lots.has(OLD)).toBe(true)
  // The demonstration leaves out SA-2024-009.
  expect(gapsWithRenamed({ formerly: [OLD] })).toEqual([`number-gap/${SOURCE}/SA-2024-009`])
  expect(gapsWithRenamed({})).toEqual([
    `number-gap/${SOURCE}/SA-2024-009`,
    `number-gap/${SOURCE}/SA-2024-012`,
  ])
})
