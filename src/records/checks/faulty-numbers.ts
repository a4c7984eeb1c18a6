/** Printed numbers of lots that have a fault: nobody need ask where they are. */
import { nameInSource } from '../../core/measure/lot-id.ts'
import { readText } from '../files.ts'
import type { ReadFiles } from './assemble.ts'

/** A line such as `number: "SA 2026/002"   # as stencilled`, in a text that may be no YAML. */
const NUMBER_LINE = /^(?:number|"number"|'number'):[ \t]+(["']?)([^"'\n]+?)\1[ \t]*(?:[ \t]#.*)?\r?$/m

/**
 * @param files as read and checked
 * @returns by SOURCE/LOT; the name of the file where the text states no number that can be read
 */
export function faultyNumbers({ contentDir, loaded, ids }: ReadFiles): ReadonlyMap<string, string> {
  const numbers = new Map<string, string>()
  for (const id of ids.lot) {
    const own = loaded.lot.get(id)
    if (own?.report.count() === 0) continue
    const stated = own === undefined ? numberIn(contentDir, id) : own.record.number
    numbers.set(id, stated ?? nameInSource(id))
  }
  return numbers
}

function numberIn(contentDir: string, id: string): string | undefined {
  const reading = readText(contentDir, `lots/${id}.yaml`)
  return 'text' in reading ? NUMBER_LINE.exec(reading.text)?.[2] : undefined
}
