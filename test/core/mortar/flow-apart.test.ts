import { describe, expect, it } from 'vitest'
import { flowApart } from '../../../src/core/mortar/flow-apart.ts'
import { q } from '../readings/fixture.ts'

const CONSTANT_FLOW = { water: { 'flow-within': q('5 percentage points', 'points') } }
const flow = (text: string) => ({ flow: q(text, 'fraction') })

describe('flowApart', () => {
  it('finds nothing where the flows lie on the very limit apart, either way', () => {
    expect(flowApart(flow('113 %'), flow('108 %'), CONSTANT_FLOW)).toEqual({ faults: [], notes: [] })
    expect(flowApart(flow('103 %'), flow('108 %'), CONSTANT_FLOW)).toEqual({ faults: [], notes: [] })
    // 101.12 − 100.02 is 1.1 and binary dust.
    const narrow = { water: { 'flow-within': q('1.1 percentage points', 'points') } }
    expect(flowApart(flow('101.12 %'), flow('100.02 %'), narrow).faults).toEqual([])
  })
  it('takes a billionth beyond the limit for binary dust, and no more', () => {
    const within = (limit: string) =>
      flowApart(flow('113 %'), flow('108 %'), {
        water: { 'flow-within': q(`${limit} percentage points`, 'points') },
      }).faults
    expect(within('4.999999999')).toEqual([])
    expect(within('4.999999998')).toHaveLength(1)
  })
  it('finds flows a tenth beyond the limit apart, with all three figures as written', () => {
    const params = { writtenTest: '113.1 %', writtenControl: '108 %', writtenLimit: '5 percentage points' }
    expect(flowApart(flow('113.1 %'), flow('108 %'), CONSTANT_FLOW)).toEqual({
      faults: [{ code: 'flows-apart', params }],
      notes: [],
    })
    expect(flowApart(flow('102.9 %'), flow('108 %'), CONSTANT_FLOW).faults).toHaveLength(1)
  })
  it('notes whose flow is not on record, and breaks nothing by it', () => {
    const noted = (of: 'test' | 'control' | 'both') => ({
      faults: [],
      notes: [{ code: 'flow-not-on-record', params: { of, writtenLimit: '5 percentage points' } }],
    })
    expect(flowApart({}, flow('108 %'), CONSTANT_FLOW)).toEqual(noted('test'))
    expect(flowApart(flow('108 %'), {}, CONSTANT_FLOW)).toEqual(noted('control'))
    expect(flowApart({}, {}, CONSTANT_FLOW)).toEqual(noted('both'))
  })
  it('asks for nothing where the condition fixes the water', () => {
    expect(flowApart(flow('60 %'), flow('108 %'), { water: {} })).toEqual({ faults: [], notes: [] })
    expect(flowApart({}, {}, { water: {} })).toEqual({ faults: [], notes: [] })
  })
})
