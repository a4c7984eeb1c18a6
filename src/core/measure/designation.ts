/** Designations of standards as laboratories write them: "ASTM C311-22", "ASTM C 311/C311M", "EN 196-1:2016". */

/**
 * Whether a method is a standard, or an edition or a part of it.
 * @param method as a result has it, "ASTM C311-22"
 * @param standard as a scope names it, "ASTM C311" or "C311"
 * @returns true where the method's designation begins with the standard's and nothing but a mark follows
 * Notes: 1. case and blanks do not count; 2. the body that publishes it, the method's first word, may be left out
 * of the standard; 3. "EN 196" stands for each of its parts, "EN 196-1" not for "EN 196-10"; 4. a standard with its
 * edition stands for that edition alone.
 */
export function isOfStandard(method: string, standard: string): boolean {
  const wanted = bare(standard)
  const [, withoutBody = ''] = /^\S+\s+(.*)$/s.exec(method.trim()) ?? []
  return wanted !== '' && [method, withoutBody].some((name) => beginsWith(bare(name), wanted))
}

function bare(name: string): string {
  return name.replaceAll(/\s/g, '').toUpperCase()
}

/** A letter or a digit after it makes it another designation. */
function beginsWith(name: string, wanted: string): boolean {
  return name.startsWith(wanted) && !/^[\p{L}\p{N}]/u.test(name.slice(wanted.length))
}
