/** The page of a site's own lots as a screening: which condition tells the sources apart that say what they are. */
import { dotRows, type DotRowsModel } from '../../../charts/dot-rows.ts'
import { representative } from '../../../core/history/representative.ts'
import { compareWithLimit } from '../../../core/judging/compare-with-limit.ts'
import { isBounded } from '../../../core/result/bounds.ts'
import type { Result } from '../../../core/result/result.ts'
import {
  lotsByCondition,
  type LotIndex,
  type LotsAtCondition,
} from '../../../core/studies/screening/own-lots.ts'
import type { MaterialClass } from '../../../core/studies/screening/material-means.ts'
import type { ScreenedMaterial } from '../../../core/studies/screening/screening.ts'
import type { StudyIndexProperty } from '../../../core/studies/study-reading.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import { number, plainNumber, plural } from '../../../words/numbers.ts'
import { listWords, sentence, unbroken } from '../../../words/sentences.ts'
import { indexText, ratioText, STUDY_ROUTES } from '../../../words/studies.ts'
import { conditionTitle } from '../../shape/condition-title.ts'
import type { Edition, LotEntry } from '../../shape/edition.ts'
import { routeLimits, type RouteLimit, type RouteSubject } from '../route-limits.ts'
import { dotRow } from './dot-row.ts'
import { partOfSource } from '../../shape/part-of-source.ts'

export interface OwnLotsView {
  /** Sources that say what they are. */
  readonly sources: readonly {
    readonly id: string
    readonly name: string
    readonly class: MaterialClass
    readonly shownBy: string
    readonly lots: number
  }[]
  /** How few materials the lots come from. */
  readonly unit: string
  /** Names of sources that say nothing of it; empty where all do. */
  readonly silent: string
  readonly routes: readonly OwnRouteView[]
}

export interface OwnRouteView {
  readonly route: string
  readonly chart: DotRowsModel | null
  readonly tickLabels: readonly string[]
  readonly rows: readonly { readonly name: string; readonly threshold: string; readonly wrong: string }[]
  readonly table: readonly OwnLine[]
}

export interface OwnLine {
  readonly name: string
  readonly lots: string
  /** Sources that must be set aside so that the rest stand apart. */
  readonly wrong: string
  readonly highestInert: string
  readonly lowestReactive: string
  readonly ratio: string
  readonly area: string
  readonly areaOfLots: string
  /** What the limits in force say of the lots there. */
  readonly limits: readonly string[]
}

export function ownLotsView(edition: Edition): OwnLotsView {
  const classed = [...edition.sources.values()].flatMap(({ id, name }) => {
    const { reactivity } = reactivityOf(edition, id)
    return reactivity === undefined
      ? []
      : [{ id, name, class: reactivity.class, shownBy: reactivity['shown-by'], lots: 0 }]
  })
  const indices = classed.flatMap(({ id }) => indicesOf(edition, id))
  const lotsOf = Map.groupBy(indices, ({ source }) => source)
  const sources = classed.map((source) => ({
    ...source,
    lots: new Set(lotsOf.get(source.id)?.map(({ lot }) => lot)).size,
  }))
  const materials = sources.map(({ id, class: own }): ScreenedMaterial => ({ code: id, class: own }))
  const found = lotsByCondition(indices, materials, STUDY_LEVEL)
  return {
    sources,
    unit: unitSentence(sources),
    silent: listWords(
      [...edition.sources.values()]
        .filter(({ id }) => !classed.some((source) => source.id === id))
        .map(({ name }) => name),
      'and',
    ),
    routes: (['strength-activity-index', 'resistivity-index'] as const).flatMap((property) => {
      const own = found.filter((one) => one.property === property)
      return own.length === 0 ? [] : [routeOf(edition, property, own)]
    }),
  }
}

const reactivityOf = partOfSource('reactivity', (edition: Edition, id) => ({
  reactivity: edition.source(id).record.reactivity,
}))

const indicesOf = partOfSource('indices', (edition: Edition, id) =>
  edition.lotsOf(id).flatMap((lot) => indicesOfLot(id, edition.lot(lot.id))),
)

interface OwnIndex extends LotIndex {
  readonly lot: string
}

/** The result that stands for the lot, for each index at each condition and age; a withdrawn lot has none. */
function indicesOfLot(source: string, lot: LotEntry): OwnIndex[] {
  if (lot.withdrawn !== undefined) return []
  const counted = lot.results.flatMap((result) => indexIn(result))
  return [...Map.groupBy(counted, placeKey).values()].flatMap((group) => {
    const stands = representative(group.map(({ result }) => result))
    const [first] = group
    if (stands === undefined || first === undefined) return []
    const { property, condition, age } = first
    return [{ lot: lot.id, source, property, condition, age, value: stands.value }]
  })
}

type Place = Pick<LotIndex, 'property' | 'condition' | 'age'>

function placeKey({ property, condition, age }: Place): string {
  return `${property} ${condition} ${age.hours}`
}

/** Above zero, since means are taken of logarithms. */
function indexIn(result: Result): (Place & { readonly result: Result })[] {
  const { property, condition, age, role, valid, value } = result
  if (property !== 'strength-activity-index' && property !== 'resistivity-index') return []
  if (condition === undefined || age === undefined || role !== 'producer') return []
  return valid && !isBounded(result) && 0 < value ? [{ property, condition, age, result }] : []
}

function unitSentence(sources: OwnLotsView['sources']): string {
  const of = (own: MaterialClass) => sources.filter((source) => source.class === own)
  const lotsIn = (own: MaterialClass) => of(own).reduce((sum, { lots }) => sum + lots, 0)
  const parts = (['reactive', 'weak', 'inert'] as const).flatMap((own) =>
    of(own).length === 0
      ? []
      : [
          `${plural(lotsIn(own), `${own} lot`, `${own} lots`)} from ${plural(of(own).length, 'source', 'sources')}`,
        ],
  )
  const few = (['inert', 'reactive'] as const).find((own) => of(own).length === 1)
  return [
    `${sentence(listWords(parts, 'and'))}: the lots of one source are one material, tested again and again, and tell nothing of another material of its class.`,
    few === undefined
      ? ''
      : ` With one ${few} source, what stands apart here is that source, not ${few} materials.`,
  ].join('')
}

function routeOf(
  edition: Edition,
  property: StudyIndexProperty,
  conditions: readonly LotsAtCondition[],
): OwnRouteView {
  const nameOf = ({ condition, age }: LotsAtCondition) =>
    unbroken(`${conditionTitle(edition, condition)}, ${age.text}`)
  const sourceName = (id: string) => edition.sources.get(id)?.name ?? id
  const chart = dotRows(conditions.map((one) => dotRow(one, { mark: null, named: [] })))
  return {
    route: sentence(STUDY_ROUTES[property]),
    chart,
    tickLabels: chart?.ticks.map(({ value }) => number(value, 0)) ?? [],
    rows: conditions.map((one) => ({
      name: nameOf(one),
      threshold: '',
      wrong: wrongNames(one, sourceName),
    })),
    table: conditions.map((one) => ({
      name: nameOf(one),
      lots: `${one.lots.reactive.length} / ${one.lots.inert.length}`,
      wrong: wrongNames(one, sourceName),
      ...separationCells(one, sourceName),
      limits: limitsAt(edition, one).map((limit) => limitSentence(limit, one)),
    })),
  }
}

function wrongNames({ separation }: LotsAtCondition, sourceName: (id: string) => string): string {
  if (separation === null) return 'a class has no lot'
  return separation.wrongSide.length === 0 ? 'none' : listWords(separation.wrongSide.map(sourceName), 'and')
}

function separationCells(
  { separation, areaInterval, areaOfLots }: LotsAtCondition,
  sourceName: (id: string) => string,
): Omit<OwnLine, 'name' | 'lots' | 'wrong' | 'limits'> {
  if (separation === null || areaInterval === null || areaOfLots === null)
    return { highestInert: '–', lowestReactive: '–', ratio: '–', area: '–', areaOfLots: '–' }
  const { highestInert, lowestReactive, ratio, area } = separation
  const placed = (one: typeof highestInert) => `${indexText(one.value)} ${sourceName(one.material)}`
  return {
    highestInert: placed(highestInert),
    lowestReactive: placed(lowestReactive),
    ratio: ratio === null || ratio <= 1 ? '–' : ratioText(ratio),
    area: `${plainNumber(area, 2)}, ${areaInterval.map((end) => plainNumber(end, 2)).join(' to ')}`,
    areaOfLots: plainNumber(areaOfLots, 2),
  }
}

/** Limits in force for any of the sources compared. */
function limitsAt(
  edition: Edition,
  { property, condition, age, means }: LotsAtCondition,
): readonly RouteLimit[] {
  const subjects = means.means.flatMap(({ material }): RouteSubject[] => {
    const source = edition.sources.get(material)
    return source === undefined
      ? []
      : [{ source: source.id, kind: source.kind, class: source.class ?? null, criteria: source.criteria }]
  })
  const limits = routeLimits(subjects, edition.criteria, { condition, age })
  return property === 'strength-activity-index' ? limits.strength : limits.resistivity
}

function limitSentence(limit: RouteLimit, { lots }: LotsAtCondition): string {
  const meets = (value: number) =>
    compareWithLimit({ value }, limit.operator, [limit.quantity], limit.resolution).answer === 'met'
  const inert = lots.inert.filter(meets).length
  const reactive = lots.reactive.filter((value) => !meets(value)).length
  return `${limit.words}: ${inert} of ${plural(lots.inert.length, 'inert lot meets', 'inert lots meet')} it, ${reactive} of ${plural(lots.reactive.length, 'reactive lot does', 'reactive lots do')} not`
}
