/**
 * Audit checks: results that are possible and hardly true. The ranges are an own choice, wide enough for inert
 * fillers and for silica fume; what is physically impossible is a fault of the record instead.
 */
import { OXIDES } from '../composition/oxides.ts'
import type { MaterialKind } from '../measure/material-kind.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { Result } from '../result/result.ts'
import { sum } from '../statistics/descriptive.ts'
import { type Finding, warningOn } from './finding.ts'

/** By property, in its stored unit: own choice. */
const PLAUSIBLE: Readonly<Partial<Record<PropertyKey, readonly [low: number, high: number]>>> = {
  'strength-activity-index': [30, 200],
  // Silica fume and metakaolin reach ten times their control and more at late ages.
  'resistivity-index': [20, 5000],
  'water-requirement': [70, 140],
  // Mortar of an inert filler on its first day, and what no mortar of a bench reaches: psi read as MPa.
  'compressive-strength': [0.5, 200],
}

/**
 * A strength activity index above this is asked about where the control over the test would be plausible: hardly a material
 * makes mortar half as strong again, and an inert one at a high replacement gives the inverse. Own choice.
 */
const SWAPPED_ABOVE = 150

/** Without these a low total says nothing. */
const MAIN: readonly PropertyKey[] = ['SiO2', 'Al2O3', 'Fe2O3', 'CaO', 'MgO', 'SO3']
/** Per cent of the whole: 102 is a screen of common practice, no source; 85 is an own choice. */
const WHOLE: readonly [low: number, high: number] = [85, 102]
/** Two figures that were rounded to 0.01 may differ by so much and be equal: own choice. */
const ROUNDING = 0.05

/** These gain mass on ignition: sulfide takes up oxygen (EN 196-2 corrects slag cement for it, from memory). */
const GAINING: readonly MaterialKind[] = ['slag', 'blend']

interface LotResults {
  readonly id: string
  readonly kind: MaterialKind
  readonly results: readonly Result[]
}

/**
 * Warnings on results outside what is plausible, on analyses that do not add up, and on a part above its whole.
 * @param lot id as SOURCE/LOT, kind of its source, and its results on a date
 */
export function implausibleResults({ id, kind, results }: LotResults): Finding[] {
  const counted = results.filter(({ valid, censored }) => valid && censored === undefined)
  const analyses = Map.groupBy(
    counted.filter(({ condition }) => condition === undefined),
    ({ role, laboratory, sample, tested }) => [role, laboratory, sample, tested.text].join('|'),
  )
  return [
    ...counted.flatMap((result) => swapped(id, result) ?? outOfRange(id, result)),
    ...[...analyses.values()].flatMap((members) => [
      ...total(id, members),
      ...alkalis(id, members),
      ...loss(id, kind, members),
    ]),
  ]
}

/** The question by its name, in place of the one whether the value is plausible. */
function swapped(lot: string, result: Result): Finding[] | undefined {
  const { property: key, laboratory, sample, value, decimals, control } = result
  const inverse = withoutDust(1e4 / value)
  const [least] = PLAUSIBLE['strength-activity-index'] ?? [0]
  const isAsked = key === 'strength-activity-index' && SWAPPED_ABOVE < value && least <= inverse
  if (!isAsked || control === undefined) return undefined
  const [condition, age] = [result.condition ?? null, result.age?.text ?? null]
  const test = { lot, property: key, condition, age, laboratory, sample }
  const params = { ...test, control, value, inverse, decimals, above: SWAPPED_ABOVE }
  return [warningOn(lot, { code: 'test-and-control-swapped', params }, result.key)]
}

function outOfRange(lot: string, result: Result): Finding[] {
  const range = PLAUSIBLE[result.property]
  const { property: key, laboratory, sample, value, unit, decimals } = result
  if (range === undefined || (range[0] <= value && value <= range[1])) return []
  const [condition, age] = [result.condition ?? null, result.age?.text ?? null]
  const [low, high] = range
  const params = { lot, property: key, condition, age, laboratory, sample, value, unit, decimals, low, high }
  return [warningOn(lot, { code: 'result-implausible', params }, result.key)]
}

function total(lot: string, members: readonly Result[]): Finding[] {
  const oxides = members.filter(({ property: key }) => OXIDES.includes(key))
  const loss = members.find(({ property: key }) => key === 'loss-on-ignition')
  const [first] = oxides
  if (first === undefined) return []
  const isIgnited = oxides.some(({ basis }) => basis === 'ignited')
  const parts = isIgnited || loss === undefined ? oxides : [...oxides, loss]
  const whole = withoutDust(sum(parts.map(({ value }) => value)))
  const isWhole =
    MAIN.every((key) => oxides.some((oxide) => oxide.property === key)) && (isIgnited || loss !== undefined)
  const [low, high] = WHOLE
  if (whole <= high && (!isWhole || low <= whole)) return []
  const { laboratory, sample, tested } = first
  const listed = parts.map(({ property: key, value, decimals }) => ({ property: key, value, decimals }))
  const params = { lot, laboratory, sample, total: whole, unit: '%', low, high, members: listed }
  return [warningOn(lot, { code: 'oxide-total', params }, laboratory, sample, tested.text)]
}

function alkalis(lot: string, members: readonly Result[]): Finding[] {
  const of = (key: PropertyKey) => members.find((member) => member.property === key)
  const [available, whole] = [of('available-alkalis'), of('alkali-equivalent')]
  if (
    available === undefined ||
    whole === undefined ||
    withoutDust(available.value - whole.value) <= ROUNDING
  )
    return []
  const { laboratory, sample, tested } = available
  const params = { lot, laboratory, sample, available: available.value, total: whole.value }
  return [warningOn(lot, { code: 'alkalis-above-total', params }, laboratory, sample, tested.text)]
}

/** A loss below zero, and one of the material as received, which holds its moisture, below that moisture. */
function loss(lot: string, kind: MaterialKind, members: readonly Result[]): Finding[] {
  const of = (key: PropertyKey) => members.find((member) => member.property === key)
  const [lost, dried] = [of('loss-on-ignition'), of('moisture')]
  if (lost === undefined || GAINING.includes(kind)) return []
  const least = lost.basis === 'as received' && dried?.basis === 'as received' ? dried.value : 0
  if (0 <= withoutDust(lost.value - least)) return []
  const { laboratory, sample, tested, value, decimals } = lost
  const moisture = least === 0 || dried === undefined ? null : { value: least, decimals: dried.decimals }
  const params = { lot, laboratory, sample, value, decimals, moisture }
  return [warningOn(lot, { code: 'loss-too-small', params }, laboratory, sample, tested.text)]
}

/** Decimals that totals and parts of an analysis are printed with. */
export const TOTAL_DECIMALS = property('alkali-equivalent').decimals
