import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { Memory } from '../../../src/edition/passes/memory.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { ReadBefore } from '../../../src/records/read-before.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { lotText, SHARED } from '../../front-door/front-door.ts'
import { AS_OF, type Content, content, cutAt, files, questionDay, written } from './generated-content.ts'

/** Writes only what differs, as somebody who saves some records does. */
function rewrite(folder: string, before: Content, after: Content): void {
  const next = new Map(files(after, AS_OF).map(([path, record]) => [path, JSON.stringify(record)]))
  for (const [path] of files(before, AS_OF)) if (!next.has(path)) rmSync(join(folder, path))
  for (const [path, text] of next) {
    const full = join(folder, path)
    mkdirSync(dirname(full), { recursive: true })
    if (!existsSync(full) || readFileSync(full, 'utf8') !== text) writeFileSync(full, text)
  }
}

/** Heavier by a ton, one lot alone. */
function heavier(whole: Content, pick: number): Content {
  const ids = Object.keys(whole.lots)
  const id = ids[pick % Math.max(1, ids.length)] ?? ''
  const lot = whole.lots[id]
  return lot === undefined
    ? whole
    : { ...whole, lots: { ...whole.lots, [id]: { ...lot, quantity: '401 t' } } }
}

it('a Memory changes nothing of what is computed, whatever was saved since', () => {
  let taken = 0
  fc.assert(
    fc.property(content, questionDay, questionDay, fc.nat(), (whole, first, second, pick) => {
      const steps = [cutAt(whole, first), whole, heavier(whole, pick), cutAt(whole, second), whole]
      const [start = whole] = steps
      const folder = written(start, AS_OF)
      const [before, memory] = [new ReadBefore(), new Memory()]
      const entries = memory.entries.bind(memory)
      memory.entries = (state, sharing, make) => {
        let made = 0
        const all = entries(state, sharing, (place) => {
          made += 1
          return make(place)
        })
        taken += all.length - made
        return all
      }
      try {
        let last = start
        for (const step of steps) {
          rewrite(folder, last, step)
          last = step
          const kept = loadRecords(folder, undefined, { before })
          const anew = loadRecords(folder)
          expect(kept.diagnostics).toEqual(anew.diagnostics)
          const report = (loaded: typeof kept, own?: Memory) =>
            [
              ...checkReport(
                computeEdition(loaded.records, { program: 'test', asOf: AS_OF, ...(own && { memory: own }) }),
                loaded.diagnostics,
              ),
            ].join('')
          expect(report(kept, memory)).toBe(report(anew))
        }
      } finally {
        rmSync(folder, { recursive: true })
      }
    }),
    { numRuns: 12, seed: 14 },
  )
  // The property says nothing of a memory that takes over nothing.
  expect(taken).toBeGreaterThan(40)
}, 240_000)

it('a Memory forgets what it said of a source when the number of a lot at fault changes', () => {
  const folder = mkdtempSync(join(tmpdir(), 'memory-'))
  const lots = ['T-2026-001', 'T-2026-003'].map((id): [string, string] => [
    `lots/tuff/${id}.yaml`,
    lotText({}, 0),
  ])
  const source = 'name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\nlot-number-pattern: T-YYYY-###\n'
  for (const [path, text] of [...SHARED, ...lots, ['sources/tuff.yaml', source] as const]) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const memory = new Memory()
  const gapsBeside = (faulty: string) => {
    writeFileSync(join(folder, 'lots/tuff/second.yaml'), `number: ${faulty}\nquantity: [\n`)
    const { findings } = computeEdition(loadRecords(folder).records, { program: 'test', memory }).source(
      'tuff',
    )
    return findings.filter(({ reason }) => reason.code === 'number-gap').map(({ id }) => id)
  }
  expect(gapsBeside('T-2026-002')).toEqual([])
  expect(gapsBeside('T-2026-020')).toEqual(['number-gap/tuff/T-2026-002'])
  rmSync(folder, { recursive: true })
})
