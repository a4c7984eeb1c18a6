/**
 * What a sample serves, beside the way in which it was taken: how often a source is tested and what its uniformity
 * rests on are asked of samples of one duty.
 */

/**
 * How a sample was taken, or whose it is: a grab at one moment, a composite of increments, a split of another
 * sample, a sample that somebody else took; a control's is no sample of a lot.
 */
export type SampleKind = 'grab' | 'composite' | 'split' | 'independent' | 'control'

/**
 * regular: daily or every so many tonnes, for moisture, loss on ignition and fineness; composite: made of equal
 * portions of regular samples, for everything else; verification: checks the producer's results and is never judged.
 */
export type Duty = 'regular' | 'composite' | 'verification'

/** Own choice where a record states none, so that a record that knows no duties keeps its meaning. */
const USUAL: Readonly<Record<SampleKind, Duty>> = {
  grab: 'regular',
  composite: 'composite',
  split: 'verification',
  independent: 'verification',
  control: 'composite',
}

/**
 * The duty of a sample, or of a result on one.
 * @param sampleKind how it was taken
 * @param duty as the record states it; undefined where it states none
 * @returns as stated, else regular for a grab, composite for a composite, verification for a split and for an
 * independent sample
 * Source: regular and composite samples as in ASTM C311 (from memory); the defaults are an own choice.
 */
export function dutyOf({
  sampleKind,
  duty,
}: {
  readonly sampleKind: SampleKind
  readonly duty?: Duty
}): Duty {
  return duty ?? USUAL[sampleKind]
}
