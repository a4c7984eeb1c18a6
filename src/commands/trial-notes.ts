/** What is told of a set with limits from memory before anything is issued under it, and once it is confirmed. */
import { type Criterion, setName, unconfirmedLayers } from '../core/criteria/criterion.ts'
import type { TrialChange } from '../edition/certificate/changes.ts'
import { TRIAL_HEADING } from '../words/outcomes.ts'

/** One line for each file to confirm; none for a set whose limits need no confirming. */
export function trialLines(criterion: Criterion): string[] {
  return unconfirmedLayers(criterion).map(
    ({ id, edition }) =>
      `${criterion.id}: ${TRIAL_HEADING.toLowerCase()}, since some limits are from memory; compare them with the standard, then write confirmed: { by: NAME, date: DATE, edition: "${edition}" } in criteria/${id}.yaml`,
  )
}

/** @param criterion as it is today; undefined where the set has gone since */
export function trialChangeWords(
  { criterion: id, trial }: TrialChange,
  criterion: Criterion | undefined,
): string {
  if (trial) return `${id}: a limit from memory is not confirmed, so the verdict is a trial judgement now`
  const confirmed = (criterion?.layers ?? []).flatMap((layer) =>
    layer.confirmed === undefined
      ? []
      : [
          `limits of ${setName(layer)} confirmed against edition ${layer.confirmed.edition} by ${layer.confirmed.by} on ${layer.confirmed.date}`,
        ],
  )
  return `${id}: ${[...confirmed, 'no longer a trial judgement'].join('; ')}`
}
