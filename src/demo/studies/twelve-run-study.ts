/** The invented ruggedness runs of the 50 °C strength test: eight factors and three dummy columns in twelve runs, none repeated. */
import { dateOfDay, dayOf } from '../calendar.ts'
import { chanceOf } from '../chance.ts'
import { controlOf, strengthRatio } from './reaction-model.ts'
import { PLAN_DIGESTS } from './plan-digests.ts'
import { materialsText, studyMaterial } from './study-materials.ts'
import { studyTable, type TableRow } from './study-table.ts'

const SEED = 20_260_527
const FIRST_CAST = dayOf('2026-01-26')
const MATERIAL = studyMaterial('A3')
const CONDITION = { replacement: 30, temperature: 50, ageDays: 28 } as const
const CUBES = [1, 2, 3, 4, 5, 6]

/** Factor, low and high level, and its effect on the logarithm of the index. */
const FACTORS: readonly (readonly [title: string, low: string, high: string, effect: number])[] = [
  ['bath temperature', '48 °C', '52 °C', 0.085],
  ['time in the mould before the bath', '20 h', '28 h', -0.06],
  ['w/cm', '0.475', '0.495', -0.008],
  ['mixing time', '2 min', '4 min', 0],
  ['moisture of the sand', '0 %', '0.5 %', 0.004],
  ['cooling before crushing', '1 h', '3 h', 0.01],
  ['loading rate', '0.9 kN/s', '1.8 kN/s', 0.002],
  ['age at crushing', '27.5 d', '28.5 d', 0.005],
]
const DUMMIES = ['dummy 1', 'dummy 2', 'dummy 3']

/** Plackett and Burman's twelve runs: their first row moved on by one each time, then all low. */
const FIRST = '++-+++---+-'
const RUNS = [
  ...Array.from(
    FIRST,
    (_, place) => FIRST.slice(FIRST.length - place) + FIRST.slice(0, FIRST.length - place),
  ),
  '-'.repeat(FIRST.length),
]

export function twelveRunFiles(): { path: string; text: string }[] {
  return [
    { path: 'studies/G-02.yaml', text: RECORD },
    { path: 'studies/G-02.csv', text: studyTable(rows()) },
  ]
}

function* rows(): Generator<TableRow> {
  const chance = chanceOf(SEED)
  const control = controlOf(CONDITION)
  const ratio = strengthRatio(MATERIAL, CONDITION)
  for (const [place, signs] of RUNS.entries()) {
    const tested = dateOfDay(FIRST_CAST + 2 * place + 28)
    const moved = FACTORS.reduce(
      (total, [, , , effect], factor) => total + ((signs[factor] === '+' ? 1 : -1) * effect) / 2,
      0,
    )
    const level = control.strength * Math.exp(0.02 * chance.normal())
    const row = (material: string, mean: number): TableRow => ({
      ...{ material, condition: `N${place + 1}`, laboratory: '1', batch: '1', ageDays: 28, tested },
      strengths: CUBES.map(() => mean * Math.exp(0.025 * chance.normal())),
      resistivities: [],
    })
    yield row('control', level)
    yield row(MATERIAL.code, level * ratio * Math.exp(moved + 0.01 * chance.normal()))
  }
}

const RECORD = `# Invented example data: no such material, laboratory or result exists.
title: Which tolerance of the 50 °C strength test matters?
kind: ruggedness
question: Which of eight details of the test moves the strength activity index at 50 °C, within what a bench may let them vary?
by: statistician of the register
plan:
  fixed: 2026-01-12
  digest: ${PLAN_DIGESTS['G-02']}
  hypothesis: Bath temperature and the time in the mould matter; mixing time, moisture of the sand and loading rate do not.
  batches: 1
materials:
${materialsText([MATERIAL])}factors:
${FACTORS.map(([title, low, high]) => `  - { title: ${title}, low: '${low}', high: '${high}' }\n`).join('')}${DUMMIES.map((title) => `  - { title: ${title}, dummy: true }\n`).join('')}runs:
${RUNS.map((signs, place) => `  N${place + 1}: '${signs}'\n`).join('')}table: { file: G-02.csv }
note: Each run has its own control batch, treated like the test batch, and six cubes of each.
`
