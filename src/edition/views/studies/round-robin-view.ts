/** What a round robin's page shows of each material. */
import { laneBars, type LaneBarsModel } from '../../../charts/lane-bars.ts'
import { CONSISTENCY_LEVEL, criticalH, criticalK } from '../../../core/studies/interlaboratory/consistency.ts'
import type { Deviation, Precision } from '../../../core/studies/interlaboratory/precision.ts'
import {
  FEWEST_LABORATORIES,
  isPilot,
  type RoundRobinMaterial,
} from '../../../core/studies/interlaboratory/round-robin.ts'
import { number, plainNumber, plural } from '../../../words/numbers.ts'
import { sentence } from '../../../words/sentences.ts'
import {
  conditionName,
  NO_PRECISION,
  OUTLIER_STANDINGS,
  OUTLIER_TESTS,
  STUDY_ROUTES,
} from '../../../words/studies.ts'
import { type LevelsView, levelsView, type ScoresView, scoresView } from './precision-view.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface RoundRobinView {
  readonly groups: readonly RoundRobinGroup[]
}

/** Materials at one condition and age, by one route. */
export interface RoundRobinGroup {
  readonly id: string
  readonly heading: string
  readonly lead: readonly string[]
  readonly statement: string
  readonly precision: readonly PrecisionLine[]
  readonly levels: LevelsView | null
  readonly scores: ScoresView | null
  readonly cells: CellTable
  readonly h: LaneBarsModel | null
  readonly k: LaneBarsModel | null
  readonly critical: string
  readonly outliers: readonly {
    readonly material: string
    readonly test: string
    readonly laboratories: string
    readonly statistic: string
    readonly critical: string
    readonly standing: string
  }[]
}

export interface PrecisionLine {
  readonly material: string
  readonly mean: string
  readonly repeatability: string
  readonly reproducibility: string
  readonly limits: string
  readonly robust: string
  /** In place of figures. */
  readonly reason: string
}

export interface CellTable {
  readonly laboratories: readonly string[]
  readonly rows: readonly {
    readonly material: string
    readonly cells: readonly { readonly results: string; readonly hk: string }[]
  }[]
}

export function roundRobinView(study: StudyEntry, materials: readonly RoundRobinMaterial[]): RoundRobinView {
  const groups = Map.groupBy(
    materials,
    ({ property, condition, age }) => `${property}-${condition}-${age.hours}`,
  )
  return { groups: [...groups].map(([id, own]) => groupView(study, id, own)) }
}

function groupView(study: StudyEntry, id: string, own: readonly RoundRobinMaterial[]): RoundRobinGroup {
  const [first] = own
  if (first === undefined) throw new RangeError('groupView needs a material, got none')
  const where = `${conditionName(study.record.conditions, first.condition)}, ${first.age.text}`
  const laboratories = [...new Set(own.flatMap(({ cells }) => cells.map(({ laboratory }) => laboratory)))]
  const replicates = Math.max(...own.flatMap(({ cells }) => cells.map(({ values }) => values.length)))
  const [h, k] = [
    3 <= laboratories.length ? criticalH(laboratories.length, CONSISTENCY_LEVEL) : null,
    2 <= replicates && 2 <= laboratories.length
      ? criticalK(laboratories.length, replicates, CONSISTENCY_LEVEL)
      : null,
  ]
  return {
    id,
    heading: `${sentence(STUDY_ROUTES[first.property])}, ${where}`,
    lead: leadSentences(own, laboratories.length),
    statement: statementOf(own, laboratories.length, where),
    precision: own.map(precisionLine),
    levels: levelsView(own),
    scores: scoresView(own, laboratories),
    cells: cellTable(own, laboratories),
    h: barsOf(own, 'h', h === null ? [] : [-h, h]),
    k: barsOf(own, 'k', k === null ? [] : [k]),
    critical:
      h === null || k === null
        ? ''
        : `Lines: critical values at 0.5 %, h ${plainNumber(h, 2)} and k ${plainNumber(k, 2)} for ${laboratories.length} laboratories with ${replicates} results. A pattern across materials says more than a single value.`,
    outliers: own.flatMap(({ material, outliers }) =>
      outliers
        .filter(({ standing }) => standing !== 'in-line')
        .map((test) => ({
          material,
          test: OUTLIER_TESTS[test.test],
          laboratories: test.laboratories.join(' and '),
          statistic: plainNumber(test.statistic, 3),
          critical: `${plainNumber(test.straggler, 3)} and ${plainNumber(test.outlier, 3)}`,
          standing: OUTLIER_STANDINGS[test.standing],
        })),
    ),
  }
}

function leadSentences(own: readonly RoundRobinMaterial[], laboratories: number): string[] {
  const beyond = own.flatMap(({ material, consistency }) =>
    (consistency ?? []).flatMap(({ laboratory, h, k, hBeyond, kBeyond }) => [
      ...(hBeyond ? [`laboratory ${laboratory} lies apart on ${material} (h = ${plainNumber(h, 2)})`] : []),
      ...(kBeyond && k !== null
        ? [`laboratory ${laboratory} scatters on ${material} (k = ${plainNumber(k, 2)})`]
        : []),
    ]),
  )
  const oneSided = alwaysOnOneSide(own)
  const censored = own.reduce((total, one) => total + one.censored, 0)
  return [
    beyond.length === 0 ? 'No h and no k is beyond its critical value.' : `${sentence(beyond.join('; '))}.`,
    ...oneSided,
    'A result is left out only for a cause that its laboratory finds; nothing was left out for its value.',
    ...(own.some(({ sharesControl }) => sharesControl)
      ? ['Some replicates share a control batch, whose scatter is then not in s_r: s_r is too small.']
      : []),
    ...(0 < censored
      ? [`${plural(censored, 'index is', 'indices are')} known only as above a bound and left out.`]
      : []),
    ...(isPilot(laboratories)
      ? [
          `${laboratories} laboratories are fewer than ${FEWEST_LABORATORIES}: a pilot, not a statement of precision.`,
        ]
      : []),
  ]
}

/** A laboratory on one side of the mean in every material asks for a cause, even with no single value beyond. */
function alwaysOnOneSide(own: readonly RoundRobinMaterial[]): string[] {
  const all = own.flatMap(({ consistency }) => consistency ?? [])
  return [...Map.groupBy(all, ({ laboratory }) => laboratory)].flatMap(([laboratory, values]) => {
    const high = values.filter(({ h }) => 1 < h).length
    const low = values.filter(({ h }) => h < -1).length
    const most = Math.max(high, low)
    if (values.length < 4 || most < values.length - 1) return []
    return [
      `Laboratory ${laboratory} reads ${high < low ? 'low' : 'high'} on ${most} of ${values.length} materials by more than one standard deviation: the pattern asks for a cause.`,
    ]
  })
}

function statementOf(own: readonly RoundRobinMaterial[], laboratories: number, where: string): string {
  const found = own.flatMap(({ precision }) => (typeof precision === 'string' ? [] : [precision]))
  if (found.length === 0 || isPilot(laboratories)) return ''
  const range = (pick: (one: Precision) => number) => {
    const values = found.map(pick)
    return `${plainNumber(Math.min(...values), 1)} to ${plainNumber(Math.max(...values), 1)}`
  }
  const first = own[0]
  return `Draft of a statement: for the ${first === undefined ? 'index' : STUDY_ROUTES[first.property]} at ${where}, from ${range(({ mean }) => mean)} %, the standard deviation was ${range(({ repeatability }) => repeatability.value)} points within a laboratory and ${range(({ reproducibility }) => reproducibility.value)} points between laboratories (${laboratories} laboratories, ${plural(own.length, 'material', 'materials')}). In about one case of twenty, two results of one material are therefore expected to differ by more than r in one laboratory, ${range(({ repeatabilityLimit }) => repeatabilityLimit)} points by material, and by more than R in two laboratories, ${range(({ reproducibilityLimit }) => reproducibilityLimit)} points.`
}

function precisionLine({ material, precision, robust }: RoundRobinMaterial): PrecisionLine {
  if (typeof precision === 'string')
    return {
      material,
      mean: '',
      repeatability: '',
      reproducibility: '',
      limits: '',
      robust: '',
      reason: NO_PRECISION[precision],
    }
  const spread = ({ value, low, high }: Deviation) =>
    `${plainNumber(value, 2)} (${plainNumber(low, 2)} to ${plainNumber(high, 2)})`
  return {
    material,
    mean: plainNumber(precision.mean, 1),
    repeatability: spread(precision.repeatability),
    reproducibility: spread(precision.reproducibility),
    limits: `${plainNumber(precision.repeatabilityLimit, 1)} and ${plainNumber(precision.reproducibilityLimit, 1)}`,
    robust: robust === null ? '–' : `${plainNumber(robust.mean, 1)}, s* ${plainNumber(robust.deviation, 2)}`,
    reason: '',
  }
}

function cellTable(own: readonly RoundRobinMaterial[], laboratories: readonly string[]): CellTable {
  return {
    laboratories,
    rows: own.map(({ material, cells, consistency }) => ({
      material,
      cells: laboratories.map((laboratory) => {
        const cell = cells.find((one) => one.laboratory === laboratory)
        const figures = consistency?.find((one) => one.laboratory === laboratory)
        return {
          results: cell === undefined ? 'missing' : cell.values.map((value) => number(value, 1)).join(', '),
          hk:
            figures === undefined
              ? ''
              : `h ${plainNumber(figures.h, 2)}${figures.k === null ? '' : `, k ${plainNumber(figures.k, 2)}`}`,
        }
      }),
    })),
  }
}

function barsOf(
  own: readonly RoundRobinMaterial[],
  which: 'h' | 'k',
  limits: readonly number[],
): LaneBarsModel | null {
  return laneBars(
    own.map(({ material, consistency }) => ({
      name: material,
      bars: (consistency ?? []).flatMap((one) => {
        const value = one[which]
        const beyond = which === 'h' ? one.hBeyond : one.kBeyond
        return value === null ? [] : [{ name: one.laboratory, value, beyond }]
      }),
    })),
    limits,
  )
}
