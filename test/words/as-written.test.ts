import { describe, expect, it } from 'vitest'
import { KINDS } from '../../src/core/measure/units.ts'
import { printedUnits } from '../../src/words/as-written.ts'

const PLAIN = /ohm|deg ?[CF]|(?:mm|cm|m|in)[23]/

describe('printedUnits', () => {
  const spellings = Object.values(KINDS).flatMap(({ units }) =>
    units.flatMap(({ symbol, aliases = [] }) => [symbol, ...aliases]),
  )

  it.each(spellings)(
    'leaves no plain letters of a sign in "%s", with a blank before it, without, or alone',
    (unit) => {
      for (const text of [`15 ${unit}`, `15${unit}`, unit]) expect(printedUnits(text)).not.toMatch(PLAIN)
    },
  )
  it.each([
    ['44.0 ohm m', '44.0 Ω·m'],
    ['5000 ohm.cm', '5000 Ω·cm'],
    ['12.0 kohm cm', '12.0 kΩ·cm'],
    ['0.812 kohms', '0.812 kΩ'],
    ['812ohm', '812Ω'],
    ['50 deg C', '50 °C'],
    ['73degF', '73°F'],
    ['15 m2/g', '15 m²/g'],
    ['3800 cm2/g', '3800 cm²/g'],
    ['4 in2', '4 in²'],
    ['30 N/mm2', '30 N/mm²'],
    ['2430 kg/m3', '2430 kg/m³'],
  ])('prints "%s" as "%s"', (plain, printed) => {
    expect(printedUnits(plain)).toBe(printed)
    expect(printedUnits(printed)).toBe(printed)
  })
  it.each(['4.86 %', '78.4 kN', '5 percentage points', '2950 short tons', '7 weeks', 'min3', 'm20'])(
    'leaves "%s" as it is',
    (text) => {
      expect(printedUnits(text)).toBe(text)
    },
  )
})
