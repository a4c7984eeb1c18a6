/** The ten statements at the head of a source's page, each leading to its section or lot. */
import type { PanelModel } from '../../charts/panel.ts'
import { propertyWords } from '../../words/property-names.ts'
import { plain, type Said } from '../../words/said.ts'
import {
  latestWords,
  missedSoFarWords,
  missedWords,
  questionWords,
  uniformityWords,
  type UniformityWords,
  yearWords,
} from '../../words/source-strip.ts'
import type { StandingMark } from '../../words/standing.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { isInForce } from './last-lot.ts'
import type { AtLimitView } from './source-at-limits.ts'
import { divertedRange } from './source-diverted.ts'
import type { SourceQuestions } from './source-questions.ts'
import { type JudgedSeries, judgedSeries } from './judged-series.ts'
import { seriesKey, type SourceLot } from './source-lots.ts'
import { agencyLine } from './source-strip-agency.ts'
import { closestLine } from './source-strip-closest.ts'
import { lateLine, shippedLine } from './source-strip-deliveries.ts'
import { type MonthCell, panelFigure } from './source-strip-figures.ts'
import { trendSaid } from './source-trend.ts'

export type SectionId =
  | 'open-questions'
  | 'failed-lots'
  | 'charts'
  | 'by-shipment'
  | 'agency'
  | 'completeness'
  | 'all-lots'
  | 'laboratories'
  | 'listing'
  | 'not-checked'

export interface StripLine {
  readonly label: string
  readonly section: SectionId
  readonly says: readonly Said[]
  /** What belongs to it, in smaller letters. */
  readonly rest: readonly Said[]
  readonly figure: StripFigure | null
}

export type StripFigure =
  | { readonly kind: 'marks'; readonly marks: readonly LotMark[]; readonly left: number }
  /** Thousandths of the width. */
  | { readonly kind: 'share'; readonly share: number; readonly label: string }
  | { readonly kind: 'months'; readonly cells: readonly MonthCell[] }
  | { readonly kind: 'panel'; readonly model: PanelModel; readonly label: string }

/** A lot of the last twelve months as a mark that opens it. */
export interface LotMark {
  readonly id: string
  readonly number: string
  readonly mark: StandingMark
  readonly words: string
}

/** Marks that a line has room for; the newest are shown. */
const MARKS = 40
const YEAR = 365

export interface StripInput {
  readonly edition: Edition
  readonly source: SourceEntry
  /** All lots of the source. */
  readonly lots: readonly SourceLot[]
  readonly questions: SourceQuestions
  readonly closest: JudgedSeries | null
  /** Key of the series that governs. */
  readonly governing: string | null
  readonly atLimits: readonly Pick<AtLimitView, 'title' | 'shown'>[]
}

/** Lots sampled in the twelve months before the as-of date. */
export function ofLastYear({ asOf }: Pick<Edition, 'asOf'>, lots: readonly SourceLot[]): SourceLot[] {
  return lots.filter(({ row }) => asOf.day - YEAR < row.sampled.day)
}

/** Lots withdrawn in the same time, whenever they were sampled: a withdrawal counts in the year in which it was made. */
export function withdrawnInYear({ asOf }: Pick<Edition, 'asOf'>, lots: readonly SourceLot[]): SourceLot[] {
  return lots.filter(({ row }) => asOf.day - YEAR < (row.withdrawn?.day ?? Number.NEGATIVE_INFINITY))
}

export function sourceStrip(input: StripInput): StripLine[] {
  const recent = ofLastYear(input.edition, input.lots)
  const latest = latestLine(input.lots)
  return [
    ...(latest === null ? [] : [latest]),
    yearLine(input, recent),
    closestLine(input),
    trendLine(input),
    uniformityLine(recent),
    agencyLine(input),
    lateLine(input),
    shippedLine(input, recent),
    questionLine(input),
  ]
}

function latestLine(lots: readonly SourceLot[]): StripLine | null {
  const last = lots.findLast(({ row }) => isInForce(row)) ?? lots.at(-1)
  if (last === undefined) return null
  const { row, standing, missed, missedSoFar } = last
  return {
    label: 'Latest lot',
    section: 'all-lots',
    says: latestWords({ id: row.id, number: row.number, sampled: row.sampled, standing }, missed),
    rest: [
      ...missedSoFar.map((value) => plain(`${missedSoFarWords(value)}. `)),
      ...missed.slice(1, 3).map((value) => plain(`Also ${missedWords(value)}. `)),
    ],
    figure: null,
  }
}

function yearLine({ edition, source, governing, lots }: StripInput, recent: readonly SourceLot[]): StripLine {
  const is = (mark: StandingMark) => recent.filter(({ standing }) => standing.mark === mark).length
  const failed = recent.filter(isFailed)
  const ledger = source.record.diverted
  const since = edition.asOf.day - YEAR
  const withdrawn = withdrawnInYear(edition, lots)
  const diverted = ledger?.filter(({ on }) => since < on.day)
  return {
    label: 'Last 12 months',
    section: 'failed-lots',
    says: yearWords(
      {
        lots: recent.length,
        failed: failed.length,
        withdrawn: withdrawn.length,
        withdrawnEarlierLots: withdrawn.filter((lot) => !recent.includes(lot)).length,
        notValid: is('not-valid'),
        pending: is('pending') + is('meets-so-far'),
        drafts: is('draft'),
        undecided:
          is('insufficient-history') +
          is('not-reported') +
          is('inconclusive') +
          recent.filter(failsSoFar).length,
        diverted:
          diverted === undefined
            ? null
            : {
                entries: diverted.length,
                massT: diverted.reduce((total, { mass }) => total + mass.value, 0),
                results: divertedRange(
                  diverted,
                  source.series.find((own) => seriesKey(own) === governing),
                  edition.site.units,
                ),
              },
      },
      edition.site.units,
    ),
    rest: [...failed.slice(-2).flatMap(failedSaid), ...withdrawn.slice(-2).flatMap(withdrawnSaid)],
    figure: {
      kind: 'marks',
      marks: recent.slice(-MARKS).map(lotMark),
      left: Math.max(0, recent.length - MARKS),
    },
  }
}

/** A lot that is withdrawn is counted as such alone; one that an overdue result can still bring to meet has not failed yet. */
export function isFailed(lot: SourceLot): boolean {
  return lot.standing.mark === 'does-not-meet' && !failsSoFar(lot)
}

function failsSoFar({ standing, row }: SourceLot): boolean {
  return standing.mark === 'does-not-meet' && row.outcomes[0]?.soFar === true
}

function failedSaid({ row, missed }: SourceLot): Said[] {
  const what = missed.map(({ title, by }) => `${title.charAt(0).toLowerCase()}${title.slice(1)} by ${by}`)
  return [{ text: row.number, lot: row.id }, plain(`: ${what.join(', ') || 'see its certificate'}. `)]
}

function withdrawnSaid({ row, standing, missed }: SourceLot): Said[] {
  const what = missed.map(({ title, by }) => `${title.charAt(0).toLowerCase()}${title.slice(1)} by ${by}`)
  return [
    { text: row.number, lot: row.id },
    plain(` ${standing.brief}${what.length === 0 ? '' : `: ${what.join(', ')}`}. `),
  ]
}

function lotMark({ row, standing }: SourceLot): LotMark {
  return { id: row.id, number: row.number, mark: standing.mark ?? 'not-applicable', words: standing.brief }
}

function trendLine(input: StripInput): StripLine {
  const { says, rest } = trendSaid(input)
  const clause = input.closest?.clause
  const whole = judgedSeries(input.lots).find((series) => series.clause === clause)
  const figure = whole === undefined ? null : panelFigure(whole)
  return { label: 'Trend', section: 'charts', says, rest, figure }
}

function uniformityLine(recent: readonly SourceLot[]): StripLine {
  const series = judgedSeries(recent)
    .filter(({ values }) => values[0]?.judged.from === 'preceding')
    .sort((a, b) => Number(isDensity(a)) - Number(isDensity(b)))
  const counts = series.flatMap(({ values }): UniformityWords[] => {
    const judged = values.at(-1)?.judged
    if (judged === undefined) return []
    return [
      {
        name: propertyWords({ property: judged.property }),
        outside: values.filter((value) => value.judged.outcome === 'does-not-meet').length,
        judged: values.length,
        half: judged.limit.replace(/^[≤±]\s?/, ''),
      },
    ]
  })
  return {
    label: 'Uniformity',
    section: 'charts',
    says: uniformityWords(counts),
    rest: [],
    figure: series[0] === undefined ? null : panelFigure(series[0]),
  }
}

/** The residue comes first: it moves with the material. */
function isDensity({ values }: JudgedSeries): boolean {
  return values[0]?.judged.property === 'density'
}

function questionLine({ source, questions }: StripInput): StripLine {
  return {
    label: 'Open questions',
    section: 'open-questions',
    says: questionWords(
      questions.published
        ? {
            count: questions.open.length + questions.more,
            oldestDays: questions.oldestDays,
            undated: questions.undated,
            checks: source.checks,
          }
        : null,
    ),
    rest: [],
    figure: null,
  }
}
