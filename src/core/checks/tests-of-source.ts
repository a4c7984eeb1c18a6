/** Audit checks: tests against the days and the scope of their laboratory, one finding for a source and laboratory. */
import { compareMoments, dateOf, inForce, type Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Quantity } from '../measure/units.ts'
import type { Result } from '../result/result.ts'
import type { AuditedLot, Period } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, findingOn, found } from './finding.ts'
import { judgedKeys } from './shipping-days.ts'
import type { LotOnDay } from './testing-findings.ts'

/** What a laboratory's record says of its days and devices. */
export interface AuditedLaboratory {
  readonly hasAccreditation: boolean
  /** Whether the work lies in the scope of an accreditation in force on the day of the test. */
  readonly covers: (work: Pick<Result, 'property' | 'condition' | 'method' | 'tested'>) => boolean
  readonly closed: readonly Period[]
  readonly equipment: readonly {
    readonly mark: string
    readonly kind: string
    readonly properties: readonly PropertyKey[]
    /** That it serves; all without it. */
    readonly conditions?: readonly string[]
    /** Days on which it was in use; always without it. */
    readonly used?: Partial<Period>
    /** In hours. */
    readonly every?: Quantity
    readonly verified: readonly Moment[]
    /** Last day of the latest verification, where one is stated; it goes before the interval. */
    readonly due?: Moment
  }[]
}
type AuditedDevice = AuditedLaboratory['equipment'][number]

export interface TestedSource {
  readonly source: string
  /** In order of sampling. */
  readonly lots: readonly AuditedLot[]
  readonly laboratory: (id: string) => AuditedLaboratory | undefined
}

/** A producer's result with its lot. */
interface Test {
  readonly lot: string
  readonly result: Result
}

/** Lots named: own choice. */
const SHOWN = 5

/** All checks of a source's tests against what their laboratories state. */
export function testsOfSource(of: TestedSource): Checked[] {
  const tests = of.lots.flatMap(({ id, results }) =>
    results.filter(({ role }) => role === 'producer').map((result): Test => ({ lot: id, result })),
  )
  const byLaboratory = [...Map.groupBy(tests, ({ result }) => result.laboratory)]
  const each = (check: (id: string, own: readonly Test[], laboratory: AuditedLaboratory) => Checked) =>
    byLaboratory.flatMap(([id, own]) => {
      const laboratory = of.laboratory(id)
      return laboratory === undefined ? [] : [check(id, own, laboratory)]
    })
  const judged = new Set(
    of.lots.flatMap(({ id, verdicts: [governing] }) =>
      governing === undefined ? [] : [...judgedKeys(governing.clauses)].map((key) => `${id}|${key}`),
    ),
  )
  return [
    ...each((id, own, laboratory) => {
      const counted = own.filter(({ lot, result }) => judged.has(`${lot}|${result.key}`))
      return outsideAccreditation(of.source, id, counted, laboratory)
    }),
    ...each((id, own, laboratory) => onClosedDays(of.source, id, own, laboratory)),
    ...each((id, own, laboratory) => unverified(of.source, id, own, laboratory)),
  ]
}

function outsideAccreditation(
  source: string,
  laboratory: string,
  tests: readonly Test[],
  { hasAccreditation: recorded, covers }: AuditedLaboratory,
): Checked {
  const outside = tests.filter(({ result }) => !covers(result))
  const findings: Finding[] = []
  if (0 < outside.length) {
    const properties = [...new Set(outside.map(({ result }) => result.property))].sort()
    const lots = new Set(outside.map(({ lot }) => lot)).size
    const ends = endsOf(outside)
    const params = { source, laboratory, recorded, results: outside.length, lots, properties, ...ends }
    const reason = { code: 'tested-outside-accreditation', params } as const
    findings.push(findingOn(recorded ? 'warning' : 'information', source, reason, laboratory))
  }
  return { check: 'tested-outside-accreditation', looked: tests.length, findings }
}

function onClosedDays(
  source: string,
  laboratory: string,
  tests: readonly Test[],
  { closed }: AuditedLaboratory,
): Checked {
  const on = tests.filter(({ result }) => closed.some((period) => inForce(period, result.tested)))
  const listed = daysOf(on)
  const params = { source, laboratory, tests: on.length, listed: listed.slice(0, SHOWN) }
  const findings =
    on.length === 0 ? [] : [found(source, { code: 'tested-on-closed-day', params }, laboratory)]
  return { check: 'tested-on-closed-day', looked: closed.length === 0 ? 0 : tests.length, findings }
}

function unverified(
  source: string,
  laboratory: string,
  tests: readonly Test[],
  { equipment }: AuditedLaboratory,
): Checked {
  const findings: Finding[] = []
  let looked = 0
  for (const device of equipment) {
    const { mark, kind, every, due } = device
    if (every === undefined && due === undefined) continue
    const own = tests.filter(({ result }) => restsOn(result, device))
    looked += own.length
    for (const [verified, late] of lateTests(device, own)) {
      const last = verified === '' ? null : verified
      const isLatest = last === device.verified.toSorted(compareMoments).at(-1)?.text
      const head = {
        ...{ source, laboratory, mark, kind, verified: last },
        writtenEvery: every?.written ?? null,
        due: isLatest ? (due?.text ?? null) : null,
      }
      const params = { ...head, tests: late.length, ...endsOf(late) }
      findings.push(
        found(source, { code: 'equipment-unverified', params }, laboratory, mark, last ?? 'never'),
      )
    }
  }
  return { check: 'equipment-unverified', looked, findings }
}

function restsOn(
  { property, condition, tested }: Result,
  { properties, conditions, used = {} }: AuditedDevice,
): boolean {
  const isServed = condition === undefined || conditions === undefined || conditions.includes(condition)
  return properties.includes(property) && isServed && inForce(used, tested)
}

/** Tests made later than the verification before them holds, by its text, empty where none was. */
function lateTests({ verified, every, due }: AuditedDevice, tests: readonly Test[]): Map<string, Test[]> {
  const inOrder = verified.toSorted(compareMoments)
  const lastBefore = ({ result }: Test) => inOrder.findLast(({ day }) => day <= result.tested.day)
  const late = tests.filter((test) => {
    const last = lastBefore(test)
    if (last === undefined) return true
    const { day } = test.result.tested
    if (due !== undefined && last.day === inOrder.at(-1)?.day) return due.day < day
    return every !== undefined && every.value < 24 * (day - last.day)
  })
  return Map.groupBy(late, (test) => lastBefore(test)?.text ?? '')
}

/** The first and the last by the day of the test. */
function endsOf(tests: readonly Test[]): { first: LotOnDay | null; last: LotOnDay | null } {
  const days = daysOf(tests)
  return { first: days[0] ?? null, last: days.at(-1) ?? null }
}

/** In order of the day, a lot named once for a day. */
function daysOf(tests: readonly Test[]): LotOnDay[] {
  const days = new Map(
    tests
      .toSorted((a, b) => compareMoments(a.result.tested, b.result.tested))
      .map(({ lot, result }) => [`${lot}|${result.tested.day}`, { lot, day: dateOf(result.tested).text }]),
  )
  return [...days.values()]
}
