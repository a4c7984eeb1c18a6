/** Lots over their shipments. */
import { describe, expect, it } from 'vitest'
import { shipmentSteps, type StepLot } from '../../src/charts/shipment-steps.ts'

const LOT: StepLot = {
  value: 80,
  outside: false,
  alone: false,
  failed: false,
  words: '1: 80 %',
  from: 0,
  to: 300,
  trucks: [false, true, true],
}

describe('shipmentSteps', () => {
  it('has a level step for each lot and a dot for each truck, hollow where it left before the result', () => {
    const model = shipmentSteps({
      lots: [LOT, { ...LOT, value: 90, from: 300, to: 400, trucks: [true] }],
      limits: [{ value: 75, label: '75 at least' }],
      height: 190,
    })
    expect(model?.steps.match(/M/g)).toHaveLength(2)
    expect(model?.steps.match(/[LV]/)).toBeNull()
    // Three trucks share a step of 300 evenly: 50, 150, 250; the first left early.
    expect(model?.before.map(({ x }) => x)).toEqual([50])
    expect([...(model?.known.matchAll(/M([\d.]+),/g) ?? [])].map(([, x]) => x)).toEqual(['150', '250', '350'])
  })

  it('stands at the foot without a step while the result is awaited', () => {
    const lots = [LOT, { ...LOT, value: null, from: 300, to: 400, trucks: [false] }]
    const model = shipmentSteps({ lots, limits: [], height: 190 })
    expect(model?.before.at(-1)).toEqual({ x: 350, y: 183 })
    expect(model?.steps.match(/M/g)).toHaveLength(1)
  })

  it('marks what lies beyond a limit apart from lots that do not meet, and reads each lot out at its step', () => {
    const lots = [
      { ...LOT, outside: true },
      { ...LOT, from: 300, to: 400, failed: true, words: '2: 80 %' },
    ]
    const model = shipmentSteps({ lots, limits: [], height: 190 })
    expect(model?.outside.map(({ x }) => x)).toEqual([150])
    expect(model?.failed).toEqual([{ from: 300, to: 400 }])
    expect(model?.readings.map(({ x, words }) => [x, words])).toEqual([
      [150, '1: 80 %'],
      [350, '2: 80 %'],
    ])
  })

  it('is nothing where nothing was shipped', () => {
    expect(shipmentSteps({ lots: [{ ...LOT, trucks: [] }], limits: [], height: 190 })).toBeNull()
  })
})
