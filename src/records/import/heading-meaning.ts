/** What a heading means, and how sure that is; what may mean two things is left to a person, with both named. */
import { isPropertyKey } from '../../core/measure/properties.ts'
import { isMortarResult } from '../../core/measure/ratio-indices.ts'
import { tradeWord } from '../../core/measure/trade-words.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import { FIELD_NAMED } from '../schema/field-names.ts'
import { fieldNames, TABLE_KINDS } from './fields.ts'
import { UNDECIDED } from './import-map.ts'
import { JOINT } from './sheet-view.ts'
import { withoutMethod } from './unit-in-heading.ts'

/** How a column was placed: for sure, by a guess that a person looks at, or not at all. */
export type Certainty = 'sure' | 'guessed' | 'open'

export interface Meaning {
  readonly to: string
  readonly certainty: Certainty
  readonly why: string | null
}

/**
 * What a heading means, whatever table it heads. Of a heading under another the lower one says it, unless it says nothing
 * by itself: "28 d" under "Strength activity index".
 */
export function meaningOf(heading: string): Meaning {
  const parts = heading.split(JOINT)
  if (parts.length === 1) return meaningOfPart(heading)
  const whole = meaningOfPart(heading)
  // "Retained" over "45 µm" says what neither does alone.
  const own = [...parts.toReversed(), parts.filter(saysMore).join(' ')]
    .filter(saysMore)
    .map((part) => meaningOfPart(part))
  const [first, other] = own.filter(({ certainty }) => certainty === 'sure')
  if (first === undefined) return own.find(({ why }) => why !== null) ?? whole
  // "Control" under "Water requirement" may be a control batch or its water.
  return other !== undefined && other.to !== first.to && isPropertyKey(other.to) && !isDay(first.to)
    ? { to: other.to, certainty: 'guessed', why: 'by the heading above' }
    : first
}

/** Whether a part of a heading says more than an age and a unit. */
function saysMore(part: string): boolean {
  return bareName(part) !== '' || /^[+%-]/.test(part.trim())
}

function isDay(field: string): boolean {
  return ['date', 'tested', 'cast', 'reported', 'sampled'].includes(field)
}

function meaningOfPart(heading: string): Meaning {
  const bare = bareName(heading)
  const field = FIELD_NAMED.get(bare)
  // One numbered reading of several: "Cube 1", "Load 3".
  const [, numbered = ''] = /^(.*?)[#\d]+[a-c]?$/.exec(bare) ?? []
  const reading = FIELD_NAMED.get(numbered)
  const word = tradeWord(withoutMethod(heading))
  const ofSeveral = averaged(heading)
  if (ofSeveral !== undefined) return { to: UNDECIDED, certainty: 'open', why: ofSeveral }
  if (word !== undefined && 'sure' in word) return { to: word.sure, certainty: 'sure', why: null }
  if (word !== undefined)
    return { to: UNDECIDED, certainty: 'open', why: `${word.why}: ${word.either.join(' or ')}` }
  if (field !== undefined) return { to: field, certainty: 'sure', why: null }
  const own = heading
    .replace(/\s*\([^)]*\)\s*$/, '')
    .toLowerCase()
    .replaceAll(' ', '-')
  if (TABLE_KINDS.some((kind) => fieldNames(kind).includes(own)))
    return { to: own, certainty: 'sure', why: null }
  if (reading !== undefined && ['load', 'specimen', 'resistance'].includes(reading))
    return {
      to: reading === 'resistance' ? 'resistance' : 'load',
      certainty: 'guessed',
      why: 'one reading of several',
    }
  const near = nearNames(bare, FIELD_NAMED.keys())
  const [, nearest] = /^did you mean (\w+)/.exec(near) ?? []
  const guess = nearest === undefined || bare.length < 4 ? undefined : FIELD_NAMED.get(nearest)
  return guess === undefined
    ? { to: UNDECIDED, certainty: 'open', why: null }
    : { to: guess, certainty: 'guessed', why: 'by a name that is near' }
}

const AVERAGE = /\b(?:mean|average|avg|min(?:imum)?|max(?:imum)?|range)\b\.?(?:\s+(?:of\s+)?)?/i

/** Why a column of averages or extremes of a measured property is not taken for a result; undefined for any other. */
function averaged(heading: string): string | undefined {
  const of = tradeWord(heading.replace(AVERAGE, '').trim())
  return AVERAGE.test(heading) && of !== undefined && 'sure' in of && !isMortarResult(of.sure)
    ? `computed from the regular samples themselves where a table gives those: then ignore; else ${of.sure}`
    : undefined
}

function bareName(heading: string): string {
  return heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[([][^)\]]*[)\]]/g, ' ')
    .replace(/\b\d{1,3}\s*-?\s*d(?:ays?)?\b/g, ' ')
    .replace(/_(?:kn|n|lbf|d|h|mpa|ohm|t)$/, '')
    .replace(/,\s*(?:kn|n|lbf|mpa|psi|ohm|t|%)\s*(?=$|\/)/g, ' ')
    .replace(/[^a-z0-9#]/g, '')
}
