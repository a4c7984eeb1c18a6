import { describe, expect, it } from 'vitest'
import { formationFactor } from '../../../src/core/resistivity/resistivity-explained.ts'
import { onlyCase } from '../values.ts'

// Definition of Snyder and others 2003, equation (1); 25.4 ohm m with a solution of 0.127 ohm m:
// acceptance-limit survey, worked numbers.
describe('formation factor', () => {
  it('is bulk over pore resistivity', () => {
    const { inputs, expected } = onlyCase('formation-factor')
    expect(
      (inputs['bulk_ohm_m'] as number[]).map((bulk) => formationFactor(bulk, inputs['pore_ohm_m'] as number)),
    ).toEqual(expected['formation_factor'])
    expect(formationFactor(25.4, 0.127)).toBeCloseTo(200, 10)
  })
})
