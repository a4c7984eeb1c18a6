/** Audit checks on a lot itself: its number, its quantity, and the water of its mortars. */
import { literalPattern } from '../measure/text-pattern.ts'
import { type Finding, warningOn } from './finding.ts'

/** Tonnes, from a few trucks to a large silo or a ship: own choice. */
const QUANTITY: readonly [low: number, high: number] = [50, 50_000]
/** Mixing water of a test mortar in per cent of its control's: own choice. */
const WATER: readonly [low: number, high: number] = [50, 200]

export interface PlausibleLot {
  readonly id: string
  /** As printed. */
  readonly number: string
  /** As the source writes it; undefined where it states none. */
  readonly pattern?: string | undefined
  readonly quantity: { readonly value: number; readonly written: string }
  readonly mortars: readonly {
    readonly condition: string
    readonly control: string | undefined
    readonly sample: string
    readonly water?: Water | undefined
    readonly controlWater?: Water | undefined
  }[]
}

interface Water {
  readonly value: number
  readonly written: string
}

/** Warnings on a number off the source's pattern, a quantity or a mixing water that is hardly true. */
export function implausibleLot(lot: PlausibleLot): Finding[] {
  return [...numberOf(lot), ...quantityOf(lot), ...lot.mortars.flatMap((mortar) => waterOf(lot.id, mortar))]
}

function numberOf({ id, number, pattern }: PlausibleLot): Finding[] {
  if (pattern === undefined || formOf(pattern).test(number)) return []
  return [warningOn(id, { code: 'number-off-pattern', params: { lot: id, number, pattern } })]
}

/** YYYY stands for a year, # for a digit, everything else for itself. */
function formOf(pattern: string): RegExp {
  const escaped = literalPattern(pattern)
  return new RegExp(`^${escaped.replaceAll('YYYY', '\\d{4}').replaceAll('#', '\\d')}$`, 'i')
}

function quantityOf({ id, quantity }: PlausibleLot): Finding[] {
  const [low, high] = QUANTITY
  if (low <= quantity.value && quantity.value <= high) return []
  const params = { lot: id, written: quantity.written, low, high, unit: 't' }
  return [warningOn(id, { code: 'lot-quantity', params })]
}

function waterOf(lot: string, mortar: PlausibleLot['mortars'][number]): Finding[] {
  const { condition, control, sample, water, controlWater } = mortar
  if (control === undefined || water === undefined || controlWater === undefined) return []
  const percent = (100 * water.value) / controlWater.value
  const [low, high] = WATER
  if (low <= percent && percent <= high) return []
  const params = {
    lot,
    condition,
    control,
    sample,
    percent,
    writtenTest: water.written,
    writtenControl: controlWater.written,
    low,
    high,
    unit: '%',
  }
  return [warningOn(lot, { code: 'water-out-of-proportion', params }, condition, control, sample)]
}
