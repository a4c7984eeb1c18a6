/** The steps of a working, as lines of print. */
import type { Figure, SizeTerm, Summand, WorkingStep } from '../core/result/working.ts'
import { printedUnits } from './as-written.ts'
import { boundsWords } from './bounds.ts'
import { intervalMethodWords, leveledIntervalWords } from './interval-words.ts'
import { AS_REPORTED } from './result-reasons.ts'
import { isFault, readQuantity } from '../core/measure/units.ts'
import { shortest } from './shortest.ts'
import { inSystem, type UnitSystem } from './unit-systems.ts'
import { numberWords, plainNumber } from './numbers.ts'

/** One line of a working: what was done, with which numbers, and what came out. */
export interface WorkingLine {
  readonly label: string
  /** The numbers as put in, for instance "78.4 kN / 2500 mm²". */
  readonly expression: string
  readonly value?: number
  readonly unit?: string
  /** Decimals to print `value` with. */
  readonly decimals?: number
  /** Clause, equation or record that asks for this step. */
  readonly source?: string
}

export function workingLines(steps: readonly WorkingStep[], units: UnitSystem = 'SI'): WorkingLine[] {
  return steps.map((step) => workingLine(step, units))
}

type Step<Name extends WorkingStep['step']> = Extract<WorkingStep, { readonly step: Name }>

/** A line for each kind of step; a kind that is missing here does not compile. */
const LINES: {
  readonly [Name in WorkingStep['step']]: (step: Step<Name>, units: UnitSystem) => WorkingLine
} = {
  'reported-figure': ({ written, result }, units) => ({
    label: 'reported',
    expression: `${printedUnits(written)} ${AS_REPORTED}`,
    ...figure(result, units),
  }),
  'reported-mean': ({ of, n, result }, units) => ({
    label: `${of} mortar`,
    expression:
      n === null
        ? 'mean as reported; the number of specimens is not stated'
        : `mean of ${n} as reported; no specimens on record`,
    ...figure(result, units),
  }),
  specimen: (step, units) => ({
    label: `${step.of} ${step.mark}`,
    expression: specimenWords(step, units),
    ...(step.result === null ? {} : figure(step.result, units)),
  }),
  'range-check': ({ measure, of, percent, limitPercent, kept }) => ({
    label: 'range',
    expression: `${measure === 'range' ? 'largest less smallest' : 'largest distance from the mean'} of ${of}, limit ${limitPercent} % of the mean: ${kept ? 'within' : 'beyond'}`,
    value: percent,
    unit: '%',
    decimals: 1,
    source: 'permissible range of the condition',
  }),
  mean: ({ of, n, marks, result }, units) => ({
    label: `${of} mean`,
    expression: `mean of ${marks === undefined ? n : marks.join(', ')}`,
    ...figure(result, units),
  }),
  'at-another-temperature': ({ readCelsius, askedCelsius, activationEnergyKJ, result }, units) => ({
    label: 'for information',
    expression: `read at ${shortest(readCelsius, 2, 'degC', units)}; at ${shortest(askedCelsius, 2, 'degC', units)} it would be about (${activationEnergyKJ} kJ/mol; the published range is wide)`,
    ...figure(result, units),
    source: 'Arrhenius law; activation energy: common practice, no source',
  }),
  ratio: ({ test, control, unit, decimals, source, result }, units) => ({
    label: 'index',
    expression: `100 × ${numberIn(test, unit, decimals, units)} / ${numberIn(control, unit, decimals, units)}`,
    ...figure(result, units),
    source,
  }),
  'control-drift': ({ points, decimals }) => ({
    label: 'control drift',
    expression: `a control 1 % higher would lower the index by ${plainNumber(points, decimals)} points`,
  }),
  interval: ({ interval, decimals }) =>
    interval === null
      ? {
          label: 'interval',
          expression: 'none: a single specimen, or a mean without its specimens, shows no scatter',
        }
      : {
          label: 'interval',
          expression: leveledIntervalWords(interval, decimals),
          source: intervalMethodWords(interval),
        },
  'water-requirement': ({ writtenTest, writtenControl, result }, units) => ({
    label: 'water requirement',
    expression: `100 × ${printedUnits(writtenTest)} / ${printedUnits(writtenControl)}`,
    ...figure(result, units),
    source: 'ASTM C311 (from memory)',
  }),
  'oxide-sum': ({ summands, result }, units) => ({
    label: summands.some(({ below }) => below) ? 'sum of the figures' : 'sum',
    expression: `${summands.map(summandWords).join(' + ')} %`,
    ...figure(result, units),
  }),
  'alkali-equivalent': ({ soda, potash, result }, units) => ({
    label: soda.below || potash.below ? 'equivalent of the figures' : 'equivalent',
    expression: `${summandWords(soda)} + 0.658 × ${summandWords(potash)} %`,
    ...figure(result, units),
  }),
  bounds: ({ low, high, unit, decimals }, units) => ({
    label: 'bounds',
    expression: `a figure with < may be anything from nothing to that figure: ${boundsWords({ low, high }, decimals, unit, units)}`,
  }),
  'class-by-calcium': ({ lime, class: lotClass }) => ({
    label: 'for information',
    expression: `CaO ${summandWords(lime)} %: class ${lotClass} by the divider of 18 %`,
    source: 'ASTM C618, edition 19; at exactly 18.0 from memory',
  }),
}

/** The number alone, in the unit in which its mean stands above it. */
function numberIn(value: number, unit: string, decimals: number, units: UnitSystem): string {
  const figure = inSystem({ value, unit, decimals }, units)
  return plainNumber(figure.value, figure.decimals)
}

function workingLine(step: WorkingStep, units: UnitSystem): WorkingLine {
  // The table gives each kind its own line; only the pairing is lost on the compiler.
  const line = LINES[step.step] as (step: WorkingStep, units: UnitSystem) => WorkingLine
  return line(step, units)
}

function figure({ value, unit, decimals }: Figure, units: UnitSystem): Figure {
  return inSystem({ value, unit, decimals }, units)
}

function specimenWords({ written, terms, excluded }: Step<'specimen'>, units: UnitSystem): string {
  const reading = written === null ? 'no reading' : readingWords(written, units)
  const calculation =
    terms.length === 0
      ? `${reading} as reported`
      : [reading, ...terms.map((term) => termWords(term, units))].join(' ')
  return excluded === undefined ? calculation : `${calculation}, excluded: ${excluded}`
}

/** A reading as written; a load with what the site's own unit makes of it, since an area follows in that. */
function readingWords(written: string, units: UnitSystem): string {
  const load = readQuantity(written, 'force')
  if (units === 'SI' || isFault(load) || load.unit === 'lbf' || load.unit === 'kip')
    return printedUnits(written)
  return `${printedUnits(written)} (${numberWords(load.value, 2, 'kN', units)})`
}

function termWords({ does, value, unit, assumed }: SizeTerm, units: UnitSystem): string {
  const size = shortest(value, 2, unit, does === 'divided-by' ? units : 'SI')
  const amount =
    assumed === undefined
      ? size
      : `${printedUnits(assumed.written)} (${size}; a cube of ${assumed.of} is assumed)`
  switch (does) {
    case 'less-end-contact':
      return `less ${amount} end contact`
    case 'times':
      return `× ${amount}`
    case 'divided-by':
      return `/ ${amount}`
  }
}

function summandWords({ value, decimals, below }: Summand): string {
  return `${below ? '<' : ''}${plainNumber(value, decimals)}`
}
