/** What a telephone or a mail program is given: addresses that are made of the digits and letters of a record alone. */

/**
 * @param written number as recorded: digits with marks between them, perhaps an extension after "ext."
 * @returns "tel:+15550100", with ";ext=12" for an extension
 * Source: RFC 3966, section 3 (visual separators left out) and section 5.3 (extension).
 */
export function telephoneAddress(written: string): string {
  const [number = '', extension] = written.split(/\bext\./)
  const digits = (text: string) => text.replace(/[^0-9]/g, '')
  const plus = number.trimStart().startsWith('+') ? '+' : ''
  return `tel:${plus}${digits(number)}${extension === undefined ? '' : `;ext=${digits(extension)}`}`
}

/** Source: RFC 6068, section 2, with what is not unreserved percent-encoded on both sides of the last @. */
export function mailAddress(written: string): string {
  const at = written.lastIndexOf('@')
  return `mailto:${encodeURIComponent(written.slice(0, at))}@${encodeURIComponent(written.slice(at + 1))}`
}
