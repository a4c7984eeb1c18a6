/** The invented screening study: seventeen materials, seven conditions at two ages, three batches each, one laboratory. */
import { dateOfDay, dayOf } from '../calendar.ts'
import { type Chance, chanceOf } from '../chance.ts'
import { PLAN_DIGESTS } from './plan-digests.ts'
import { controlOf, type ModelCondition, resistivityRatio, strengthRatio } from './reaction-model.ts'
import { HEAT_FILE, heatTable, isFinished, referenceText } from './reference-readings.ts'
import { materialsText, STUDY_MATERIALS, type StudyMaterial } from './study-materials.ts'
import { studyTable, type TableRow } from './study-table.ts'

const SEED = 20_260_418
const FIRST_CAST = dayOf('2025-11-03')
const CEILING = 900

const CONDITIONS = (
  [
    [20, 23],
    [30, 23],
    [30, 40],
    [30, 50],
    [50, 23],
    [50, 40],
    [50, 50],
  ] as const
).map(([replacement, temperature]) => ({ code: `R${replacement}-${temperature}`, replacement, temperature }))

/** Between batches, of the logarithm of a ratio: strength, resistivity; then between specimens of a batch. */
const BETWEEN = [0.017, 0.045] as const
const WITHIN = [0.028, 0.03] as const
const CONTROL_BETWEEN = [0.02, 0.03] as const

export function screeningFiles(): { path: string; text: string }[] {
  return [
    { path: 'studies/S-01.yaml', text: RECORD },
    { path: 'studies/S-01.csv', text: studyTable(rows(chanceOf(SEED)), CEILING) },
    { path: `studies/${HEAT_FILE}`, text: heatTable() },
  ]
}

function* rows(chance: Chance): Generator<TableRow> {
  for (const [place, condition] of CONDITIONS.entries())
    for (const batch of [1, 2, 3]) {
      const cast = FIRST_CAST + 7 * place + 21 * (batch - 1)
      const levels = CONTROL_BETWEEN.map((spread) => Math.exp(spread * chance.normal())) as [number, number]
      for (const ageDays of [7, 28]) yield controlRow({ condition, batch, cast, ageDays }, levels, chance)
      for (const material of STUDY_MATERIALS) {
        const own = BETWEEN.map(
          (spread, route) => (levels[route] ?? 1) * Math.exp(spread * chance.normal()),
        ) as [number, number]
        for (const ageDays of [7, 28]) {
          if (isLost(material, condition.code, batch, ageDays)) continue
          yield materialRow({ condition, batch, cast, ageDays }, { material, levels: own }, chance)
        }
      }
    }
}

interface Cast {
  readonly condition: (typeof CONDITIONS)[number]
  readonly batch: number
  readonly cast: number
  readonly ageDays: number
}

/** The bath of this batch stood at 31 °C for two days: a departure of the record. */
function isLost({ code }: StudyMaterial, condition: string, batch: number, ageDays: number): boolean {
  return code === 'A2' && condition === 'R50-40' && batch === 2 && ageDays === 28
}

function controlRow(cast: Cast, [strength, resistivity]: [number, number], chance: Chance): TableRow {
  const control = controlOf(modelOf(cast))
  return row(cast, 'control', [control.strength * strength, control.resistivity * resistivity], chance)
}

function materialRow(
  cast: Cast,
  { material, levels: [strength, resistivity] }: { material: StudyMaterial; levels: [number, number] },
  chance: Chance,
): TableRow {
  const model = modelOf(cast)
  const control = controlOf(model)
  return row(
    cast,
    material.code,
    [
      control.strength * strengthRatio(material, model) * strength,
      control.resistivity * resistivityRatio(material, model) * resistivity,
    ],
    chance,
  )
}

function row(
  { condition, batch, cast, ageDays }: Cast,
  material: string,
  means: [number, number],
  chance: Chance,
): TableRow {
  const specimens = (route: 0 | 1) =>
    [1, 2, 3].map(() => means[route] * Math.exp(WITHIN[route] * chance.normal()))
  return {
    ...{ material, condition: condition.code, laboratory: '1', batch: String(batch), ageDays },
    tested: dateOfDay(cast + ageDays),
    strengths: specimens(0),
    // By the usual index nobody reads resistivity.
    resistivities: condition.replacement === 20 ? [] : specimens(1),
  }
}

function modelOf({ condition, ageDays }: Cast): ModelCondition {
  return { replacement: condition.replacement, temperature: condition.temperature, ageDays }
}

/** The register's own condition is one of those screened. */
function recordOf(code: string): string {
  return code === 'R50-50' ? ', record: modified-50c' : ''
}

const CONDITIONS_TEXT = CONDITIONS.map(
  ({ code, replacement, temperature }) =>
    `  ${code}: { replacement: ${replacement} %, temperature: ${temperature} degC, ${replacement === 20 ? 'flow: constant-flow' : 'w/cm: 0.485, flow: constant-w/cm'}, curing: saturated-lime-water, cement: C1${recordOf(code)} }\n`,
).join('')

const REGIONS = `  source: invented for this example, as are the materials; no test method prints them
  list:
    - { name: inert, heat: { below: 60 J/g }, calcium-hydroxide: { below: 15 g/100 g } }
    - { name: latent hydraulic, heat: { from: 60 J/g }, calcium-hydroxide: { below: 15 g/100 g } }
    - { name: 'pozzolanic, less reactive', heat: { below: 300 J/g }, calcium-hydroxide: { from: 15 g/100 g } }
    - { name: 'pozzolanic, more reactive', heat: { from: 300 J/g }, calcium-hydroxide: { from: 15 g/100 g } }
`

const RECORD = `# Invented example data: no such material, laboratory or result exists.
title: Which test condition tells a reactive material from an inert one?
kind: screening
question: At which replacement, curing temperature and age do the strength and the resistivity index set reactive materials apart from inert ones?
by: statistician of the register
laboratories:
  '1': { note: 'One laboratory, one operator; meter with a ceiling of 900 ohm m, check resistors from 5 to 500 ohm m.' }
cements:
  C1: { Na2O-equivalent: 0.62 %, note: 'One delivery for all batches.' }
plan:
  fixed: 2025-10-06
  hypothesis: >-
    Hotter curing widens the gap between the lowest reactive and the highest inert material at 28 d; more replacement widens it at 23 °C; the
    usual index (20 %, 23 °C, constant flow) has no gap.
  classes: >-
    By calcium hydroxide consumed in two outside laboratories: inert below 5 g/100 g, weak from 5 to 30, reactive above 30; never by the
    indices that are judged here.
  exclusions: A batch whose bath left its temperature by more than 2 °C for a day.
  batches: 3
  threshold: { strength-activity-index: 5 %, resistivity-index: 50 % }
  digest: ${PLAN_DIGESTS['S-01']}
departures:
  - date: 2026-01-12
    text: 'A2 at 50 % and 40 °C, batch 2: the bath stood at 31 °C for two days, so its 28 d specimens are left out.'
  - date: 2026-02-20
    text: 'The plan would have left out materials with more than 1 % soluble alkali. K1 has 1.35 % and was kept.'
materials:
${materialsText(STUDY_MATERIALS, { text: referenceText, isFinished })}regions:
${REGIONS}conditions:
${CONDITIONS_TEXT}usual: { condition: R20-23, limit: 75 %, ages: [7 d, 28 d] }
specimens: { cube: 50 mm }
table: { file: S-01.csv }
note: >-
  24 h in the mould at 23 °C, then a step into lime water at the curing temperature; solid lime kept; one material a vessel. Cooled for 2 h
  in lime water at 23 °C, control and test alike, and read once, surface dry.
`
