/** What a study says its materials consist of. */
import { isPropertyKey, property } from '../../core/measure/properties.ts'
import { isFault, readQuantity } from '../../core/measure/units.ts'
import { reportRange, within } from '../checks/physical.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { quantityFault } from '../schema/quantity-faults.ts'
import { below } from '../yaml/pointer.ts'

/** Figures of a material: of a property that this program knows, in its units; of another, a number with a unit. */
export function checkComposition({ materials }: Study, report: FileReport): void {
  for (const [code, { composition = {} }] of Object.entries(materials))
    for (const [key, written] of Object.entries(composition)) {
      const pointer = below(`/materials/${code}/composition`, key)
      if (!isPropertyKey(key)) {
        if (!/^[<>]?\s*-?\d/.test(written))
          report.at(
            pointer,
            'quantity',
            `found the text "${written}"; a number with its unit was expected`,
            'write the number and its unit, such as 14 µm or 74 %',
          )
        continue
      }
      const { kind, bounds } = property(key)
      const read = readQuantity(written, kind)
      if (isFault(read)) {
        const { code: fault, message, mend } = quantityFault(read, [kind])
        report.at(pointer, fault, message, mend)
      } else if (!within(read.value, bounds)) reportRange(pointer, read, bounds, report)
    }
}
