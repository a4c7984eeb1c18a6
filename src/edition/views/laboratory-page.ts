/** A laboratory's page: accreditation, methods, repeatability, scatter and control mortar. */
import { type Age, isSameAge, readAge } from '../../core/measure/age.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'
import { printedUnits, written } from '../../words/as-written.ts'
import { contactWords } from '../../words/contact.ts'
import { date } from '../../words/dates.ts'
import { scopeOfAccreditation } from '../../words/laboratory-records.ts'
import { sentence } from '../../words/sentences.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { resultText } from '../../words/units.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { ControlEntry, Edition } from '../shape/edition.ts'
import { batchesOf } from './control-series.ts'
import { type LaboratoryCharts, laboratoryCharts } from './laboratory-charts.ts'
import { laboratoryRecords } from './source-laboratories.ts'
import { type ScatterLine, scatterLines } from './scatter-lines.ts'

export interface LaboratoryPageView {
  readonly name: string
  readonly standing: string
  readonly address: string
  readonly accreditation: readonly { readonly sentence: string; readonly scope: string }[]
  readonly methods: readonly { readonly property: string; readonly methods: string }[]
  readonly repeatability: readonly RepeatabilityLine[]
  /** Rounds of proficiency tests, devices, closed days and bridges between control cements; none where none is recorded. */
  readonly records: readonly { readonly label: string; readonly texts: readonly string[] }[]
  readonly scatter: readonly ScatterLine[]
  readonly charts: LaboratoryCharts | null
  readonly batchCount: number
  /** The newest batches first, as many as a page has room for. */
  readonly batches: readonly BatchLine[]
}

export interface RepeatabilityLine {
  /** Property, condition and age. */
  readonly of: string
  readonly between: string
  readonly basis: string
}

/** One control batch on a line; a figure that is not on record is empty. */
export interface BatchLine {
  readonly id: string
  readonly cast: Moment
  readonly condition: { readonly id: string; readonly title: string }
  readonly cement: string
  readonly flow: string
  readonly strength7d: string
  readonly strength28d: string
  readonly resistivity28d: string
}

/** Ages of the columns of batches. */
const AGES = { early: readAge('7 d'), late: readAge('28 d') }

/** Batches in the table; the data file has them all. */
const NEWEST = 60

/** @throws RangeError for a laboratory that is not on record */
export function laboratoryPageView(edition: Edition, id: string): LaboratoryPageView {
  const laboratory = edition.laboratories.get(id)
  if (laboratory === undefined)
    throw new RangeError(`laboratoryPageView needs a laboratory on record, got ${id}`)
  const titleOf = (condition: string) => conditionTitle(edition, condition)
  return {
    name: laboratory.name,
    standing: sentence(laboratory.standing),
    address: [...laboratory.address, contactWords(laboratory)]
      .filter((part) => part !== undefined)
      .join(', '),
    accreditation: (laboratory.accreditation ?? []).map((entry) => accreditation(entry, titleOf)),
    methods: Object.entries(laboratory.methods ?? {}).map(([key, methods]) => ({
      property: titleOfProperty(key),
      methods: (methods ?? []).map(methodWords).join('; '),
    })),
    repeatability: (laboratory.repeatability ?? []).map((entry) => repeatability(entry, titleOf)),
    records: recordsOf(laboratory, edition.asOf),
    scatter: scatterLines(edition, id),
    charts: laboratoryCharts(edition, id),
    ...batchLines(batchesOf(edition.controls, id), titleOf, edition.site.units),
  }
}

function batchLines(
  batches: readonly ControlEntry[],
  titleOf: TitleOf,
  units: UnitSystem,
): Pick<LaboratoryPageView, 'batchCount' | 'batches'> {
  return {
    batchCount: batches.length,
    batches: batches
      .slice(-NEWEST)
      .reverse()
      .map((batch) => batchLine(batch, titleOf, units)),
  }
}

type Entries<Key extends keyof Laboratory> = NonNullable<Laboratory[Key]>
type TitleOf = (condition: string) => string

function titleOfProperty(key: string): string {
  return property(key as PropertyKey).title
}

function accreditation(
  { number, body, from, to, conditions, ...covered }: Entries<'accreditation'>[number],
  titleOf: TitleOf,
): LaboratoryPageView['accreditation'][number] {
  const until = to === undefined ? 'in force' : `to ${date(to)}`
  const at = conditions === undefined ? '' : `; at the conditions ${conditions.map(titleOf).join('; ')}`
  return {
    sentence: `${number}, ${body}: from ${date(from)}, ${until}${at}.`,
    scope: scopeOfAccreditation(covered),
  }
}

function methodWords({
  method,
  edition,
  from,
  to,
}: {
  method: string
  edition?: string
  from?: Moment
  to?: Moment
}): string {
  const name = [method, edition].filter(Boolean).join('-')
  return `${name}${from === undefined ? '' : ` from ${date(from)}`}${to === undefined ? '' : ` to ${date(to)}`}`
}

function repeatability(entry: Entries<'repeatability'>[number], titleOf: TitleOf): RepeatabilityLine {
  const { 'standard-deviation': deviation, 'coefficient-of-variation': relative } = entry
  return {
    of: [titleOfProperty(entry.property), entry.condition && titleOf(entry.condition), entry.age?.text]
      .filter(Boolean)
      .join(', '),
    between:
      deviation !== undefined
        ? printedUnits(deviation)
        : relative === undefined
          ? ''
          : `${written(relative)} of the value`,
    basis: `${entry.basis}, from ${date(entry.from)}`,
  }
}

function recordsOf(laboratory: Laboratory, asOf: Moment): LaboratoryPageView['records'] {
  const all = laboratoryRecords(laboratory, asOf, Number.POSITIVE_INFINITY)
  return [
    { label: 'Proficiency', texts: all.proficiency },
    { label: 'Equipment', texts: all.equipment },
    { label: 'Closed days', texts: all.closed },
    { label: 'Bridges between control cements', texts: all.bridges },
  ]
}

function batchLine({ id, record, results }: ControlEntry, titleOf: TitleOf, units: UnitSystem): BatchLine {
  const figure = (key: PropertyKey, age: Age) => figureOf(results, key, age, units)
  return {
    id,
    cast: record.cast,
    condition: { id: record.condition, title: titleOf(record.condition) },
    cement: record.cement?.lot ?? '',
    flow: record.flow === undefined ? '' : written(record.flow),
    strength7d: figure('compressive-strength', AGES.early),
    strength28d: figure('compressive-strength', AGES.late),
    resistivity28d: figure('bulk-resistivity', AGES.late),
  }
}

function figureOf(results: ControlEntry['results'], key: PropertyKey, age: Age, units: UnitSystem): string {
  const result = results.find((candidate) => candidate.property === key && isSameAge(candidate.age, age))
  if (result === undefined) return ''
  const text = resultText(result, units)
  return result.valid ? text : `${text}, not valid`
}
