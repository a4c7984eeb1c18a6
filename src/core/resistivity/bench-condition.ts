/** What a condition records of the bench's day, as its record has it. */
import type { Quantity } from '../measure/units.ts'

export type Evaporation = 'covered' | 'topped-up' | 'covered-and-topped-up' | 'not-controlled'
export type Surface = 'surface-dry' | 'damp' | 'rinsed-and-surface-dry'

export interface BenchCondition {
  readonly 'first-day'?: {
    readonly in?: string
    readonly moist?: string
    readonly temperature: Quantity
    readonly within?: Quantity
    readonly for?: Quantity
  }
  readonly curing: {
    readonly medium: string
    readonly temperature: Quantity
    readonly within?: Quantity
    readonly 'control-and-test'?: 'together' | 'apart'
    readonly entry?: BenchEntry
    readonly bath?: {
      readonly vessel?: string
      readonly 'liquid-to-specimens'?: number
      readonly 'solid-lime'?: 'kept' | 'none'
      readonly renewal?: { readonly at: 'never' | 'each-age' | 'intervals'; readonly every?: Quantity }
      readonly 'materials-per-vessel'?: number
      readonly evaporation?: Evaporation
      readonly log?: { readonly 'bath-every'?: Quantity; readonly 'core-every'?: Quantity }
    }
  }
  readonly 'before-test'?: {
    readonly 'cool-in'?: string
    readonly to: Quantity
    readonly within?: Quantity
    readonly for?: Quantity
    readonly 'core-by'?: 'dummy-specimen' | 'not-measured'
    readonly 'control-and-test-within'?: Quantity
  }
  readonly control?: {
    readonly cement?: { readonly type: string }
    readonly 'cement-alkalis'?: { readonly 'at-least'?: Quantity; readonly 'at-most'?: Quantity }
  }
  readonly resistivity?: {
    readonly reading: {
      readonly temperature: Quantity
      readonly within: Quantity
      readonly 'end-contact-at-most'?: Quantity
    }
    readonly frequency?: Quantity
    readonly handling?: {
      readonly 'out-of-liquid-at-most'?: Quantity
      readonly 'control-and-test-within'?: Quantity
      readonly surface?: Surface
      readonly 'after-reading'?: 'read-once' | 'returned'
    }
    readonly faces?: 'moulded-only' | 'trowelled-too'
    readonly directions?: number
    readonly measured?: { readonly sides?: 'yes' | 'no'; readonly mass?: 'yes' | 'no' }
    readonly meter?: {
      readonly 'phase-at-most'?: Quantity
      readonly 'contact-medium'?: string
      readonly 'contact-pressure'?: Quantity
      readonly 'check-resistors'?: readonly Quantity[]
      readonly ceiling?: Quantity
    }
  }
}
export interface BenchEntry {
  readonly by: 'step' | 'ramp'
  readonly over?: Quantity
}
