/** Readings of mortars as rows, a specimen each; an age without specimens is a row of its own. */
import { isQuantity } from '../../core/mortar/mortar.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { Control, Lot, ResistivityTest, StrengthTest } from '../schema/loaded-records.ts'
import { type Entry, momentEntry, quantityEntry, textEntry } from './table-builder.ts'

export interface MortarRow {
  readonly measure: 'strength' | 'resistivity'
  readonly entries: readonly Entry[]
}

type Test = NonNullable<Lot['tests']>[number]

/** @param name entries of the lot */
export function testRows(name: readonly Entry[], test: Test): MortarRow[] {
  return mortarRows(test, [
    ...name,
    ...textEntry('sample', test.sample),
    ...textEntry('control', test.control),
    ...textEntry('mortar-deviations', test.deviations),
  ])
}

export function controlRows(id: string, control: Control): MortarRow[] {
  const { cement } = control
  return mortarRows(control, [
    ...textEntry('control', id),
    ...textEntry('cement', cement?.lot),
    ...textEntry('cement-type', cement?.type),
    ...quantityEntry('cement-alkalis', cement?.['Na2O-equivalent']),
    ...quantityEntry('cement-strength', cement?.strength),
  ])
}

function mortarRows(mortar: Test | Control, names: readonly Entry[]): MortarRow[] {
  const head = [
    ...names,
    ...textEntry('condition', mortar.condition),
    ...textEntry('laboratory', mortar.laboratory),
    ...momentEntry('cast', mortar.cast),
    ...quantityEntry('flow', mortar.flow),
    ...quantityEntry('water', mortar.water),
    ...quantityEntry('mould', mortar.mould),
    ...textEntry('note', mortar.note),
  ]
  const { strength = [], resistivity = [] } = mortar
  const rows = [
    ...strength.flatMap((test) =>
      ageRows(test, [...head, ...strengthEntries(test)]).map(
        (entries): MortarRow => ({ measure: 'strength', entries }),
      ),
    ),
    ...resistivity.flatMap((test) =>
      ageRows(test, [...head, ...resistivityEntries(test)]).map(
        (entries): MortarRow => ({ measure: 'resistivity', entries }),
      ),
    ),
  ]
  return rows.length === 0 ? [{ measure: 'strength', entries: head }] : rows
}

function ageEntries(test: StrengthTest | ResistivityTest): Entry[] {
  const { age, tested, reported, deviations, of } = test
  return [
    ...textEntry('age', age.text),
    ...momentEntry('tested', tested),
    ...momentEntry('reported', reported),
    ...textEntry('deviations', deviations),
    ...textEntry('of', of),
    ...momentEntry('retest-of', test['retest-of']),
  ]
}

function strengthEntries(test: StrengthTest): Entry[] {
  return [
    ...ageEntries(test),
    ...quantityEntry('mean-strength', test.mean),
    ...quantityEntry('control-strength', test.control),
  ]
}

function resistivityEntries(test: ResistivityTest): Entry[] {
  return [
    ...ageEntries(test),
    ...quantityEntry('mean-resistivity', test.mean),
    ...quantityEntry('temperature', test.temperature),
    ...quantityEntry('core', test.core),
    ...momentEntry('left-bath', test['left-bath']),
    ...quantityEntry('out-of-liquid', test['out-of-liquid']),
    ...quantityEntry('end-contact', test['end-contact']),
    ...quantityEntry('frequency', test.frequency),
    ...quantityEntry('meter-known', test.verification?.known),
    ...quantityEntry('meter-read', test.verification?.read),
    ...textEntry('conditioning', test.conditioning),
    ...textEntry('saturation', test.saturation),
  ]
}

function ageRows({ specimens }: StrengthTest | ResistivityTest, head: readonly Entry[]): Entry[][] {
  const rows = Object.entries(specimens ?? {}).map(([mark, specimen]) => [
    ...head,
    ...textEntry('specimen', mark),
    ...specimenEntries(specimen),
  ])
  return rows.length === 0 ? [[...head]] : rows
}

/** The reading that a quantity alone is. */
const READING_OF: Readonly<Record<string, string>> = {
  force: 'load',
  stress: 'strength',
  resistance: 'resistance',
  resistivity: 'resistivity',
}
const OF_SPECIMEN = [
  'load',
  'strength',
  'resistance',
  'resistivity',
  'side',
  'other-side',
  'length',
  'diameter',
  'mass',
] as const

function specimenEntries(
  specimen: NonNullable<(StrengthTest | ResistivityTest)['specimens']>[string],
): Entry[] {
  if (isQuantity(specimen)) return quantityEntry(READING_OF[specimen.kind] ?? 'load', specimen)
  const members = specimen as Readonly<Record<string, unknown>>
  return [
    ...OF_SPECIMEN.flatMap((key) => quantityEntry(key, members[key] as Quantity | undefined)),
    ...textEntry('excluded', specimen.excluded),
    ...momentEntry('excluded-on', specimen['excluded-on']),
  ]
}
