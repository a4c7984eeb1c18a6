import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { Memory } from '../../../src/edition/passes/memory.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { ReadBefore } from '../../../src/records/files.ts'
import { loadRecords } from '../../../src/records/load.ts'
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
