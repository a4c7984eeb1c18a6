/** What a heading says of its column's unit. */
import { JOINT } from './sheet-view.ts'

/** "SiO2 (%)", "Load [kN]", "Load, kN", "wt.% CaO", "age_d": what stands for the unit. */
export function unitInHeading(heading: string): string | undefined {
  const parts = heading.split(JOINT)
  return 1 < parts.length ? parts.map(unitInHeading).find((unit) => unit !== undefined) : unitInPart(heading)
}

function unitInPart(heading: string): string | undefined {
  const [, bracketed] = /[([]\s*([^()[\]]{1,20}?)\s*[)\]]\s*$/.exec(heading) ?? []
  const [, behind] = /(?:,|\bin)\s+([^\s,]{1,12}(?: [^\s,]{1,8})?)$/.exec(heading) ?? []
  const [, joined] = /_([A-Za-z%]{1,6})$/.exec(heading) ?? []
  const found = bracketed ?? behind ?? joined
  if (found !== undefined) return plainUnit(found)
  return /%|\bper ?cent\b/.test(heading) ? '%' : undefined
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
