/** The control mortar behind each index of a lot, as its page shows it. */
import type { HistoryPoint } from '../../charts/lot-history.ts'
import { property } from '../../core/measure/properties.ts'
import { plural } from '../../words/numbers.ts'
import { fullSentence, unbroken } from '../../words/sentences.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import { unitSign } from '../../words/unit-signs.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { type StandingControl, standingControls, standingWords } from './control-standing.ts'

export interface ControlsOfLot {
  readonly charts: readonly ControlChart[]
  /** Laboratories that tested them. */
  readonly laboratories: readonly { readonly id: string; readonly name: string }[]
}

export interface ControlChart {
  readonly caption: string
  readonly label: string
  /** Where the control stands, and what follows for the index. */
  readonly sentence: string
  /** Earlier batches, oldest first, then the lot's own. */
  readonly points: readonly HistoryPoint[]
  /** The mean of earlier batches of the same cement, if any. */
  readonly limits: readonly number[]
}

export function controlsOfLot(edition: Edition, lot: Pick<LotEntry, 'results'>): ControlsOfLot {
  const controls = standingControls(edition, lot)
  const laboratories = [...new Set(controls.map(({ index }) => index.laboratory))]
  return {
    charts: controls.map((control) => controlChart(edition, control)),
    laboratories: laboratories.map((id) => ({ id, name: edition.laboratories.get(id)?.name ?? id })),
  }
}

function controlChart(edition: Edition, control: StandingControl): ControlChart {
  const { index, earlier, own, standing } = control
  const name = [
    property(index.property).title,
    conditionTitle(edition, index.condition ?? ''),
    index.age,
  ].join(', ')
  const printed = printedUnit(own.result.unit, own.result.decimals, edition.site.units)
  const points = [...earlier, own.result].map(
    ({ value, valid }): HistoryPoint => ({
      value: printed.of(value),
      status: valid ? 'valid' : 'not-valid',
    }),
  )
  return {
    caption: unbroken(`${name}: its control, ${unitSign(printed.unit)}`),
    label: `Control of ${name}: ${plural(points.length, 'batch', 'batches')}, the last one this lot’s`,
    sentence: unbroken(fullSentence(standingWords(control, edition.site.units))),
    points,
    limits: standing === null ? [] : [printed.of(standing.mean)],
  }
}
