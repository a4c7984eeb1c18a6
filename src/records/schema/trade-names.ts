/** Keys that a laboratory calls by another name: the key to write, or which of two is meant. */
import { isPropertyKey, property, type PropertyKey } from '../../core/measure/properties.ts'
import { tradeWord } from '../../core/measure/trade-words.ts'

/**
 * How to write what the trade calls by this name, as the fix of a diagnostic; empty where the list of names has it not, or the
 * place takes no such key.
 * @param allowed keys that the place takes
 */
export function tradeMend(name: string, allowed: readonly string[]): string {
  const word = tradeWord(name)
  if (word === undefined || !allowed.some(isPropertyKey)) return ''
  if ('sure' in word)
    return allowed.includes(word.sure)
      ? `write ${word.sure}`
      : isComputed(word.sure)
        ? leftOut(word.sure)
        : ''
  const known = word.either.filter((key) => allowed.includes(key))
  const computed = word.either.filter((key) => !allowed.includes(key) && isComputed(key))
  if (known.length === 0) return ''
  return [`${word.why}: write ${known.map(titled).join(' or ')}`, ...computed.map(leftOut)].join('; ')
}

function isComputed(key: PropertyKey): boolean {
  return property(key).nature === 'derived'
}

/** A key with its title, where that says more. */
function titled(key: PropertyKey): string {
  const { title } = property(key)
  return title.toLowerCase() === key.replaceAll('-', ' ') ? key : `${key} (${title})`
}

function leftOut(key: PropertyKey): string {
  return `leave out ${titled(key)}, which is computed from the other results`
}
