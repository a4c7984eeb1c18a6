/** Differences that somebody has looked at and wants: allowed.json. */
import { readFileSync } from 'node:fs'
import type { Difference } from './difference.ts'
import { WrongUse } from './wrong-use.ts'

export interface Allowance {
  /** Where a difference may lie; "*" stands for any text within one segment, "**" for any text. */
  readonly where: string
  /** With `is`: the one change of words that is allowed there, wherever else it occurs in the same value. */
  readonly was?: string
  readonly is?: string
  readonly reason: string
}

/** @throws WrongUse for a list that is not as described */
export function readAllowances(path: string): Allowance[] {
  return parseAllowances(readFileSync(path, 'utf8'))
}

/** @throws WrongUse for a list that is not as described */
export function parseAllowances(text: string): Allowance[] {
  const list = parsed(text)
  if (!Array.isArray(list)) throw new WrongUse('allowed.json is not a list of allowances.')
  const faulty = list.find((entry) => !isAllowance(entry))
  if (faulty === undefined) return list as Allowance[]
  const wanted = 'each entry needs "where" and "reason"; "was" and "is" go together'
  throw new WrongUse(`allowed.json holds ${JSON.stringify(faulty)}, but ${wanted}.`)
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new WrongUse(`allowed.json cannot be read: ${(error as Error).message}`)
  }
}

function isAllowance(entry: unknown): entry is Allowance {
  if (typeof entry !== 'object' || entry === null) return false
  const { where, reason, was, is, ...others } = entry as Record<string, unknown>
  const words = was === undefined ? is === undefined : isText(was) && typeof is === 'string'
  return isText(where) && isText(reason) && words && Object.keys(others).length === 0
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value.trim() !== ''
}

export interface Sifted {
  readonly unexpected: readonly Difference[]
  readonly allowed: readonly Difference[]
  /** Allowances that matched no difference; they may be taken out of the list. */
  readonly unused: readonly Allowance[]
}

export function sift(differences: readonly Difference[], allowances: readonly Allowance[]): Sifted {
  const tests = allowances.map((allowance) => ({ allowance, matches: matcher(allowance) }))
  const used = new Set<Allowance>()
  const [unexpected, allowed]: [Difference[], Difference[]] = [[], []]
  for (const difference of differences) {
    const found = tests.filter(({ matches }) => matches(difference))
    for (const { allowance } of found) used.add(allowance)
    if (found.length > 0) allowed.push(difference)
    else unexpected.push(difference)
  }
  return { unexpected, allowed, unused: allowances.filter((allowance) => !used.has(allowance)) }
}

function matcher({ where, was, is }: Allowance): (difference: Difference) => boolean {
  const source = where
    .split(/(\*\*|\*)/)
    .map((part) => ({ '**': '.*', '*': '[^/]*' })[part] ?? literally(part))
    .join('')
  const spot = new RegExp(`^${source}$`, 's')
  return (difference) =>
    spot.test(difference.where) && (was === undefined || is === undefined || onlyWords(difference, was, is))
}

function literally(text: string): string {
  return text.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&')
}

/** Whether the replacement of these words accounts for the whole difference. */
function onlyWords(difference: Difference, was: string, is: string): boolean {
  return (
    difference.was !== null &&
    difference.is !== null &&
    difference.was.replaceAll(was, () => is) === difference.is
  )
}
