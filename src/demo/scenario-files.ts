/** All records of the scenario, one file at a time, and the plan of what was issued when. */
import { takenByAgency } from './agency-samples.ts'
import { type Moment, momentOfDay, yearOf } from '../core/measure/moment.ts'
import { sum } from 'd3'
import { dayOf, dayOfMonth, monthOf, nextWednesday } from './calendar.ts'
import { type Chance, chanceOf } from './chance.ts'
import { furtherFiles } from './further-sources.ts'
import { controlStore, type ControlStore } from './controls.ts'
import { type LotModel, lotModels } from './lot-model.ts'
import { lotText } from './lot-text.ts'
import {
  BUNCHED,
  DRAFT,
  MISSING_MONTHS,
  PLANTED,
  type Planted,
  SKIPPED_NUMBERS,
  SPLITS,
  WITHDRAWN,
} from './planted.ts'
import {
  AS_OF,
  CONDITIONS,
  type DemoSource,
  FIRST_DAY,
  LABORATORY_BIAS,
  SEED,
  SOURCES,
  sourcesOf,
} from './scenario.ts'
import { type DemoFile, siteRecords } from './site-records.ts'
import { studyFiles } from './studies/studies.ts'

export interface DemoIssue {
  readonly lot: string
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn: boolean
  readonly replacedBy?: string
}

export interface ScenarioOptions {
  /** Lots in all; the committed demo's number without it. */
  readonly lots?: number
  /** Sources that such a number of lots is spread over; five without it. */
  readonly sources?: number
  readonly seed?: number
}

const DEMO_LOTS = sum(SOURCES, (source) => source.lots)

/**
 * @param onIssue called for each issue, those of one lot in order of date
 * Note: a larger volume keeps the structure and reaches further back; control batches are written after the
 * lots that share them.
 */
export function* scenarioFiles(
  { lots = DEMO_LOTS, sources: number = SOURCES.length, seed = SEED }: ScenarioOptions,
  onIssue: (issue: DemoIssue) => void,
): Generator<DemoFile> {
  const lastDay = dayOf(AS_OF)
  const chance = chanceOf(seed)
  const firstDay = Math.min(dayOf(FIRST_DAY), lastDay - Math.ceil(lots * 0.27))
  const controls = controlStore(chance, firstDay, lastDay)
  const sources = sourcesOf(number)
  const usual = sum(sources, (source) => source.lots)
  yield* siteRecords(sources)
  let bill = 88_000
  for (const source of sources) {
    const count = lots === DEMO_LOTS ? source.lots : Math.max(1, Math.round((lots * source.lots) / usual))
    const billNumber = () => {
      bill += 1
      return `BL-${bill}`
    }
    yield* sourceLots(
      { source, count, firstDay, lastDay, controls, chance, billNumber, planting: lots === DEMO_LOTS },
      onIssue,
    )
  }
  if (lots === DEMO_LOTS) yield* furtherFiles(seed, lastDay, onIssue)
  // A set that is copied along names one of them, whatever the number of lots.
  yield* studyFiles()
  for (const batch of controls.made.values()) yield { path: `controls/${batch.id}.yaml`, text: batch.text }
}

interface SourceRun {
  readonly source: DemoSource
  readonly count: number
  readonly firstDay: number
  readonly lastDay: number
  readonly controls: ControlStore
  readonly chance: Chance
  readonly billNumber: () => string
  readonly planting: boolean
}

function* sourceLots(run: SourceRun, onIssue: (issue: DemoIssue) => void): Generator<DemoFile> {
  const { source, count, firstDay, lastDay, chance } = run
  const next = lotModels(source, chance)
  const numberOf = lotNumbers(source)
  const ids: string[] = []
  let before: LotModel | undefined
  for (let place = 0; place < count; place += 1) {
    const day = samplingDay(run, place, (lastDay - 20 - firstDay - 7) / Math.max(1, count - 1))
    const model = next(day)
    const id = numberOf(day)
    ids.push(id)
    const planted = run.planting ? plantedIn(source, place, before) : {}
    const castDay = nextWednesday(day + 2)
    const laboratory = laboratoryOn(source, castDay)
    const bias = LABORATORY_BIAS[laboratory] ?? { points: 0, ratio: 1 }
    yield {
      path: `lots/${source.id}/${id}.yaml`,
      text: lotText(
        {
          source,
          id,
          laboratory,
          day,
          castDay,
          lastDay,
          model,
          controls: CONDITIONS.map((condition) => run.controls.batch(laboratory, condition, castDay)),
          biasPoints: bias.points,
          biasRatio: bias.ratio,
          billNumber: run.billNumber,
          planted,
          agency: run.planting ? takenByAgency(source.id, place) : { split: false, independent: false },
        },
        chance,
      ),
    }
    for (const issue of issuesOf(run, place, id, castDay)) onIssue(issue)
    before = model
  }
  const withdrawn = ids[WITHDRAWN.place]
  const replacement = ids[WITHDRAWN.replacement]
  if (run.planting && source.id === WITHDRAWN.source && withdrawn !== undefined && replacement !== undefined)
    onIssue(withdrawal(run, withdrawn, replacement))
}

/** Days at nearly even distances; a month that is to be missing is stepped over. */
function samplingDay({ source, firstDay, chance, planting }: SourceRun, place: number, step: number): number {
  const day = Math.round(firstDay + 7 + place * step + (planting ? chance.whole(-2, 2) : 0))
  const missing = planting ? (MISSING_MONTHS[source.id] ?? []) : []
  return missing.includes(monthOf(day)) ? day + 32 - dayOfMonth(day) : day
}

function lotNumbers(source: DemoSource): (day: number) => string {
  const running = new Map<string, number>()
  return (day) => {
    const year = yearOf(momentOfDay(day))
    const skipped = SKIPPED_NUMBERS[source.id] ?? []
    let number = (running.get(year) ?? 0) + 1
    while (skipped.includes(lotNumber(source, year, number))) number += 1
    running.set(year, number)
    return lotNumber(source, year, number)
  }
}

function lotNumber(source: DemoSource, year: string, number: number): string {
  return `${source.prefix}-${year}-${String(number).padStart(3, '0')}`
}

function laboratoryOn(source: DemoSource, day: number): string {
  return source.laterLaboratory !== undefined && dayOf(source.laterLaboratory.from) <= day
    ? source.laterLaboratory.id
    : source.laboratory
}

function plantedIn(source: DemoSource, place: number, before: LotModel | undefined): Planted {
  const own = PLANTED.filter((entry) => entry.source === source.id && entry.place === place)
  const copied =
    own.some((entry) => entry.what.startsWith('copied')) && before !== undefined ? { oxidesOf: before } : {}
  const split = (SPLITS[source.id] ?? []).includes(place) ? { verification: true as const } : {}
  const gathered = source.id === BUNCHED.source ? { bunched: true as const } : {}
  return Object.assign({}, ...own.map((entry) => entry.planted), copied, split, gathered) as Planted
}

/**
 * Issued with 7-day results, again at 28 d, each a few days after the reading; nothing after the
 * scenario's last day.
 */
function* issuesOf(
  { source, lastDay, planting }: SourceRun,
  place: number,
  id: string,
  castDay: number,
): Generator<DemoIssue> {
  if (planting && source.id === DRAFT.source && place === DRAFT.place) return
  const common = {
    lot: `${source.id}/${id}`,
    by: source.issuer.name,
    function: source.issuer.function,
    withdrawn: false,
  }
  if (castDay + 9 <= lastDay)
    yield { ...common, date: momentOfDay(castDay + 9), reason: 'issued with 7-day results' }
  if (castDay + 30 <= lastDay)
    yield { ...common, date: momentOfDay(castDay + 30), reason: '28-day results added' }
}

function withdrawal({ source, lastDay }: SourceRun, lot: string, replacement: string): DemoIssue {
  return {
    lot: `${source.id}/${lot}`,
    date: momentOfDay(lastDay - 60),
    by: source.issuer.name,
    function: source.issuer.function,
    reason: WITHDRAWN.reason,
    withdrawn: true,
    replacedBy: `${source.id}/${replacement}`,
  }
}
