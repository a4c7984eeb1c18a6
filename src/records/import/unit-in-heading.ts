/** What a heading says of its column's unit. */
import { isFault, type QuantityKind, readPerhapsAbove } from '../../core/measure/units.ts'
import { JOINT } from './sheet-view.ts'

/**
 * "SiO2 (%)", "Load [kN]", "Load, kN", "wt.% CaO", "age_d": what stands for the unit.
 * @param kind of the quantity beneath: of several signs its unit is taken, as in "Chemistry, % by mass (dry)"
 */
export function unitInHeading(heading: string, kind?: QuantityKind): string | undefined {
  const all = withoutMethod(heading).split(JOINT).toReversed().flatMap(unitsInPart)
  return all.find((unit) => kind !== undefined && isUnitOf(unit, kind)) ?? all[0]
}

/** "Strength activity index, ASTM C311" without the method. */
export function withoutMethod(heading: string): string {
  return heading.replace(/[\s,]*\b(?:ASTM|AASHTO|CSA|EN|ISO)\b[\sA-Z]*\d[\d.:/-]*\w?/g, '')
}

export function isUnitOf(unit: string, kind: QuantityKind): boolean {
  return !isFault(readPerhapsAbove(`1 ${unit}`, kind))
}

function unitsInPart(heading: string): string[] {
  const [, bracketed] = /[([]\s*([^()[\]]{1,20}?)\s*[)\]]\s*$/.exec(heading) ?? []
  const [, behind] = /(?:,|\bin)\s+([^\s,]{1,12}(?: [^\s,]{1,8})?)$/.exec(heading) ?? []
  const [, joined] = /_([A-Za-z%]{1,6})$/.exec(heading) ?? []
  const found = [bracketed, behind, joined].flatMap((text) =>
    text === undefined ? [] : (plainUnit(text) ?? []),
  )
  return [...found, ...(/%|\bper ?cent\b/.test(heading) ? ['%'] : [])]
}

/** Ways in which headings write a unit that records write otherwise. */
function plainUnit(unit: string): string | undefined {
  const bare = unit.replace(/\^/g, '').trim()
  if (/^(?:(?:wt|m|mass)\.?[- ]?%|%|%[- ]?(?:by )?(?:wt|mass|weight|m\/m|w\/w)\.?|per ?cent\b)/i.test(bare))
    return '%'
  if (/^days?$/i.test(bare)) return 'd'
  if (/^g\/(?:cc|ml|cm3)$/i.test(bare)) return 'g/cm3'
  if (/^kΩ$|^kohm$/i.test(bare)) return 'kohm'
  if (/^[Ωohm]+s?$/i.test(bare)) return 'ohm'
  return /^[A-Za-z°µμΩ%·/ .²³0-9-]{1,20}$/.test(bare) ? bare : undefined
}
