/**
 * What the roads authority tested itself: further results of the splits, and samples of its own. All of it comes
 * from a stream of chance of its own, so that nothing else of the scenario depends on it.
 */
import { dateOfDay } from './calendar.ts'
import { type Chance, chanceOf } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import type { LotPlan } from './lot-plan.ts'
import { SEED } from './scenario.ts'

/** Places of further splits, beside those whose analysis stands among the planted ones. */
const FURTHER_SPLITS: Readonly<Record<string, readonly number[]>> = {
  'quellan-ash': [2, 8, 10, 12, 14, 20, 23, 26, 32],
  'skarnmere-reclaimed': [3, 7, 11, 14, 19, 23],
}

/** Places at which the agency took a sample of its own. */
const INDEPENDENT: Readonly<Record<string, readonly number[]>> = {
  'quellan-ash': [5, 13, 19, 27],
  'tarn-hollow-tuff': [8, 12, 18, 24],
}

/** What the agency's own samples of a source show beyond the producer's: planted, where the splits agree. */
const APART: Readonly<Record<string, { readonly index: number; readonly residue: number }>> = {
  'tarn-hollow-tuff': { index: -10, residue: 4.5 },
}

/** What the agency did with one lot. */
export interface AgencyTaking {
  readonly split: boolean
  readonly independent: boolean
}

export function takenByAgency(source: string, place: number): AgencyTaking {
  return {
    split: FURTHER_SPLITS[source]?.includes(place) === true,
    independent: INDEPENDENT[source]?.includes(place) === true,
  }
}

/** Lines of the samples that the agency holds beyond the planted split. */
export function agencySampleLines({ planted, agency, day }: LotPlan): string[] {
  return [
    ...(agency.split && planted.verification !== true
      ? [`  - ${flowMapping({ id: 'S', kind: 'split', of: 'C', to: 'roads-authority' })}`]
      : []),
    ...(agency.independent
      ? [`  - ${flowMapping({ id: 'I', kind: 'independent', on: `${dateOfDay(day)}T10:20` })}`]
      : []),
  ]
}

/** Lines of results: none that were not known by the scenario's last day. */
export function agencyResultLines(plan: LotPlan): string[] {
  const { planted, agency, castDay, lastDay, id } = plan
  const chance = chanceOf(SEED + markOf(id))
  const [isSplit, known] = [planted.verification === true || agency.split, castDay + 38 <= lastDay]
  const splitPhysical = physical(plan, 'split', chance)
  const splitIndices = indices(plan, 'split', chance)
  const ownPhysical = physical(plan, 'independent', chance)
  const ownIndices = indices(plan, 'independent', chance)
  return [
    ...(agency.split && planted.verification !== true && castDay + 9 <= lastDay ? [splitPhysical] : []),
    ...(isSplit && known ? [splitIndices] : []),
    ...(agency.independent && known ? [ownPhysical, ownIndices] : []),
  ].map((entry) => `  - ${entry}`)
}

function markOf(id: string): number {
  return [...id].reduce((sum, sign) => (sum * 31 + sign.charCodeAt(0)) % 1_000_003, 7)
}

type Kind = 'split' | 'independent'

function head({ id, day }: LotPlan, kind: Kind): Record<string, string> {
  const number = `RA-${id.slice(-8)}${kind === 'split' ? 'S' : 'I'}`
  return kind === 'split'
    ? { kind, laboratory: 'roads-authority', sample: 'S', number, custody: '"sealed can, signed for"' }
    : {
        kind,
        laboratory: 'roads-authority',
        sample: 'I',
        number,
        taken: `${dateOfDay(day)}T10:20`,
        sampler: 'district materials office',
        custody: '"sealed can, carried by the sampler"',
      }
}

function physical(plan: LotPlan, kind: Kind, chance: Chance): string {
  const { model, planted, castDay, source } = plan
  const apart = kind === 'independent' ? (APART[source.id]?.residue ?? 0) : 0
  const loss = (planted.lossOnIgnition ?? model.lossOnIgnition) + 0.18 * chance.normal()
  return flowMapping({
    ...head(plan, kind),
    tested: dateOfDay(castDay + 9),
    results: flowMapping({
      'residue-45um': `${Math.max(0.5, model.residue45 + apart + 0.6 * chance.normal()).toFixed(1)} %`,
      'loss-on-ignition': `${Math.max(0.05, loss).toFixed(2)} %`,
      density: `${(model.densityGCm3 + 0.01 * chance.normal()).toFixed(2)} g/cm3`,
    }),
  })
}

/** Finished indices, as the agency's laboratory reports them, from its own control cement. */
function indices(plan: LotPlan, kind: Kind, chance: Chance): string {
  const { model, castDay, source } = plan
  const apart = kind === 'independent' ? (APART[source.id]?.index ?? 0) : 0
  const figure = (value: number, age: number) =>
    flowMapping({ value: `${value.toFixed(1)} %`, condition: 'c311', age: `${age} d` })
  const [seven, twentyEight] = [model.activity7, model.activity28].map(
    (index) => index + apart + 2 * chance.normal(),
  )
  const resistivity = 100 * model.ratio23 * (1 + 0.04 * chance.normal())
  return flowMapping({
    ...head(plan, kind),
    tested: dateOfDay(castDay + 37),
    results: flowMapping({
      'strength-activity-index': `[${figure(seven ?? 0, 7)}, ${figure(twentyEight ?? 0, 28)}]`,
      'resistivity-index': `[${figure(resistivity, 28)}]`,
    }),
  })
}

/** Rows of the site's table of precision: invented for the scenario. */
export const PRECISION = `# Invented table: no round robin stands behind it.
precision:
  - { property: residue-45um, laboratories: several, standard-deviation: 0.42 percentage points, from: 2 %, to: 40 %, source: "invented round robin of Varrow Vale, 2022, table 1" }
  - { property: loss-on-ignition, laboratories: several, standard-deviation: 0.20 percentage points, from: 0.1 %, to: 10 %, source: "invented round robin of Varrow Vale, 2022, table 1" }
  - { property: density, laboratories: several, standard-deviation: 0.008 g/cm3, source: "invented round robin of Varrow Vale, 2022, table 1" }
  - { property: strength-activity-index, condition: c311, laboratories: several, standard-deviation: 2.5 percentage points, from: 60 %, to: 120 %, source: "invented round robin of Varrow Vale, 2022, table 2" }
`

const SAMPLER = { sampler: 'district materials office', custody: '"sealed cans, signed for"' }

/** What the agency planned with each source it verifies. */
const PLANS: Readonly<Record<string, readonly Readonly<Record<string, string | number>>[]>> = {
  'skarnmere-ash': [
    {
      kind: 'split',
      from: '2024-01-01',
      to: '2024-12-31',
      planned: 2,
      methods: 'alike',
      cement: 'not-alike',
    },
    {
      kind: 'split',
      from: '2025-01-01',
      to: '2025-12-31',
      planned: 2,
      methods: 'alike',
      cement: 'not-alike',
    },
    { kind: 'independent', from: '2025-01-01', to: '2025-12-31', planned: 2, ...SAMPLER },
  ],
  'quellan-ash': [
    { kind: 'independent', from: '2024-01-01', to: '2024-12-31', planned: 2, ...SAMPLER },
    { kind: 'independent', from: '2025-01-01', to: '2025-12-31', planned: 2, ...SAMPLER },
    {
      kind: 'split',
      from: '2025-01-01',
      to: '2025-12-31',
      planned: 4,
      methods: 'alike',
      cement: 'not-alike',
    },
  ],
  'tarn-hollow-tuff': [
    { kind: 'independent', from: '2024-01-01', to: '2025-12-31', planned: 4, ...SAMPLER },
    {
      kind: 'split',
      from: '2025-01-01',
      to: '2025-12-31',
      planned: 2,
      methods: 'alike',
      cement: 'not-alike',
    },
    { kind: 'assurance', from: '2025-01-01', to: '2025-12-31', planned: 1 },
  ],
}

/** Lines of a source's plan; none where the agency has none. */
export function verificationPlanLines(source: string): string[] {
  const plan = PLANS[source]
  return plan === undefined
    ? []
    : ['verification-plan:', ...plan.map((period) => `  - ${flowMapping(period)}`)]
}
