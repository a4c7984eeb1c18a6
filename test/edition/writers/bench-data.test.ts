import { describe, expect, it } from 'vitest'
import { benchData } from '../../../src/edition/writers/bench-data.ts'
import { benchSite } from '../../scripts/bench/bench-site.ts'

interface BenchData {
  readonly site: object
  readonly laboratories: Readonly<Record<string, object>>
  readonly sources: Readonly<Record<string, object>>
}

const keysOf = (records: Readonly<Record<string, object>>) =>
  new Set(Object.values(records).flatMap((record) => Object.keys(record)))

describe('benchData', () => {
  const { edition } = benchSite()
  const data = JSON.parse(JSON.stringify(benchData(edition))) as BenchData

  it('says of the site, its laboratories and sources what reading and judging ask for, and nothing else', () => {
    expect(new Set(Object.keys(data.site))).toEqual(new Set(['title', 'units', 'criteria', 'grace', 'as-of']))
    expect(keysOf(data.laboratories)).toEqual(new Set(['name', 'methods', 'moulds']))
    expect([...keysOf(data.sources)].sort()).toEqual(
      ['class', 'class-under', 'criteria', 'kind', 'lot-number-pattern', 'name', 'producer'].filter((key) =>
        keysOf(data.sources).has(key),
      ),
    )
  })

  it('names every source and laboratory of the edition, and no lot', () => {
    expect(Object.keys(data.sources)).toEqual([...edition.sources.keys()])
    expect(Object.keys(data.laboratories)).toEqual([...edition.laboratories.keys()])
    const text = JSON.stringify(data)
    expect([...edition.lots.values()].filter(({ number }) => text.includes(`"${number}"`))).toEqual([])
  })
})
