/** The record of a new study, a plan with nothing cast yet, and the head of the table of its readings. */
import type { Moment } from '../core/measure/moment.ts'
import { type NewFile, textOf } from './new-file.ts'
import { schemaLine } from './schema-line.ts'

export const STUDY_KINDS = ['screening', 'interlaboratory', 'ruggedness'] as const
export type StudyKind = (typeof STUDY_KINDS)[number]

export interface NewStudy {
  readonly id: string
  readonly kind: StudyKind
  /** Day on which the plan is fixed, unless it is changed. */
  readonly fixed: Moment
}

export function studySheet({ id, kind, fixed }: NewStudy): NewFile {
  const path = `studies/${id}.yaml`
  return {
    path,
    text: textOf([
      schemaLine('study', path),
      `title: <your ${kind} study>`,
      `kind: ${kind}`,
      'question: <your question>',
      'by: <your name>',
      '# What is fixed before anything is cast: the plan’s digest, which `check` prints, goes in here when it is.',
      'plan:',
      `  fixed: ${fixed}`,
      '  hypothesis: <your expectation>',
      '  batches: 2',
      ...PLANS[kind],
      ...MATERIALS[kind],
      ...DESIGNS[kind],
      ...tableLines(id, kind),
    ]),
  }
}

const PLANS: Readonly<Record<StudyKind, readonly string[]>> = {
  screening: [
    '  classes: <your test that says what is inert, weak or reactive, never the indices judged here>',
    '  # What thresholds are rounded to.',
    '  threshold: { strength-activity-index: 5 %, resistivity-index: 50 % }',
  ],
  interlaboratory: ['  exclusions: <your causes for leaving a result out>'],
  ruggedness: ['  exclusions: <your causes for leaving a run out>'],
}

const MATERIALS: Readonly<Record<StudyKind, readonly string[]>> = {
  screening: [
    '# A code for each; class: inert, weak or reactive, with what shows it.',
    'materials:',
    '  I1: { title: <your inert material>, class: inert, shown-by: <your reference test> }',
    '  R1: { title: <your reactive material>, class: reactive, shown-by: <your reference test> }',
  ],
  interlaboratory: [
    '# Laboratories appear by their codes alone.',
    "laboratories: { '1': {}, '2': {}, '3': {}, '4': {}, '5': {}, '6': {} }",
    'materials:',
    '  M1: { title: <your material> }',
  ],
  ruggedness: ['materials:', '  M1: { title: <your material> }'],
}

const CONDITIONS = [
  '# A code for each condition that mortars are made at; `record: ID` takes one of conditions/.',
  'conditions:',
  '  R20-23: { replacement: 20 %, temperature: 23 degC, flow: constant-flow, curing: saturated-lime-water }',
]

const DESIGNS: Readonly<Record<StudyKind, readonly string[]>> = {
  screening: [
    ...CONDITIONS,
    '  R50-50: { replacement: 50 %, temperature: 50 degC, w/cm: 0.485, flow: constant-w/cm, curing: saturated-lime-water }',
  ],
  interlaboratory: CONDITIONS,
  ruggedness: [
    '# Seven details of the test, each at a low and a high level, in eight runs (Plackett and Burman).',
    'factors:',
    ...Array.from(
      { length: 7 },
      (_, place) =>
        `  - { title: "<your detail ${place + 1}>", low: "<your low level>", high: "<your high level>" }`,
    ),
    'runs:',
    ...['+++-+--', '-+++-+-', '--+++-+', '+--+++-', '-+--+++', '+-+--++', '++-+--+', '-------'].map(
      (signs, place) => `  N${place + 1}: '${signs}'`,
    ),
  ],
}

function tableLines(id: string, kind: StudyKind): string[] {
  return [
    '# Once there are readings, name their table, which lies beside this file, one row a specimen, with these columns;',
    `# ${kind === 'ruggedness' ? 'condition is the code of the run' : 'material is "control" for the control mortar'}:`,
    '#   material,condition,laboratory,batch,age,tested,specimen,strength (MPa),resistivity (ohm m)',
    `# table: { file: ${id}.csv }`,
  ]
}
