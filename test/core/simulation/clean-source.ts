/**
 * Sources without any cause, and the same with one planted: lots, controls, specimens, splits and independent samples
 * drawn from normal distributions, put through every check that chance can raise.
 */
import { sourceAgency } from '../../../src/core/agency/source-agency.ts'
import { pairsOfLot } from '../../../src/core/agency/pairs.ts'
import { type PrecisionRow, precisionRow } from '../../../src/core/agency/precision.ts'
import { agencyLotChecks, agencySourceChecks } from '../../../src/core/checks/agency-differs.ts'
import { atTheLimits, bunchedAtLimits } from '../../../src/core/checks/at-the-limits.ts'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import type { Checked } from '../../../src/core/checks/checked.ts'
import { type AuditedControl, batchStandings } from '../../../src/core/checks/control-batches.ts'
import { controlDrift } from '../../../src/core/checks/control-drift.ts'
import { historyChecks } from '../../../src/core/checks/history-checks.ts'
import { laboratoryChecks } from '../../../src/core/checks/laboratories.ts'
import { type ReadBatch, scatterSmall, unevenLastDigits } from '../../../src/core/checks/raw-readings.ts'
import { readingsAlike, readingsIndex, type ReadingsOfLot } from '../../../src/core/checks/readings-alike.ts'
import type { ComparablePoint } from '../../../src/core/history/comparable-points.ts'
import { controlBatchSeries } from '../../../src/core/history/control-batch-history.ts'
import type { SourceEvent } from '../../../src/core/history/event-steps.ts'
import type { SeriesLimit } from '../../../src/core/history/source-history.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { correlated } from '../../../src/core/statistics/false-alarms.ts'
import { agencys, lotOf } from '../agency/fixture.ts'
import { AT_LEAST_75, historyOf, seriesOf } from '../history/history-fixture.ts'
import { result } from '../judging/fixture.ts'
import { normal, uniform } from './chance.ts'

/** What a planted defect does to a value, by the place of its lot. */
type Change = (value: number, place: number) => number

/** Defects of one source; none of them in a clean one. */
export interface Planted {
  /** 28 d index, loss on ignition, residue, and strength of the control. */
  readonly index?: (value: number, place: number, control: number) => number
  readonly loss?: Change
  readonly control?: Change
  /** Load of a specimen, from its true mean and its own deviation. */
  readonly load?: (mean: number, deviation: number) => number
  /** Agency less producer, of a split and of an independent sample. */
  readonly split?: Change
  readonly independent?: Change
  /** The lot whose analysis stands again in the next. */
  readonly copied?: number
  readonly event?: SourceEvent
}

export interface CleanSource {
  readonly id: string
  readonly lots: number
  /** Correlation of neighbouring lots. */
  readonly phi: number
  readonly seed: number
  readonly planted?: Planted
}

/** Lots a week apart from 1 January 2016 on, a new control cement for each hundred. */
const [FIRST, EVERY, OF_CEMENT] = [16_801, 7, 100]
const AT_MOST_6: SeriesLimit = {
  ...{ criterion: 'c618', clause: 'loss', written: ['6.0 %'], operator: 'at-most' },
  ...{ low: null, high: 6.05 },
}
const AT_MOST_34: SeriesLimit = { ...AT_MOST_6, clause: 'residue', written: ['34 %'], high: 34.5 }
const RULES = [{ of: 3, rangePercent: 8.7 }]
/** Of several laboratories: two results differ by 0.2 · √2 as a standard deviation. */
const ROWS: PrecisionRow[] = [
  precisionRow({
    property: 'loss-on-ignition',
    laboratories: 'several',
    'standard-deviation': '0.20 percentage points',
    source: 'drawn so',
  }),
].flatMap((row) => row ?? [])

const same: Change = (value) => value
const day = (place: number) => momentOfDay(FIRST + EVERY * place)
const cementAt = (place: number) => `C${Math.floor(place / OF_CEMENT)}`

/** What every check that chance can raise says of a source, and of its laboratory. */
export function checkedSource(source: CleanSource): Checked[] {
  const { id, lots, phi, seed, planted = {} } = source
  const draw = normal(seed)
  const { index: changed = same, control = same } = planted
  const controls = Array.from({ length: lots }, (_, place) => control(38 * Math.exp(0.03 * draw()), place))
  const series = (mean: number, deviation: number) =>
    correlated(phi, lots, draw).map((value) => mean + deviation * value)
  const index = series(80, 3).map((value, place) => changed(value, place, controls[place] ?? Number.NaN))
  const loss = series(2.5, 0.3).map(planted.loss ?? same)
  const residue = series(18, 1.2)
  return [
    ...ofHistory(source, { index, loss, residue, controls }),
    bunchedAtLimits(id, atTheLimits(index.map((value, place) => judgedLot(id, value, place))), 0),
    ...ofControls(id, controls, draw),
    ...ofReadings(source, draw),
    ...ofAgency(source, loss, draw),
  ]
}

interface Drawn {
  readonly index: readonly number[]
  readonly loss: readonly number[]
  readonly residue: readonly number[]
  readonly controls: readonly number[]
}

function ofHistory({ id, planted = {} }: CleanSource, { index, loss, residue, controls }: Drawn): Checked[] {
  const events = [
    { date: momentOfDay(FIRST + EVERY * Math.floor(index.length / 3)), title: 'outage', kind: 'outage' },
    ...(planted.event === undefined ? [] : [planted.event]),
  ]
  const points = (values: readonly number[]): ComparablePoint[] =>
    values.map((value, place) => ({
      ...{ place, value, bounded: false, sampled: day(place), laboratory: 'works' },
      cluster: `${id}/${place}`,
    }))
  const ofIndex = points(index).map((point, place) => ({
    ...point,
    cement: cementAt(place),
    controlValue: controls[place] ?? Number.NaN,
  }))
  return historyChecks(
    id,
    historyOf([
      seriesOf(ofIndex, {
        source: id,
        condition: 'c311',
        age: readAge('28 d'),
        limits: [AT_LEAST_75],
        events,
      }),
      seriesOf(points(loss), { source: id, property: 'loss-on-ignition', limits: [AT_MOST_6], events }),
      seriesOf(points(residue), { source: id, property: 'residue-45um', limits: [AT_MOST_34], events }),
    ]),
  )
}

function judgedLot(id: string, value: number, place: number): AuditedLot {
  const key = `strength-activity-index|c311|28 d|||${place}`
  const limit = { operator: 'at-least', written: ['75 %'], values: [75], unit: '%', layer: 's' }
  const clause = {
    ...{ id: 'activity', kind: 'value', property: 'strength-activity-index', condition: 'c311' },
    ...{ value, decimals: 0, unit: '%', information: false, limit, result: key },
    outcome: value < 74.5 ? 'does-not-meet' : 'meets',
  }
  const verdicts = [{ criterion: 'c618', clauses: [clause] }]
  return { id: `${id}/${place}`, results: [{ key }], verdicts } as unknown as AuditedLot
}

/** Chart of the batches, each batch among those before it, and a proficiency round every half year. */
function ofControls(id: string, values: readonly number[], draw: () => number): Checked[] {
  const strength = (value: number, place: number) =>
    ({
      tested: day(place),
      ...{ property: 'compressive-strength', condition: 'c311', age: readAge('28 d'), unit: 'MPa' },
      ...{ decimals: 1, value, valid: true, reasons: [] },
    }) as unknown as Result
  const batches = values.map((value, place) => ({
    ...{ id: `K${place}`, laboratory: 'works', cast: day(place), cement: cementAt(place) },
    results: [strength(value, place)],
  }))
  const controls = new Map<string, AuditedControl>(
    batches.map(({ cement, results, ...batch }) => [
      batch.id,
      { id: batch.id, results, record: { ...batch, condition: 'c311', cement: { lot: cement } } },
    ]),
  )
  const lots = values.map((_, place) => ({
    id: `${id}/${place}`,
    results: [{ role: 'producer', laboratory: 'works', control: `K${place}`, tested: day(place) }],
  })) as unknown as AuditedLot[]
  const proficiency = Array.from({ length: Math.ceil(values.length / 26) }, (_, round) => ({
    ...{ round: `R${round}`, date: day(26 * round), property: 'SO3' as const, z: draw() },
  }))
  const records = new Map([['works', { proficiency, bridges: [] }]])
  const asked = laboratoryChecks(
    { source: id, lots, controls, standings: batchStandings(controls.values()), records },
    day(values.length),
  )
  const drift = controlDrift({ laboratory: 'works', series: controlBatchSeries(batches, []) })
  return [
    drift,
    ...asked.filter(({ check }) => check === 'control-batch-off' || check === 'proficiency-open'),
  ]
}

function ofReadings({ id, lots, seed, planted = {} }: CleanSource, draw: () => number): Checked[] {
  const { load = (mean: number, deviation: number) => mean + deviation } = planted
  const digit = uniform(seed + 1)
  const batches = Array.from({ length: lots }, (_, place): ReadBatch => {
    const mean = 70 + 20 * digit()
    const specimens = [1, 2, 3].map(() => ({
      written: Number(load(mean, 0.025 * mean * draw()).toFixed(1)),
      ...{ unit: 'kN', decimals: 1 },
    }))
    const head = { laboratory: 'works', condition: 'c311', of: 'strength' as const, rules: RULES }
    return { lot: `${id}/${place}`, ...head, specimens }
  })
  const readings = Array.from({ length: lots }, (_, place) => ({
    id: `${id}/${place}`,
    readings: [analysis(draw)],
  }))
  const { copied } = planted
  const again = copied === undefined ? undefined : readings[copied]
  if (again !== undefined && copied !== undefined)
    readings[copied + 1] = { id: `${id}/${copied + 1}`, readings: again.readings }
  const ofLot = new Map(readings.map((lot) => [lot.id, lot.readings]))
  const index = readingsIndex([...ofLot.keys()], (lot) => ofLot.get(lot) ?? [])
  const alike = readings.flatMap((lot) => readingsAlike(lot, index))
  return [
    unevenLastDigits(id, batches, () => undefined),
    scatterSmall(id, batches),
    { check: 'readings-alike', looked: lots, findings: alike },
  ]
}

function analysis(draw: () => number): ReadingsOfLot {
  const oxides = { SiO2: 52, Al2O3: 24, Fe2O3: 7, CaO: 6, MgO: 2, SO3: 1 }
  const values = Object.entries(oxides).map(
    ([key, mean]) => `${key} ${(mean * (1 + 0.03 * draw())).toFixed(2)} %`,
  )
  return { of: 'oxides', sample: 'C', laboratory: 'works', values }
}

/** A split of every tenth lot, an independent sample of every twenty-fifth, both of loss on ignition. */
function ofAgency(
  { id, planted: { split = same, independent = same } = {} }: CleanSource,
  loss: readonly number[],
  draw: () => number,
): Checked[] {
  const lots = loss.map((value, place) => {
    const own = result('loss-on-ignition', value)
    // Each laboratory has its own error of testing; an independent sample is a lot of its own.
    const splits =
      place % 10 === 0 ? [agencys('loss-on-ignition', value + split(0.2 * Math.SQRT2 * draw(), place))] : []
    const apart = place % 25 === 5 ? [independentOf(2.5 + independent(0.3 * draw(), place))] : []
    return lotOf(EVERY * place, [own, ...splits, ...apart], { id: `${id}/${place}` })
  })
  const compared = sourceAgency({ asOf: day(loss.length), lots, samples: [], plan: [], precision: ROWS })
  return [
    ...lots.flatMap((lot) => agencyLotChecks(lot.id, pairsOfLot(lot, ROWS))),
    ...agencySourceChecks(id, compared),
  ]
}

function independentOf(value: number): Result {
  return agencys('loss-on-ignition', value, { sample: 'I', sampleKind: 'independent' })
}
