/** Audit checks: what an agency planned to verify and what of it is on record. */
import type { SourceAgency } from '../agency/source-agency.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/**
 * Warnings about periods that are over with samples missing, about splits without any independent sample, and about
 * samples without a statement of their custody.
 * @param source id
 * @param agency what it did, as known on the date
 * Note: assurance visits count where they are on record.
 */
export function verificationKept(source: string, agency: SourceAgency): Checked[] {
  return [samplesMissing(source, agency), noIndependent(source, agency), withoutCustody(source, agency)]
}

function samplesMissing(source: string, { status }: SourceAgency): Checked {
  const over = status.filter((period) => period.over && period.taken !== null)
  const findings = over.flatMap(({ kind, from, to, planned, taken, missing }): Finding[] => {
    if (taken === null || missing === null || missing === 0) return []
    const params = { source, kind, from: from.text, to: to.text, planned, taken }
    return [found(source, { code: 'verification-behind', params }, kind, from.text)]
  })
  return { check: 'verification-behind', looked: over.length, findings }
}

function noIndependent(source: string, { splits, independents }: SourceAgency): Checked {
  const looked = splits === 0 ? 0 : 1
  const findings =
    looked === 0 || 0 < independents
      ? []
      : [found(source, { code: 'no-independent-sample', params: { source, splits } })]
  return { check: 'no-independent-sample', looked, findings }
}

function withoutCustody(
  source: string,
  { splits, independents, withoutCustody: lots }: SourceAgency,
): Checked {
  const samples = splits + independents
  const params = { source, without: lots.length, samples, listed: lots.slice(0, SHOWN) }
  const findings = lots.length === 0 ? [] : [found(source, { code: 'custody-not-stated', params })]
  return { check: 'custody-not-stated', looked: samples, findings }
}

/** Lots named: own choice. */
const SHOWN = 5
