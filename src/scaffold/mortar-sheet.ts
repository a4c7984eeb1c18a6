/** Room for the readings of mortars: one test for each condition, with each age that the specification judges. */
import { scalar } from '../records/edit/revision-line.ts'
import { compareAges } from '../core/measure/age.ts'
import type { PropertyKey } from '../core/measure/properties.ts'
import { RATIO_OF } from '../core/measure/ratio-indices.ts'
import type { DescribedCondition } from '../records/records.ts'
import type { AskedFigure } from './asked-figures.ts'
import type { LotSheet } from './lot-sheet.ts'
import { filled, remarked } from './new-file.ts'

export type Units = 'SI' | 'US'

/** Specimens at one age where the condition does not say how many: cubes, and the halves of three prisms. */
const SPECIMENS: Readonly<Record<string, number>> = { 'half-prism': 6 }
const USUAL_SPECIMENS = 3

/** "tests:" with a mortar for each condition; nothing where no figure of a mortar is asked for. */
export function mortarLines(sheet: LotSheet, asked: readonly AskedFigure[]): string[] {
  const conditions = [...new Set(asked.flatMap(({ condition }) => condition ?? []))]
  const tests = conditions.flatMap((id) => {
    const condition = sheet.conditions.get(id)
    return condition === undefined ? [] : testLines(sheet, id, condition, asked)
  })
  return tests.length === 0 ? [] : ['', 'tests:', ...tests]
}

function testLines(
  { laboratory, controls, units, cast }: LotSheet,
  id: string,
  condition: DescribedCondition,
  asked: readonly AskedFigure[],
): string[] {
  const control = controls.get(id)
  const own = asked.filter((figure) => figure.condition === id)
  const needs = (index: string) => own.some(({ property }) => property === index)
  return [
    '  - sample: C',
    `    condition: ${id}`,
    remarked(
      `    control:${control === undefined ? '' : ` ${control}`}`,
      control === undefined ? 'id of the control batch, from controls/' : 'the newest; change it for another',
    ),
    `    laboratory: ${scalar(laboratory)}`,
    filled('    cast:', cast, 'day and time, such as 2026-03-11T09:20'),
    ...mixtureLines(),
    ...(needs('resistivity-index') ? resistivityLines(condition) : []),
    ...(needs('strength-activity-index') ? strengthLines(condition, units) : []),
  ]
}

/** When the mortars of finished figures were cast, with the ages that are due from then. */
export function castingLines({ laboratory, cast }: LotSheet, asked: readonly AskedFigure[]): string[] {
  const byCondition = Map.groupBy(
    asked.filter(({ property }) => property in RATIO_OF),
    ({ condition }) => condition,
  )
  const tests = [...byCondition].flatMap(([condition, own]) =>
    condition === undefined
      ? []
      : [
          '  - sample: C',
          `    condition: ${condition}`,
          `    laboratory: ${scalar(laboratory)}`,
          filled('    cast:', cast, CAST),
          ...plannedLines('strength', 'strength-activity-index', own),
          ...plannedLines('resistivity', 'resistivity-index', own),
        ],
  )
  return tests.length === 0 ? [] : ['', 'tests:', ...tests]
}

const CAST = 'day on which the mortars were cast: later ages are due from it'

function plannedLines(key: string, index: PropertyKey, asked: readonly AskedFigure[]): string[] {
  const ages = asked.flatMap(({ property, age }) => (property === index && age !== undefined ? [age] : []))
  const texts = [...new Set(ages.toSorted(compareAges).map(({ text }) => text))]
  return texts.length === 0 ? [] : [`    ${key}:`, ...texts.map((age) => `      - age: ${age}`)]
}

/** Flow and water of a mortar. */
export function mixtureLines(indent = '    '): string[] {
  return [remarked(`${indent}flow:`, 'in %'), remarked(`${indent}water:`, 'mixing water, in g')]
}

/** Loads at each age of a condition. */
export function strengthLines(condition: DescribedCondition, units: Units, indent = '    '): string[] {
  const shape = condition.strength?.specimen.shape ?? 'cube'
  const planned = condition.strength?.specimens?.planned ?? SPECIMENS[shape] ?? USUAL_SPECIMENS
  return [
    `${indent}strength:`,
    ...agesOf(condition).flatMap((age, place) => [
      `${indent}  - age: ${age}`,
      remarked(`${indent}    tested:`, `${age} after casting; day and time`),
      remarked(
        `${indent}    specimens: ${room(planned, place)}`,
        units === 'SI' ? 'loads, such as 78.4 kN' : 'loads, such as 17600 lbf',
      ),
    ]),
  ]
}

/** Resistances at each age of a condition. */
export function resistivityLines(condition: DescribedCondition, indent = '    '): string[] {
  return [
    `${indent}resistivity:`,
    ...agesOf(condition).flatMap((age, place) => [
      `${indent}  - age: ${age}`,
      remarked(`${indent}    tested:`, `${age} after casting; day and time`),
      remarked(`${indent}    temperature:`, 'of the specimens when read, such as 23.0 degC'),
      remarked(`${indent}    specimens: ${room(USUAL_SPECIMENS, place)}`, 'resistances, such as 812 ohm'),
    ]),
  ]
}

function agesOf({ ages }: DescribedCondition): string[] {
  return ages
    .map(({ age }) => age)
    .toSorted(compareAges)
    .map(({ text }) => text)
}

const LETTERS = 26

/** "{ a: , b: , c: }"; those of the next age go on with d. */
function room(specimens: number, place: number): string {
  const marks = Array.from({ length: specimens }, (_, index) => markAt(place * specimens + index))
  return `{ ${marks.map((mark) => `${mark}: `).join(', ')}}`
}

function markAt(place: number): string {
  const letter = String.fromCharCode(97 + (place % LETTERS))
  return place < LETTERS ? letter : `${letter}${Math.floor(place / LETTERS)}`
}
