/** The laboratories whose results a source's lots rest on: period, accreditation, proficiency, equipment. */
import { momentOfDay } from '../../core/measure/moment.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { date, period, shortDate } from '../../words/dates.ts'
import { plainNumber, plural } from '../../words/numbers.ts'
import type { Edition } from '../shape/edition.ts'
import type { SourceLot } from './source-lots.ts'

export interface LaboratoryLine {
  readonly id: string
  readonly name: string
  readonly standing: string
  readonly used: string
  readonly accreditation: readonly string[]
  readonly proficiency: readonly string[]
  readonly equipment: readonly string[]
}

/** Rounds and devices that a line has room for; the laboratory's page has all. */
const NEWEST = 4

export function sourceLaboratories(
  { laboratories }: Pick<Edition, 'laboratories'>,
  lots: readonly SourceLot[],
): LaboratoryLine[] {
  const days = new Map<string, { from: number; to: number; lots: number }>()
  for (const { row, origins } of lots)
    for (const id of new Set([...origins.values()].map(({ laboratory }) => laboratory))) {
      const day = row.sampled.day
      const own = days.get(id) ?? { from: day, to: day, lots: 0 }
      days.set(id, { from: Math.min(own.from, day), to: Math.max(own.to, day), lots: own.lots + 1 })
    }
  return [...days].map(([id, used]) => laboratoryLine(laboratories, id, used))
}

function laboratoryLine(
  laboratories: Edition['laboratories'],
  id: string,
  used: { readonly from: number; readonly to: number; readonly lots: number },
): LaboratoryLine {
  const record = laboratories.get(id)
  return {
    id,
    name: record?.name ?? id,
    standing: record?.standing ?? 'not on record',
    used: `${period(momentOfDay(used.from), momentOfDay(used.to))}: ${plural(used.lots, 'lot', 'lots')}`,
    accreditation: (record?.accreditation ?? []).map(
      ({ number, body, from, to, scope }) =>
        `${number}, ${body}, from ${date(from)}${to === undefined ? '' : ` to ${date(to)}`}: ${names(scope)}`,
    ),
    proficiency: (record?.proficiency ?? []).slice(-NEWEST).map(roundWords),
    equipment: (record?.equipment ?? [])
      .slice(0, NEWEST)
      .map(
        ({ mark, kind, verified }) =>
          `${mark}, ${kind}: verified ${verified.length === 0 ? 'never on record' : shortDate(verified.at(-1) ?? verified[0] ?? '')}`,
      ),
  }
}

type Round = NonNullable<NonNullable<ReturnType<Edition['laboratories']['get']>>['proficiency']>[number]

function roundWords({ round, date: on, property: key, z, closed, cause }: Round): string {
  const end = [cause, closed && `closed ${shortDate(closed)}`].filter((part) => part !== undefined)
  return `${round}, ${shortDate(on)}, ${property(key).title}: z ${plainNumber(z, 1)}${end.length === 0 ? '' : ` (${end.join('; ')})`}`
}

function names(scope: readonly PropertyKey[]): string {
  return scope.map((key) => property(key).title).join(', ')
}
