import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadStudies } from './study-folder.ts'

const HEAT = readFileSync(
  join(resolve(import.meta.dirname, '../../diagnostics/base'), 'studies/heat.yaml'),
  'utf8',
)
const CRITERION = `title: Strength
edition: trial
kinds: [raw-natural-pozzolan]
clauses:
  - { clause: index, property: strength-activity-index, condition: warm, age: 7 d, at-least: 60 %, set-by: { study: heat, condition: H } }
`

/** Warnings of a clause at constant w/cm whose limit the study gave with this held constant. */
function warnings(flow: string): string[] {
  const study = HEAT.replace('w/cm: 0.485, curing', `w/cm: 0.485, flow: ${flow}, curing`)
  expect(study).not.toBe(HEAT)
  const { diagnostics } = loadStudies({ 'heat.yaml': study, '../criteria/strength.yaml': CRITERION })
  return diagnostics.filter(({ code }) => code === 'limit-off-study').map(({ message }) => message)
}

describe('a limit set by a study', () => {
  it('is warned of where the study held the flow constant and the clause the w/cm', () => {
    expect(warnings('constant-flow')).toContain(
      'the quantity held constant is w/cm for the clause, and flow in H of the study heat',
    )
  })
  it('is not where both held the same', () => {
    expect(warnings('constant-w/cm').filter((text) => text.includes('held constant'))).toEqual([])
  })
})
