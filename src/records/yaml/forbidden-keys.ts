/**
 * Keys that JavaScript gives a meaning of its own: a reading under such a mark could be lost without a word.
 */
import type { FileReport } from '../diagnostics/report.ts'
import { below } from './pointer.ts'

export const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])

/** Only a text that spells one of them, or that may spell it by an escape, is looked through. */
const MAY_HOLD = /proto|constructor|\\/

/** Reports every forbidden key of a file's value. */
export function reportForbiddenKeys(value: unknown, text: string, report: FileReport): void {
  if (MAY_HOLD.test(text)) visit(value, '', report)
}

function visit(value: unknown, pointer: string, report: FileReport): void {
  if (typeof value !== 'object' || value === null) return
  for (const [key, member] of Object.entries(value)) {
    const at = below(pointer, key)
    const forbidden = !Array.isArray(value) && FORBIDDEN_KEYS.has(key)
    if (forbidden)
      report.atKey(at, 'yaml-forbidden-key', `the key "${key}" is not allowed anywhere`, 'remove it')
    visit(member, at, report)
  }
}
