/** Histories of sources and laboratories, each made when it is first asked for. */
import type { Bridge } from '../../core/history/comparable-points.ts'
import type { LaboratoryHistory } from '../../core/history/laboratory-history.ts'
import type { SourceHistory } from '../../core/history/source-history.ts'
import { kept } from '../../core/measure/kept.ts'
import { once } from '../../core/measure/once.ts'
import type { Records } from '../../records/load.ts'
import type { ControlEntry, LotEntry } from '../shape/edition.ts'
import { knownBridges, laboratoryHistory } from './laboratory-history.ts'
import { sourceHistory } from './source-history.ts'
import type { SourceState } from './source-state.ts'

export class Histories {
  readonly #records: Records
  readonly #controls: ReadonlyMap<string, ControlEntry>
  /** Cements that are joined, of all laboratories. */
  readonly bridges: readonly Bridge[]
  readonly #laboratories = new Map<string, LaboratoryHistory>()

  /** @param controls known by the date of the states that are asked about */
  constructor(records: Records, controls: ReadonlyMap<string, ControlEntry>) {
    this.#records = records
    this.#controls = controls
    this.bridges = knownBridges(records.laboratories, controls)
  }

  /** @param lots of the source, in order of sampling */
  ofSource(state: SourceState, lots: readonly Pick<LotEntry, 'id' | 'verdicts'>[]): () => SourceHistory {
    const { laboratories, criteria } = this.#records
    const governing = lots.at(-1)?.verdicts[0]?.criterion
    const from = {
      laboratories,
      controls: this.#controls,
      bridges: this.bridges,
      governing: governing === undefined ? undefined : criteria.get(governing),
      lots,
    }
    return once(() => sourceHistory(state, from))
  }

  ofLaboratory(id: string): LaboratoryHistory {
    return kept(this.#laboratories, id, () => laboratoryHistory(id, this.#controls, this.bridges))
  }
}
