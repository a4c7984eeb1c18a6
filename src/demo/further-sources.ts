/**
 * The sources that came later to the scenario: slag, silica fume, an ash from a works that writes US units
 * throughout, one known from finished figures, three that share a laboratory's control cement, and one whose lots
 * resemble each other. Each draws from a chance of its own, so that what one of them is given moves no reading of
 * another.
 */
import { momentOfDay, yearOf } from '../core/measure/moment.ts'
import { dayOf, nextWednesday } from './calendar.ts'
import { type Chance, chanceOf } from './chance.ts'
import type { FurtherSource } from './further-source.ts'
import { LOWMARK } from './lowmark-ash.ts'
import { HOLLENBY, ORRINMOSS, TANSGARTH } from './millrace-sources.ts'
import type { DemoIssue } from './scenario-files.ts'
import { PELLMOOR } from './pellmoor-ash.ts'
import { FERROWICK } from './silica-fume.ts'
import type { DemoFile } from './site-records.ts'
import { IRONHOLM } from './slag.ts'
import { VEXHOLM } from './vexholm-ash.ts'

export const FURTHER: readonly FurtherSource[] = [
  IRONHOLM,
  FERROWICK,
  LOWMARK,
  PELLMOOR,
  ORRINMOSS,
  TANSGARTH,
  HOLLENBY,
  VEXHOLM,
]

/** All records of the further sources, one file at a time. */
export function* furtherFiles(
  seed: number,
  lastDay: number,
  onIssue: (issue: DemoIssue) => void,
): Generator<DemoFile> {
  for (const [index, source] of FURTHER.entries()) {
    yield* [source.producer, ...(source.laboratory === undefined ? [] : [source.laboratory]), source.source]
    const { earlier } = source
    if (earlier !== undefined)
      yield* lotsOf({ ...source, ...earlier }, chanceOf(seed - 1 - index), lastDay, onIssue)
    yield* lotsOf(source, chanceOf(seed + 1 + index), lastDay, onIssue)
  }
}

function* lotsOf(
  source: FurtherSource,
  chance: Chance,
  lastDay: number,
  onIssue: (issue: DemoIssue) => void,
): Generator<DemoFile> {
  const next = source.series(chance)
  const numberOf = numbers(source.prefix, source.notUsed)
  let bill = source.bills
  const billNumber = () => {
    bill += 1
    return `BL-${bill}`
  }
  for (let place = 0; place < source.lots; place += 1) {
    const day = dayOf(source.from) + place * source.every
    const castDay = nextWednesday(day + 2)
    const id = numberOf(day)
    const { text, controls } = next({ place, day, castDay, lastDay, billNumber })
    for (const control of controls) yield { path: `controls/${control.id}.yaml`, text: control.text }
    yield { path: `lots/${source.id}/${id}.yaml`, text }
    for (const [days, reason] of source.issues)
      if (castDay + days <= lastDay) onIssue(issueOf(source, id, castDay + days, reason))
  }
}

/** "IS-2025-001": running from 1 in each year. */
function numbers(prefix: string, notUsed: readonly string[] = []): (day: number) => string {
  const running = new Map<string, number>()
  return (day) => {
    const year = yearOf(momentOfDay(day))
    const numberOf = (place: number) => `${prefix}-${year}-${String(place).padStart(3, '0')}`
    let place = (running.get(year) ?? 0) + 1
    while (notUsed.includes(numberOf(place))) place += 1
    running.set(year, place)
    return numberOf(place)
  }
}

function issueOf({ id, issuer }: FurtherSource, lot: string, day: number, reason: string): DemoIssue {
  return {
    lot: `${id}/${lot}`,
    date: momentOfDay(day),
    by: issuer.name,
    function: issuer.function,
    reason,
    withdrawn: false,
  }
}
