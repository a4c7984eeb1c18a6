/** Audit check: tests that were made again, for information: how many, and of which lots. */
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** One test of a mortar at one age. */
export interface MadeTest {
  readonly lot: string
  readonly retest: 'first' | 'retest'
}

/** Lots named: own choice. */
const SHOWN = 5

/**
 * Information on the retests of a source.
 * @param source id
 * @param tests of one source that have readings, in order of sampling
 * @returns looks are tests
 * Note: a retest replaces the test that it names and no other; both stay on record.
 */
export function retests(source: string, tests: readonly MadeTest[]): Checked {
  const again = tests.filter(({ retest }) => retest === 'retest')
  const lots = [...new Set(again.map(({ lot }) => lot))]
  const params = { source, retests: again.length, tests: tests.length, lots: lots.length }
  const findings: Finding[] =
    again.length === 0
      ? []
      : [found(source, { code: 'retested', params: { ...params, listed: lots.slice(0, SHOWN) } })]
  return { check: 'retested', looked: tests.length, findings }
}
