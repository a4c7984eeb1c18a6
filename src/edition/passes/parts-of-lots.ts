/** What single lots give, kept from build to build: of a source with one more lot, all others are as they were. */
import type { Moment } from '../../core/measure/moment.ts'
import { type IfPlain, plainText, plainValue } from '../shape/plain-text.ts'
import type { KeptParts } from './parts-of-sources.ts'
import type { LotDigest } from './rests-on.ts'

/** The lots of a source that something is made of. */
export interface LotsToAsk {
  readonly source: string
  /** Of what is made, one for each way of making it. */
  readonly name: string
  readonly asOf: Moment
  /** Of each lot its id and all that it rests on, the day left out; in order of sampling. */
  readonly restOn: () => readonly LotDigest[]
}

export interface PartsOfLots {
  /**
   * @param place of the lot in order of sampling
   * @param make gives a plain value of this lot
   * @param isSettled whether no later day alone makes another value of it
   */
  readonly of: <Part>(
    place: number,
    make: () => Part & IfPlain<Part>,
    isSettled: (made: Part) => boolean,
  ) => Part
  /** Keeps what there is of the lots, once all were asked. */
  readonly end: () => void
}

/** Where nothing is kept. */
export const MADE_ANEW: PartsOfLots = { of: (_place, make) => make(), end: () => undefined }

/** A value as it is kept, with the day that it is of; ANY_DAY where it holds on every day. */
interface KeptLine {
  readonly digest: string
  readonly day: string
  readonly text: string
}

const ANY_DAY = '-'

/** Each line says itself what it rests on. */
const RESTS_ON = 'lot by lot'

/**
 * @param kept everything is made anew without it
 * Note: with it, what was just made is read from its text as well, so that nobody can tell one from the other.
 */
export function partsOfLots(
  kept: KeptParts | undefined,
  { source, name, asOf, restOn }: LotsToAsk,
): PartsOfLots {
  if (kept === undefined) return MADE_ANEW
  const part = { source, name, restsOn: RESTS_ON }
  const before = kept.get(part) ?? ''
  const lines = linesIn(before)
  const lots = restOn()
  const lineAt = (place: number): KeptLine | undefined => {
    const [id = '', digest] = lots[place] ?? []
    const line = lines.get(id)
    const isOfDay = line?.day === ANY_DAY || line?.day === asOf.text
    return isOfDay && line?.digest === digest ? line : undefined
  }
  return {
    of: (place, make, isSettled) => {
      const [id = '', digest = ''] = lots[place] ?? []
      const line = lineAt(place) ?? { digest, ...textOf(make(), isSettled, asOf) }
      lines.set(id, line)
      // Only `make` for this lot and name gave the text.
      return plainValue(line.text) as ReturnType<typeof make>
    },
    end: () => {
      const now = lots.map(([id], place) => textOfLine(id, lineAt(place))).join('')
      if (now !== before) kept.put(part, now)
    },
  }
}

function textOf<Part>(
  made: Part,
  isSettled: (made: Part) => boolean,
  asOf: Moment,
): Pick<KeptLine, 'day' | 'text'> {
  return { day: isSettled(made) ? ANY_DAY : asOf.text, text: plainText(made) }
}

function textOfLine(id: string, line: KeptLine | undefined): string {
  return line === undefined ? '' : `${id} ${line.digest} ${line.day} ${line.text}\n`
}

function linesIn(text: string): Map<string, KeptLine> {
  return new Map(
    text.split('\n').flatMap((line): [string, KeptLine][] => {
      const [, id, digest, day, value] = /^(\S+) (\S+) (\S+) (.+)$/.exec(line) ?? []
      if (id === undefined || digest === undefined || day === undefined || value === undefined) return []
      return [[id, { digest, day, text: value }]]
    }),
  )
}
