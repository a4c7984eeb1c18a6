/** The steps of a working, as lines of print. */
import type { Figure, SizeTerm, Summand, WorkingStep } from '../core/result/working.ts'
import { printedUnits } from './as-written.ts'
import { boundsWords } from './bounds.ts'
import { intervalMethodWords, leveledIntervalWords } from './interval-words.ts'
import { AS_REPORTED } from './result-reasons.ts'
import { shortest } from './shortest.ts'
import { plainNumber } from './numbers.ts'

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

export function workingLines(steps: readonly WorkingStep[]): WorkingLine[] {
  return steps.map(workingLine)
}

type Step<Name extends WorkingStep['step']> = Extract<WorkingStep, { readonly step: Name }>

/** A line for each kind of step; a kind that is missing here does not compile. */
const LINES: { readonly [Name in WorkingStep['step']]: (step: Step<Name>) => WorkingLine } = {
  'reported-figure': ({ written, result }) => ({
    label: 'reported',
    expression: `${printedUnits(written)} ${AS_REPORTED}`,
    ...figure(result),
  }),
  'reported-mean': ({ of, n, result }) => ({
    label: `${of} mortar`,
    expression:
      n === null
        ? 'mean as reported, the number of specimens not stated'
        : `mean of ${n} as reported, no specimen on record`,
    ...figure(result),
  }),
  specimen: (step) => ({
    label: `${step.of} ${step.mark}`,
    expression: specimenWords(step),
    ...(step.result === null ? {} : figure(step.result)),
  }),
  'range-check': ({ measure, of, percent, limitPercent, kept }) => ({
    label: 'range',
    expression: `${measure === 'range' ? 'largest less smallest' : 'largest distance from the mean'} of ${of}, limit ${limitPercent} % of the mean: ${kept ? 'within' : 'beyond'}`,
    value: percent,
    unit: '%',
    decimals: 1,
    source: 'permissible range of the condition',
  }),
  mean: ({ of, n, marks, result }) => ({
    label: `${of} mean`,
    expression: `mean of ${marks === undefined ? n : marks.join(', ')}`,
    ...figure(result),
  }),
  'at-another-temperature': ({ readCelsius, askedCelsius, activationEnergyKJ, result }) => ({
    label: 'for information',
    expression: `read at ${shortest(readCelsius, 2, 'degC')}; at ${shortest(askedCelsius, 2, 'degC')} it would be about (${activationEnergyKJ} kJ/mol; the published range is wide)`,
    ...figure(result),
    source: 'Arrhenius law; activation energy: common practice, no source',
  }),
  ratio: ({ test, control, decimals, source, result }) => ({
    label: 'index',
    expression: `100 × ${plainNumber(test, decimals)} / ${plainNumber(control, decimals)}`,
    ...figure(result),
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
  'water-requirement': ({ writtenTest, writtenControl, result }) => ({
    label: 'water requirement',
    expression: `100 × ${printedUnits(writtenTest)} / ${printedUnits(writtenControl)}`,
    ...figure(result),
    source: 'ASTM C311 (from memory)',
  }),
  'oxide-sum': ({ summands, result }) => ({
    label: summands.some(({ below }) => below) ? 'sum of the figures' : 'sum',
    expression: `${summands.map(summandWords).join(' + ')} %`,
    ...figure(result),
  }),
  'alkali-equivalent': ({ soda, potash, result }) => ({
    label: soda.below || potash.below ? 'equivalent of the figures' : 'equivalent',
    expression: `${summandWords(soda)} + 0.658 × ${summandWords(potash)} %`,
    ...figure(result),
  }),
  bounds: ({ low, high, unit, decimals }) => ({
    label: 'bounds',
    expression: `a figure with < may be anything from nothing to that figure: ${boundsWords({ low, high }, decimals, unit)}`,
  }),
  'class-by-calcium': ({ lime, class: lotClass }) => ({
    label: 'for information',
    expression: `CaO ${summandWords(lime)} %: class ${lotClass} by the divider of 18 %`,
    source: 'ASTM C618, edition 19; at exactly 18.0 from memory',
  }),
}

function workingLine(step: WorkingStep): WorkingLine {
  // The table gives each kind its own line; only the pairing is lost on the compiler.
  const line = LINES[step.step] as (step: WorkingStep) => WorkingLine
  return line(step)
}

function figure({ value, unit, decimals }: Figure): Figure {
  return { value, unit, decimals }
}

function specimenWords({ written, terms, excluded }: Step<'specimen'>): string {
  const reading = printedUnits(written ?? 'no reading')
  const calculation =
    terms.length === 0 ? `${reading} as reported` : [reading, ...terms.map(termWords)].join(' ')
  return excluded === undefined ? calculation : `${calculation}, excluded: ${excluded}`
}

function termWords({ does, value, unit, assumed }: SizeTerm): string {
  const size = shortest(value, 2, unit)
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
