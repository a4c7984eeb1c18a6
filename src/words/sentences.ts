/** From parts and lists to sentences. */
import { NO_BREAK } from './signs.ts'

/** First letter large. */
export function sentence(text: string): string {
  return text === '' ? '' : `${text[0]?.toUpperCase()}${text.slice(1)}`
}

/** Keeps a number and its unit on one line ("50 °C", "28 d"). */
export function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=(?:[%°±µΩ]|[a-zA-Z]{1,3}\b(?!-)))/g, NO_BREAK)
}

/** Ordinary spaces alone, for files that programs read and compare. */
export function plainSpaces(text: string): string {
  return text.replaceAll(NO_BREAK, ' ')
}

/** A full sentence: first letter large, a stop at the end. */
export function fullSentence(text: string): string {
  const body = sentence(text.trim())
  return body === '' || /[.!?]$/.test(body) ? body : `${body}.`
}

/** "a, b or c", "a, b and c". */
export function listWords(items: readonly string[], last: 'and' | 'or'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}
