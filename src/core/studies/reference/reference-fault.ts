/** Why readings of a reference test give no figure, as data: the reader of the record words it and knows the place. */

export type ReferenceFault =
  /** `row` from 0: the first that is not beyond the one before it. */
  | { readonly fault: 'not-increasing'; readonly of: 'time' | 'temperature'; readonly row: number }
  | {
      readonly fault: 'outside-table'
      readonly what: TablePlace
      readonly asked: number
      readonly first: number
      readonly last: number
    }
  | { readonly fault: 'few-rows'; readonly what: TablePlace; readonly rows: number; readonly least: number }
  | { readonly fault: 'ends-before-start'; readonly start: number; readonly at: number }
  | {
      readonly fault: 'range-backwards'
      readonly what: TablePlace
      readonly from: number
      readonly to: number
    }
  | {
      readonly fault: 'outside-blanks'
      readonly asked: number
      readonly first: number
      readonly last: number
    }
  | { readonly fault: 'blanks-alike' }
  /** `place` of the crucible, from 0. */
  | { readonly fault: 'crucible-order'; readonly place: number; readonly wrong: 'crucible' | 'ignited' }
  | { readonly fault: 'negative-loss'; readonly what: TablePlace; readonly lossMg: number }
  | { readonly fault: 'blank-below-sample'; readonly blankMl: number; readonly sampleMl: number }
  | { readonly fault: 'aliquot-above-total'; readonly aliquotMl: number; readonly totalMl: number }

/** What a place of a table is asked for. */
export type TablePlace = 'start' | 'at' | 'table' | 'water' | 'carbonate' | 'before' | 'after'

/** Whether readings gave a fault in place of a figure. */
export function isReferenceFault(found: object): found is ReferenceFault {
  return 'fault' in found
}
