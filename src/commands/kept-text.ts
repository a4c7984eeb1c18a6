/**
 * Texts that a build keeps for the next one. The first line is the digest of all that follows, so that a text that was
 * cut short, altered or half written is none.
 */
import { readFileSync } from 'node:fs'
import { digestOf } from '../records/issued/digest.ts'
import { writeWhole } from './write-whole.ts'

export function withDigest(text: string): string {
  return `${digestOf(text)}\n${text}`
}

/** Undefined for a file that is not there, cannot be read, or is not as it was written. */
export function keptText(path: string): string | undefined {
  try {
    const whole = readFileSync(path, 'utf8')
    const end = whole.indexOf('\n')
    const text = whole.slice(end + 1)
    return whole.slice(0, end) === digestOf(text) ? text : undefined
  } catch {
    return undefined
  }
}

/**
 * Writes it whole or not at all.
 * @param content that says of itself whether it is as it was written
 * @param otherwise what the next build does without it: "draw every page"
 * @returns lines for the reader of the command
 */
export function keepText(path: string, content: string | Iterable<string>, otherwise: string): string[] {
  try {
    writeWhole(path, content, 'check the permissions and the free space of the folder')
    return []
  } catch (error) {
    return [`The next build will ${otherwise}: ${(error as Error).message}`]
  }
}
