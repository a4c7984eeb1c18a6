/** What a z-score is called. */

export type ScoreStanding = 'satisfactory' | 'questionable' | 'unsatisfactory'

/**
 * The usual three words.
 * @param z of either sign
 * Source: ISO 13528, 9.4, and ISO/IEC 17043: |z| to 2, between 2 and 3, from 3 on (from memory).
 */
export function scoreStanding(z: number): ScoreStanding {
  const size = Math.abs(z)
  if (size <= 2) return 'satisfactory'
  return size < 3 ? 'questionable' : 'unsatisfactory'
}

/** Largest |z| of each rating, from 5 down. */
const RATINGS = [1, 1.5, 2, 2.5, 3]

/**
 * The rating that an accrediting body's proficiency programme gives.
 * @param z of either sign
 * @returns 5 to 0 by |z| to 1, 1.5, 2, 2.5, 3 and beyond, with the sign of z; 2 and less is low
 * Source: AASHTO re:source, "Proficiency sample ratings", October 2010 (read).
 */
export function scoreRating(z: number): number {
  const passed = RATINGS.findIndex((end) => Math.abs(z) <= end)
  if (passed < 0) return 0
  return z < 0 ? passed - 5 : 5 - passed
}

/**
 * How far the robust mean itself is uncertain, in robust deviations.
 * @param laboratories two or more
 * @returns above 0.3, scores say less of a single laboratory
 * Source: ISO 13528, 7.7.3 and 9.2.1: u = 1.25 s/√p, negligible up to 0.3 s (from memory).
 */
export function meanUncertainty(laboratories: number): number {
  return 1.25 / Math.sqrt(laboratories)
}
