/** Signs of print that a keyboard does not have. */

export const THIN_SPACE = '\u2009'

export const NO_BREAK = '\u00a0'

export const MINUS = '\u2212'
