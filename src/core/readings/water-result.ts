/** The water requirement of a mortar made at constant flow, as a result. */
import { isBy, laterOf } from '../measure/moment.ts'
import { defined } from '../measure/defined.ts'
import { property, storedUnit } from '../measure/properties.ts'
import { flowApart } from '../mortar/flow-apart.ts'
import { waterRequirement } from '../mortar/water-requirement.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result } from '../result/result.ts'
import type { MortarPair } from './index-result.ts'
import { lateKnown } from './mean-result.ts'

const KEY = 'water-requirement'

/** None where the condition fixes the water, or where a mortar is not cast or its water not on record. */
export function waterResults({ test, control, condition, lot, ofTest }: MortarPair): Result[] {
  const { water: testWater } = test
  const { water: controlWater } = control
  if (condition.water['flow-within'] === undefined || testWater === undefined || controlWater === undefined)
    return []
  // Both mortars must have been made: the one cast later makes the ratio known.
  const begun = laterOf(test.cast, control.cast)
  if (!isBy(begun, lot.asOf)) return []
  const value = waterRequirement(testWater.value, controlWater.value)
  const flow = flowApart(test, control, condition)
  // At a standard's condition it is the property that laboratories also report without one; at any other it
  // stays with its condition.
  const own = defined({
    ...ofTest,
    begun,
    condition: condition.standing === 'standard' ? undefined : ofTest.condition,
    method: lot.methodOf(test.laboratory, KEY, test.cast),
  })
  const [unit, { decimals }] = [storedUnit(KEY), property(KEY)]
  return [
    {
      ...own,
      key: resultKey({ ...own, property: KEY }),
      property: KEY,
      value,
      unit,
      decimals,
      n: 1,
      tested: test.cast,
      ...lateKnown(test.cast, begun),
      ...defined({ control: test.control }),
      valid: flow.faults.length === 0,
      reasons: [...flow.faults, ...flow.notes],
      working: () => [
        {
          step: 'water-requirement',
          writtenTest: testWater.written,
          writtenControl: controlWater.written,
          result: { value, unit, decimals: 1 },
        },
      ],
    },
  ]
}
