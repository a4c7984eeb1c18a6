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
