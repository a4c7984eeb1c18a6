/**
 * Critical values of Grubbs' statistic of two means at one end, simulated: 1 million sets of normal means for each
 * number of laboratories. Written by test/core/simulation/write-double-grubbs-table.ts; not to be edited by hand.
 */

/** By number of laboratories, at 5 and at 1 % over both ends. */
const LIMITS: Readonly<Record<number, readonly [number, number]>> = {
  4: [0.0002, 0.0],
  5: [0.009, 0.0018],
  6: [0.035, 0.0117],
  7: [0.0705, 0.0305],
  8: [0.1102, 0.0561],
  9: [0.1487, 0.0849],
  10: [0.1862, 0.1145],
  11: [0.2209, 0.1445],
  12: [0.2535, 0.1735],
  13: [0.2841, 0.2019],
  14: [0.3115, 0.2287],
  15: [0.3367, 0.2538],
  16: [0.3599, 0.2762],
  17: [0.382, 0.2986],
  18: [0.4027, 0.32],
  19: [0.4213, 0.3396],
  20: [0.4387, 0.3586],
  21: [0.4553, 0.3759],
  22: [0.4711, 0.3924],
  23: [0.4857, 0.4086],
  24: [0.4993, 0.4233],
  25: [0.5123, 0.4373],
  26: [0.5243, 0.4511],
  27: [0.536, 0.463],
  28: [0.5468, 0.4753],
  29: [0.5574, 0.4871],
  30: [0.5674, 0.4984],
  31: [0.5766, 0.5086],
  32: [0.5859, 0.5196],
  33: [0.5944, 0.5291],
  34: [0.6023, 0.5381],
  35: [0.6101, 0.5464],
  36: [0.6174, 0.5555],
  37: [0.6248, 0.5633],
  38: [0.6316, 0.5715],
  39: [0.6382, 0.5788],
  40: [0.6445, 0.5858],
}

/**
 * What the share left of the sum of squares stays above by chance.
 * @param laboratories how many means there are
 * @returns at 5 and at 1 %, dimensionless; null for fewer than 4 and for more than 40
 * Source: the statistic, ISO 5725-2, 7.3.4.2 (from memory); its values simulated, held against printed ones in the tests.
 */
export function doubleGrubbsLimits(laboratories: number): { straggler: number; outlier: number } | null {
  const found = LIMITS[laboratories]
  return found === undefined ? null : { straggler: found[0], outlier: found[1] }
}
