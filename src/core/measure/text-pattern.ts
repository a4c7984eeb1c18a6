/** Patterns that a person writes, as regular expressions: what has no meaning in the pattern stands for itself. */

/**
 * Makes a text one that a regular expression finds as it is.
 * @param text any
 * @returns source of the regular expression
 */
export function literalPattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
}

/**
 * Whether a whole text is as a pattern says.
 * @param text any
 * @param pattern in which * stands for any text, everything else for itself
 */
export function fitsPattern(text: string, pattern: string): boolean {
  return new RegExp(`^${pattern.split('*').map(literalPattern).join('.*')}$`, 's').test(text)
}
