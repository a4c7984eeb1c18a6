/** What the sections of a source's page take from each of its lots, gathered in one visit. */
import { edgesOf } from '../../core/checks/at-the-limits.ts'
import { completeOn } from '../../core/checks/shipping-days.ts'
import { marginToLimit } from '../../core/criteria/margin-to-limit.ts'
import { type ClauseOutcome, everyClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import { knownSince, type Result } from '../../core/result/result.ts'
import { limitText } from '../../words/limits.ts'
import { changedWords, marginWords, type Missed } from '../../words/source-strip.ts'
import { quantity } from '../../words/units.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, LotEntry, Revision, Series, ShipmentEntry } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { onceTraced } from '../shape/trace.ts'
import { type ComparedClause, comparedTitle, isCompared, printedFigure } from './printed-figure.ts'

/** A value that the governing set holds against a limit. */
export interface JudgedValue extends Missed {
  /** Clause of the set, permanent. */
  readonly clause: string
  readonly property: ComparedClause['property']
  readonly kind: ComparedClause['kind']
  readonly outcome: ComparedClause['outcome']
  /** The clause decided the verdict. */
  readonly decides: boolean
  /** Unrounded, and as its margin to the limit; above zero inside. */
  readonly number: number
  /** Digits that it is printed with in a drawing. */
  readonly decimals: number
  readonly margin: number
  /** Distance to where the outcome changes, before rounding; above zero inside. */
  readonly inside: number
  /** Group of clauses of which one would do; null where it stands alone. */
  readonly route: string | null
  /** Limits as lines in its unit; both signs of a magnitude. */
  readonly ends: readonly number[]
  /** Where rounding puts the change of the outcome, half a step beyond the limit; null where it changes at the limit. */
  readonly turn: string | null
  /** What a deviation is taken from; null of a value itself. */
  readonly from: string | null
}

/** Where a result of a series comes from. */
export interface Origin {
  readonly laboratory: string
  readonly control?: string
  /** Lot of the control's cement. */
  readonly cement?: string
  /** Day since which the result is known, since 1970-01-01. */
  readonly knownDay: number
}

export interface SourceLot {
  readonly row: ListedLot
  readonly standing: LotStanding
  /** Values under the governing set, in its order. */
  readonly judged: readonly JudgedValue[]
  /** Those that decided that it is not met. */
  readonly missed: readonly JudgedValue[]
  /** Those not met whose clause another value, still awaited, decides. */
  readonly missedSoFar: readonly JudgedValue[]
  /** By key of the series. */
  readonly origins: ReadonlyMap<string, Origin>
  readonly shipments: readonly ShipmentEntry[]
  /** Those that may have come from it or from another lot. */
  readonly shared: readonly ShipmentEntry[]
  /** Day on which the last result that it is judged on was known, since 1970-01-01; null while one is awaited. */
  readonly completeDay: number | null
  readonly revisions: readonly Revision[]
  readonly changed: readonly string[]
  readonly verification: NonNullable<LotEntry['record']['verification']>
}

/** What a series and a result have in common. */
export function seriesKey({
  property,
  condition = '',
  age,
}: Pick<Series, 'property' | 'condition' | 'age'>): string {
  return `${property}|${condition}|${age?.hours ?? ''}`
}

/** Lots of the source asked last, since the pages of a source follow one another. */
const newest = new WeakMap<Edition, { readonly id: string; readonly lots: () => readonly SourceLot[] }>()

/** Every lot of a source in order of sampling; each is read once. */
export function sourceLots(edition: Edition, id: string): readonly SourceLot[] {
  const known = newest.get(edition)
  if (known?.id === id) return known.lots()
  const read = () => edition.lotsOf(id).map((row) => sourceLot(edition, row))
  const lots = onceTraced(`lots of ${id} as its pages read them`, read)
  newest.set(edition, { id, lots })
  return lots()
}

function sourceLot(edition: Edition, row: ListedLot): SourceLot {
  const lot = edition.lot(row.id)
  const [verdict] = lot.verdicts
  const judged = verdict === undefined ? [] : judgedValues(edition, verdict)
  const pending = new Set(
    [...everyClauseOutcome(verdict?.clauses ?? [])].flatMap(({ id, outcome }) =>
      outcome === 'pending' ? [id] : [],
    ),
  )
  return {
    row,
    standing: standingOf(edition, row),
    judged,
    missed: judged.filter(({ outcome, decides }) => decides && outcome === 'does-not-meet'),
    missedSoFar: judged.filter(
      ({ outcome, route }) => route !== null && pending.has(route) && outcome === 'does-not-meet',
    ),
    origins: originsOf(edition, lot.results),
    shipments: lot.shipments,
    shared: lot.sharedShipments,
    completeDay: completeOn(lot),
    revisions: lot.revisions,
    changed: lot.changedValues.map(changedWords),
    verification: lot.record.verification ?? [],
  }
}

function judgedValues(edition: Edition, verdict: Verdict): JudgedValue[] {
  const routes = routesOf(verdict.clauses)
  return [...everyClauseOutcome(verdict.clauses)]
    .filter(({ clauses, information }) => clauses === undefined && !information)
    .filter(isCompared)
    .flatMap((clause) => judgedValue(edition, clause, verdict))
    .map((value) => ({ ...value, route: routes.get(value.clause) ?? null }))
}

/** The group of which one clause would do, by clause. */
function routesOf(clauses: readonly ClauseOutcome[], within: string | null = null): Map<string, string> {
  return new Map(
    clauses.flatMap(({ id, combine, clauses: members }) =>
      members === undefined
        ? within === null
          ? []
          : [[id, within] as const]
        : [...routesOf(members, combine === 'any-of' ? id : within)],
    ),
  )
}

function judgedValue(
  edition: Edition,
  clause: ComparedClause,
  { decidedBy }: Verdict,
): Omit<JudgedValue, 'route'>[] {
  const margin = marginToLimit(clause)
  if (margin === null) return []
  const { units } = edition.site
  return [
    {
      clause: clause.id,
      property: clause.property,
      kind: clause.kind,
      outcome: clause.outcome,
      decides: decidedBy.includes(clause.id),
      title: `${comparedTitle(edition, clause)}${remarkOf(clause)}`,
      value: printedFigure(clause, units),
      limit: limitText(clause.limit),
      by: marginText(Math.abs(margin), clause, units),
      number: clause.value,
      decimals: clause.decimals ?? 1,
      margin,
      inside: insideOf(clause, margin),
      ends: endsOf(clause),
      turn: turnOf(clause, units),
      from: clause.against?.from ?? null,
    },
  ]
}

/** The margin itself where no limit says where the outcome changes, as of a deviation. */
function insideOf(clause: ComparedClause, margin: number): number {
  if (clause.kind !== 'value') return margin
  const distances = edgesOf(clause).map(({ edge, side }) => (side === 'low' ? 1 : -1) * (clause.value - edge))
  return distances.length === 0 ? margin : Math.min(...distances)
}

function turnOf(clause: ComparedClause, units: UnitSystem): string | null {
  const [first, ...others] = clause.kind === 'value' ? edgesOf(clause) : []
  if (first === undefined || others.length > 0 || clause.limit.values.includes(first.edge)) return null
  return quantity(first.edge, (clause.decimals ?? 0) + 1, clause.unit ?? '', units)
}

/** A margin is a difference, which has no zero point of its own. */
function marginText(margin: number, { decimals, unit }: ComparedClause, units: UnitSystem): string {
  const printed = printedUnit(unit ?? '', decimals ?? 1, units)
  return marginWords(printed.of(margin) - printed.of(0), printed.decimals, printed.unit)
}

function endsOf({ limit }: ComparedClause): readonly number[] {
  return limit.operator === 'magnitude-at-most' ? limit.values.flatMap((end) => [-end, end]) : limit.values
}

function remarkOf({ kind, against }: ClauseOutcome): string {
  if (kind === 'statistic') return ', statistic'
  if (kind !== 'deviation') return ''
  return against?.from === 'preceding' ? ', difference from the mean before' : ', difference'
}

/** In order of appearance. */
export function laboratoriesOf(lots: readonly Pick<SourceLot, 'origins'>[]): string[] {
  return [
    ...new Set(lots.flatMap(({ origins }) => [...origins.values()].map(({ laboratory }) => laboratory))),
  ]
}

/** The first result that counts stands for several of a series. */
export function originsOf(
  { controls }: Pick<Edition, 'controls'>,
  results: readonly Result[],
): Map<string, Origin> {
  const origins = new Map<string, Origin>()
  for (const result of results) {
    if (result.role !== 'producer' || origins.has(seriesKey(result))) continue
    const cement = controls.get(result.control ?? '')?.record.cement?.lot
    origins.set(seriesKey(result), {
      laboratory: result.laboratory,
      knownDay: knownSince(result).day,
      ...(result.control === undefined ? {} : { control: result.control }),
      ...(cement === undefined ? {} : { cement }),
    })
  }
  return origins
}
