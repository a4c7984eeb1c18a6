/** Audit checks: an agency's results that differ from the producer's by more than chance would explain. */
import type { IndependentComparison } from '../agency/independent-comparison.ts'
import { areOpposite, isBeyond, type Pair } from '../agency/pairs.ts'
import type { TestKey } from '../agency/precision.ts'
import type { SourceAgency } from '../agency/source-agency.ts'
import type { SplitComparison } from '../agency/split-comparison.ts'
import { property } from '../measure/properties.ts'
import type { AgencyFindingParams } from './agency-findings.ts'
import type { CheckId } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { type Finding, findingOn, warningOn } from './finding.ts'

/** A bias is reported from so many pairs on, at this chance of one so far from zero: own choice. */
const PAIRS = 5
const CHANCE = 0.01

/**
 * Findings of the pairs of one lot.
 * @param lot id as SOURCE/LOT
 * @param pairs of the lot
 * @returns information for a difference beyond its limit, since one in twenty is expected; a warning where the two
 * results lie on opposite sides of a limit
 */
export function agencyLotFindings(lot: string, pairs: readonly Pair[]): Finding[] {
  return pairs.flatMap((pair) => [...beyondFinding(lot, pair), ...oppositeFinding(lot, pair)])
}

/**
 * The findings of the pairs of one lot as checks that looked: at each pair that has a limit of difference, and at each
 * that the governing criterion limits.
 * @param lot id as SOURCE/LOT
 * @param pairs of the lot
 */
export function agencyLotChecks(lot: string, pairs: readonly Pair[]): Checked[] {
  const findings = agencyLotFindings(lot, pairs)
  const of = (code: CheckId) => findings.filter(({ reason }) => reason.code === code)
  const limited = pairs.filter((pair) => isBeyond(pair) !== null).length
  const sided = pairs.filter(({ sides }) => 0 < sides.length).length
  return [
    { check: 'split-beyond-limit', looked: limited, findings: of('split-beyond-limit') },
    { check: 'agency-other-side', looked: sided, findings: of('agency-other-side') },
  ]
}

function beyondFinding(lot: string, pair: Pair): Finding[] {
  const { difference, allowed } = pair
  if (difference === null || allowed === undefined || isBeyond(pair) !== true) return []
  const params = { ...pairParams(lot, pair), difference, limit: allowed.limit, source: allowed.source }
  return [findingOn('information', lot, { code: 'split-beyond-limit', params }, pair.agency.key)]
}

function oppositeFinding(lot: string, pair: Pair): Finding[] {
  if (!areOpposite(pair)) return []
  const sides = pair.sides.filter((side) => areOpposite({ sides: [side] }))
  const params = {
    ...pairParams(lot, pair),
    kind: pair.kind,
    meets: sides[0]?.producer === 'meets' ? ('producer' as const) : ('agency' as const),
    limits: sides.map(({ clause, limit }) => ({ clause, limit })),
    ...(sides.some(({ otherWay }) => otherWay === 'not-tested') ? { otherWay: 'not-tested' as const } : {}),
  }
  return [warningOn(lot, { code: 'agency-other-side', params }, pair.agency.key)]
}

function pairParams(lot: string, { producer, agency, ...pair }: Pair) {
  return {
    lot,
    ...testParams(pair),
    laboratory: agency.laboratory,
    sample: agency.sample,
    producer: producer.value,
    agency: agency.value,
    unit: agency.unit,
    decimals: Math.max(producer.decimals, agency.decimals),
  }
}

function testParams({ property: key, condition, age }: TestKey) {
  return { property: key, condition: condition ?? null, age: age?.text ?? null }
}

/**
 * Findings about a source as a whole.
 * @param source id
 * @returns a warning for a mean difference of five splits or more whose chance is below 1 %, and for independent
 * samples whose scatter or mean differs from the producer's at the level of the comparison
 */
export function agencySourceFindings(source: string, { split, independent }: SourceAgency): Finding[] {
  return [
    ...split.flatMap((found) => biasFinding(source, found)),
    ...independent.flatMap((found) => differsFinding(source, found)),
  ]
}

/**
 * The findings about a source as checks that looked: at each mean difference of five splits or more, and at each pair of
 * sets that both tests were made of.
 * @param source id
 * Note: F and t are two tests, each at the level of the comparison.
 */
export function agencySourceChecks(source: string, compared: SourceAgency): Checked[] {
  const findings = agencySourceFindings(source, compared)
  const of = (code: CheckId) => findings.filter(({ reason }) => reason.code === code)
  const biased = compared.split.filter(({ paired }) => paired !== null && PAIRS <= paired.n)
  const tested = compared.independent.filter(({ f, t }) => f !== null && t !== null)
  return [
    { check: 'split-bias', looked: biased.length, findings: of('split-bias') },
    {
      check: 'independent-differs',
      looked: tested.length,
      expected: tested.reduce((sum, { level }) => sum + 1 - (1 - level) ** 2, 0),
      findings: of('independent-differs'),
    },
  ]
}

function biasFinding(source: string, found: SplitComparison): Finding[] {
  const { paired } = found
  if (paired === null || paired.n < PAIRS || CHANCE <= paired.p) return []
  const { n, mean, p, interval } = paired
  const [low, high] = interval
  const params = { source, ...testParams(found), n, mean, low, high, p, ...printed(found) }
  return [warningOn(source, { code: 'split-bias', params }, ...placeOf(found))]
}

function differsFinding(source: string, found: IndependentComparison): Finding[] {
  const { f, t, level, agency, producer } = found
  if (f === null || t === null) return []
  const [scatter, means] = [f.p < level, t.p < level]
  if (!scatter && !means) return []
  const params: AgencyFindingParams['independent-differs'] = {
    source,
    ...testParams(found),
    differ: scatter && means ? 'both' : scatter ? 'scatter' : 'means',
    level,
    agency: agency.n,
    agencyMean: agency.mean,
    producer: producer.n,
    producerMean: producer.mean,
    f: Number.isFinite(f.ratio) ? f.ratio : null,
    pOfF: f.p,
    difference: t.difference,
    pOfT: t.p,
    ...printed(found),
  }
  return [warningOn(source, { code: 'independent-differs', params }, ...placeOf(found))]
}

/** One decimal more than a single result: means are printed finer. */
function printed({ property: key, pairs: [first] }: TestKey & { readonly pairs: readonly Pair[] }) {
  return { unit: first?.agency.unit ?? '', decimals: property(key).decimals + 1 }
}

function placeOf({ property: key, condition, age, pairs }: TestKey & { readonly pairs: readonly Pair[] }) {
  return [key, condition, age?.text, pairs[0]?.class ?? undefined].filter((part) => part !== undefined)
}
