/** Why a lot's resistivity moved, as its page shows it: the sentence, the table, every input of the model. */
import {
  ASSUMED,
  type ExplainedPair,
  type Explanation,
} from '../../core/resistivity/resistivity-explained.ts'
import { explanationCells, explanationWords } from '../../words/explanation-words.ts'
import { fullSentence } from '../../words/sentences.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { quantity, resultText } from '../../words/units.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { explainedIndices } from './resistivity-explained.ts'
import { fixedDigits, plainNumber } from '../../words/numbers.ts'

export interface ExplainedResistivity {
  /** Condition, age and index, with what is lacking where it cannot be explained. */
  readonly summary: string
  readonly explained: ExplainedFactors | null
}

export interface ExplainedFactors {
  readonly sentence: string
  /** Test mortar, control and factor: as read, pore solution, formation factor. */
  readonly rows: readonly FactorRow[]
  /** What the model was given and what it assumed. */
  readonly inputs: string
  /** Figures that the reader's own inputs are computed with. */
  readonly pair: ExplainedPair
  readonly fields: readonly InputField[]
}

export interface FactorRow {
  readonly title: string
  readonly test: string
  readonly control: string
  readonly factor: string
  /** Whether it changes with the reader's own inputs. */
  readonly modelled: boolean
}

export interface InputField {
  readonly name: string
  readonly label: string
  readonly value: number
  readonly step: number
}

export function explainedResistivities(edition: Edition, lot: LotEntry): ExplainedResistivity[] {
  return explainedIndices(edition, lot).map(({ index, condition, explained }) => {
    const head = `${condition}, ${index.age}: ${resultText(index)}`
    return 'lacks' in explained
      ? { summary: `${head}, not explained: ${explained.lacks}`, explained: null }
      : { summary: head, explained: factors(explained.pair, explained.explanation, edition.site.units) }
  })
}

function factors(pair: ExplainedPair, explanation: Explanation, units: UnitSystem): ExplainedFactors {
  return {
    sentence: fullSentence(explanationWords(explanation)),
    rows: factorRows(pair, explanation, units),
    inputs: inputsInWords(pair),
    pair,
    fields: fields(pair),
  }
}

function factorRows(pair: ExplainedPair, explanation: Explanation, units: UnitSystem): FactorRow[] {
  const cells = explanationCells(explanation)
  const modelled = (title: string, from: number): FactorRow => {
    const [test = '', control = '', factor = ''] = cells.slice(from, from + 3)
    return { title, test, control, factor, modelled: true }
  }
  return [
    {
      title: 'Bulk resistivity as read',
      test: quantity(pair.testOhmMetre, 1, 'ohm m', units),
      control: quantity(pair.controlOhmMetre, 1, 'ohm m', units),
      factor: plainNumber(explanation.ratio, 2),
      modelled: false,
    },
    modelled('Pore solution, Ω·m at 25 °C, modelled', 0),
    modelled('Apparent formation factor, at the saturation of curing', 3),
  ]
}

function inputsInWords(pair: ExplainedPair): string {
  const water = pair.controlWaterToCementitious
  const own = water === undefined ? '' : ` (control ${plainNumber(water, 3)})`
  return `From alkalis of the cement ${plainNumber(pair.cementAlkalis, 2)} % and of the material ${plainNumber(pair.materialAlkalis, 2)} % as Na₂O, replacement ${percent(pair.replacement)} %, w/cm ${plainNumber(pair.waterToCementitious, 3)}${own}; assumed: cement reacted ${percentRange(ASSUMED.cementReaction)}, material reacted ${percentRange(ASSUMED.materialReaction)}, alkalis bound again ${percentRange(ASSUMED.bound)}, in the test mortar at least as large a share as in the control.`
}

function percent(fraction: number): number {
  return Number(fixedDigits(100 * fraction, 0))
}

function percentRange([low, high]: readonly [number, number]): string {
  return `${percent(low)} to ${percent(high)} %`
}

const ASSUMED_TITLES = {
  cementReaction: 'cement reacted',
  materialReaction: 'material reacted',
  bound: 'alkalis bound',
} as const

/** Fields of the form for the reader's own inputs. */
function fields(pair: ExplainedPair): InputField[] {
  return [
    {
      name: 'cementAlkalis',
      label: 'cement alkalis, % Na₂O',
      value: Number(fixedDigits(pair.cementAlkalis, 2)),
      step: 0.01,
    },
    {
      name: 'materialAlkalis',
      label: 'material alkalis, % Na₂O',
      value: Number(fixedDigits(pair.materialAlkalis, 2)),
      step: 0.01,
    },
    {
      name: 'waterToCementitious',
      label: 'w/cm',
      value: Number(fixedDigits(pair.waterToCementitious, 3)),
      step: 0.001,
    },
    ...(['cementReaction', 'materialReaction', 'bound'] as const).flatMap((name) =>
      ASSUMED[name].map((fraction, end) => ({
        name: `${name}-${end}`,
        label: `${ASSUMED_TITLES[name]}, ${end === 0 ? 'least' : 'most'}, %`,
        value: percent(fraction),
        step: 1,
      })),
    ),
  ]
}
