/** At constant flow an index is only valid where the test mortar flows as its control does. */
import type { ControlMortar, MortarCondition, TestMortar } from './mortar.ts'

/**
 * @returns `faults` where the flows lie farther apart than the condition allows; `notes` where one is not on
 * record, since nothing
 * shows then that they do; both empty at a condition that fixes the water, where flow is only reported
 */
export function flowApart(
  test: TestMortar,
  control: ControlMortar,
  condition: MortarCondition,
): { faults: string[]; notes: string[] } {
  const within = condition.water['flow-within']
  if (within === undefined) return { faults: [], notes: [] }
  if (test.flow === undefined || control.flow === undefined) {
    const missing =
      test.flow === undefined
        ? control.flow === undefined
          ? 'the flows of both mortars are'
          : 'the flow of the test mortar is'
        : 'the flow of the control is'
    return {
      faults: [],
      notes: [`${missing} not on record, so that flows within ${within.written} cannot be verified`],
    }
  }
  const difference = Math.abs(test.flow.value - control.flow.value)
  return {
    faults:
      difference <= within.value + 1e-9
        ? []
        : [
            `flow ${test.flow.written} against the control’s ${control.flow.written}, more than ${within.written} apart`,
          ],
    notes: [],
  }
}
