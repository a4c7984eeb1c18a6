/** Audit check: another laboratory took over a test, and no lot was tested by both. */
import { dateOf } from '../measure/moment.ts'
import { kept } from '../measure/kept.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'
import type { LotOnDay } from './testing-findings.ts'

/** One test of a lot with the laboratories that made it. */
interface Tested {
  readonly lot: AuditedLot
  readonly property: PropertyKey
  readonly laboratories: ReadonlySet<string>
}

/** From one laboratory to the next, for one test. */
interface Change {
  readonly from: string
  readonly to: string
  readonly property: PropertyKey
  readonly first: LotOnDay
}

/**
 * A warning for each laboratory that took over tests from another, none of them bridged.
 * @param source id
 * @param lots in order of sampling
 * @returns looks are changes of the laboratory of one test
 * Notes: 1. a lot tested by both, before the change or after it, bridges that test; 2. two laboratories that take turns
 * are one change.
 */
export function laboratoriesChanged(source: string, lots: readonly AuditedLot[]): Checked {
  const tests = [...testsOf(lots).values()]
  const changes = tests.flatMap(changesOf)
  const unbridged = tests.flatMap((own) => changesOf(own).filter((change) => !isBridged(own, change)))
  const byPair = Map.groupBy(unbridged, ({ from, to }) => `${from}|${to}`)
  const findings = [...byPair.values()].flatMap((own): Finding[] => {
    const [change] = own.toSorted((a, b) => (a.first.day < b.first.day ? -1 : 1))
    if (change === undefined) return []
    const { from, to, first } = change
    const properties = [...new Set(own.map(({ property }) => property))].sort()
    const params = { source, from, to, properties, first }
    return [found(source, { code: 'laboratory-unbridged', params }, from, to)]
  })
  return { check: 'laboratory-unbridged', looked: changes.length, findings }
}

/** By property, condition and age, each lot once, in order. */
function testsOf(lots: readonly AuditedLot[]): Map<string, Tested[]> {
  const tests = new Map<string, Tested[]>()
  for (const lot of lots)
    for (const [test, own] of Map.groupBy(lot.results.filter(isCounted), testOf)) {
      const laboratories = new Set(own.map(({ laboratory }) => laboratory))
      const [first] = own
      if (first !== undefined)
        kept(tests, test, (): Tested[] => []).push({ lot, property: first.property, laboratories })
    }
  return tests
}

function isCounted({ valid, role }: Result): boolean {
  return valid && role === 'producer'
}

function testOf({ property, condition = '', age }: Result): string {
  return [property, condition, age?.hours ?? ''].join('|')
}

/** The first change between each two laboratories. */
function changesOf(tests: readonly Tested[]): Change[] {
  const changes = new Map<string, Change>()
  tests.forEach(({ lot, property, laboratories }, place) => {
    const [from] = tests[place - 1]?.laboratories ?? []
    const [to] = laboratories
    if (from === undefined || to === undefined || laboratories.has(from)) return
    const pair = [from, to].sort().join('|')
    const first = { lot: lot.id, day: dateOf(lot.sampled).text }
    if (!changes.has(pair)) changes.set(pair, { from, to, property, first })
  })
  return [...changes.values()]
}

function isBridged(tests: readonly Tested[], { from, to }: Change): boolean {
  return tests.some(({ laboratories }) => laboratories.has(from) && laboratories.has(to))
}
