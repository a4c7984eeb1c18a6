/** Value of a continued fraction. */

const STEPS = 10_000
const ENOUGH = 1e-15
/** In place of a denominator of zero. */
const TINY = 1e-300

/**
 * Value of 1 + over(1)/(plus(1) + over(2)/(plus(2) + …)).
 * @param term numerator and following summand of each step, from 1
 * @returns about fourteen digits; NaN where a term is
 * Source: Lentz's method in the form of Thompson and Barnett 1986, J. Comput. Phys. 64, 490-509 (from memory).
 */
export function continuedFraction(term: (step: number) => { over: number; plus: number }): number {
  let value = 1
  let [c, d] = [1, 0]
  for (let step = 1; step <= STEPS; step += 1) {
    const { over, plus } = term(step)
    d = 1 / away(plus + over * d)
    c = away(plus + over / c)
    value *= c * d
    if (Math.abs(c * d - 1) < ENOUGH) break
  }
  return value
}

function away(value: number): number {
  return Math.abs(value) < TINY ? TINY : value
}
