/** An edition that lets sources go says the same as one that holds all, and computes nothing again that is asked in time. */
import { rmSync } from 'node:fs'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { computeEdition, type EditionOptions } from '../../src/edition/compute.ts'
import { NO_MEMORY, type Remembering } from '../../src/edition/passes/memory.ts'
import { checkReport, reportedSource } from '../../src/edition/writers/check-report.ts'
import { loadRecords, type Records } from '../../src/records/load.ts'
import { AS_OF, content, written } from './passes/generated-content.ts'

/** Counts how often the results of a lot are computed, and the whole of it. */
function counting() {
  const [results, wholes] = [new Map<string, number>(), new Map<string, number>()]
  const add = (counts: Map<string, number>, id: string) => counts.set(id, (counts.get(id) ?? 0) + 1)
  const memory: Remembering = {
    ...NO_MEMORY,
    computed: (id, _record, make) => {
      add(results, id)
      return make()
    },
    entries: ({ recorded }, _sharing, make) =>
      recorded.map(({ id }, place) => {
        add(wholes, id)
        return make(place)
      }),
  }
  return { memory, results, wholes }
}

function report(records: Records, options: Partial<EditionOptions>): string {
  const reported = reportedSource({})
  const edition = computeEdition(records, { program: 'test', atSource: reported, ...options })
  return [...checkReport(edition, [], {}, reported)].join('')
}

it('computeEdition reports the same of sources that it lets go, and computes the whole of each lot once', () => {
  fc.assert(
    fc.property(content, (whole) => {
      const folder = written(whole, AS_OF)
      try {
        const { records } = loadRecords(folder)
        const [all, none] = [counting(), counting()]
        const held = { results: 0, whole: 0 }
        expect(report(records, { memory: none.memory, held })).toBe(report(records, { memory: all.memory }))
        for (const [id, times] of all.results) expect([id, times]).toEqual([id, 1])
        for (const [id, times] of [...all.wholes, ...none.wholes]) expect([id, times]).toEqual([id, 1])
        // Once for what laboratories scatter, once for judging.
        for (const [id, times] of none.results) expect([id, times <= 2]).toEqual([id, true])
        expect([...none.wholes.keys()]).toEqual([...all.wholes.keys()])
      } finally {
        rmSync(folder, { recursive: true })
      }
    }),
    { numRuns: 20 },
  )
}, 120_000)
