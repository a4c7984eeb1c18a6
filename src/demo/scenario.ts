/**
 * The invented scenario's first part: three producers, five sources, three laboratories; further-sources.ts
 * holds what came later. Every name was made up for this demo and belongs, as far as its writers know, to no
 * company, laboratory, town or brand.
 */
import {
  HARVESTED_ASH,
  HIGH_CALCIUM_ASH,
  LIMESTONE_FILLER,
  LOW_CALCIUM_ASH,
  type Material,
  NATURAL_POZZOLAN,
} from './materials.ts'

export interface DemoEvent {
  readonly from: string
  readonly to?: string
  readonly kind: string
  readonly title: string
  readonly restarts?: true
}

export interface DemoSource {
  readonly id: string
  /** The one of the scenario that it repeats, where a volume needs more sources than there are. */
  readonly copyOf?: string
  readonly prefix: string
  readonly lots: number
  readonly class: string | null
  readonly material: Material
  readonly laboratory: string
  /** From this date the laboratory is another one. */
  readonly laterLaboratory?: { readonly from: string; readonly id: string }
  /** Loads in lbf, quantities in short tons, temperatures in °F. */
  readonly units: 'SI' | 'US'
  readonly events: readonly DemoEvent[]
  /** Added to loss on ignition in winter, %. */
  readonly winterLossOnIgnition: number
  readonly quantityT: readonly [number, number]
  readonly place: string
  readonly sampler: string
  readonly issuer: { readonly name: string; readonly function: string }
  readonly consignees: readonly string[]
  readonly projects: readonly string[]
  readonly silos: readonly string[]
}

const TARN_HOLLOW = { name: 'M. Okafor', function: 'quality manager' }
const SKARNMERE = { name: 'T. Vesterby', function: 'head of quality' }
const QUELLAN = { name: 'R. Amadi', function: 'laboratory director' }

export const SOURCES: readonly DemoSource[] = [
  {
    id: 'skarnmere-ash',
    prefix: 'SA',
    lots: 40,
    class: 'F',
    material: LOW_CALCIUM_ASH,
    laboratory: 'skarnmere-works',
    laterLaboratory: { from: '2025-03-01', id: 'north-quay' },
    units: 'SI',
    winterLossOnIgnition: 0.6,
    quantityT: [1600, 2400],
    events: [
      { from: '2024-05-06', to: '2024-05-27', kind: 'outage', title: 'outage, unit 2' },
      { from: '2025-03-01', kind: 'laboratory-change', title: 'new laboratory' },
      { from: '2025-10-06', to: '2025-10-24', kind: 'outage', title: 'outage, unit 2' },
    ],
    place: 'ash line to silo',
    sampler: 'E. Thorsby',
    issuer: SKARNMERE,
    consignees: ['Quellan Mix', 'Harrow Fell Readymix'],
    projects: ['Varrow Bridge', 'Lower Mere Lock'],
    silos: ['A1', 'A2'],
  },
  {
    id: 'quellan-ash',
    prefix: 'QA',
    lots: 36,
    class: 'C',
    material: HIGH_CALCIUM_ASH,
    laboratory: 'north-quay',
    units: 'US',
    winterLossOnIgnition: 0,
    quantityT: [1800, 2700],
    events: [
      { from: '2024-09-02', kind: 'fuel-change', title: 'second coal' },
      { from: '2025-06-02', to: '2025-06-20', kind: 'outage', title: 'outage' },
    ],
    place: 'truck loading spout',
    sampler: 'P. Idowu',
    issuer: QUELLAN,
    consignees: ['Basin Precast', 'Quellan Mix'],
    projects: ['Route 9 overlay', 'Basin Weir'],
    silos: ['Q1', 'Q2', 'Q3'],
  },
  {
    id: 'tarn-hollow-tuff',
    prefix: 'TH',
    lots: 34,
    class: 'N',
    material: NATURAL_POZZOLAN,
    laboratory: 'north-quay',
    units: 'SI',
    winterLossOnIgnition: 0,
    quantityT: [1100, 1700],
    events: [
      { from: '2024-02-12', kind: 'deposit-change', title: 'bench 4' },
      { from: '2025-08-04', to: '2025-08-22', kind: 'equipment-change', title: 'mill stop' },
    ],
    place: 'mill discharge to silo',
    sampler: 'J. Brandt',
    issuer: TARN_HOLLOW,
    consignees: ['Quellan Mix', 'Northmere Block'],
    projects: ['Varrow Bridge', 'Tarn Dam repair'],
    silos: ['S1', 'S2'],
  },
  {
    id: 'skarnmere-reclaimed',
    prefix: 'SR',
    lots: 28,
    class: 'F',
    material: HARVESTED_ASH,
    laboratory: 'skarnmere-works',
    units: 'SI',
    winterLossOnIgnition: 0,
    quantityT: [800, 1400],
    events: [
      { from: '2024-07-15', kind: 'deposit-change', title: 'cell C' },
      { from: '2025-04-14', kind: 'equipment-change', title: 'new classifier' },
    ],
    place: 'after the classifier',
    sampler: 'E. Thorsby',
    issuer: SKARNMERE,
    consignees: ['Harrow Fell Readymix'],
    projects: ['Lower Mere Lock', 'Mere Causeway'],
    silos: ['R1'],
  },
  {
    id: 'tarn-hollow-limestone',
    prefix: 'TL',
    lots: 14,
    class: null,
    material: LIMESTONE_FILLER,
    laboratory: 'north-quay',
    units: 'SI',
    winterLossOnIgnition: 0,
    quantityT: [300, 600],
    events: [],
    place: 'mill discharge to silo',
    sampler: 'J. Brandt',
    issuer: TARN_HOLLOW,
    consignees: ['Northmere Block'],
    projects: ['Northmere yard'],
    silos: ['L1'],
  },
]

/** @returns the first of them, or all and copies of them under other names until there are so many */
export function sourcesOf(number: number): DemoSource[] {
  return Array.from({ length: number }, (_, place) => {
    const source = SOURCES[place % SOURCES.length] as DemoSource
    const copy = Math.floor(place / SOURCES.length)
    if (copy === 0) return source
    return {
      ...source,
      id: `${source.id}-${copy + 1}`,
      copyOf: source.id,
      prefix: `${source.prefix}${copy + 1}`,
    }
  })
}

/** Strength of the control mortars, MPa, and resistivity, ohm m, before cement lot, laboratory and batch. */
export const CONTROL = {
  c311: { strength7: 30.5, strength28: 38.6, resistivity28: 40, flow: 108 },
  'modified-50c': { strength7: 47.4, strength28: 58.8, resistivity28: 44.5, flow: 104 },
} as const

export type ConditionId = keyof typeof CONTROL
export const CONDITIONS: readonly ConditionId[] = ['c311', 'modified-50c']

/** Bias of a laboratory in index points and as a factor on resistivity ratios. */
export const LABORATORY_BIAS: Readonly<
  Record<string, { readonly points: number; readonly ratio: number; readonly prefix: string }>
> = {
  'north-quay': { points: 1, ratio: 1.02, prefix: 'NQ' },
  'skarnmere-works': { points: -1.5, ratio: 0.98, prefix: 'SW' },
}

export const FIRST_DAY = '2023-10-02'
export const AS_OF = '2026-04-10'
export const SEED = 20_260_410
