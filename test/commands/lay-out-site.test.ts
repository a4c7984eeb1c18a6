/** What a new site is laid out as: every shipped set and kind of material, and what comes of its first lot. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { setsFor } from '../../src/commands/lay-out-site.ts'
import { planIssue } from '../../src/commands/plan-issue.ts'
import { writeRevision } from '../../src/commands/write-revision.ts'
import type { MaterialKind } from '../../src/core/measure/material-kind.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { loadRecords } from '../../src/records/load.ts'
import { MATERIAL_KINDS } from '../../src/words/material-kinds.ts'
import { fillIn, NAMED, newSite, TODAY } from './new-site-folder.ts'

const ROOT = resolve(import.meta.dirname, '../..')

function load(folder: string) {
  const { records, diagnostics } = loadRecords(folder, TODAY)
  const errors = diagnostics.filter(({ severity }) => severity === 'error')
  return { records, diagnostics, errors }
}

function edition(folder: string) {
  return computeEdition(load(folder).records, { program: 'test', asOf: TODAY })
}

const SETS: [MaterialKind, string][] = MATERIAL_KINDS.flatMap((material) =>
  setsFor(material).map(({ id }): [MaterialKind, string] => [material, id]),
)

describe('a new site', () => {
  it('has a set for every kind of material', () => {
    expect(MATERIAL_KINDS.filter((material) => setsFor(material).length === 0)).toEqual([])
  })
  it.each(SETS)('for %s under %s is read without an error and computed, finished or with readings, SI or US', async (material, governing) => {
    for (const [figures, units] of [
      ['finished', 'SI'],
      ['readings', 'US'],
    ] as const) {
      const { folder } = await newSite({ material, governing, figures, units })
      const { errors, records } = load(folder)
      expect(errors).toEqual([])
      expect(records.criteria.has(governing)).toBe(true)
      expect(edition(folder).lots.size).toBe(0)
    }
  })
})

it('x', async () => {
  for (const [material, governing] of SETS) {
    const { folder, lot } = await newSite({ ...NAMED, material, governing })
    fillIn(folder, lot, ['84 %', '92 %'])
    const { errors } = load(folder)
    const e = edition(folder)
    console.log(material, governing, errors.map((x) => x.message), e.lots.size && e.lot(lot).verdicts.map((v) => v.verdict.outcome))
  }
})
