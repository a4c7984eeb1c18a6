import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { everyClause } from '../../../src/core/criteria/criterion.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { clauseOf, evidenceOf, result } from '../../core/judging/fixture.ts'
import { shippedSet } from './shipped-sets.ts'

// Bands of AASHTO T 358 and cuts of the modified R3 test: all from memory; that they classify and do not
// judge was read in
// Cement and Concrete Composites 103 (2019) 331-338, abstract, for the latter.
const t358 = shippedSet('t358-bands')
const r3 = shippedSet('modified-r3')

describe('T 358 bands as shipped', () => {
  const band = (kohmCm: number, condition = 't358-cylinder') =>
    clauseOf(
      judge(t358, evidenceOf([result('bulk-resistivity', 10 * kohmCm, { condition, age: readAge('28 d') })])),
      'surface-resistivity',
    )

  it('put 12, 21, 37 and 254 kohm cm between high, moderate, low, very low and negligible', () => {
    expect(
      [11.9, 12, 20.9, 21, 36.9, 37, 254, 254.1].map((value) =>
        band(value).band?.replace(' chloride penetrability', ''),
      ),
    ).toEqual(['high', 'moderate', 'moderate', 'low', 'low', 'very low', 'very low', 'negligible'])
  })

  it('classify no mortar and give no verdict', () => {
    expect(band(10, 'modified-50c').outcome).toBe('not-reported')
    expect(
      [...everyClause(t358.clauses), ...everyClause(r3.clauses)].every((clause) => clause.information),
    ).toBe(true)
    expect(band(5).outcome).toBe('reported')
  })
})

describe('modified R3 regions as shipped', () => {
  const region = (heat: number, lime: number) =>
    clauseOf(
      judge(
        r3,
        evidenceOf([result('r3-heat', heat, { method: 'modified R3' }), result('lime-consumption', lime)]),
      ),
      'reactivity',
    ).band

  it('tell inert, pozzolanic and latent hydraulic apart by heat and lime consumption', () => {
    expect([region(119, 49), region(300, 80), region(371, 51), region(121, 49), region(400, 10)]).toEqual([
      'inert',
      'pozzolanic, less reactive',
      'pozzolanic, more reactive',
      'latent hydraulic, less reactive',
      'latent hydraulic, more reactive',
    ])
  })

  it('leave a value on a cut in none of them', () => {
    expect([region(120, 10), region(200, 50)]).toEqual([undefined, undefined])
  })

  it('do not classify the heat of another test', () => {
    expect(
      clauseOf(
        judge(
          r3,
          evidenceOf([result('r3-heat', 300, { method: 'ASTM C1897' }), result('lime-consumption', 80)]),
        ),
        'reactivity',
      ).outcome,
    ).toBe('not-reported')
  })
})
