/** What the control batches of a laboratory say on a day: the same charts as those of a source, over batches. */
import type { Age } from '../measure/age.ts'
import type { Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { ResultReason } from '../result/reason.ts'
import type { Shown } from './not-shown.ts'
import type { CusumChart } from './segment-figures.ts'
import type { Segment } from './source-history.ts'

/** Control batches of a laboratory. */
export interface LaboratoryHistory {
  readonly laboratory: string
  readonly series: readonly ControlBatchSeries[]
}

/** One property of control mortar at one condition and age; a point is a batch. */
export interface ControlBatchSeries {
  readonly key: string
  readonly property: PropertyKey
  readonly condition: string
  readonly age: Age
  readonly unit: string
  readonly decimals: number
  readonly points: readonly ControlPoint[]
  readonly segments: readonly ControlSegment[]
}

export interface ControlPoint {
  readonly place: number
  readonly value: number
  readonly status: 'valid' | 'not-valid'
  /** null of a batch that is not shown, whose value stands bare. */
  readonly named: ControlOrigin | null
  /** From the mean of the batches before it (`control-standing.ts`), per cent; null for the first of its cement and for one that is not valid. */
  readonly fromEarlierPercent: number | null
  /** The same in standard deviations of such a difference; null while too few batches show what is usual. */
  readonly fromEarlierDeviations: number | null
}

export interface ControlSegment
  extends Pick<Segment, 'places' | 'cements' | 'chart' | 'ewma' | 'movingAverage' | 'correlation' | 'slope'> {
  readonly begins: 'first' | 'control-cement'
  readonly cusum: Shown<CusumChart>
}

export interface ControlOrigin {
  /** Id of the control batch. */
  readonly batch: string
  readonly cast: Moment
  /** Lot of its cement. */
  readonly cement: string
  readonly reasons: readonly ResultReason[]
}
