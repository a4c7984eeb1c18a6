/** Reference tests of reactivity in words: what each figure is, and how it came about, line by line. */
import type { CalciumHydroxideConsumed } from '../core/studies/reference/calcium-hydroxide-consumed.ts'
import type {
  CalciumHydroxideContent,
  Thermogram,
} from '../core/studies/reference/calcium-hydroxide-content.ts'
import { CURVE_RANGE, type CurveSide } from '../core/studies/reference/pozzolanicity.ts'
import type {
  ReferenceFound,
  ReferenceMeasure,
  ReferenceTest,
} from '../core/studies/reference/reference-tests.ts'
import type { StepLoss } from '../core/studies/reference/thermogravimetric-loss.ts'
import { plainNumber, plural, shortNumber } from './numbers.ts'
import { sentence } from './sentences.ts'

interface MeasureWords {
  /** Within a sentence. */
  readonly noun: string
  readonly unit: string
  readonly decimals: number
}

export const MEASURES: Readonly<Record<ReferenceMeasure, MeasureWords>> = {
  heat: { noun: 'heat', unit: 'J/g', decimals: 0 },
  'calcium-hydroxide-consumed': { noun: 'calcium hydroxide consumed', unit: 'g/100 g', decimals: 1 },
  'bound-water': { noun: 'bound water', unit: 'g/100 g', decimals: 2 },
  'calcium-hydroxide-fixed': { noun: 'calcium hydroxide fixed', unit: 'mg/g', decimals: 0 },
  'lime-strength': { noun: 'strength with lime', unit: 'MPa', decimals: 1 },
}

/** "318 J/g". */
export function measureText(value: number, measure: ReferenceMeasure): string {
  const { unit, decimals } = MEASURES[measure]
  return `${plainNumber(value, decimals)} ${unit}`
}

export const CURVE_SIDES: Readonly<Record<CurveSide, string>> = {
  below: 'below the curve',
  above: 'above the curve',
  'too-near': 'too near to the curve to tell within the errors of the volumes',
  'off-curve': `not compared: the curve holds from ${CURVE_RANGE.from} to ${CURVE_RANGE.to} mmol/L of hydroxide`,
}

/** "Calcium hydroxide consumed, 28 d". */
export function testTitle({ test, age }: Pick<ReferenceTest, 'test' | 'age'>): string {
  const name = test === 'pozzolanicity' ? 'pozzolanicity test' : MEASURES[test].noun
  return sentence(age === null ? name : `${name}, ${age}`)
}

/** How the readings of a test gave its figure. */
export function referenceWorking(test: ReferenceTest, { found, test: is }: ReferenceFound): string[] {
  switch (is) {
    case 'heat':
      return heatLines(test, found)
    case 'calcium-hydroxide-consumed':
      return consumptionLines(test, found)
    case 'bound-water':
      return [
        `100 × (dried − ignited) / (dried − crucible): ${found.each.map((one) => plainNumber(one, 2)).join(', ')} g per 100 g of dried paste.`,
        ...(found.each.length === 1
          ? []
          : [`Mean of ${found.each.length}: ${plainNumber(found.value, 2)} g/100 g.`]),
      ]
    case 'calcium-hydroxide-fixed':
      return [
        `Blank, for the lime of the test: ${plainNumber(found.blankMl, 2)} mL of acid.`,
        `(blank − sample) × concentration / 2 × 74.093 × total / aliquot: ${plainNumber(found.fixedMg, 1)} mg of calcium hydroxide.`,
        `Per gram of material: ${plainNumber(found.value, 1)} mg/g. The test is the modified Chapelle test of NF P18-513, from memory.`,
      ]
    case 'lime-strength':
      return [
        `Load over area: ${found.each.map((one) => plainNumber(one, 2)).join(', ')} MPa.`,
        `Mean of ${plural(found.each.length, 'specimen', 'specimens')}: ${plainNumber(found.value, 2)} MPa.`,
      ]
    case 'pozzolanicity':
      return [
        `Hydroxide ${plainNumber(found.hydroxide, 1)} mmol/L, lime ${plainNumber(found.lime, 2)} mmol/L: concentration × volume / aliquot.`,
        ...(found.saturated === null || found.error === null
          ? []
          : [
              `Saturated at this hydroxide and 40 °C, 350 / (hydroxide − 15): ${plainNumber(found.saturated, 2)} mmol/L; the errors of the volumes move the point by ${plainNumber(found.error, 2)} mmol/L at most.`,
            ]),
        `The point: ${CURVE_SIDES[found.side]}. The curve is that of EN 196-5, from memory.`,
      ]
  }
}

function heatLines(
  test: ReferenceTest,
  { value, sampleJ, materialG, baselineJ, intervals }: Extract<ReferenceFound, { test: 'heat' }>['found'],
): string[] {
  if (test.test !== 'heat') return []
  const { startHours, atHours, baseline, sampleG } = test.readings
  const span = `from ${shortNumber(startHours, 2)} h to ${shortNumber(atHours, 2)} h`
  const sample = sampleG === 1 ? 'per gram of paste' : `of ${shortNumber(sampleG, 3)} g of paste`
  return [
    baselineJ === null
      ? `Heat ${sample} ${span}, difference of the two readings: ${plainNumber(sampleJ, 2)} J.`
      : `Power ${sample} summed ${span} by ${plural(intervals, 'trapezoid', 'trapezoids')}, less ${baseline.length === 1 ? 'a constant baseline' : 'a baseline that drifts between two blank readings'} (${plainNumber(baselineJ, 2)} J): ${plainNumber(sampleJ, 2)} J.`,
    `Over ${shortNumber(materialG, 4)} g of material: ${plainNumber(value, 1)} J/g.`,
  ]
}

function consumptionLines(
  test: ReferenceTest,
  { value, content, blankContent, limeShare, putInG, leftG, materialG }: CalciumHydroxideConsumed,
): string[] {
  if (test.test !== 'calcium-hydroxide-consumed') return []
  const { readings } = test
  return [
    ...contentLines(readings, content, ''),
    ...(readings.blank === null || blankContent === null
      ? []
      : [
          ...contentLines(readings.blank, blankContent, 'Blank: '),
          `Of the lime put in the blank holds ${plainNumber(100 * limeShare, 1)} % as calcium hydroxide.`,
        ]),
    `In the paste as mixed: ${plainNumber(putInG, 3)} g put in, ${plainNumber(leftG, 3)} g left, ${shortNumber(materialG, 3)} g of material.`,
    `100 × (put in − left) / material: ${plainNumber(value, 1)} g/100 g.`,
  ]
}

function contentLines(
  { water, basis }: Thermogram,
  { value, water: loss, carbonate, basisMg }: CalciumHydroxideContent,
  head: string,
): string[] {
  const where =
    'before' in water
      ? `between tangents to ${rangeWords(water.before)} and ${rangeWords(water.after)}, at ${shortNumber(loss.middle ?? 0, 1)} °C`
      : `from ${rangeWords(water)}`
  return [
    `${head}Water lost ${where}: ${lossText(loss)}.${carbonate === null ? '' : ` Carbon dioxide lost: ${lossText(carbonate)}, counted as carbonated hydroxide (× 74.093 / 44.009).`}`,
    `${head}Calcium hydroxide, × 74.093 / 18.015, over the ${basis} mass of ${plainNumber(basisMg, 3)} mg: ${plainNumber(value, 2)} g/100 g.`,
  ]
}

function rangeWords({ from, to }: { readonly from: number; readonly to: number }): string {
  return `${shortNumber(from, 1)} to ${shortNumber(to, 1)} °C`
}

function lossText({ lossMg }: StepLoss): string {
  return `${plainNumber(lossMg, 3)} mg`
}
