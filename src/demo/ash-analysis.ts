/** An analysis of a low-calcium ash of the later sources: invented, of plausible size, and no data. */
import type { Chance } from './chance.ts'

/** Mean, and standard deviation from lot to lot with testing in it, per cent. */
const USUAL: Readonly<Record<string, readonly [mean: number, deviation: number]>> = {
  SiO2: [53.8, 0.7],
  Al2O3: [24.1, 0.5],
  Fe2O3: [7.1, 0.3],
  CaO: [5.6, 0.35],
  MgO: [1.4, 0.07],
  SO3: [0.5, 0.05],
  Na2O: [0.78, 0.04],
  K2O: [1.95, 0.06],
  moisture: [0.13, 0.03],
  'loss-on-ignition': [2.4, 0.22],
}

/** @param residue true residue on the sieve of 45 µm, per cent */
export function ashAnalysis(residue: number, chance: Chance): Record<string, string> {
  const percent = ([mean, deviation]: readonly [number, number]) =>
    `${(mean + deviation * chance.normal()).toFixed(2)} %`
  return {
    ...Object.fromEntries(Object.entries(USUAL).map(([key, usual]) => [key, percent(usual)])),
    'residue-45um': `${(residue + 0.5 * chance.normal()).toFixed(1)} %`,
    density: `${(2.34 + 0.015 * chance.normal()).toFixed(2)} g/cm3`,
    'autoclave-expansion': percent([0.03, 0.01]),
  }
}
