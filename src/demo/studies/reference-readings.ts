/** Readings of reference tests for some materials of the screening study: calorimeter, balance and burette, all invented. */
import { csvFormatRows } from 'd3'
import { type Chance, chanceOf } from '../chance.ts'
import { studyMaterial, type StudyMaterial } from './study-materials.ts'

const SEED = 20_260_421

export const HEAT_FILE = 'S-01-heat.csv'

/** How a material gives off its heat: shares with their time constants, h. */
const HEAT_MODELS: Readonly<Record<string, readonly (readonly [share: number, hours: number])[]>> = {
  Q1: [
    [0.5, 14],
    [0.5, 70],
  ],
  A1: [
    [0.3, 14],
    [0.7, 70],
  ],
  P2: [
    [0.5, 14],
    [0.5, 45],
  ],
}
const [START, END] = [1.2, 168]
/** g of paste, of which a tenth is the material; 1 mW over 1 h is 3.6 J. */
const SAMPLE = 15
const SHARE = 0.1
const [BLANK_BEFORE, BLANK_AFTER, BLANKS_AT] = [0.118, 0.126, [0, 172]] as const

/** Table of powers, in order of material and time. */
export function heatTable(): string {
  const chance = chanceOf(SEED)
  const rows = Object.keys(HEAT_MODELS).flatMap((code) =>
    readingTimes().map((time) => [code, String(time), power(studyMaterial(code), time, chance).toFixed(3)]),
  )
  return `${csvFormatRows([['material', 'time (h)', 'power (mW)'], ...rows])}\n`
}

function readingTimes(): number[] {
  const steps = (from: number, to: number, step: number) =>
    Array.from({ length: (to - from) / step }, (_, place) => from + step * place)
  return [...steps(0, 12, 0.5), ...steps(12, 48, 2), ...steps(48, 172, 4), 172]
}

function power({ code, heat }: StudyMaterial, time: number, chance: Chance): number {
  const parts = HEAT_MODELS[code] ?? []
  const released = parts.reduce(
    (all, [share, hours]) => all + share * (Math.exp(-START / hours) - Math.exp(-END / hours)),
    0,
  )
  const rate = parts.reduce((all, [share, hours]) => all + (share / hours) * Math.exp(-time / hours), 0)
  const blank = BLANK_BEFORE + ((BLANK_AFTER - BLANK_BEFORE) * time) / (BLANKS_AT[1] - BLANKS_AT[0])
  return (heat * SAMPLE * SHARE * rate) / released / 3.6 + blank + 0.001 * chance.normal()
}

/** Pastes for thermogravimetry: Ca(OH)₂, material and water, g; what is left ignited, mg. */
const MIX = { lime: 30, material: 10, water: 40 }
const IGNITED = 30

/** Mass at a temperature: bound water, a step of the hydroxide about 445 °C, and carbon dioxide about 690 °C. */
function massAt(celsius: number, { consumed, dioxide, slope }: Thermogram): number {
  const left = MIX.lime - (consumed * MIX.material) / 100
  const ignited = (MIX.lime * 56.077) / 74.093 + MIX.material
  const hydroxide = (IGNITED * left) / ignited - (dioxide * 74.093) / 44.009
  const water = (hydroxide * 18.015) / 74.093
  const beyond = (middle: number, width: number) => 1 / (1 + Math.exp((celsius - middle) / width))
  const bound = 2.4 * Math.max(0, 1 - (celsius - 40) / 260) ** 2 + slope * Math.max(0, 600 - celsius)
  return IGNITED + bound + water * beyond(445, 4) + dioxide * beyond(690, 6)
}

interface Thermogram {
  /** g/100 g of material. */
  readonly consumed: number
  /** mg of carbon dioxide that came of the hydroxide. */
  readonly dioxide: number
  /** mg a degree that goes off steadily up to 600 °C. */
  readonly slope: number
}

const THERMOGRAMS: Readonly<Record<string, Omit<Thermogram, 'consumed'> & { readonly steps: string }>> = {
  A1: {
    ...{ dioxide: 0, slope: 0.0015 },
    steps: 'tangents: { before: { from: 320 degC, to: 400 degC }, after: { from: 490 degC, to: 580 degC } }',
  },
  W2: {
    ...{ dioxide: 0.35, slope: 0 },
    steps: 'water: { from: 400 degC, to: 500 degC }, carbonate: { from: 600 degC, to: 800 degC }',
  },
}

function thermogramText(code: string): string {
  const own = THERMOGRAMS[code]
  if (own === undefined) return ''
  const temperatures = Array.from({ length: 46 }, (_, place) => 40 + 20 * place)
  const rows = temperatures.map(
    (celsius) =>
      `          - ${celsius} degC, ${massAt(celsius, { ...own, consumed: studyMaterial(code).calciumHydroxide }).toFixed(3)} mg\n`,
  )
  return `      calcium-hydroxide:
        method: thermogravimetry, 40 to 940 °C in nitrogen
        age: 10 d
        basis: ignited
        mix: { calcium-hydroxide: ${MIX.lime} g, material: ${MIX.material} g, water: ${MIX.water} g }
${own.steps
  .split(/, (?=carbonate)/)
  .map((step) => `        ${step}\n`)
  .join('')}        readings:
${rows.join('')}`
}

/** Crucibles by material: empty, with dried paste, ignited; g. */
const CRUCIBLES: Readonly<Record<string, readonly (readonly [string, string, string])[]>> = {
  Q1: [
    ['24.3117', '29.4402', '29.4128'],
    ['25.0871', '30.0436', '30.0189'],
  ],
  W2: [
    ['24.3122', '29.5008', '29.3275'],
    ['25.0868', '30.2140', '30.0451'],
  ],
  A1: [
    ['24.3119', '29.3391', '29.0552'],
    ['25.0873', '30.1502', '29.8613'],
  ],
  P2: [
    ['24.3120', '29.6127', '29.0806'],
    ['25.0869', '30.2381', '29.7214'],
  ],
  K1: [
    ['24.3118', '29.4715', '29.2029'],
    ['25.0870', '30.1128', '29.8534'],
  ],
}

/** Acid and complexing agent for 50 mL, mL, over cements with the material. */
const TITRATIONS: Readonly<Record<string, readonly [string, string]>> = {
  A1: ['29.15', '8.60'],
  Q1: ['27.40', '16.95'],
}

/** What a material's record says of its reference tests by readings; empty for most. */
export function referenceText(code: string): string {
  const parts = [heatText(code), thermogramText(code), cruciblesText(code), titrationText(code)]
  return parts.every((text) => text === '') ? '' : `    reference:\n${parts.join('')}`
}

/** Figures that stand in the record finished, since no readings of them do. */
export function isFinished(code: string, figure: 'heat' | 'calcium-hydroxide'): boolean {
  return !Object.hasOwn(figure === 'heat' ? HEAT_MODELS : THERMOGRAMS, code)
}

function heatText(code: string): string {
  return isFinished(code, 'heat')
    ? ''
    : `      heat: { method: 'isothermal calorimetry, 40 °C', age: 7 d, file: ${HEAT_FILE}, sample: ${SAMPLE} g, share: ${100 * SHARE} %, start: ${START} h, baseline: ['${BLANKS_AT[0]} h, ${BLANK_BEFORE} mW', '${BLANKS_AT[1]} h, ${BLANK_AFTER} mW'] }\n`
}

function cruciblesText(code: string): string {
  const own = CRUCIBLES[code]
  if (own === undefined) return ''
  const lines = own.map(
    ([crucible, dried, ignited]) =>
      `          - { crucible: ${crucible} g, dried: ${dried} g, ignited: ${ignited} g }\n`,
  )
  return `      bound-water:\n        age: 7 d\n        dried-at: 105 degC\n        ignited-at: 350 degC\n        crucibles:\n${lines.join('')}`
}

function titrationText(code: string): string {
  const own = TITRATIONS[code]
  if (own === undefined) return ''
  const [acid, complex] = own
  return `      pozzolanicity: { age: 8 d, aliquot: 50 mL, acid: { concentration: 0.1 mol/L, volume: ${acid} mL }, complex: { concentration: 0.03 mol/L, volume: ${complex} mL }, volume-error: 0.05 mL }\n`
}
