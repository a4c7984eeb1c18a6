/** What stands in the place of a fact that is not published. */

export const NOT_PUBLISHED = {
  name: 'name not published',
  seal: 'seal not published',
  order: 'number not published',
} as const

/** Stands for the id of a lot that counts and is not to be named. */
export const UNISSUED_LOT = 'a lot not yet issued'
