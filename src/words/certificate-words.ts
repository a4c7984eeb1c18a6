/**
 * Everything that a certificate prints beside its particulars: headings, labels, outcomes, cautions. An issued
 * document holds these words as they read on its day.
 */
import type { Outcome } from '../core/criteria/outcome.ts'
import { printedUnits } from './as-written.ts'
import { everyOutcome, outcomeWords, TRIAL_HEADING } from './outcomes.ts'

export interface CertificateWords {
  readonly eyebrow: string
  readonly certificate: string
  readonly revision: string
  readonly state: string
  readonly issued: string
  readonly replaces: string
  readonly reason: string
  readonly draft: { readonly heading: string; readonly text: string; readonly unsigned: string }
  readonly withdrawn: string
  readonly replacedBy: string
  readonly verdict: string
  readonly noCriterion: string
  readonly trial: string
  readonly decisionRule: string
  readonly identification: string
  readonly notRecorded: string
  readonly sampling: string
  readonly noSample: string
  readonly laboratory: string
  readonly noLaboratory: string
  readonly results: {
    readonly caption: string
    readonly property: string
    readonly result: string
    readonly drawing: string
    readonly limit: string
    readonly outcome: string
    readonly noLimit: string
    readonly due: string
    readonly withoutLimit: string
    readonly noLimitAskedFor: string
    readonly notValid: string
  }
  readonly record: string
  readonly mortars: string
  readonly noMortar: string
  readonly departures: string
  readonly noDepartures: string
  readonly readings: {
    readonly heading: string
    readonly sample: string
    readonly sets: string
    readonly mortar: string
    readonly tested: string
    readonly specimens: string
    readonly test: string
    readonly control: string
    readonly strength: string
    readonly resistivity: string
    readonly meanOf: string
    readonly noReading: string
    readonly excluded: string
    readonly at: string
    readonly noTemperature: string
    readonly checkResistor: string
    /** Signs of print by unit. */
    readonly signs: Readonly<Record<string, string>>
  }
  readonly closing: { readonly label: string; readonly issued: string; readonly notIssued: string }
  readonly typedName: string
  readonly caution: string
  readonly digest: { readonly of: string; readonly meaning: string }
  readonly endOf: string
  readonly outcomes: Readonly<Record<Outcome, string>>
}

/** Units of readings that are printed otherwise than they are written. */
const SIGNED_UNITS = ['degC', 'degF', 'ohm m', 'kohm', 'ohm', 'm2', 'mm2', 'cm3', 'm3']

export const CERTIFICATE_WORDS: CertificateWords = {
  eyebrow: 'Lot certificate · tests on samples of this lot',
  certificate: 'Certificate',
  revision: 'Revision',
  state: 'State',
  issued: 'Issued',
  replaces: 'Replaces',
  reason: 'Reason',
  draft: {
    heading: 'Draft.',
    text: 'No certificate of this lot has been issued; the figures may change without notice.',
    unsigned: 'This draft was never issued and carries no signature.',
  },
  withdrawn: 'Withdrawn on',
  replacedBy: 'Replaced by',
  verdict: 'Verdict',
  noCriterion: 'No criterion applies to this lot',
  trial: TRIAL_HEADING.toLowerCase(),
  decisionRule: 'Decision rule:',
  identification: 'Identification',
  notRecorded: 'not recorded',
  sampling: 'Sampling',
  noSample: 'No sample on record.',
  laboratory: 'Laboratory',
  noLaboratory: 'No result from the producer is on record yet.',
  results: {
    caption: 'results with limits and outcomes',
    property: 'Property and test',
    result: 'Result',
    drawing: 'Value and limit',
    limit: 'Limit',
    outcome: 'Outcome',
    noLimit: 'none',
    due: 'due',
    withoutLimit: 'Without a limit:',
    noLimitAskedFor: 'Reported only; no limit is set:',
    notValid: 'not valid',
  },
  record: 'Record',
  mortars: 'Mortars',
  noMortar: 'No mortar on record.',
  departures: 'Deviations and exclusions.',
  noDepartures: 'None recorded',
  readings: {
    heading: 'Readings',
    sample: 'sample',
    sets: 'sets',
    mortar: 'Mortar, age',
    tested: 'Tested',
    specimens: 'Specimens',
    test: 'test',
    control: 'control',
    strength: 'strength',
    resistivity: 'resistivity',
    meanOf: 'mean of',
    noReading: 'no reading',
    excluded: 'excluded',
    at: 'at',
    noTemperature: 'temperature not recorded',
    checkResistor: 'check resistor, read and known:',
    signs: Object.fromEntries(SIGNED_UNITS.map((unit) => [unit, printedUnits(unit)])),
  },
  closing: { label: 'Signature and cautions', issued: 'Issued', notIssued: 'Not issued' },
  typedName: 'Typed name, not a qualified signature.',
  caution:
    'Final acceptance rests with the governing specification and a licensed engineer, acting for the purchaser or agency; a verdict here is not their approval. Results concern the sample tested and the lot it represents. A strength or resistivity index, at any temperature, compares two mortars; it predicts neither strength nor durability of concrete, and curing at 50 °C changes the control too. Limits were entered from the sources named on the criterion’s page and must be checked against the edition in force.',
  digest: {
    of: 'Digest of the issued document:',
    meaning:
      'It shows that the document has not changed since it was issued, not that its contents are true.',
  },
  endOf: 'End of',
  outcomes: Object.fromEntries(everyOutcome().map((outcome) => [outcome, outcomeWords(outcome)])) as Record<
    Outcome,
    string
  >,
}
