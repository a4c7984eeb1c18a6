/** The invented round robin: six laboratories, five materials, three replicates, each with its own control batch. */
import { dateOfDay, dayOf } from '../calendar.ts'
import { type Chance, chanceOf } from '../chance.ts'
import { PLAN_DIGESTS } from './plan-digests.ts'
import { controlOf, strengthRatio } from './reaction-model.ts'
import { materialsText, studyMaterial } from './study-materials.ts'
import { studyTable, type TableRow } from './study-table.ts'

const SEED = 20_260_502
const FIRST_CAST = dayOf('2026-01-14')
const MATERIALS = ['L1', 'W2', 'A2', 'H2', 'P1'].map(studyMaterial)
const CONDITION = { replacement: 30, temperature: 50, ageDays: 28 } as const
const LABORATORIES = [1, 2, 3, 4, 5, 6]

export function roundRobinFiles(): { path: string; text: string }[] {
  return [
    { path: 'studies/R-01.yaml', text: RECORD },
    { path: 'studies/R-01.csv', text: studyTable(rows(chanceOf(SEED))) },
  ]
}

function* rows(chance: Chance): Generator<TableRow> {
  const { strength } = controlOf(CONDITION)
  for (const laboratory of LABORATORIES) {
    // A laboratory's cement, sand and press move test and control alike; its bath moves what reacts.
    const level = strength * Math.exp(0.05 * chance.normal())
    const habit = 0.012 * chance.normal()
    const warm = laboratory === 5 ? 0.075 : 0.01 * chance.normal()
    for (const batch of [1, 2, 3]) {
      const tested = dateOfDay(FIRST_CAST + 7 * (batch - 1) + 28)
      const batchLevel = level * Math.exp(0.02 * chance.normal())
      const row = (material: string, mean: number): TableRow => ({
        ...{
          material,
          condition: 'R30-50',
          laboratory: String(laboratory),
          batch: String(batch),
          ageDays: 28,
          tested,
        },
        strengths: [1, 2, 3].map(() => mean * Math.exp(0.028 * chance.normal())),
        resistivities: [],
      })
      yield row('control', batchLevel)
      for (const material of MATERIALS) {
        const scatter = laboratory === 3 && material.code === 'W2' ? 0.09 : 0.018
        const ratio = strengthRatio(material, CONDITION)
        const reacts = material.class === 'inert' ? 0 : warm
        yield row(material.code, batchLevel * ratio * Math.exp(habit + reacts + scatter * chance.normal()))
      }
    }
  }
}

const RECORD = `# Invented example data: no such material, laboratory or result exists.
title: How far do six laboratories agree on the hot strength index?
kind: interlaboratory
question: How much do strength activity indices at 30 %, 50 °C and 28 d differ within a laboratory and between laboratories?
by: statistician of the register
laboratories:
${LABORATORIES.map((code) => `  '${code}': {}\n`).join('')}cements:
  C1: { Na2O-equivalent: 0.62 %, note: 'One delivery, sent to all laboratories with the sand.' }
plan:
  fixed: 2025-12-10
  hypothesis: The standard deviation between laboratories is no more than twice that within a laboratory.
  exclusions: A result is left out only for a cause that its laboratory finds.
  batches: 3
  digest: ${PLAN_DIGESTS['R-01']}
materials:
${materialsText(MATERIALS)}conditions:
  R30-50: { replacement: 30 %, temperature: 50 degC, w/cm: 0.485, flow: constant-w/cm, curing: saturated-lime-water, cement: C1 }
table: { file: R-01.csv }
note: >-
  Each replicate is a control batch and a test batch of each material, mixed on one day, a week apart from the next.
`
