import { describe, expect, it } from 'vitest'
import { printedReadings } from '../../../src/edition/printed/readings.ts'
import { CERTIFICATE_WORDS } from '../../../src/words/certificate-words.ts'

describe('printedReadings', () => {
  it('prints every direction of a specimen, its sizes and mass, and how it was handled', () => {
    const test = {
      sample: 'C',
      condition: 'hot',
      resistivity: [
        {
          age: '28 d',
          tested: '2026-02-02T09:00',
          temperature: '23 degC',
          core: '23.4 degC',
          'out-of-liquid': '2 min',
          specimens: {
            a: { directions: { x: '1500 ohm', y: '> 2000 ohm' }, side: '50.1 mm', mass: '281.4 g' },
            b: '> 2000 ohm',
          },
        },
      ],
    }
    const [only] = printedReadings([test], {}, CERTIFICATE_WORDS.readings)
    expect(only?.readings[0]).toMatchObject({
      specimens: 'a x: 1500 Ω, y: > 2000 Ω (side 50.1 mm, mass 281.4 g); b > 2000 Ω',
      facts: 'at 23 °C, core 23.4 °C, out of liquid 2 min',
    })
  })
})
