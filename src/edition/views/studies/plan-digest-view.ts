/** What a study's page says of the digest of its plan. */
import { digestStanding, type DigestStanding } from '../../../records/studies/plan-digest.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface PlanDigestView {
  readonly standing: string
  readonly note: string
}

const STANDINGS: Readonly<Record<DigestStanding, (digest: string) => string>> = {
  none: () => 'none',
  agrees: (digest) => `${digest} agrees with the plan as written today`,
  differs: (digest) =>
    `${digest} differs from that of the plan as written today: what changed belongs under departures`,
}

export function planDigestView({ record }: StudyEntry): PlanDigestView {
  return {
    standing: STANDINGS[digestStanding(record)](record.plan.digest ?? ''),
    note: 'A digest shows that the text of the plan is the same. It does not show when the plan was written: deposit it with somebody else, where its day is on record.',
  }
}
