/** Lots over their shipments. */
import { describe, expect, it } from 'vitest'
import { shipmentSteps } from '../../src/charts/shipment-steps.ts'

const LOT = { id: 'a/1', label: '1', value: 80, failed: false, trucks: [false, true, true] }

describe('shipmentSteps', () => {
  it('has a step for each lot and a dot for each truck, hollow where it left before the result', () => {
    const model = shipmentSteps({
      lots: [LOT, { ...LOT, id: 'a/2', value: 90, trucks: [true] }],
      limits: [{ value: 75, label: '75 at least' }],
      height: 190,
    })
    expect(model?.steps.match(/M/g)).toHaveLength(2)
    expect(model?.before).toHaveLength(1)
    expect(model?.known.match(/M/g)).toHaveLength(3)
    expect(model?.lots.map(({ from, to }) => from < to)).toEqual([true, true])
  })
  it('stands below the values while the result is awaited', () => {
    const lots = [LOT, { ...LOT, id: 'a/2', value: null, trucks: [false] }]
    const model = shipmentSteps({ lots, limits: [], height: 190 })
    expect(model?.before.at(-1)?.y).toBe(152)
  })
  it('is nothing where nothing was shipped', () => {
    expect(shipmentSteps({ lots: [{ ...LOT, trucks: [] }], limits: [], height: 190 })).toBeNull()
  })
})
