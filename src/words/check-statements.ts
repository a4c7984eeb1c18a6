/** What each audit check asks, in a plain sentence, and what the checks of a family are about. */
import type { CheckFamily, CheckId } from '../core/checks/catalogue.ts'

const FAMILIES: Readonly<Record<CheckFamily, string>> = {
  document: 'Issued documents',
  completeness: 'Completeness',
  time: 'Days held against each other',
  arithmetic: 'Figures and plausibility',
  trend: 'Uniformity and trend',
  agency: 'Agency’s samples',
  laboratory: 'Laboratories and control mortar',
  integrity: 'How results came about',
  identity: 'Whether the material is the same',
}

export function familyWords(family: CheckFamily): string {
  return FAMILIES[family]
}

const STATEMENTS: Readonly<Record<CheckId, string>> = {
  'changed-after-issue': 'Does the record of a lot still say what its newest certificate was issued with?',
  'would-now-be-judged-otherwise': 'Would a lot be judged today as its newest certificate judges it?',

  'number-gap': 'Does a lot bear each number between the first and the last?',
  'number-off-pattern': 'Does each lot number have the form that its source states?',
  'report-missing': 'Is there a report to the agency for each month?',
  'report-late': 'Did each report come by its day?',
  'result-overdue': 'Did each planned result come in time?',
  'sampled-behind-plan': 'Was each lot sampled as often as the sampling plan asks?',
  'certificate-unshipped': 'Was something shipped within a year of each certificate?',
  'balance-off': 'Is all that was produced each month accounted for?',
  'diversion-apart': 'Do the balance and the ledger tell of the same diversions?',
  'shipped-above-certified': 'Was no more shipped than the certified lots hold?',

  'shipped-without-certificate': 'Did each shipment leave with a certificate of its lot issued?',
  'shipped-before-results': 'Was a result of the lot known when a shipment left?',
  'shipped-before-completion': 'Were all results that the lot is judged on known when a shipment left?',
  'shipped-on-missed-age':
    'Did a shipment leave on an early age that missed its limit, while a later one was awaited?',
  'failed-after-shipping': 'Did a lot turn out not to meet its criterion after shipments had left?',
  'shipped-after-failure': 'Did a shipment leave although its lot was known not to meet its criterion?',
  'shipped-after-withdrawal': 'Did a shipment leave after the certificate of its lot was withdrawn?',
  'shipped-on-old-certificate': 'Was the certificate less than six months old when a shipment left?',
  'shipped-while-unlisted': 'Was the source on an agency’s list when a shipment left?',
  'tested-outside-accreditation':
    'Was each test that counts within the accreditation on record of its laboratory?',
  'sampled-outside-production': 'Was each sample taken while its lot was produced?',
  'mortars-cast-apart': 'Were test mortar and control cast on one day?',
  'tested-on-closed-day': 'Was the laboratory open on the day of each test?',
  'equipment-unverified': 'Was each device within its interval of verification?',

  'other-sample-fails': 'Would a sample that no clause judges meet the limits too?',
  'result-implausible': 'Is each result within what is plausible of its property?',
  'test-and-control-swapped': 'Is no test mortar half as strong again as its control?',
  'oxide-total': 'Do oxides and loss on ignition add up to about 100 %?',
  'alkalis-above-total': 'Are the available alkalis no more than the total?',
  'loss-too-small': 'Is no loss on ignition below zero, or, of material as received, below its moisture?',
  'far-from-history': 'Is each result of the size of those before it?',
  'shipment-mass': 'Is the mass of each bill one that a truck, car or barge carries?',
  'shipped-above-quantity': 'Was no more of a lot shipped than it holds?',
  'lot-quantity': 'Is the quantity of each lot plausible?',
  'water-out-of-proportion': 'Is the water of each test mortar in proportion to its control’s?',
  'finished-beside-readings':
    'Does a figure that a laboratory reports agree with the readings of the same test?',

  'out-of-control': 'Do results stay within three standard deviations of their control chart?',
  'run-on-one-side': 'Do results lie on both sides of their centre?',
  'steady-rise-or-fall': 'Do neighbouring results rise and fall in turn?',
  'weighted-average-off': 'Does the weighted average of results stay within its limits?',
  'results-drift': 'Do results neither rise nor fall over the newest lots?',
  'step-at-event': 'Are results before and after an event or a change alike?',
  'month-effect': 'Are results of all months of the calendar alike?',
  'margin-shrinking': 'Do as few newer results as older ones lie close to a limit?',
  'period-estimate-beyond':
    'Does the estimate for the newest control period, where a limit is held against one, meet that limit?',
  'uniformity-exceeded': 'Does each lot lie within the band about the mean of those before it?',

  'split-beyond-limit': 'Does each split agree within what testing alone explains?',
  'agency-other-side': 'Do both results of a pair lie on the same side of each limit?',
  'split-bias': 'Do the agency’s splits lie to one side of the producer’s results?',
  'independent-differs':
    'Do the agency’s independent samples differ from the producer’s lots in scatter or mean?',
  'verification-behind': 'Did the agency take the samples that it planned?',
  'no-independent-sample': 'Is there an independent sample beside the splits?',
  'custody-not-stated': 'Does the record say how custody of each agency sample was kept?',
  'producer-never-fails': 'Do the agency’s results fail a limit that none of the producer’s does?',

  'control-batch-off': 'Is each control batch in line with those before it?',
  'cement-unbridged': 'Were batches made side by side when the control cement changed?',
  'laboratory-unbridged': 'Was a lot tested by both when another laboratory took over a test?',
  'proficiency-open': 'Is each proficiency score beyond 2 explained and closed?',
  'index-follows-control': 'Are indices as high beside a strong control as beside a weak one?',
  'control-drift': 'Do control batches of one cement stay where they were?',
  'proficiency-lapsed': 'Was there a proficiency round within the last 12 months?',

  'bunched-at-limit': 'Do results crowd just inside a limit?',
  'bill-twice': 'Is each bill of lading listed once?',
  'lots-alike': 'Do lots differ in at least one measured value?',
  'readings-alike': 'Were the readings of a lot copied from another?',
  'specimens-equal': 'Do specimens of a batch differ in their readings?',
  'readings-of-control': 'Do the readings of a test mortar differ from those of its control?',
  'uneven-last-digits': 'Do the last digits of raw readings occur equally often?',
  'scatter-small': 'Do specimens of a batch scatter as much as the method leads to expect?',
  'specimens-excluded': 'Were few specimens left out?',
  'age-left-out': 'Is the earlier age on record where a later one is?',
  retested: 'How many tests were made again?',

  'sampled-in-outage': 'Was a lot produced, or a sample taken, while the unit stood still?',
  'blend-total': 'Do the shares of a blend add up to the whole?',
  'class-beside-calcium': 'Is calcium oxide on the side of 18 % that the class stands for?',
  'feed-rising': 'Does the feed of a harvested ash grow wetter, or the ash coarser?',
}

/** The question of a check. */
export function checkStatement(check: CheckId): string {
  return STATEMENTS[check]
}
