import { describe, expect, it } from 'vitest'
import { aliases, designFaults, levelsOf } from '../../../src/core/studies/ruggedness/design.ts'
import { twelveRunFiles } from '../../../src/demo/studies/twelve-run-study.ts'
import { onlyCase } from '../values.ts'

const { inputs, expected } = onlyCase('plackett-burman-12')
const rows = inputs['rows'] as string[]
const runs = rows.map((signs) => ({ levels: levelsOf(signs) }))

describe('Plackett and Burman, twelve runs of eleven columns', () => {
  it('begins with the published generator', () => {
    expect(rows[0]).toBe(expected['published_generator'])
  })
  it('designFaults finds none', () => {
    expect(designFaults(runs)).toEqual([])
  })
  it('aliases finds a third of each interaction in all columns but its own two', () => {
    const found = aliases(runs)
    expect(found).toHaveLength(11 * 45)
    expect(found.every(({ part }) => Math.abs(Math.abs(part) - 1 / 3) < 1e-12)).toBe(true)
  })
  it('is the design of the invented runs, row for row', () => {
    const record = twelveRunFiles().find(({ path }) => path.endsWith('.yaml'))?.text ?? ''
    expect([...record.matchAll(/^ {2}N\d+: '([+-]+)'$/gm)].map(([, signs]) => signs)).toEqual(rows)
  })
})
