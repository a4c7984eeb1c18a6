/** Values of records, each held once: units, names, dates and figures come again in thousands of lots. */
import { kept } from '../../core/measure/kept.ts'
import { Moment } from '../../core/measure/moment.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { isQuantity } from '../../core/mortar/mortar.ts'

/** Longer ones seldom come again. */
const LONGEST = 64

/**
 * Puts one value in place of all that are the same, and takes no text as a part of the file that it was read from, which
 * would keep the whole file in memory. Values of records never change, so that it makes no difference whose they are.
 */
export class SharedValues {
  readonly #texts = new Map<string, string>()
  readonly #quantities = new Map<string, Quantity>()
  readonly #dates = new Map<string, Moment>()

  /** @param value of a record, just read: nobody else has it yet */
  shareIn(value: unknown): void {
    if (typeof value !== 'object' || value === null) return
    const members = value as Record<string, unknown>
    for (const [key, member] of Object.entries(members))
      if (typeof member === 'string') members[key] = this.#text(member)
      else if (member instanceof Moment) members[key] = this.#moment(member)
      else {
        this.shareIn(member)
        if (typeof member === 'object' && member !== null && isQuantity(member))
          members[key] = this.#quantity(member)
      }
  }

  #text(text: string): string {
    const known = this.#texts.get(text)
    if (known !== undefined) return known
    const own = ownCopy(text)
    if (own.length <= LONGEST) this.#texts.set(own, own)
    return own
  }

  #quantity(quantity: Quantity): Quantity {
    const { kind, value, unit, written, decimals, censored, above, ...more } = quantity
    if (0 < Object.keys(more).length) return quantity
    const key = `${kind} ${value} ${unit} ${decimals} ${censored} ${above} ${written}`
    return kept(this.#quantities, key, () => quantity)
  }

  /** Dates come again, times of day seldom. */
  #moment(moment: Moment): Moment {
    const { text, minute, sortedAt } = moment
    if (minute !== null) return new Moment({ ...moment, text: ownCopy(text) })
    return kept(this.#dates, `${sortedAt} ${text}`, () => new Moment({ ...moment, text: ownCopy(text) }))
  }
}

/** A text that was cut out of another refers to it, until it is written anew. */
function ownCopy(text: string): string {
  return JSON.parse(JSON.stringify(text)) as string
}
