/** A condition in words, for certificates and the conditions page. */
import type { Quantity } from '../../core/measure/units.ts'
import { written } from '../../words/as-written.ts'
import { entryWords } from '../../words/bench-day.ts'
import type { DescribedCondition } from '../../records/records.ts'
import type { SpecimenShape } from '../../records/schema/loaded-records.ts'

export interface Particular {
  readonly label: string
  readonly text: string
}

/**
 * The particulars of a condition in the order of the work: mix, water, first day, curing, tests. Quantities
 * as written.
 */
export function conditionParticulars(condition: DescribedCondition): Particular[] {
  const { replacement, batch, water, curing, strength, resistivity } = condition
  const lines: (Particular | undefined)[] = [
    { label: 'Replacement', text: `${written(replacement.amount)} of the cement by ${replacement.by}` },
    batch && {
      label: 'Batch',
      text: joined([
        `${written(batch.cementitious)} cementitious`,
        `${written(batch.sand)} ${batch['sand-kind'] ?? 'sand'}`,
        batch.admixture && `admixture: ${batch.admixture}`,
        batch.specimens && `${batch.specimens} specimens`,
      ]),
    },
    {
      label: 'Water',
      text: joined([
        water['w/cm'] !== undefined && `constant w/cm ${water['w/cm']}`,
        water['flow-within'] && `flow within ${written(water['flow-within'])} of the control’s`,
        water['control-water'] && `control ${written(water['control-water'])}`,
      ]),
    },
    condition['first-day'] && {
      label: 'First day',
      text: joined([
        condition['first-day'].in,
        condition['first-day'].moist === 'yes' && 'moist',
        `${written(condition['first-day'].temperature)}${within(condition['first-day'].within)}`,
        condition['first-day'].for && `for ${written(condition['first-day'].for)}`,
      ]),
    },
    {
      label: 'Curing',
      text: joined([
        words(curing.medium),
        `${written(curing.temperature)}${within(curing.within)}`,
        curing.entry && `reached ${entryWords(curing.entry)}`,
        curing['control-and-test'] && `control and test ${curing['control-and-test']}`,
      ]),
    },
    condition['before-test'] && {
      label: 'Before the test',
      text: joined([
        condition['before-test']['cool-in'] && `cooled in ${words(condition['before-test']['cool-in'])}`,
        condition['before-test'].for && `for ${written(condition['before-test'].for)}`,
        `to ${written(condition['before-test'].to)}${within(condition['before-test'].within)}`,
      ]),
    },
    {
      label: 'Ages',
      text: condition.ages.map((entry) => `${entry.age} ± ${written(entry.within)}`).join(', '),
    },
    strength && {
      label: 'Strength',
      text: joined([shapeInWords(strength.specimen), ...(strength['batch-range'] ?? []).map(rangeInWords)]),
    },
    resistivity && {
      label: 'Resistivity',
      text: joined([
        shapeInWords(resistivity.specimen),
        resistivity.conditioning &&
          `read ${resistivity.conditioning === 'sealed' ? 'sealed' : `from ${words(resistivity.conditioning)}`}`,
        `at ${written(resistivity.reading.temperature)}${within(resistivity.reading.within)}`,
      ]),
    },
  ]
  return lines.filter((line): line is Particular => line !== undefined)
}

/** "50 mm cube", "prism 40 × 40 × 160 mm", "cylinder 100 × 200 mm". */
export function shapeInWords(specimen: SpecimenShape): string {
  const sizes =
    specimen.shape === 'cylinder'
      ? [specimen.diameter, specimen.length]
      : specimen.shape === 'cube'
        ? [specimen.side]
        : [specimen.side, specimen.side, specimen.length]
  const known = sizes.filter((size): size is Quantity => size !== undefined)
  return joined([specimen.shape.replace('-', ' '), known.map(written).join(' × ')], ' ')
}

function rangeInWords(rule: { of: number; 'at-most'?: Quantity; within?: Quantity }): string {
  const limit =
    rule['at-most'] === undefined
      ? rule.within && `each within ${written(rule.within)} of the mean`
      : `range at most ${written(rule['at-most'])} of the mean`
  return `${limit ?? 'no limit on the range'} (${rule.of} specimens)`
}

function within(quantity: Quantity | undefined): string {
  return quantity === undefined ? '' : ` ± ${written(quantity)}`
}

function words(term: string): string {
  return term.replaceAll('-', ' ')
}

function joined(parts: readonly (string | number | false | undefined)[], separator = ', '): string {
  return parts.filter((part): part is string => typeof part === 'string' && part !== '').join(separator)
}

/**
 * What the control of a condition must be and what its readings are checked for; empty where it asks nothing.
 */
export function preconditions({ control, resistivity }: DescribedCondition): string[] {
  const alkalis = control?.['cement-alkalis']
  const limits = [
    alkalis?.['at-least'] && `at least ${written(alkalis['at-least'])}`,
    alkalis?.['at-most'] && `at most ${written(alkalis['at-most'])}`,
  ].filter(Boolean)
  const reading = resistivity?.reading
  const demands = [
    control?.['cast-with-test'] === 'yes' ? 'control and test cast on the same day' : undefined,
    limits.length === 0 ? undefined : `alkalis of the control cement ${limits.join(' and ')}`,
    control?.strength &&
      `control at least ${written(control.strength['at-least'])} at ${control.strength.age}`,
  ].filter((text) => text !== undefined)
  return [
    ...(demands.length === 0
      ? []
      : [
          `${demands.join('; ')}: ${control?.broken === 'flag' ? 'an index is flagged where this is not met' : 'an index is not valid where this is not met'}`,
        ]),
    ...(reading?.['end-contact-at-most'] === undefined
      ? []
      : [`end contacts at most ${written(reading['end-contact-at-most'])} of a reading`]),
    ...(reading?.['verification-within'] === undefined
      ? []
      : [`the meter within ${written(reading['verification-within'])} on a known resistor`]),
    ...(resistivity?.handling?.['out-of-liquid-at-most'] === undefined
      ? []
      : [
          `specimens out of the liquid for at most ${written(resistivity.handling['out-of-liquid-at-most'])} until they are read`,
        ]),
    ...(resistivity?.saturation === 'stated'
      ? ['the saturation of the specimens is stated, otherwise the reading is flagged']
      : []),
  ]
}
