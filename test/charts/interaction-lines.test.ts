import { describe, expect, it } from 'vitest'
import { interactionLines } from '../../src/charts/interaction-lines.ts'

describe('interactionLines', () => {
  const model = interactionLines(
    ['23 °C', '40 °C', '50 °C'],
    [
      { name: '7 d', values: [1, 2, 4] },
      { name: '28 d', values: [1, null, 4] },
    ],
    [1, 4],
  )
  it('puts equal ratios at equal distances, and levels too', () => {
    const [first, second, third] = model.marks
    expect((first?.y ?? 0) - (second?.y ?? 0)).toBeCloseTo((second?.y ?? 0) - (third?.y ?? 0), 1)
    expect(model.xTicks.map(({ x }) => x)).toEqual([first?.x, second?.x, third?.x])
    expect([first?.y, third?.y]).toEqual([model.plot.bottom, model.plot.top])
  })
  it('breaks a line where no condition holds a level', () => {
    expect(model.lines[1]?.path).toBe('')
    expect(model.lines[0]?.path.match(/M/g)).toHaveLength(2)
  })
  it('keeps names apart that end at one point', () => {
    const [one, other] = model.names
    expect(Math.abs((one?.y ?? 0) - (other?.y ?? 0))).toBeGreaterThanOrEqual(14)
  })
})
