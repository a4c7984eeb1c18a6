import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { dependencyDigests, wholeText, withParts } from '../../../src/edition/shape/dependencies.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { replacedLots } from '../../../src/edition/shape/replaced-lots.ts'
import { onceTraced, tracing } from '../../../src/edition/shape/trace.ts'
import { tracedEdition } from '../../../src/edition/shape/traced-edition.ts'
import { tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const SRC = resolve(import.meta.dirname, '../../../src')

const lots = [tinyLot('ash/1'), tinyLot('ash/2')]
const whole = tinyEdition([tinySource('ash')], lots)
const edition = tracedEdition(whole)
const read = (make: () => unknown) => tracing(make).trace

describe('tracedEdition', () => {
  it('notes members by name, rows by id, ids alone apart from rows, and parts that are given whole', () => {
    expect(read(() => [edition.asOf, edition.site.title])).toEqual(['asOf', 'site'])
    expect(read(() => [edition.lots.get('ash/1'), edition.criteria.has('none')])).toEqual([
      'lots/ash/1',
      'criteria?none',
    ])
    expect(read(() => [...edition.lots.keys()])).toEqual(['lots#'])
    expect(read(() => edition.lots.size)).toEqual(['lots#'])
    for (const all of [
      () => [...edition.lots],
      () => [...edition.lots.values()],
      () => [...edition.lots.entries()],
      () => edition.lots.forEach(() => {}),
    ])
      expect(read(all)).toEqual(['lots'])
    expect(read(() => [edition.lot('ash/1'), edition.source('ash'), edition.lotsOf('ash')])).toEqual([
      'lot ash/1',
      'source ash',
      'lotsOf/ash',
    ])
    expect(read(() => edition.laboratoryFindings('works'))).toEqual(['laboratory works'])
  })

  it('gives what the edition gives', () => {
    expect(Object.keys(edition).sort()).toEqual(
      [...new Set([...Object.keys(whole), 'shipped', 'statedAsOf'])].sort(),
    )
    expect([...edition.lots]).toEqual([...whole.lots])
    expect(edition.lot('ash/2')).toBe(whole.lot('ash/2'))
    expect(edition.asOf).toBe(whole.asOf)
  })

  it('notes of what is kept of a source the source alone, and the address, since it holds links', () => {
    const make = () => ({ sampled: edition.lot('ash/1').number })
    expect(read(() => edition.ofSource('ash', 'a part', make))).toEqual(['source ash', 'address'])
  })
})

describe('onceTraced', () => {
  it('notes its name for everybody who asks, and tells what was read for it, what it was made of too', () => {
    const inner = onceTraced('inner', () => edition.lot('ash/1'))
    const outer = onceTraced('outer', () => [inner(), edition.asOf])
    inner()
    for (const asked of [tracing(outer), tracing(outer)]) {
      expect(asked.trace).toEqual(['made inner', 'made outer'])
      expect([...(asked.parts.get('made outer') ?? [])]).toEqual(['made inner', 'asOf'])
      expect([...(asked.parts.get('made inner') ?? [])]).toEqual(['lot ash/1'])
    }
  })
})

describe('dependencyDigests', () => {
  const changed = (more: Partial<Edition>) => dependencyDigests({ ...whole, ...more })
  const earlier = dependencyDigests(whole)

  it('tell a changed row from the others, and from ids and order', () => {
    const row = whole.lots.get('ash/2')
    const rows = new Map(whole.lots).set('ash/2', { ...(row as NonNullable<typeof row>), tonnes: 1 })
    const now = changed({ lots: rows, lotsOf: () => [...rows.values()] })
    const same = ['lots/ash/1', 'lots/ash/2', 'lots#', 'lots', 'lotsOf/ash', 'asked replacing ash/1'].filter(
      (name) => now(name) === earlier(name),
    )
    expect(same).toEqual(['lots/ash/1', 'lots#', 'asked replacing ash/1'])
    const turned = changed({ lots: new Map([...whole.lots].reverse()) })
    expect([turned('lots#'), turned('lots')]).not.toContain(earlier('lots#'))
    expect(turned('lots')).not.toBe(earlier('lots'))
    expect(turned('lots/ash/1')).toBe(earlier('lots/ash/1'))
    expect(earlier('lots/ash/3')).not.toBe(earlier('lots/ash/1'))
  })

  it('tell whether there is a row, whatever it says', () => {
    const [now, then] = [dependencyDigests(whole), dependencyDigests(tinyEdition([], lots))]
    expect(now('sources?ash')).not.toBe(then('sources?ash'))
    expect(now('lots?ash/1')).toBe(then('lots?ash/1'))
  })

  it('tell the lots that a lot replaces', () => {
    const withdrawn = {
      ...(whole.lots.get('ash/1') as NonNullable<ReturnType<Edition['lots']['get']>>),
      replacedBy: 'ash/2',
    }
    const rows = new Map(whole.lots).set('ash/1', withdrawn)
    const now = { ...whole, lots: rows }
    expect(read(() => replacedLots(tracedEdition(now), 'ash/2'))).toEqual(['asked replacing ash/2'])
    expect(replacedLots(now, 'ash/2')).toEqual([withdrawn])
    expect(dependencyDigests(now)('asked replacing ash/2')).not.toBe(earlier('asked replacing ash/2'))
    expect(dependencyDigests(now)('asked replacing ash/1')).toBe(earlier('asked replacing ash/1'))
  })

  it('take a part of which nothing is told for another one, and what was made of it', () => {
    expect(earlier('lot ash/1')).toBeNull()
    const told = changed({ restsOn: (part) => part })
    const parts = new Map([
      ['made points', ['lot ash/1', 'made rows']],
      ['made rows', ['lots']],
    ])
    expect(withParts(earlier, parts)('made points')).toBeNull()
    expect(withParts(told, parts)('made points')).toMatch(/^sha256-/)
    expect(withParts(told, new Map())('made points')).toBeNull()
    const other = changed({ restsOn: (part) => part, lots: new Map() })
    expect(withParts(other, parts)('made points')).not.toBe(withParts(told, parts)('made points'))
  })
})

describe('wholeText', () => {
  it('tells apart what JSON would not, and refuses a function', () => {
    const texts = [
      new Map([['a', 1]]),
      new Map([['a', 2]]),
      {},
      [],
      Number.POSITIVE_INFINITY,
      null,
      -0,
      0,
    ].map(wholeText)
    expect(new Set(texts).size).toBe(8)
    expect(wholeText({ working: () => [1] })).not.toBe(wholeText({ working: () => [2] }))
    expect(() => wholeText({ make: () => 1 })).toThrow(/needs plain values/)
  })
})

/** Of the value that they are kept for, which whoever asks has read. */
const OF_THEIR_KEY = [
  'edition/shape/compared-lot.ts',
  'edition/shape/dependencies.ts',
  'edition/views/source-control-panel.ts',
  'edition/shape/while-used.ts',
]

it('is escaped by nothing: what a module keeps for several pages notes what it was made of', () => {
  const keeping = ['views', 'writers', 'tables', 'shape', 'printed']
    .flatMap((room) =>
      readdirSync(join(SRC, 'edition', room), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => `edition/${room}/${name}`),
    )
    .map((path) => [path, readFileSync(join(SRC, path), 'utf8')] as const)
    .filter(([, text]) =>
      /^(?:export )?(?:const|let) .*(?:new (?:Weak)?(?:Map|Set)(?:<.*>)?\(\)|once\()/m.test(text),
    )
  const silent = keeping.filter(([, text]) => !/onceTraced\(|asked\(/.test(text)).map(([path]) => path)
  expect(silent.filter((path) => !OF_THEIR_KEY.includes(path))).toEqual([])
  expect(keeping.length).toBeGreaterThan(4)
})
