/** A sample that is judged for itself among those of its duty. */
import type { Duty } from '../measure/duty.ts'

export interface SampleOfDuty {
  readonly duty: Duty
  /** Its mark within the lot. */
  readonly sample: string
}
