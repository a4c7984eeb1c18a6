/** Audit checks on the laboratories that a source uses: control batches, control cements, proficiency rounds. */
import { compareMoments, dateOf, daysBetween, type Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import { kept } from '../measure/kept.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import type { AuditedControl, BatchStanding } from './control-batches.ts'
import { type Finding, findingOn, found } from './finding.ts'
import type { CementChange } from './laboratory-findings.ts'

/** A round in each year: proficiency programs send two samples every 12 months (read of one). */
const ROUND_DAYS = 365
/** Two standard deviations: common practice, no source. */
const LOW = 2

export interface ProficiencyRecord {
  readonly proficiency: readonly {
    readonly round: string
    readonly date: Moment
    readonly property: PropertyKey
    readonly z: number
    readonly closed?: Moment
  }[]
  /** Control cements joined by batches made side by side. */
  readonly bridges: readonly { readonly from: string; readonly to: string }[]
}

export interface SourceControls {
  readonly source: string
  /** In order of sampling. */
  readonly lots: readonly AuditedLot[]
  readonly controls: ReadonlyMap<string, AuditedControl>
  readonly standings: ReadonlyMap<string, readonly BatchStanding[]>
  /** By laboratory. */
  readonly records: ReadonlyMap<string, ProficiencyRecord>
}

/**
 * What is asked of the laboratories whose results a source reports.
 * @param asOf calendar date
 * Notes: 1. each source that uses a laboratory is told, and says so for itself; 2. of a laboratory whose record could not
 * be read nothing is said to be missing.
 */
export function laboratoryChecks(of: SourceControls, asOf: Moment): Checked[] {
  const used = usedControls(of.lots)
  const laboratories = latestUse(of.lots)
  return [
    batchesOff(of, used),
    cementsUnbridged(of, used),
    openRounds(of, [...laboratories.keys()]),
    lapsedRounds(of, laboratories, asOf),
  ]
}

/** Lots tested beside each control batch. */
function usedControls(lots: readonly AuditedLot[]): Map<string, string[]> {
  const used = new Map<string, string[]>()
  for (const { id, results } of lots)
    for (const control of new Set(results.flatMap((result) => result.control ?? [])))
      kept(used, control, (): string[] => []).push(id)
  return used
}

/** The last day on which each laboratory tested for the producer. */
function latestUse(lots: readonly AuditedLot[]): Map<string, Moment> {
  const latest = new Map<string, Moment>()
  for (const { results } of lots)
    for (const { role, laboratory, tested } of results) {
      const known = latest.get(laboratory)
      if (role === 'producer' && (known === undefined || known.day < tested.day))
        latest.set(laboratory, tested)
    }
  return latest
}

function batchesOff(
  { source, controls, standings }: SourceControls,
  used: ReadonlyMap<string, readonly string[]>,
): Checked {
  const looks = [...used].flatMap(([control, lots]) =>
    (standings.get(control) ?? []).map((standing) => ({ control, lots, standing })),
  )
  const byBatch = Map.groupBy(
    looks.filter(({ standing }) => standing.isFar),
    ({ control }) => control,
  )
  const findings = [...byBatch].flatMap(([control, far]): Finding[] => {
    const [worst] = far.toSorted((a, b) => Math.abs(b.standing.percent) - Math.abs(a.standing.percent))
    const laboratory = controls.get(control)?.record.laboratory
    if (worst === undefined || laboratory === undefined) return []
    const { result, cement, percent, batches, scatter } = worst.standing
    const of = { source, laboratory, control, property: result.property, age: result.age?.text ?? '' }
    const standing = { cement, percent, batches, scatterPercent: scatter.percent }
    const params = { ...of, ...standing, lots: worst.lots }
    return [found(source, { code: 'control-batch-off', params }, control)]
  })
  const expected = looks.reduce((sum, { standing }) => sum + standing.rate, 0)
  return { check: 'control-batch-off', looked: looks.length, expected, findings }
}

function cementsUnbridged(
  { source, controls, records }: SourceControls,
  used: ReadonlyMap<string, readonly string[]>,
): Checked {
  const batches = [...used].flatMap(([id, [lot = '']]): UsedBatch[] => {
    const control = controls.get(id)
    const cement = control?.record.cement?.lot
    return control === undefined || cement === undefined ? [] : [{ lot, ...control.record, cement }]
  })
  let looked = 0
  const findings = [...Map.groupBy(batches, (batch) => batch.laboratory)].flatMap(
    ([laboratory, own]): Finding[] => {
      if (!records.has(laboratory)) return []
      const all = changesOf(own)
      looked += all.length
      const bridges = records.get(laboratory)?.bridges ?? []
      const isBridged = (from: string, to: string) =>
        bridges.some((one) => (one.from === from && one.to === to) || (one.from === to && one.to === from))
      const changes = all.filter(({ from, to }) => !isBridged(from, to))
      if (changes.length === 0) return []
      return [
        found(source, { code: 'cement-unbridged', params: { source, laboratory, changes } }, laboratory),
      ]
    },
  )
  return { check: 'cement-unbridged', looked, findings }
}

/** A control batch with the first lot tested beside it. */
type UsedBatch = Omit<AuditedControl['record'], 'cement'> & {
  readonly lot: string
  /** Its lot. */
  readonly cement: string
}

/** From one cement to the next in order of the first batch with each. */
function changesOf(batches: readonly UsedBatch[]): CementChange[] {
  const first = new Map<string, UsedBatch>()
  for (const batch of batches.toSorted((a, b) => compareMoments(a.cast, b.cast)))
    if (!first.has(batch.cement)) first.set(batch.cement, batch)
  const inOrder = [...first.values()]
  return inOrder.slice(1).map(({ cement, cast, lot }, place) => ({
    from: inOrder[place]?.cement ?? '',
    to: cement,
    on: dateOf(cast).text,
    lot,
  }))
}

function openRounds({ source, records }: SourceControls, laboratories: readonly string[]): Checked {
  const rounds = laboratories.flatMap((laboratory) =>
    (records.get(laboratory)?.proficiency ?? []).map((round) => ({ laboratory, ...round })),
  )
  const open = rounds.filter(({ z, closed }) => LOW < Math.abs(z) && closed === undefined)
  const findings = open.map(({ laboratory, round, date, property, z }) =>
    found(
      source,
      { code: 'proficiency-open', params: { source, laboratory, round, date: date.text, property, z } },
      laboratory,
      round,
      property,
    ),
  )
  return { check: 'proficiency-open', looked: rounds.length, findings }
}

function lapsedRounds(
  { source, records }: SourceControls,
  laboratories: ReadonlyMap<string, Moment>,
  asOf: Moment,
): Checked {
  const inUse = [...laboratories].filter(
    ([laboratory, tested]) => records.has(laboratory) && daysBetween(tested, asOf) <= ROUND_DAYS,
  )
  const findings = inUse.flatMap(([laboratory]): Finding[] => {
    const rounds = records.get(laboratory)?.proficiency ?? []
    const last = rounds.toSorted((a, b) => compareMoments(a.date, b.date)).at(-1)?.date
    if (last !== undefined && daysBetween(last, asOf) <= ROUND_DAYS) return []
    const params = { source, laboratory, last: last?.text ?? null }
    const severity = last === undefined ? 'information' : 'warning'
    return [findingOn(severity, source, { code: 'proficiency-lapsed', params }, laboratory)]
  })
  return { check: 'proficiency-lapsed', looked: inUse.length, findings }
}
