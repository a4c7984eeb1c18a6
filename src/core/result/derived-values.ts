/**
 * Values that only a clause asks for: another sense of a result, or a product of two. They are not printed
 * with the results.
 */
import { defined } from '../measure/defined.ts'
import { laterOf } from '../measure/moment.ts'
import { property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import { type Bounds, boundsOfProduct, boundsOfSum, type Known } from './bounds.ts'
import { knownSince, type Result } from './result.ts'

/**
 * What follows from a lot's results for a property that none of them states.
 * @param key the property: passing or residue at 45 µm, or the multiple factor; nothing follows for others
 * @returns one for each result or pair of one analysis, under the key of the result it comes from
 * Notes: 1. what follows is valid only where all that it follows from is; 2. what is known only within bounds gives
 * a value within bounds: a residue of less than 1 % passes between 99 and 100 %.
 * Source: passing is 100 less the residue; ASTM C618, multiple factor = loss on ignition × residue (from
 * memory).
 */
export function derivedOnDemand(key: PropertyKey, results: readonly Result[]): Result[] {
  switch (key) {
    case 'passing-45um':
      return of('residue-45um', results).map((result) => remainder(result, key))
    case 'residue-45um':
      return of('passing-45um', results).map((result) => remainder(result, key))
    case 'multiple-factor':
      return of('residue-45um', results).flatMap((residue) =>
        of('loss-on-ignition', results)
          .filter((loss) => loss.sample === residue.sample && loss.laboratory === residue.laboratory)
          .map((loss) => multipleFactor(residue, loss)),
      )
    default:
      return []
  }
}

function of(key: PropertyKey, results: readonly Result[]): Result[] {
  return results.filter((result) => result.property === key)
}

/** What passes a sieve and what stays on it are the whole. */
function remainder(from: Result, key: PropertyKey): Result {
  const control = controlOf(from)
  return derived(from, key, {
    value: 100 - from.value,
    bounds: boundsOfSum([{ factor: -1, of: from }], 100),
    controlValue: control && 100 - control.value,
    controlBounds: control && boundsOfSum([{ factor: -1, of: control }], 100),
    decimals: from.decimals,
  })
}

/** ASTM C618, optional requirements: multiple factor (from memory). */
function multipleFactor(residue: Result, loss: Result): Result {
  const [ofResidue, ofLoss] = [controlOf(residue), controlOf(loss)]
  const both = ofResidue !== undefined && ofLoss !== undefined
  const factor = derived(residue, 'multiple-factor', {
    value: loss.value * residue.value,
    bounds: boundsOfProduct(loss, residue),
    controlValue: both ? ofLoss.value * ofResidue.value : undefined,
    controlBounds: both ? boundsOfProduct(ofLoss, ofResidue) : undefined,
    decimals: property('multiple-factor').decimals,
  })
  const [tested, known] = [
    laterOf(residue.tested, loss.tested),
    laterOf(knownSince(residue), knownSince(loss)),
  ]
  return {
    ...factor,
    tested,
    ...(known.day === tested.day ? {} : { known }),
    n: Math.min(residue.n, loss.n),
    valid: residue.valid && loss.valid,
    reasons: [...residue.reasons, ...loss.reasons],
  }
}

function controlOf({ controlValue, controlBounds }: Result): Known | undefined {
  return controlValue === undefined ? undefined : defined({ value: controlValue, bounds: controlBounds })
}

interface Figures {
  readonly value: number
  readonly bounds: Bounds | undefined
  readonly controlValue: number | undefined
  readonly controlBounds: Bounds | undefined
  readonly decimals: number
}

function derived(from: Result, key: PropertyKey, figures: Figures): Result {
  const { written: _written, basis: _basis, censored: _censored, ...rest } = from
  return defined({ ...rest, property: key, unit: storedUnit(key), ...figures })
}
