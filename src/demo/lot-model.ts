/**
 * True values of one invented lot, with its place in a source's history: seasons, outages, likeness to the
 * lot before.
 */
import type { DemoSource } from './scenario.ts'
import { autoregressive, type Chance } from './chance.ts'
import { dayOf, monthFromZero } from './calendar.ts'
import type { Material, Spread } from './materials.ts'

/** What the bench will read, before specimens scatter. */
export interface LotModel {
  readonly oxides: Readonly<Record<string, number>>
  readonly moisture: number
  readonly lossOnIgnition: number
  readonly residue45: number
  readonly densityGCm3: number
  readonly autoclave: number
  readonly waterRequirement: number
  readonly activity7: number
  readonly activity28: number
  readonly modified7: number
  readonly modified28: number
  readonly ratio23: number
  readonly ratio50: number
  /** Sampled just before or after an outage. */
  readonly odd: boolean
}

type Drifts = Readonly<
  Record<keyof Omit<Material, 'shares' | 'MgO' | 'Na2O' | 'K2O' | 'autoclave'>, () => number>
>

const DRIFTING = [
  'CaO',
  'oxideSum',
  'SO3',
  'lossOnIgnition',
  'moisture',
  'residue45',
  'densityKgM3',
  'waterRequirement',
  'activity7',
  'activity28',
  'modifiedActivity28',
  'resistivityRatio23',
  'resistivityRatio50',
] as const
/** Correlation of a lot with the one before it. */
const LIKENESS = 0.4
/**
 * Effects on the indices, in points for each unit: fineness, calcium; and of loss on ignition on water.
 * Invented.
 */
const EFFECT = { residueOnActivity: -0.3, calciumOnActivity7: 0.4, lossOnWater: 0.4 }

/** A function that gives the next lot of a source, in order of sampling. */
export function lotModels(source: DemoSource, chance: Chance): (day: number) => LotModel {
  const drifts = Object.fromEntries(
    DRIFTING.map((key) => [key, autoregressive(chance, LIKENESS)]),
  ) as unknown as Drifts
  return (day) => lotModel(source, drifts, chance, day)
}

function lotModel(source: DemoSource, drifts: Drifts, chance: Chance, day: number): LotModel {
  const { material } = source
  const odd = source.events.some((event) => event.kind === 'outage' && Math.abs(daysFrom(event, day)) <= 12)
  const at = (key: keyof Drifts, more = 0): number => {
    const [mean, within, between]: Spread = material[key]
    return mean + more + between * drifts[key]() * (odd ? 1.6 : 1) + within * chance.normal()
  }
  const CaO = Math.max(0.2, at('CaO'))
  const lossOnIgnition = Math.max(0.12, at('lossOnIgnition', winter(source, day) + (odd ? 0.9 : 0)))
  const residue45 = Math.max(2, at('residue45', odd ? 2.5 : 0))
  const fine = EFFECT.residueOnActivity * (residue45 - material.residue45[0])
  return {
    oxides: oxidesOf(
      material,
      Math.min(at('oxideSum'), roomFor(material, CaO + lossOnIgnition)),
      CaO,
      Math.max(0.02, at('SO3')),
      chance,
    ),
    moisture: Math.max(0.03, at('moisture')),
    lossOnIgnition,
    residue45,
    densityGCm3: at('densityKgM3', -6 * (lossOnIgnition - material.lossOnIgnition[0])) / 1000,
    autoclave: Math.max(-0.02, material.autoclave + 0.01 * chance.normal()),
    waterRequirement: at(
      'waterRequirement',
      EFFECT.lossOnWater * (lossOnIgnition - material.lossOnIgnition[0]),
    ),
    activity7: at('activity7', fine + EFFECT.calciumOnActivity7 * (CaO - material.CaO[0])),
    activity28: at('activity28', fine),
    modified7: 0.86 * at('modifiedActivity28', fine),
    modified28: at('modifiedActivity28', fine),
    ratio23: Math.max(0.6, at('resistivityRatio23')),
    ratio50: Math.max(0.6, at('resistivityRatio50')),
    odd,
  }
}

/**
 * Per cent of the whole that silica, alumina and iron oxide may take beside everything else: an analysis of the dry
 * material adds up to 101 at most. A limestone has no room by this count, and its few per cent are left to it.
 */
function roomFor({ MgO, Na2O, K2O, SO3 }: Material, others: number): number {
  return Math.max(3, 101 - others - MgO - Na2O - K2O - SO3[0])
}

function daysFrom(event: { from: string; to?: string }, day: number): number {
  const from = dayOf(event.from)
  const to = dayOf(event.to ?? event.from)
  return day < from ? from - day : day <= to ? 0 : day - to
}

/** Loss on ignition rises in winter at a works that then burns hard: a sine with its top in January. */
function winter(source: DemoSource, day: number): number {
  return source.winterLossOnIgnition * Math.cos((2 * Math.PI * monthFromZero(day)) / 12)
}

function oxidesOf(
  material: Material,
  sum: number,
  CaO: number,
  SO3: number,
  chance: Chance,
): Record<string, number> {
  const [silica, alumina] = material.shares
  const SiO2 = sum * (silica + 0.006 * chance.normal())
  const Al2O3 = sum * (alumina + 0.004 * chance.normal())
  const scatter = () => 1 + 0.04 * chance.normal()
  return {
    SiO2,
    Al2O3,
    Fe2O3: sum - SiO2 - Al2O3,
    CaO,
    MgO: material.MgO * scatter(),
    SO3,
    Na2O: material.Na2O * scatter(),
    K2O: material.K2O * scatter(),
  }
}
