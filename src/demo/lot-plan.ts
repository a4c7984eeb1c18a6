/** One lot before it is written: what was made, when, by whom it is tested, and what is planted in it. */
import type { AgencyTaking } from './agency-samples.ts'
import type { ControlBatch } from './controls.ts'
import type { LotModel } from './lot-model.ts'
import type { Planted } from './planted.ts'
import type { DemoSource } from './scenario.ts'

export interface LotPlan {
  readonly source: DemoSource
  readonly id: string
  readonly laboratory: string
  /** Last day of production, when the composite is complete. */
  readonly day: number
  readonly castDay: number
  readonly lastDay: number
  readonly model: LotModel
  readonly controls: readonly ControlBatch[]
  readonly biasPoints: number
  readonly biasRatio: number
  readonly billNumber: () => string
  readonly planted: Planted
  readonly agency: AgencyTaking
}
