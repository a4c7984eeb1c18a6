/** The statement of a source on an agency's samples. */
import type { IndependentComparison } from '../../core/agency/independent-comparison.ts'
import type { SplitComparison } from '../../core/agency/split-comparison.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { type AgencyCounts, agencyWords, comparedWords } from '../../words/source-agency.ts'
import type { SourceEntry } from '../shape/edition.ts'
import type { StripInput, StripLine } from './source-strip.ts'

export function agencyLine({ source, governing, questions }: StripInput): StripLine {
  const counts = agencyCounts(source, governing, questions.published)
  return {
    label: 'Agency',
    section: 'agency',
    says: agencyWords(counts),
    rest: counts === null ? [] : comparedWords(counts),
    figure: null,
  }
}

/** The difference that is stated is of splits alone: an independent sample differs by its material too. */
function agencyCounts(
  source: SourceEntry,
  governing: string | null,
  withFindings: boolean,
): AgencyCounts | null {
  const agency = source.agency()
  if (agency === null) return null
  const { split, splits, independent, independents } = agency
  const oppositeOf = (compared: readonly { readonly opposite: number }[]) =>
    compared.reduce((sum, { opposite }) => sum + opposite, 0)
  const beyond = split.flatMap(({ precision }) => (precision === null ? [] : [precision.beyond]))
  const one = chosenSplit(split, governing)
  return {
    independent: independents,
    means: meansOf(independent),
    split: splits,
    beyond: beyond.length === 0 ? null : beyond.reduce((a, b) => a + b, 0),
    opposite: { independent: oppositeOf(independent), split: oppositeOf(split) },
    difference:
      one === undefined
        ? null
        : {
            property: one.property,
            age: one.age?.text ?? null,
            mean: one.mean,
            interval: intervalOf(one.paired?.interval),
          },
    compared: new Set(split.map(({ property }) => property)).size,
    biased: withFindings ? biasedIn(source) : null,
  }
}

function meansOf(compared: readonly IndependentComparison[]): AgencyCounts['means'] {
  const tested = compared.flatMap(({ t, level }) => (t === null ? [] : [{ p: t.p, level }]))
  const [first] = tested
  if (first === undefined) return null
  const differ = tested.filter(({ p, level }) => p < level).length
  return { differ, of: tested.length, level: first.level }
}

/**
 * The test whose difference is stated, chosen without regard to what the differences are, since the largest of several
 * would be the most striking one: the governing property, else the one with most pairs.
 * @param governing key of a series
 */
export function chosenSplit(
  split: readonly SplitComparison[],
  governing: string | null,
): SplitComparison | undefined {
  const [property] = governing?.split('|') ?? []
  const byPairs = [...split].sort((a, b) => b.n - a.n)
  return byPairs.find((one) => one.property === property && 0 < one.n) ?? byPairs[0]
}

function biasedIn({ findings }: Pick<SourceEntry, 'findings'>): PropertyKey[] {
  const found = findings.flatMap(({ reason }) =>
    reason.code === 'split-bias' ? [reason.params.property] : [],
  )
  return [...new Set(found)]
}

function intervalOf(ends: readonly [number, number] | undefined): { low: number; high: number } | null {
  return ends === undefined ? null : { low: ends[0], high: ends[1] }
}
