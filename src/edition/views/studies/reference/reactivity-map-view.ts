/** Heat against calcium hydroxide consumed, with the regions that the study states. */
import {
  type MapRegion,
  type MapSpan,
  type ReactivityMapModel,
  reactivityMap,
} from '../../../../charts/reactivity-map.ts'
import type { Quantity } from '../../../../core/measure/units.ts'
import type { ReferenceMeasure } from '../../../../core/studies/reference/reference-tests.ts'
import { shortNumber } from '../../../../words/numbers.ts'
import { unbroken } from '../../../../words/sentences.ts'
import { type ReferenceResult, referenceValue } from '../../../shape/reference-result.ts'
import type { StudyEntry } from '../../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../../chart-table.ts'
import { dotShape } from '../dot-shape.ts'
import { referenceText } from './reference-text.ts'

export interface ReactivityMapView {
  readonly title: string
  readonly label: string
  readonly chart: ReactivityMapModel
  readonly xTicks: readonly string[]
  readonly yTicks: readonly string[]
  readonly sentences: readonly string[]
  readonly table: ChartTable
}

interface Mapped {
  readonly code: string
  readonly class: 'inert' | 'weak' | 'reactive' | undefined
  readonly heat: ReferenceResult
  readonly consumed: ReferenceResult
  readonly at: { readonly heat: number; readonly consumed: number }
}

/** @returns null where no material has both figures */
export function reactivityMapView(study: StudyEntry): ReactivityMapView | null {
  const { record } = study
  const mapped = Object.keys(record.materials).flatMap((code) => mappedOf(study, code))
  const regions = (record.regions?.list ?? []).map(regionOf)
  const chart = reactivityMap(
    mapped.map(({ code, class: known, at }) => ({
      name: code,
      ...at,
      shape: known === undefined ? 'disc' : dotShape({ class: known, above: false }),
    })),
    regions,
  )
  if (chart === null) return null
  return {
    title: 'Heat (J/g) across, calcium hydroxide consumed (g/100 g) upward',
    label:
      'Each material by its heat, across, and the calcium hydroxide that it consumed, upward, with the regions that the study states. The table holds the figures.',
    chart,
    xTicks: chart.xTicks.map(({ value }) => shortNumber(value, 1)),
    yTicks: chart.yTicks.map(({ value }) => shortNumber(value, 1)),
    sentences: sentencesOf(record, mapped, regions).map(unbroken),
    table: tableOf(mapped, regions),
  }
}

function mappedOf({ record, reference }: StudyEntry, code: string): Mapped[] {
  const of = (measure: ReferenceMeasure) =>
    reference.find((result) => result.material === code && result.measure === measure)
  const [heat, consumed] = [of('heat'), of('calcium-hydroxide-consumed')]
  if (heat === undefined || consumed === undefined) return []
  const at = { heat: referenceValue(heat), consumed: referenceValue(consumed) }
  if (at.heat === null || at.consumed === null) return []
  return [
    {
      ...{ code, class: record.materials[code]?.class, heat, consumed },
      at: { heat: at.heat, consumed: at.consumed },
    },
  ]
}

function regionOf(region: NonNullable<StudyEntry['record']['regions']>['list'][number]): MapRegion {
  return { name: region.name, heat: spanOf(region.heat), consumed: spanOf(region['calcium-hydroxide']) }
}

function spanOf(span: { readonly from?: Quantity; readonly below?: Quantity } | undefined): MapSpan {
  return { from: span?.from?.value ?? null, below: span?.below?.value ?? null }
}

/** A region holds its lower end and not its upper one. */
function holds({ from, below }: MapSpan, value: number): boolean {
  return (from === null || from <= value) && (below === null || value < below)
}

function regionsAt({ at }: Mapped, regions: readonly MapRegion[]): string[] {
  return regions
    .filter(({ heat, consumed }) => holds(heat, at.heat) && holds(consumed, at.consumed))
    .map(({ name }) => name)
}

function sentencesOf(
  { regions: stated }: StudyEntry['record'],
  mapped: readonly Mapped[],
  regions: readonly MapRegion[],
): string[] {
  const inNone = mapped.filter((one) => regionsAt(one, regions).length === 0).map(({ code }) => code)
  const lines = regions.map(({ name }) => {
    const own = mapped.filter((one) => regionsAt(one, regions).includes(name)).map(({ code }) => code)
    return `${name}: ${own.length === 0 ? 'none' : own.join(', ')}.`
  })
  return [
    ...(stated === undefined
      ? ['The study states no regions, so none are drawn.']
      : [
          ...lines,
          ...(inNone.length === 0 ? [] : [`In no region: ${inNone.join(', ')}.`]),
          `Boundaries: ${stated.source.replace(/\.$/, '')}. A material on a boundary belongs to the higher side.`,
        ]),
    'Much heat beside little calcium hydroxide consumed is what latent hydraulic materials such as slag show; the picture places a material by its two figures and says nothing of a cause.',
  ]
}

function tableOf(mapped: readonly Mapped[], regions: readonly MapRegion[]): ChartTable {
  return {
    summary: 'As a table',
    heads: [
      textHead('Material'),
      textHead('Class'),
      numberHead('Heat'),
      numberHead('Ca(OH)₂ consumed'),
      ...(regions.length === 0 ? [] : [textHead('Region')]),
    ],
    rows: mapped.map((one) => ({
      lot: null,
      cells: [
        one.code,
        one.class ?? '–',
        referenceText(one.heat),
        referenceText(one.consumed),
        ...(regions.length === 0 ? [] : [regionsAt(one, regions).join(', ') || 'none']),
      ],
    })),
  }
}
