/** Records on one line, as clerks write them. */

/**
 * A YAML flow mapping: "{ age: 7 d, flow: 108 % }".
 * @param members texts and numbers as they are to stand; what is undefined is left out
 */
export function flowMapping(members: Readonly<Record<string, string | number | undefined>>): string {
  const pairs = Object.entries(members).filter(([, value]) => value !== undefined)
  return `{ ${pairs.map(([key, value]) => `${key}: ${value}`).join(', ')} }`
}
