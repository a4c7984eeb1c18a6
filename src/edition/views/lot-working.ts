/** What stands behind a lot's figures today: each computation, its control, and both routes beside each other. */
import type { Edition, LotEntry } from '../shape/edition.ts'
import { type ControlsOfLot, controlsOfLot } from './controls-of-lot.ts'
import { type ExplainedResistivity, explainedResistivities } from './resistivity-of-lot.ts'
import { type RoutesOfLotView, routesOfLot } from './routes.ts'
import { type WorkingView, workingView } from './working.ts'

export interface LotWorkingView {
  readonly working: WorkingView | null
  readonly controls: ControlsOfLot
  readonly resistivities: readonly ExplainedResistivity[]
  readonly routes: RoutesOfLotView
}

export function lotWorkingView(edition: Edition, lot: LotEntry): LotWorkingView {
  return {
    working: workingView(edition, lot),
    controls: controlsOfLot(edition, lot),
    resistivities: explainedResistivities(edition, lot),
    routes: routesOfLot(edition, lot),
  }
}
