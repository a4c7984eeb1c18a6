/** What a clause or a verdict may come to: a closed set. */
export const OUTCOMES = [
  'meets',
  'meets-by-approval',
  'does-not-meet',
  'inconclusive',
  'pending',
  'not-reported',
  'insufficient-history',
  'not-valid',
  'not-applicable',
  'not-invoked',
  'reported',
] as const
export type Outcome = (typeof OUTCOMES)[number]
