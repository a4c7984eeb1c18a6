/** A lot's resistivity indices with what may have moved them, from the records that the model asks for. */
import { resistivityIndex } from '../../core/resistivity/resistivity-index.ts'
import { isSameAge } from '../../core/measure/age.ts'
import {
  type ExplainedPair,
  explainResistivity,
  type Explanation,
  leavesWater,
} from '../../core/resistivity/resistivity-explained.ts'
import { isBounded } from '../../core/result/bounds.ts'
import type { Result } from '../../core/result/result.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'

/** One index explained, or why it cannot be. */
export interface ExplainedIndex {
  readonly index: Result
  readonly condition: string
  readonly explained:
    | { readonly pair: ExplainedPair; readonly explanation: Explanation }
    | { readonly lacks: string }
}

/** Every valid resistivity index of the producer, in the order of the results. */
export function explainedIndices(edition: Edition, lot: LotEntry): ExplainedIndex[] {
  return lot.results
    .filter((result) => result.property === 'resistivity-index' && result.role === 'producer' && result.valid)
    .map((index) => {
      return {
        index,
        condition: conditionTitle(edition, index.condition ?? ''),
        explained: explainedPair(pairOf(edition, lot, index)),
      }
    })
}

function explainedPair(pair: ExplainedPair | { lacks: string }): ExplainedIndex['explained'] {
  if ('lacks' in pair) return pair
  return leavesWater(pair)
    ? { pair, explanation: explainResistivity(pair) }
    : { lacks: 'the reaction would take all the water' }
}

/** The mean that the index was taken from: a replaced one gives another ratio to the control. */
function meanBehind(index: Result, results: readonly Result[]): Result | undefined {
  return results.find(
    (result) =>
      result.property === 'bulk-resistivity' &&
      result.condition === index.condition &&
      isSameAge(result.age, index.age) &&
      result.sample === index.sample &&
      result.laboratory === index.laboratory &&
      result.role === 'producer' &&
      result.valid &&
      result.controlValue !== undefined &&
      resistivityIndex(result.value, result.controlValue) === index.value,
  )
}

function pairOf(edition: Edition, lot: LotEntry, index: Result): ExplainedPair | { lacks: string } {
  const condition = edition.conditions.get(index.condition ?? '')
  const bulk = meanBehind(index, lot.results)
  const cement = edition.controls.get(index.control ?? '')?.record.cement?.['Na2O-equivalent']
  const material = lot.results.find(
    (result) => result.property === 'alkali-equivalent' && result.role === 'producer' && result.valid,
  )
  if (condition === undefined || bulk?.controlValue === undefined)
    return { lacks: 'the resistivities of both mortars are not on record' }
  if (condition.replacement.by !== 'mass') return { lacks: 'the model covers replacement by mass only' }
  const water = waterToCementitious(lot, index, condition)
  if (cement === undefined) return { lacks: 'the alkalis of the control cement are not on record' }
  if (material === undefined) return { lacks: 'the alkalis of the material are not on record' }
  if (isBounded(material)) return { lacks: 'the alkalis of the material are known only within bounds' }
  if (!(0 < cement.value))
    return {
      lacks: 'the alkalis of the control cement are given as zero, which the model cannot use',
    }
  if (water === null) return { lacks: 'the water of the test mortar is not on record' }
  return {
    testOhmMetre: bulk.value,
    controlOhmMetre: bulk.controlValue,
    cementAlkalis: cement.value,
    materialAlkalis: material.value,
    replacement: condition.replacement.amount.value / 100,
    waterToCementitious: water,
    ...controlWater(edition, index, condition),
  }
}

/** At constant flow the control has its own water; at a fixed w/cm both have the condition's. */
function controlWater(
  edition: Edition,
  index: Result,
  {
    water,
    batch,
  }: {
    water: { 'w/cm'?: number; 'control-water'?: { value: number } }
    batch?: { cementitious: { value: number } }
  },
): Pick<ExplainedPair, 'controlWaterToCementitious'> {
  const own = edition.controls.get(index.control ?? '')?.record.water?.value ?? water['control-water']?.value
  return water['w/cm'] !== undefined || own === undefined || batch === undefined
    ? {}
    : { controlWaterToCementitious: own / batch.cementitious.value }
}

/** The condition's own figure, else the mortar's water over the batch's cementitious mass. */
function waterToCementitious(
  lot: LotEntry,
  index: Result,
  { water, batch }: { water: { 'w/cm'?: number }; batch?: { cementitious: { value: number } } },
): number | null {
  if (water['w/cm'] !== undefined) return water['w/cm']
  const own = lot.record.tests?.find(
    (test) =>
      test.condition === index.condition &&
      test.sample === index.sample &&
      test.control === index.control &&
      test.laboratory === index.laboratory,
  )?.water
  return own === undefined || batch === undefined ? null : own.value / batch.cementitious.value
}
