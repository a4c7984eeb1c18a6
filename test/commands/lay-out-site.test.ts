/** What a new site is laid out as: every shipped set and kind of material, and what comes of its first lot. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
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
  return { records, diagnostics, errors: diagnostics.filter(({ severity }) => severity === 'error') }
}

function edition(folder: string) {
  return computeEdition(load(folder).records, { program: 'test', asOf: TODAY })
}

function textsOf(folder: string): [path: string, text: string][] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [relative(folder, path), readFileSync(path, 'utf8')])
}

const SETS: [MaterialKind, string][] = MATERIAL_KINDS.flatMap((material) =>
  setsFor(material).map(({ id }): [MaterialKind, string] => [material, id]),
)

/** Names that the demo's records hold: of producers, sources, laboratories, persons, agencies and the site. */
function demoNames(): string[] {
  const { records } = loadRecords(join(ROOT, 'content'))
  const names = [
    records.site.title,
    ...[...records.producers].flatMap(([id, { name, address, signatories = [], plants = {} }]) => [
      ...[id, name, ...address],
      ...signatories.map((person) => person.name),
      ...Object.values(plants).map((plant) => plant.name),
    ]),
    ...[...records.laboratories].flatMap(([id, { name, address }]) => [id, name, ...address]),
    ...[...records.sources].flatMap(([id, { name, approvals = [], listing = [] }]) => [
      ...[id, name],
      ...[...approvals, ...listing].map(({ by }) => by),
    ]),
    ...[...records.lots.values()].flatMap(({ samples, shipments = [] }) => [
      ...samples.flatMap(({ by }) => by ?? []),
      ...shipments.flatMap(({ to, project }) => [to ?? [], project ?? []].flat()),
    ]),
  ]
  return [...new Set(names)]
}

describe('a new site', () => {
  it('has a set for every kind of material', () => {
    expect(MATERIAL_KINDS.filter((material) => setsFor(material).length === 0)).toEqual([])
  })
  it('offers no set of an invented agency', () => {
    const offered = SETS.map(([, id]) => id)
    expect(offered).toContain('c618-23e1')
    for (const invented of ['varrow-roads', 'fell-county-works', 'high-fell-viaduct', 'resistivity-by-study'])
      expect(offered).not.toContain(invented)
  })
  it.each(SETS)('for %s under %s is read without an error and computed', async (material, governing) => {
    for (const [figures, units] of [
      ['finished', 'SI'],
      ['readings', 'US'],
    ] as const) {
      const { folder } = await newSite({ ...NAMED, material, governing, figures, units })
      const { errors, records, diagnostics } = load(folder)
      expect(errors).toEqual([])
      expect(diagnostics.filter(({ code }) => code !== 'value-blank' && code !== 'placeholder')).toEqual([])
      expect(records.criteria.has(governing)).toBe(true)
      expect(records.site.units).toBe(units)
      expect(edition(folder).lots.size).toBe(0)
    }
  })
  it('holds no name of the demo, whichever set governs', async () => {
    const names = demoNames()
    expect(names.length).toBeGreaterThan(60)
    const found = new Set<string>()
    for (const [material, governing] of SETS) {
      const { folder } = await newSite({ material, governing })
      for (const [path, text] of textsOf(folder))
        for (const name of names) if (text.includes(name)) found.add(`${path}: ${name}`)
    }
    expect([...found]).toEqual([])
  })
  it('names in the first line of every record a schema that lies in it', async () => {
    const { folder } = await newSite({ figures: 'readings' })
    const records = textsOf(folder).filter(([path]) => path.endsWith('.yaml'))
    expect(records.length).toBeGreaterThan(6)
    for (const [path, text] of records) {
      const [, schema] = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text) ?? []
      expect(existsSync(join(folder, dirname(path), schema ?? 'none'))).toBe(true)
      expect(schema).toMatch(/^(\.\.\/)*\.schemas\/\w+\.json$/)
    }
    const used = textsOf(join(folder, '.schemas')).flatMap(([, text]) => [
      ...text.matchAll(/"\$ref": "(\w+\.json)/g),
    ])
    for (const [, name = ''] of used) expect(existsSync(join(folder, '.schemas', name))).toBe(true)
  })
  it('says by name what is still to be replaced, and nothing of the kind where all was told', async () => {
    const codes = (folder: string) => load(folder).diagnostics.map(({ code, file }) => `${code} ${file}`)
    expect(codes((await newSite()).folder)).toEqual([
      'placeholder laboratories/laboratory.yaml',
      'value-blank lots/coal-fly-ash/CFA-2026-001.yaml',
      'placeholder producers/producer.yaml',
    ])
    expect(codes((await newSite(NAMED)).folder)).toEqual(['value-blank lots/coal-fly-ash/CFA-2026-001.yaml'])
  })
})

describe('the first lot of a new site', () => {
  it('meets all that can be judged once its figures are written', async () => {
    const { folder, lot } = await newSite(NAMED)
    fillIn(folder, lot, ['84 %', '92 %'])
    expect(load(folder).errors).toEqual([])
    const [verdict] = edition(folder).lot(lot).verdicts
    const outcomes = Object.fromEntries((verdict?.clauses ?? []).map(({ id, outcome }) => [id, outcome]))
    expect(outcomes).toMatchObject({
      'oxide-sum': 'meets',
      'loss-on-ignition': 'meets',
      activity: 'meets',
      'water-requirement': 'meets',
      soundness: 'meets',
      'density-uniformity': 'insufficient-history',
    })
    expect(Object.values(outcomes).filter((outcome) => outcome === 'not-reported')).toEqual([])
  })
  it.each([
    ['85.0 %', 'meets'],
    ['69.4 %', 'does-not-meet'],
  ])('is judged on its index alone where that is all that is asked: %s %s', async (index, outcome) => {
    const { folder, lot } = await newSite({ ...NAMED, governing: 'modified-strength' })
    fillIn(folder, lot, [index])
    expect(edition(folder).lot(lot).verdicts[0]?.outcome).toBe(outcome)
  })
  it('leaves out what is blank between figures that are written', async () => {
    const { folder, lot } = await newSite(NAMED)
    fillIn(folder, lot, ['', '92 %'])
    const path = join(folder, 'lots', `${lot}.yaml`)
    writeFileSync(path, readFileSync(path, 'utf8').replace('tested: 2026-11-24', 'tested:'))
    expect(load(folder).errors).toEqual([])
    const analyses = load(folder).records.lots.get(lot)?.analyses ?? []
    expect(analyses.map(({ tested }) => tested.text)).toEqual(['2026-11-17', '2026-11-25'])
  })
  it('is issued once nothing is left to be replaced', async () => {
    const order = { by: 'A. Mason', reason: 'first results', date: TODAY }
    const unnamed = await newSite()
    fillIn(unnamed.folder, unnamed.lot, ['84 %', '92 %'])
    expect(() => planIssue(load(unnamed.folder).records, { ...order, lots: [unnamed.lot] })).toThrow(
      'cannot be issued while producers/producer.yaml still says <your company>.',
    )
    const { folder, lot } = await newSite(NAMED)
    fillIn(folder, lot, ['84 %', '92 %'])
    for (const { request, revision } of planIssue(load(folder).records, { ...order, lots: [lot] }))
      writeRevision(folder, request.lot, revision)
    expect(load(folder).errors).toEqual([])
    const issued = textsOf(join(folder, 'issued')).map(([, text]) => text)
    expect(issued.some((text) => text.includes('Hill Ash'))).toBe(true)
    expect(issued.filter((text) => text.includes('<your'))).toEqual([])
  })
  it('is not issued while its specification does not say who set its limit', async () => {
    const { folder, lot } = await newSite({ ...NAMED, governing: 'modified-strength' })
    fillIn(folder, lot, ['85 %'])
    const order = { by: 'A. Mason', reason: 'first results', date: TODAY, lots: [lot] }
    expect(() => planIssue(load(folder).records, order)).toThrow(
      'Nothing can be issued while criteria/modified-strength.yaml still says <your organisation>.',
    )
  })
})
