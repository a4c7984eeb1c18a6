/**
 * Which details of a resistivity test its condition records: what a bench must know to do the test again, in the order of
 * its day. A detail counts as recorded where the record says anything of it; whether it was kept, readings tell.
 */

import { memberAt } from '../mortar/made-alike.ts'
import type { BenchCondition } from './bench-condition.ts'

/** Parts of the bench's day. */
export type BenchStage =
  | 'first-day'
  | 'entry'
  | 'bath'
  | 'cooling'
  | 'handling'
  | 'specimens'
  | 'meter'
  | 'after-reading'
  | 'control'

export type BenchDetail =
  | 'mould'
  | 'first-temperature'
  | 'first-hours'
  | 'entry'
  | 'bath-temperature'
  | 'bath-log'
  | 'core-log'
  | 'vessel'
  | 'liquid-to-specimens'
  | 'solid-lime'
  | 'renewal'
  | 'materials-per-vessel'
  | 'evaporation'
  | 'control-cured'
  | 'cooled-in'
  | 'cooled-for'
  | 'cooled-to'
  | 'core-when-read'
  | 'cooled-alike'
  | 'out-of-liquid'
  | 'surface'
  | 'faces'
  | 'directions'
  | 'sides'
  | 'mass'
  | 'frequency'
  | 'phase'
  | 'contact-medium'
  | 'contact-pressure'
  | 'contact-resistance'
  | 'check-resistors'
  | 'ceiling'
  | 'after-reading'
  | 'cement-type'
  | 'cement-alkalis'

interface Entry {
  readonly stage: BenchStage
  readonly detail: BenchDetail
  /** Where the record says it; every one of several places. */
  readonly at: readonly (readonly string[])[]
  /** What the test must be for the detail to matter; any resistivity test without it. */
  readonly of?: 'cooled' | 'in-liquid'
}

/** Own choice of what reproduces the test, in the order in which a bench meets it. */
const DAY: readonly Entry[] = [
  { stage: 'first-day', detail: 'mould', at: [['first-day', 'in']] },
  {
    stage: 'first-day',
    detail: 'first-temperature',
    at: [
      ['first-day', 'temperature'],
      ['first-day', 'within'],
    ],
  },
  { stage: 'first-day', detail: 'first-hours', at: [['first-day', 'for']] },
  { stage: 'entry', detail: 'entry', at: [['curing', 'entry']], of: 'cooled' },
  {
    stage: 'bath',
    detail: 'bath-temperature',
    at: [
      ['curing', 'temperature'],
      ['curing', 'within'],
    ],
  },
  { stage: 'bath', detail: 'bath-log', at: [['curing', 'bath', 'log', 'bath-every']] },
  { stage: 'bath', detail: 'core-log', at: [['curing', 'bath', 'log', 'core-every']], of: 'cooled' },
  { stage: 'bath', detail: 'vessel', at: [['curing', 'bath', 'vessel']] },
  {
    stage: 'bath',
    detail: 'liquid-to-specimens',
    at: [['curing', 'bath', 'liquid-to-specimens']],
    of: 'in-liquid',
  },
  { stage: 'bath', detail: 'solid-lime', at: [['curing', 'bath', 'solid-lime']], of: 'in-liquid' },
  { stage: 'bath', detail: 'renewal', at: [['curing', 'bath', 'renewal']], of: 'in-liquid' },
  { stage: 'bath', detail: 'materials-per-vessel', at: [['curing', 'bath', 'materials-per-vessel']] },
  { stage: 'bath', detail: 'evaporation', at: [['curing', 'bath', 'evaporation']] },
  { stage: 'bath', detail: 'control-cured', at: [['curing', 'control-and-test']] },
  { stage: 'cooling', detail: 'cooled-in', at: [['before-test', 'cool-in']], of: 'cooled' },
  { stage: 'cooling', detail: 'cooled-for', at: [['before-test', 'for']], of: 'cooled' },
  {
    stage: 'cooling',
    detail: 'cooled-to',
    at: [
      ['before-test', 'to'],
      ['before-test', 'within'],
    ],
    of: 'cooled',
  },
  { stage: 'cooling', detail: 'core-when-read', at: [['before-test', 'core-by']], of: 'cooled' },
  {
    stage: 'cooling',
    detail: 'cooled-alike',
    at: [['before-test', 'control-and-test-within']],
    of: 'cooled',
  },
  {
    stage: 'handling',
    detail: 'out-of-liquid',
    at: [['resistivity', 'handling', 'out-of-liquid-at-most']],
    of: 'in-liquid',
  },
  { stage: 'handling', detail: 'surface', at: [['resistivity', 'handling', 'surface']] },
  { stage: 'specimens', detail: 'faces', at: [['resistivity', 'faces']] },
  { stage: 'specimens', detail: 'directions', at: [['resistivity', 'directions']] },
  { stage: 'specimens', detail: 'sides', at: [['resistivity', 'measured', 'sides']] },
  { stage: 'specimens', detail: 'mass', at: [['resistivity', 'measured', 'mass']] },
  { stage: 'meter', detail: 'frequency', at: [['resistivity', 'frequency']] },
  { stage: 'meter', detail: 'phase', at: [['resistivity', 'meter', 'phase-at-most']] },
  { stage: 'meter', detail: 'contact-medium', at: [['resistivity', 'meter', 'contact-medium']] },
  { stage: 'meter', detail: 'contact-pressure', at: [['resistivity', 'meter', 'contact-pressure']] },
  {
    stage: 'meter',
    detail: 'contact-resistance',
    at: [['resistivity', 'reading', 'end-contact-at-most']],
  },
  { stage: 'meter', detail: 'check-resistors', at: [['resistivity', 'meter', 'check-resistors']] },
  { stage: 'meter', detail: 'ceiling', at: [['resistivity', 'meter', 'ceiling']] },
  { stage: 'after-reading', detail: 'after-reading', at: [['resistivity', 'handling', 'after-reading']] },
  { stage: 'control', detail: 'cement-type', at: [['control', 'cement', 'type']] },
  { stage: 'control', detail: 'cement-alkalis', at: [['control', 'cement-alkalis']] },
]

/** A detail of the bench's day, and whether the condition records it. */
export interface BenchLine {
  readonly stage: BenchStage
  readonly detail: BenchDetail
  readonly recorded: boolean
}

/**
 * The details that reproduce a resistivity test, in the order of the bench's day.
 * @param condition as in its record
 * @returns one line for each detail that matters to this test; none for a condition without a resistivity test
 * Notes: 1. entry, cooling and core temperatures matter where specimens are cured warmer than they may be read; 2. what
 * concerns a liquid matters only where they are cured in one.
 */
export function benchDay(condition: BenchCondition): BenchLine[] {
  if (condition.resistivity === undefined) return []
  const matters = { cooled: isCooled(condition), 'in-liquid': !DRY.has(condition.curing.medium) }
  return DAY.filter(({ of }) => of === undefined || matters[of]).map(({ stage, detail, at }) => ({
    stage,
    detail,
    recorded: at.every((path) => memberAt(condition, path) !== undefined),
  }))
}

/** Specimens that are in no liquid. */
const DRY: ReadonlySet<string> = new Set(['sealed', 'fog'])

/** Whether specimens come from their curing warmer than they may be read. */
function isCooled({ curing, resistivity }: BenchCondition): boolean {
  if (resistivity === undefined) return false
  const { temperature, within } = resistivity.reading
  return within.value < curing.temperature.value - temperature.value
}
