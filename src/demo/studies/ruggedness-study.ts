/** The invented ruggedness runs of the 50 °C resistivity test: seven factors, eight runs, two replicates. */
import { dateOfDay, dayOf } from '../calendar.ts'
import { chanceOf } from '../chance.ts'
import { PLAN_DIGESTS } from './plan-digests.ts'
import { controlOf, resistivityRatio } from './reaction-model.ts'
import { materialsText, studyMaterial } from './study-materials.ts'
import { studyTable, type TableRow } from './study-table.ts'

const SEED = 20_260_511
const FIRST_CAST = dayOf('2026-01-20')
const MATERIAL = studyMaterial('A2')
const CONDITION = { replacement: 30, temperature: 50, ageDays: 28 } as const

/** Factor, low and high level, and its effect on the logarithm of the index. */
const FACTORS: readonly (readonly [title: string, low: string, high: string, effect: number])[] = [
  ['bath temperature', '48 °C', '52 °C', 0.16],
  ['cooling before reading', '1 h', '3 h', 0.07],
  ['liquid to specimens', '1.5 : 1', '3 : 1', -0.02],
  ['age at reading', '27.5 d', '28.5 d', 0.02],
  ['w/cm', '0.475', '0.495', -0.05],
  ['contact pressure', '20 kPa', '60 kPa', 0],
  ['alkalis of the cement', '0.55 %', '0.70 %', -0.01],
]

/** Plackett and Burman's eight runs. */
const RUNS = ['+++-+--', '-+++-+-', '--+++-+', '+--+++-', '-+--+++', '+-+--++', '++-+--+', '-------']

export function ruggednessFiles(): { path: string; text: string }[] {
  return [
    { path: 'studies/G-01.yaml', text: RECORD },
    { path: 'studies/G-01.csv', text: studyTable(rows()) },
  ]
}

function* rows(): Generator<TableRow> {
  const chance = chanceOf(SEED)
  const control = controlOf(CONDITION)
  const ratio = resistivityRatio(MATERIAL, CONDITION)
  for (const batch of [1, 2])
    for (const [place, signs] of RUNS.entries()) {
      const tested = dateOfDay(FIRST_CAST + 2 * place + 20 * (batch - 1) + 28)
      const moved = FACTORS.reduce(
        (total, [, , , effect], factor) => total + ((signs[factor] === '+' ? 1 : -1) * effect) / 2,
        0,
      )
      const level = control.resistivity * Math.exp(0.02 * chance.normal())
      const row = (material: string, mean: number): TableRow => ({
        ...{
          material,
          condition: `N${place + 1}`,
          laboratory: '1',
          batch: String(batch),
          ageDays: 28,
          tested,
        },
        strengths: [1, 2, 3].map(() => 0),
        resistivities: [1, 2, 3].map(() => mean * Math.exp(0.03 * chance.normal())),
      })
      yield row('control', level)
      yield row(MATERIAL.code, level * ratio * Math.exp(moved + 0.035 * chance.normal()))
    }
}

const RECORD = `# Invented example data: no such material, laboratory or result exists.
title: Which tolerance of the 50 °C resistivity test matters?
kind: ruggedness
question: Which of seven details of the test moves the resistivity index at 50 °C, within what a bench may let them vary?
by: statistician of the register
plan:
  fixed: 2026-01-05
  hypothesis: Bath temperature and cooling time matter; liquid, age within half a day, contact pressure and the alkalis of the cement do not.
  batches: 2
  digest: ${PLAN_DIGESTS['G-01']}
materials:
${materialsText([MATERIAL])}factors:
${FACTORS.map(([title, low, high]) => `  - { title: ${title}, low: '${low}', high: '${high}' }\n`).join('')}runs:
${RUNS.map((signs, place) => `  N${place + 1}: '${signs}'\n`).join('')}table: { file: G-01.csv }
note: Each run has its own control batch, treated like the test batch.
`
