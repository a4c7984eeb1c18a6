/**
 * A generated source in writing: lots with analyses, mortars, retests, exclusions, withdrawals and late reports,
 * and the same cut at a day: without anything that was not yet known then.
 */
import * as fc from 'fast-check'

/** Days after 1 January 2026. */
export type Day = number

export interface Reading {
  readonly age: 7 | 28
  /** Days after the age is reached: 0, but for a retest. */
  readonly tested: Day
  readonly reported: Day | null
  readonly loads: readonly [number, number, number]
  readonly excluded: { readonly on: Day | null } | null
  readonly retestOf: Day | null
}
export interface GeneratedLot {
  readonly sampled: Day
  readonly analyses: readonly {
    readonly tested: Day
    readonly reported: Day | null
    readonly loss: number
    readonly density: number
    readonly excluded: { readonly on: Day | null } | null
  }[]
  readonly cast: Day
  readonly test: readonly Reading[]
  readonly control: readonly Reading[]
  readonly withdrawn: Day | null
}

/** The last day that is asked about. */
export const LAST: Day = 140

const later = fc.option(fc.integer({ min: 1, max: 25 }), { freq: 2 })
const exclusion = (tested: Day) =>
  fc.option(fc.record({ on: fc.option(fc.integer({ min: tested, max: tested + 90 }), { freq: 1 }) }), {
    freq: 2,
  })
const load = (mean: number) => fc.integer({ min: mean - 40, max: mean + 40 }).map((tenths) => tenths / 10)

function reading(age: 7 | 28, tested: Day, mean: number, retestOf: Day | null): fc.Arbitrary<Reading> {
  return fc.record({
    age: fc.constant(age),
    tested: fc.constant(tested),
    reported: later.map((days) => (days === null ? null : tested + days)),
    loads: fc.tuple(load(mean), load(mean), load(mean)),
    excluded: exclusion(tested),
    retestOf: fc.constant(retestOf),
  })
}

/** Both ages, and perhaps a retest of one; a control may be read late, a test mortar within its tolerance. */
function readings(cast: Day, mean: number, late: boolean): fc.Arbitrary<readonly Reading[]> {
  const at = (age: 7 | 28) =>
    (late ? fc.constantFrom(0, 0, 0, 2) : fc.constant(0)).map((days) => cast + age + days)
  return fc
    .tuple(
      at(7),
      at(28),
      fc.option(
        fc.record({ of: fc.constantFrom(7 as const, 28 as const), after: fc.integer({ min: 1, max: 90 }) }),
        { freq: 2 },
      ),
    )
    .chain(([seven, full, retest]) =>
      fc.tuple(
        // Who retests knows what the first test gave.
        reading(7, seven, mean, null).map((own) => (retest?.of === 7 ? { ...own, reported: null } : own)),
        reading(28, full, mean + 200, null).map((own) =>
          retest?.of === 28 ? { ...own, reported: null } : own,
        ),
        ...(retest === null
          ? []
          : [
              reading(
                retest.of,
                (retest.of === 7 ? seven : full) + retest.after,
                mean + 30,
                retest.of === 7 ? seven : full,
              ),
            ]),
      ),
    )
}

function lot(place: number): fc.Arbitrary<GeneratedLot> {
  const sampled = 3 + 12 * place
  const cast = sampled + 2
  return fc.record({
    sampled: fc.constant(sampled),
    analyses: fc.array(
      fc.integer({ min: sampled + 1, max: sampled + 20 }).chain((tested) =>
        fc.record({
          tested: fc.constant(tested),
          reported: later.map((days) => (days === null ? null : tested + days)),
          loss: fc.integer({ min: 1, max: 90 }).map((tenths) => tenths / 10),
          density: fc.integer({ min: 220, max: 260 }).map((hundredths) => hundredths / 100),
          excluded: exclusion(tested),
        }),
      ),
      { minLength: 1, maxLength: 2 },
    ),
    cast: fc.constant(cast),
    test: readings(cast, 780, false),
    control: readings(cast, 1180, true),
    withdrawn: fc.option(fc.integer({ min: sampled + 30, max: LAST }), { freq: 4 }),
  })
}

export const generatedLots = fc.tuple(lot(0), lot(1), lot(2), lot(3), lot(4))

export function dateText(day: Day): string {
  return new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10)
}

const knownOf = ({ tested, reported }: { readonly tested: Day; readonly reported: Day | null }) =>
  Math.max(tested, reported ?? tested)

function excludedText(excluded: { readonly on: Day | null } | null, cut: Day): string {
  if (excluded === null || (excluded.on !== null && cut < excluded.on)) return ''
  return `, excluded: lost${excluded.on === null ? '' : `, excluded-on: ${dateText(excluded.on)}`}`
}

function readingText(own: Reading, cut: Day, hour: string): string | null {
  const { age, tested, reported, loads, excluded, retestOf } = own
  if (cut < knownOf(own)) return retestOf === null ? `{ age: ${age} d }` : null
  const [a, b, c] = loads
  return [
    `{ age: ${age} d, tested: ${dateText(tested)}T${hour}`,
    ...(reported === null ? [] : [`reported: ${dateText(reported)}`]),
    ...(retestOf === null ? [] : [`retest-of: ${dateText(retestOf)}T${hour}`]),
    `specimens: { a: ${a} kN, b: ${b} kN, c: { load: ${c} kN${excludedText(excluded, cut)} } } }`,
  ].join(', ')
}

function readingLines(readings: readonly Reading[], cut: Day, hour: string, shuffled: boolean): string {
  // A retest stands behind what it replaces; between the ages any order will do.
  const ordered = shuffled ? readings.toSorted((a, b) => b.age - a.age || a.tested - b.tested) : readings
  return ordered
    .flatMap((own) => readingText(own, cut, hour) ?? [])
    .map((text) => `      - ${text}\n`)
    .join('')
}

/** @returns texts of files by path, as known on a day */
export function filesOf(lots: readonly GeneratedLot[], cut: Day, shuffled = false): Map<string, string> {
  const files = new Map<string, string>()
  lots.forEach((own, place) => {
    if (cut < own.sampled) return
    if (own.cast <= cut) files.set(`controls/K${place}.yaml`, controlText(own, cut, shuffled))
    files.set(`lots/tuff/T-${place}.yaml`, lotText(own, place, cut, shuffled))
  })
  return files
}

function controlText({ cast, control }: GeneratedLot, cut: Day, shuffled: boolean): string {
  return `condition: warm
laboratory: quay
cement: { lot: PC-1 }
cast: ${dateText(cast)}T09:00
strength:
${readingLines(control, cut, '09:10', shuffled)}`
}

function lotText(own: GeneratedLot, place: number, cut: Day, shuffled: boolean): string {
  const analyses = own.analyses
    .filter((analysis) => knownOf(analysis) <= cut)
    .map(({ tested, reported, loss, density, excluded }) => {
      const said = reported === null ? '' : `, reported: ${dateText(reported)}`
      return `  - { laboratory: quay, sample: C, tested: ${dateText(tested)}${said}, results: { density: ${density} g/cm3, loss-on-ignition: { value: ${loss} %${excludedText(excluded, cut)} } } }\n`
    })
  const listed = shuffled ? analyses.toReversed() : analyses
  const digest = `sha256-${'0'.repeat(64)}`
  const line = (number: number, day: Day, more: string) =>
    `  - { number: ${number}, date: ${dateText(day)}, by: A, function: m, reason: r${more}, digest: ${digest} }\n`
  return [
    `produced: { from: ${dateText(own.sampled - 2)}, to: ${dateText(own.sampled)} }\nquantity: ${1000 + 100 * place} t\n`,
    `samples:\n  - { id: C, kind: composite, on: ${dateText(own.sampled)} }\n`,
    listed.length === 0 ? '' : `analyses:\n${listed.join('')}`,
    own.cast <= cut
      ? `tests:\n  - sample: C\n    condition: warm\n    control: K${place}\n    laboratory: quay\n    cast: ${dateText(own.cast)}T09:05\n    strength:\n${readingLines(own.test, cut, '09:15', shuffled)}`
      : '',
    own.withdrawn !== null && own.withdrawn <= cut
      ? `revisions:\n${line(0, own.withdrawn - 1, '')}${line(1, own.withdrawn, ', withdrawn: yes')}`
      : '',
  ].join('')
}
