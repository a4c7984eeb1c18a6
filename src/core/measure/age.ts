/**
 * Nominal ages of specimens, as conditions name them: "28 d", "72 h". A text is read once, when its record is
 * loaded.
 */

/** A nominal age. In JSON it is its text. */
export class Age {
  /** As written in the record. */
  readonly text: string
  readonly hours: number

  constructor(text: string, hours: number) {
    this.text = text
    this.hours = hours
  }

  toJSON(): string {
    return this.text
  }

  toString(): string {
    return this.text
  }
}

const AGE = /^(\d+) (d|h)$/

/**
 * Reads a nominal age.
 * @param text "28 d" or "72 h"
 * @throws RangeError for a text that is none; loading has refused it before
 */
export function readAge(text: string): Age {
  const age = ageIn(text)
  if (age === null) throw new RangeError(`readAge needs an age such as "28 d", got "${text}"`)
  return age
}

/**
 * The same for a text that nobody has checked; null where it is no age.
 * @param text any
 */
export function ageIn(text: string): Age | null {
  const match = AGE.exec(text)
  return match === null ? null : new Age(text, Number(match[1]) * (match[2] === 'd' ? 24 : 1))
}

/**
 * Order of two ages: "72 h" and "3 d" are one age.
 * @returns negative, zero, positive
 */
export function compareAges(a: Age, b: Age): number {
  return a.hours - b.hours
}

/** Whether two ages are one; both absent is one as well. */
export function isSameAge(a: Age | undefined, b: Age | undefined): boolean {
  return a?.hours === b?.hours
}
