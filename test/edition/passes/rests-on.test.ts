/** A digest may say "the same" only where all that can be asked of a lot or a source is the same. */
import { rmSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { uncertaintyFromBatches } from '../../../src/core/evidence/lot-evidence.ts'
import { asOfDate, computeEdition } from '../../../src/edition/compute.ts'
import type { KeptParts } from '../../../src/edition/passes/parts-of-sources.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { wholeText } from '../../../src/edition/shape/dependencies.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { issuedState } from '../../../src/edition/writers/manifest.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { loadRecords, type Records } from '../../../src/records/load.ts'
import type { Control } from '../../../src/records/schema/loaded-records.ts'
import { AS_OF, type Content, content, cutAt, load, questionDay, written } from './generated-content.ts'
import { memoryOfParts } from './memory-of-parts.ts'
import { allShipments } from '../all-shipments.ts'

const AUDIENCES = ['internal', 'public'] as const

interface On {
  readonly kept?: KeptParts
  /** Days after the one by which all is known. */
  readonly later?: number
}

function editionOf(whole: Content, audience: Edition['audience'], { kept, later = 0 }: On = {}): Edition {
  const asOf = momentOfDay(AS_OF.day + later)
  const folder = written(whole, asOf)
  try {
    const { records } = loadRecords(folder)
    const options = { program: 'test', asOf, ...(kept && { kept }) }
    return forAudience(computeEdition({ ...records, contentDir: '' }, options), audience)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** All that a page or a file can be told of a lot, and what a guarded limit would ask of earlier batches. */
function lotTold(edition: Edition, id: string): string {
  const lot = edition.lot(id)
  const classes = lot.verdicts.map(({ criterion }) => lot.bestClass(criterion))
  const { background } = edition.source(lot.source)
  const doubt = lot.results.map((result) => uncertaintyFromBatches(background, result))
  return JSON.stringify({ lot, row: edition.lots.get(id), history: lot.history(), classes, doubt })
}

/** The same of a source. */
function sourceTold(edition: Edition, id: string): string {
  const source = edition.source(id)
  const [history, agency, limits] = [source.history(), source.agency(), source.atLimits()]
  return JSON.stringify({
    source,
    history,
    agency,
    limits,
    lots: edition.lotsOf(id),
    row: edition.sources.get(id),
  })
}

/** The same of a control batch, how its results came about included. */
function controlTold(edition: Edition, id: string): string {
  return wholeText(edition.controls.get(id))
}

const daysLater = fc.oneof(fc.constant(0), fc.nat(40))

/** One thing that somebody may do to the records in a week. */
const edit = fc.record({
  kind: fc.constantFrom(
    'quantity',
    'reading',
    'control',
    'new lot',
    'withdrawn',
    'shipment',
    'events',
    'nothing',
  ),
  pick: fc.nat(),
})

function edited(whole: Content, { kind, pick }: { readonly kind: string; readonly pick: number }): Content {
  const ids = Object.keys(whole.lots)
  const id = ids[pick % ids.length] ?? ''
  const lot = whole.lots[id]
  if (lot === undefined) return whole
  const withLot = (changed: object) => ({ ...whole, lots: { ...whole.lots, [id]: { ...lot, ...changed } } })
  if (kind === 'quantity') return withLot({ quantity: '401 t' })
  if (kind === 'reading') return withLot({ analyses: lot.analyses.slice(1) })
  if (kind === 'shipment')
    return withLot({
      shipments: [...(lot.shipments ?? []), { bill: 'B77', date: '2026-04-05', mass: '20 t' }],
    })
  if (kind === 'withdrawn') return withLot({ revisions: lot.revisions.slice(0, -1) })
  if (kind === 'new lot') return { ...whole, lots: { ...whole.lots, [`${id}X`]: lot } }
  if (kind === 'events') return { ...whole, events: [] }
  if (kind === 'nothing') return whole
  const [control = '', batch] = Object.entries(whole.controls)[pick % 5] ?? []
  if (batch === undefined) return whole
  return {
    ...whole,
    controls: { ...whole.controls, [control]: { ...batch, strength: batch.strength.slice(1) } },
  }
}

describe('restsOn', () => {
  it.each(AUDIENCES)(
    'says that a lot or a source is the same only where all of it is: %s',
    (audience) => {
      const same = { lot: 0, source: 0, control: 0, lotLater: 0 }
      const changed = { lot: 0, source: 0, control: 0 }
      const told = { lot: lotTold, source: sourceTold, control: controlTold }
      fc.assert(
        fc.property(
          content,
          edit,
          fc.option(questionDay, { freq: 2 }),
          daysLater,
          (whole, change, day, later) => {
            const before = editionOf(day === null ? whole : cutAt(whole, day), audience)
            const after = editionOf(edited(whole, change), audience, { later })
            for (const kind of ['lot', 'source', 'control'] as const)
              for (const id of after[`${kind}s`].keys()) {
                if (!before[`${kind}s`].has(id)) continue
                const isSame = before.restsOn(`${kind} ${id}`) === after.restsOn(`${kind} ${id}`)
                ;(isSame ? same : changed)[kind] += 1
                if (isSame && kind === 'lot' && 0 < later) same.lotLater += 1
                if (isSame) expect(told[kind](after, id)).toBe(told[kind](before, id))
              }
          },
        ),
        { numRuns: 60, seed: 15 },
      )
      expect(same.lot).toBeGreaterThan(60)
      expect(same.lotLater).toBeGreaterThan(20)
      expect(changed.lot).toBeGreaterThan(20)
      expect(same.source).toBeGreaterThan(10)
      expect(same.control).toBeGreaterThan(100)
      expect(changed.control).toBeGreaterThan(20)
    },
    240_000,
  )
})

it('a lot of the demonstration is the same on a later day where it is said to be', () => {
  const { records } = loadRecords(resolve(import.meta.dirname, '../../../content'))
  const on = (later: number) =>
    computeEdition(records, { program: 'test', asOf: momentOfDay(asOfDate(records, {}).day + later) })
  const today = on(0)
  const same = [1, 8, 45].map((later) => {
    const then = on(later)
    const ids = [...today.lots.keys()].filter(
      (id) => then.restsOn(`lot ${id}`) === today.restsOn(`lot ${id}`),
    )
    for (const id of ids) {
      expect(lotTold(then, id)).toBe(lotTold(today, id))
      expect(JSON.stringify(then.lot(id).certificate())).toBe(JSON.stringify(today.lot(id).certificate()))
    }
    return ids.length
  })
  expect(same.every((count) => 150 < count)).toBe(true)
})

it('lots and sources rest on all that they share, and on no control batch that is not their own', () => {
  const [sample] = fc.sample(content, { numRuns: 1, seed: 15 })
  const { records } = load(sample ?? NO_CONTENT, AS_OF)
  const digestsOf = (changed: Partial<Records>) => {
    const edition = computeEdition({ ...records, ...changed }, { program: 'test', asOf: AS_OF })
    const [lots, sources] = [[...edition.lots.keys()], [...edition.sources.keys()]]
    return [...lots.map((id) => `lot ${id}` as const), ...sources.map((id) => `source ${id}` as const)].map(
      edition.restsOn,
    )
  }
  const before = digestsOf({})
  expect(new Set(before).size).toBe(8 + records.sources.size)
  const renamed = <T extends object>(map: ReadonlyMap<string, T>) =>
    new Map([...map].map(([id, record]) => [id, { ...record, title: 'Another', name: 'Another' }] as const))
  const shared: Partial<Records>[] = [
    { site: { ...records.site, title: 'Another' } },
    { producers: renamed(records.producers) },
    { laboratories: renamed(records.laboratories) },
    { sources: renamed(records.sources) },
    { conditions: renamed(records.conditions) },
    { criteria: renamed(records.criteria) },
  ]
  for (const changed of shared)
    for (const [place, digest] of digestsOf(changed).entries()) expect(digest).not.toBe(before[place])
  const [[, batch] = []] = [...records.controls]
  const controls = new Map([...records.controls, ['K9', { ...batch, strength: [] } as unknown as Control]])
  expect(digestsOf({ controls })).toEqual(before)
})

const NO_CONTENT: Content = { events: [], controls: {}, lots: {} }

it.each(AUDIENCES)(
  'an edition made of parts that were kept is that made anew: %s',
  (audience) => {
    let taken = 0
    fc.assert(
      fc.property(content, edit, questionDay, daysLater, (whole, change, day, later) => {
        const kept = memoryOfParts()
        for (const step of [cutAt(whole, day), whole, edited(whole, change), whole]) {
          const on = step === whole ? {} : { later }
          const [anew, again] = [editionOf(step, audience, on), editionOf(step, audience, { ...on, kept })]
          const rows = (edition: Edition) =>
            JSON.stringify([
              ...edition.lots,
              ...edition.sources,
              ...edition.controls.keys(),
              allShipments(edition),
            ])
          expect(rows(again)).toBe(rows(anew))
          expect(issuedState(again)).toEqual(issuedState(anew))
          expect([...checkReport(again, [])].join('')).toBe([...checkReport(anew, [])].join(''))
        }
        taken += kept.taken
      }),
      { numRuns: 15, seed: 15 },
    )
    expect(taken).toBeGreaterThan(60)
  },
  240_000,
)
