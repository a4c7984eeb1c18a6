/** The laboratories whose results a source's lots rest on: period, accreditation, proficiency, equipment. */
import { type Moment, momentOfDay } from '../../core/measure/moment.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'
import { date, period } from '../../words/dates.ts'
import {
  bridgeWords,
  closedWords,
  deviceWords,
  roundWords,
  scopeOfAccreditation,
} from '../../words/laboratory-records.ts'
import { plural } from '../../words/numbers.ts'
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
  readonly closed: readonly string[]
  readonly bridges: readonly string[]
}

/** Rounds and devices that a line has room for; the laboratory's page has all. */
const NEWEST = 4

export function sourceLaboratories(
  { laboratories, asOf }: Pick<Edition, 'laboratories' | 'asOf'>,
  lots: readonly SourceLot[],
): LaboratoryLine[] {
  const days = new Map<string, { from: number; to: number; lots: number }>()
  for (const { row, origins } of lots)
    for (const id of new Set([...origins.values()].map(({ laboratory }) => laboratory))) {
      const day = row.sampled.day
      const own = days.get(id) ?? { from: day, to: day, lots: 0 }
      days.set(id, { from: Math.min(own.from, day), to: Math.max(own.to, day), lots: own.lots + 1 })
    }
  return [...days].map(([id, used]) => laboratoryLine({ laboratories, asOf }, id, used))
}

function laboratoryLine(
  { laboratories, asOf }: Pick<Edition, 'laboratories' | 'asOf'>,
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
      ({ number, body, from, to, ...entry }) =>
        `${number}, ${body}, from ${date(from)}${to === undefined ? '' : ` to ${date(to)}`}: ${scopeOfAccreditation(entry)}`,
    ),
    ...laboratoryRecords(record, asOf, NEWEST),
  }
}

/** @param most of rounds, devices and closed days that there is room for: the newest rounds and closed days */
export function laboratoryRecords(
  record: Laboratory | undefined,
  asOf: Moment,
  most: number,
): Pick<LaboratoryLine, 'proficiency' | 'equipment' | 'closed' | 'bridges'> {
  return {
    proficiency: (record?.proficiency ?? []).slice(-most).map(roundWords),
    equipment: (record?.equipment ?? []).slice(0, most).map((device) => deviceWords(device, asOf)),
    closed: (record?.['closed-days'] ?? []).slice(-most).map(closedWords),
    bridges: (record?.['cement-bridges'] ?? []).map(bridgeWords),
  }
}
