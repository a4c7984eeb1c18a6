/** One form for numbers of bills, lots and certificates, however somebody writes them. */

/** Everything that parts a number without being of it: spaces, hyphens, strokes, points. */
const SEPARATORS = /[^\p{L}\p{N}]+/gu

/**
 * A number without what differs from one writer to the next: "BL-88454", "bl 88454" and full-width digits alike.
 * @param text as written in a record, or as somebody types it
 * @returns letters and digits alone, in lower case; empty for a text that has neither
 * Note: two numbers may come to one form ("1-12" and "11-2"), so that a look-up lists all that do.
 * Source: compatibility forms, Unicode Standard Annex 15 (NFKC); what separates, own choice.
 */
export function numberKey(text: string): string {
  return text.normalize('NFKC').toLowerCase().replace(SEPARATORS, '')
}

/**
 * The digits of a number that is letters followed by digits, so that "88454" finds "BL-88454".
 * @param key of `numberKey`
 * @returns null where the number has another form
 */
export function digitsOf(key: string): string | null {
  return /^\p{L}+(\d+)$/u.exec(key)?.[1] ?? null
}

/** Words that people write before a number, and that no number holds: own choice. */
const WORDS: ReadonlySet<string> = new Set([
  'no',
  'nr',
  'num',
  'number',
  'bill',
  'lot',
  'certificate',
  'of',
  'lading',
])
/** A revision behind the number of a certificate: "/1", "rev 1", "revision 1". */
const REVISION = /(?:\/|\brev(?:ision)?\b\.?)\s*\d+\s*$/u

/**
 * A number without leading noughts, words before it and a revision after it: "SA 2025 14" and "SA-2025-014 rev 1" alike.
 * @param text as written in a record, or as somebody types it
 * @returns its groups of letters and of digits, joined by hyphens; empty for a text that has neither
 * Note: more numbers come to one form than with `numberKey`, which is to be asked first.
 * Source: own choice.
 */
export function looseNumberKey(text: string): string {
  const plain = text.normalize('NFKC').toLowerCase().trim().replace(REVISION, '')
  const groups = plain.match(/\p{L}+|\p{N}+/gu) ?? []
  return groups
    .filter((group) => !WORDS.has(group))
    .map((group) => group.replace(/^0+(?=.)/u, ''))
    .join('-')
}
