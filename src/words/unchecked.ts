/** Sentences for what cannot be checked on the records at hand. */
import { plural } from './numbers.ts'

interface Missing {
  readonly code: string
  readonly params: Readonly<Record<string, string | number>>
}

const SENTENCES: Readonly<Record<string, (params: Missing['params']) => string>> = {
  'no-listing': () => 'Listing: no listing of the source as a whole by an agency is on record.',
  'no-diversion-ledger': () =>
    'Diversion: no ledger of diverted material is kept. A gap below a limit may come from lots that were diverted, or from none.',
  'no-balance': () =>
    'Material balance: what was produced cannot be held against what was certified, what left otherwise and what is in stock.',
  'no-number-pattern': () =>
    'Lot numbers: the record does not say how lots are numbered, so that gaps cannot be counted.',
  'no-reports': () => 'Monthly reports: none are planned in the record, so that none can be late or missing.',
  'no-split': () => 'Testing: no sample was split with an agency.',
  'no-independent': () => 'Sampling: no agency has sampled the source independently.',
  'verification-not-published': () =>
    'Agency comparison: verification results are not published on this site.',
  'findings-not-published': () => 'Questions: findings are not published on this site.',
  'no-bridge': ({ laboratory, from, to }) =>
    `Activity across control cements: ${laboratory} has no paired batches of ${from} and ${to}, so that indices before and after the change are not joined.`,
  'no-equipment': ({ laboratory }) => `Equipment: ${laboratory} has no verification dates on record.`,
  'severity-lowered': ({ n, checks }) =>
    `Severity: this site shows the findings of ${plural(Number(n), 'check', 'checks')} as information though they are warnings by default: ${checks}. They stay open questions.`,
  'no-history-of-records': () =>
    'Earlier texts: the records keep no history of their own. What a figure or a criterion said before shows only where a certificate was issued.',
  'no-notice-of-change': () =>
    'Fuel, deposit and cell: a change shows only where the record lists it as an event, and nothing says whether an agency was told of it.',
  'no-recipe': () => 'Blend: no recipe is on record that the shares of each lot could be held against.',
  'no-carbon-or-colour': () =>
    'Carbon: neither carbon nor colour is on record beside loss on ignition, so that they cannot be held against each other.',
  'no-ammonia-or-sorbents': () => 'Ammonia, sorbents and activated carbon: no record holds them.',
  'few-readings-alike': () =>
    'Copies: readings of fewer than five values, and values that agree as often as chance lets them, are not told from chance.',
  'lots-not-shown': ({ n }) =>
    `Lots: ${plural(Number(n), 'lot is', 'lots are')} on record and not published; as long as that is so, neither number gaps nor the material balance can be counted.`,
}

/** @throws RangeError for a code without a sentence */
export function uncheckedWords({ code, params }: Missing): string {
  const words = SENTENCES[code]
  if (words === undefined) throw new RangeError(`uncheckedWords needs a known code, got ${code}`)
  return words(params)
}
