/** At constant flow an index is only valid where the test mortar flows as its control does. */
import type { ResultReason } from '../result/reason.ts'
import type { ControlMortar, MortarCondition, TestMortar } from './mortar.ts'

/** Binary dust of a difference must not put flows on the very limit apart. */
const DUST = 1e-9

/**
 * Whether both mortars flow nearly enough alike to be divided.
 * @returns `faults` where the flows lie farther apart than the condition allows; `notes` where one is not on
 * record, since nothing shows then that they do; both empty at a condition that fixes the water, where flow
 * is only reported
 */
export function flowApart(
  test: Pick<TestMortar, 'flow'>,
  control: Pick<ControlMortar, 'flow'>,
  condition: Pick<MortarCondition, 'water'>,
): { faults: ResultReason[]; notes: ResultReason[] } {
  const within = condition.water['flow-within']
  if (within === undefined) return { faults: [], notes: [] }
  const writtenLimit = within.written
  if (test.flow === undefined || control.flow === undefined) {
    const of = test.flow !== undefined ? 'control' : control.flow !== undefined ? 'test' : 'both'
    return { faults: [], notes: [{ code: 'flow-not-on-record', params: { of, writtenLimit } }] }
  }
  if (Math.abs(test.flow.value - control.flow.value) <= within.value + DUST) return { faults: [], notes: [] }
  const params = { writtenTest: test.flow.written, writtenControl: control.flow.written, writtenLimit }
  return { faults: [{ code: 'flows-apart', params }], notes: [] }
}
