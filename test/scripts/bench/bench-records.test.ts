import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../../src/commands/program.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { paths } from '../../../src/edition/shape/addresses.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { benchView } from '../../../src/edition/views/bench.ts'
import { dataFile } from '../../../src/edition/writers/outputs.ts'
import type { Records } from '../../../src/records/records.ts'
import { dayOfWork, siteRecords } from '../../../src/scripts/bench/bench-records.ts'
import { readBench } from '../../../src/scripts/bench/read-bench.ts'
import { benchSite } from './bench-site.ts'

describe('siteRecords', () => {
  it('reads the same conditions, controls and sets back from the site’s files', () => {
    const { records, edition, asOf } = benchSite()
    expect(asOf.text).toBe(edition.asOf.text)
    expect([...records.conditions.keys()]).toEqual([...edition.conditions.keys()])
    expect([...records.controls.keys()]).toEqual([...edition.controls.keys()])
    expect([...records.criteria.keys()]).toEqual([...edition.criteria.keys()])
    expect(records.controls.get('ML-2024-0703-AL')?.cast).toEqual(
      edition.controls.get('ML-2024-0703-AL')?.record.cast,
    )
  })
})

describe('sets that the program ships', () => {
  const { records, edition, asOf, source } = benchSite()
  const [used, id] = ['c618-12a', 'quellan-ash/QA-2023-001']
  const one: Edition = {
    ...edition,
    criteria: new Map([...edition.criteria].filter(([name]) => name === used)),
    conditions: new Map([...edition.conditions].filter(([name]) => name !== 'modified-50c')),
    shipped: { criteria: edition.criteria, conditions: edition.conditions },
  }
  const read = (path: string) => JSON.parse(String(dataFile(one, path) ?? 'null'))
  const own = siteRecords({
    bench: read(paths.benchData),
    conditions: read(paths.conditionData).conditions,
    controls: read(paths.controlData).controls,
    criteria: read(paths.criterionData).criteria,
  }).records

  it('judge a lot of a site with one set as that site would that has them', () => {
    const text = readFileSync(resolve(ROOT, 'content/lots', `${id}.yaml`), 'utf8')
    const verdict = (all: Records) => {
      const criterion = all.criteria.get('strength-or-resistivity')
      return readBench({ id, text, asOf, criterion }, all, source('quellan-ash')).judged?.verdict
    }
    expect(verdict(own)).toEqual(verdict(records))
    expect(verdict(own)?.outcome).toBe('meets')
  })
  it('are offered apart from the site’s own, each once, for the materials of its sources', () => {
    const { sets, shipped } = benchView(one)
    expect(sets.map((set) => set.id)).toEqual([used])
    expect(shipped.map((set) => set.id)).toContain('strength-or-resistivity')
    expect(shipped.map((set) => set.id)).not.toContain(used)
    const fume = new Map([...edition.sources].filter(([name]) => name === 'ferrowick-fume'))
    expect(benchView({ ...one, sources: fume }).shipped.map((set) => set.id)).not.toContain('c618-19')
  })
  it('are in no file where the site has all of them, or nobody hands them in', () => {
    expect(benchView({ ...edition, shipped: edition }).shipped).toEqual([])
    expect(String(dataFile(edition, paths.benchData))).not.toContain('"shipped"')
  })
})

describe('dayOfWork', () => {
  const { records } = benchSite()
  const { 'as-of': _stated, ...site } = records.site
  const asOf = readMoment('2026-04-10')

  it('is the day that the site states', () => {
    expect(dayOfWork({ records, asOf }, readMoment('2027-01-01'))).toBe('2026-04-10')
  })

  it('is today where the site states none, and never before its edition', () => {
    const open = { records: { ...records, site }, asOf }
    expect(dayOfWork(open, readMoment('2027-01-01'))).toBe('2027-01-01')
    expect(dayOfWork(open, readMoment('2026-01-01'))).toBe('2026-04-10')
  })
})
