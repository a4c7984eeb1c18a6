/**
 * Characters that nobody sees and that change what is read: controls, marks that turn the direction of writing,
 * halves of a character, and texts of nothing but blanks; and curly quotes, which everybody sees and nobody notices.
 */
import type { FileReport } from '../diagnostics/report.ts'
import { isInCurlyQuotes, mayBeCurly, reportCurlyQuotes } from './curly-quotes.ts'
import { below } from './pointer.ts'

/**
 * Controls but for tab, line feed and carriage return; overrides, embeddings and isolates; joiners of no width; lone
 * surrogates; and the blank of no width, but behind letters of scripts that part words with it.
 */
const UNSEEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters looked for.
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ud800-\udfff\ufeff]|(?<![\p{sc=Thai}\p{sc=Lao}\p{sc=Khmr}\p{sc=Mymr}\p{sc=Tibt}])\u200b/u
/** Line ends and tabs, which only block text may hold. */
const LINE_SIGN = /[\t\n\r]/
/** Blanks, characters that only steer others, and letters that are drawn as nothing. */
const BLANK = /^[\s\p{Cf}\u115f\u1160\u2800\u3164\uffa0]+$/u

const MEND = 'take it out, or write the text anew by hand'

/** The first unseen character of a text as U+XXXX, and its offset; undefined where there is none. */
export function unseenIn(text: string): { readonly name: string; readonly index: number } | undefined {
  const index = text.search(UNSEEN)
  return index < 0 ? undefined : { name: codePointName(text, index), index }
}

/** The same of a text that must stand on one line. */
export function unseenInLine(text: string): { readonly name: string; readonly index: number } | undefined {
  const index = text.search(LINE_SIGN)
  return unseenIn(text) ?? (index < 0 ? undefined : { name: codePointName(text, index), index })
}

/** "F<U+200B>" for a text of which a reader would see the F alone. */
export function withSignsNamed(text: string): string {
  return text.replace(/[^\p{L}\p{M}\p{N}\p{P}\p{S} ]/gu, (sign) => `<${codePointName(sign, 0)}>`)
}

/** Whether a text has characters and shows none of them. */
export function isBlank(text: string): boolean {
  return BLANK.test(text)
}

/** A character as U+XXXX. @param index of the character in UTF-16 units */
function codePointName(text: string, index: number): string {
  return `U+${(text.codePointAt(index) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`
}

/** Reports every text and every key of a file's value that holds such a character. */
export function reportUnseen(value: unknown, report: FileReport): void {
  // Nearly every record is sound, and needs no pointers.
  if (isSound(value)) return
  visit(value, '', report)
}

/** Reports the first such character of each line of a page's text. @param from line of the file that the first is */
export function reportUnseenLines(lines: readonly string[], from: number, report: FileReport): void {
  lines.forEach((line, index) => {
    const found = unseenIn(line)
    if (found !== undefined)
      report.atPosition(from + index, found.index + 1, 'text-character', sentence(found.name), MEND)
  })
}

/** What is wrong about the raw character that made a parser refuse the whole text. */
export function reportRawControl(line: number, column: number, text: string, report: FileReport): void {
  const written = text.split('\n')[line - 1] ?? ''
  report.atPosition(line, column, 'text-character', sentence(codePointName(written, column - 1)), MEND)
}

function isSound(value: unknown): boolean {
  if (typeof value === 'string') return isSoundText(value)
  if (typeof value !== 'object' || value === null) return true
  for (const key of Object.keys(value))
    if (!isSoundText(key) || !isSound((value as Record<string, unknown>)[key])) return false
  return true
}

function isSoundText(text: string): boolean {
  return !UNSEEN.test(text) && !LINE_SIGN.test(text) && !BLANK.test(text) && !mayBeCurly(text)
}

function visit(value: unknown, pointer: string, report: FileReport): void {
  if (typeof value === 'string') reportText(value, pointer, report)
  if (typeof value !== 'object' || value === null) return
  for (const [key, member] of Object.entries(value)) {
    const at = below(pointer, key)
    const found = unseenInLine(key)
    if (found !== undefined) report.atKey(at, 'text-character', sentence(found.name), MEND)
    visit(member, at, report)
  }
}

function reportText(text: string, pointer: string, report: FileReport): void {
  const found = unseenIn(text)
  const lineSign = unseenInLine(text)
  if (isBlank(text))
    report.at(
      pointer,
      'yaml-empty',
      'the text holds nothing but blanks',
      'write a value, or take the line out',
    )
  else if (found !== undefined) report.at(pointer, 'text-character', sentence(found.name), MEND)
  else if (isInCurlyQuotes(text, pointer, report)) reportCurlyQuotes(text, pointer, report)
  else if (lineSign !== undefined && !isBlockText(pointer, report))
    report.at(
      pointer,
      'text-character',
      sentence(lineSign.name),
      'write the text on one line, or as block text after |',
    )
}

/** Block text begins on the line after its mark. */
function isBlockText(pointer: string, report: FileReport): boolean {
  const start = report.written(pointer)?.start ?? 0
  return /[|>][-+\d]*[ \t]*(#[^\n]*)?\r?\n$/.test(report.text.slice(Math.max(0, start - 200), start))
}

function sentence(name: string): string {
  return `the text holds ${name}, ${kindOf(Number.parseInt(name.slice(2), 16))}`
}

function kindOf(code: number): string {
  if (code === 0x09) return 'a tab'
  if (code === 0x0a || code === 0x0d) return 'a line end'
  if (0xd800 <= code && code <= 0xdfff) return 'half of a character'
  if (code === 0x200b || code === 0xfeff || (0x2060 <= code && code <= 0x2064))
    return 'which is drawn as nothing'
  return 0x2000 <= code ? 'which turns the direction of writing unseen' : 'a control character'
}
