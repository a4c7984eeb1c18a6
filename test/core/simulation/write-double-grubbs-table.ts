/**
 * Writes src/core/studies/interlaboratory/double-grubbs-table.ts: `node test/core/simulation/write-double-grubbs-table.ts`.
 * Grubbs' statistic of two means has no closed law from which printed tables could be made; a test holds them against this one.
 */
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { uniform } from './chance.ts'

const SIZES = Array.from({ length: 37 }, (_, place) => place + 4)
const TRIALS = 1_000_000
/** Each end at half of 5 and of 1 %, since nobody says beforehand which end is asked about. */
const TAILS = [0.025, 0.005]

const next = uniform(20_261_127)
const rows = SIZES.map(
  (size) =>
    `  ${size}: [${limits(size)
      .map((limit) => limit.toFixed(4))
      .join(', ')}],\n`,
)

function limits(size: number): number[] {
  const left = new Float64Array(2 * TRIALS)
  const values = new Float64Array(size)
  for (let trial = 0; trial < TRIALS; trial += 1) {
    for (let place = 0; place < size; place += 2) {
      // Box and Muller 1958 give two at once.
      const [radius, turn] = [Math.sqrt(-2 * Math.log(next())), 2 * Math.PI * next()]
      values[place] = radius * Math.cos(turn)
      if (place + 1 < size) values[place + 1] = radius * Math.sin(turn)
    }
    values.sort()
    const all = squares(values, 0, size)
    left[2 * trial] = squares(values, 0, size - 2) / all
    left[2 * trial + 1] = squares(values, 2, size) / all
  }
  left.sort()
  return TAILS.map((tail) => left[Math.round(tail * left.length)] ?? Number.NaN)
}

function squares(values: Float64Array, from: number, to: number): number {
  let total = 0
  for (let place = from; place < to; place += 1) total += values[place] ?? 0
  const centre = total / (to - from)
  let found = 0
  for (let place = from; place < to; place += 1) found += ((values[place] ?? 0) - centre) ** 2
  return found
}

writeFileSync(
  resolve(import.meta.dirname, '../../../src/core/studies/interlaboratory/double-grubbs-table.ts'),
  `/**
 * Critical values of Grubbs' statistic of two means at one end, simulated: ${TRIALS / 1e6} million sets of normal means for each
 * number of laboratories. Written by test/core/simulation/write-double-grubbs-table.ts; not to be edited by hand.
 */

/** By number of laboratories, at 5 and at 1 % over both ends. */
const LIMITS: Readonly<Record<number, readonly [number, number]>> = {
${rows.join('')}}

/**
 * What the share left of the sum of squares stays above by chance.
 * @param laboratories how many means there are
 * @returns at 5 and at 1 %, dimensionless; null for fewer than ${SIZES[0]} and for more than ${SIZES.at(-1)}
 * Source: the statistic, ISO 5725-2, 7.3.4.2 (from memory); its values simulated, held against printed ones in the tests.
 */
export function doubleGrubbsLimits(laboratories: number): { straggler: number; outlier: number } | null {
  const found = LIMITS[laboratories]
  return found === undefined ? null : { straggler: found[0], outlier: found[1] }
}
`,
)
