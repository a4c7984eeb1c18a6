/** What a number with a comma may mean: a comma is a decimal sign in one country and groups digits in another. */

const WHOLE_GROUPS = /^[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/
const POINT_GROUPS = /^[+-]?[1-9]\d{0,2}(?:\.\d{3})+,\d+$/

/**
 * Every number that a text with commas may stand for, with a decimal point and without signs between digits.
 * @param text a number with one comma or more, and points: "1450,5", "17,500", "1.234,5"
 * @returns one text or two, the one with grouped digits first: "17,500" gives 17500 and 17.500
 * Notes: 1. "0,485" and "24,8" can only be decimals, "1,234,567" only groups; 2. of two different signs the last
 * is taken for the decimal one, or the first for a slip.
 */
export function commaReadings(text: string): readonly string[] {
  const commas = text.split(',').length - 1
  const decimal = text.replaceAll('.', '').replace(/,(?=[^,]*$)/, '.')
  if (POINT_GROUPS.test(text)) return [decimal, text.replace(',', '')].filter(isNumber)
  const grouped = text.replaceAll(',', '')
  if (!WHOLE_GROUPS.test(text)) return [commas === 1 && !text.includes('.') ? decimal : grouped]
  return commas === 1 && !text.includes('.') ? [grouped, decimal] : [grouped]
}

function isNumber(text: string): boolean {
  return /^[+-]?\d+(?:\.\d+)?$/.test(text)
}
