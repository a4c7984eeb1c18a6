/**
 * Generated content folders for questions about the past: several sources that share a laboratory and its control
 * batches, with retests, exclusions with and without a date, late reports, withdrawals, restarts and offsets; and the
 * same content as it was on an earlier day.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { type Moment, momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { type LoadedContent, loadRecords } from '../../../src/records/load.ts'

export interface Content {
  readonly offset?: string
  readonly events: readonly GeneratedEvent[]
  readonly controls: Readonly<Record<string, GeneratedMortar>>
  /** By id, SOURCE/LOT. */
  readonly lots: Readonly<Record<string, GeneratedLot>>
}

interface GeneratedEvent {
  readonly date: string
  readonly kind: 'fuel-change'
  readonly title: string
  readonly 'restarts-series': 'yes' | 'no'
}

interface Excludable {
  readonly excluded?: string
  readonly 'excluded-on'?: string
}
interface Value extends Excludable {
  readonly value: string
}
interface Specimen extends Excludable {
  readonly load: string
}
interface Tested {
  readonly tested?: string
  readonly reported?: string
}
interface Reading extends Tested {
  readonly age: string
  readonly specimens?: Readonly<Record<string, Specimen>>
  readonly 'retest-of'?: string
}
interface Analysis extends Tested {
  readonly laboratory: string
  readonly sample: string
  readonly tested: string
  readonly results: Readonly<Record<string, Value>>
}
interface GeneratedMortar {
  readonly cast: string
  readonly water: string
  readonly flow: string
  readonly strength: readonly Reading[]
}
interface TestMortar extends GeneratedMortar {
  readonly sample: string
  readonly control: string
}
interface Revision {
  readonly number: number
  readonly date: string
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly withdrawn?: 'yes'
  readonly digest: string
}
interface Shipment {
  readonly bill: string
  readonly date: string
  readonly mass: string
}
export interface GeneratedLot {
  readonly produced: { readonly from: string; readonly to: string }
  readonly quantity: string
  readonly samples: readonly (
    | {
        readonly id: string
        readonly kind: string
        readonly taken: { from: string; to: string }
        readonly retained?: { place: string; until: string }
      }
    | { readonly id: string; readonly kind: string; readonly duty?: string; readonly on: string }
  )[]
  readonly analyses: readonly Analysis[]
  readonly tests: readonly TestMortar[]
  readonly verification: readonly (Analysis & { readonly kind: 'split' })[]
  readonly shipments?: readonly Shipment[]
  readonly revisions: readonly Revision[]
}

/** The first day that anything is sampled on, and the as-of date by which all of it is known. */
const FIRST_DAY = readMoment('2026-01-10').day
export const AS_OF = momentOfDay(FIRST_DAY + 90)

const AGES = [2, 7]
/** Of one cement, so that the laboratory's scatter follows from them. */
const CONTROLS = ['K0', 'K1', 'K2', 'K3', 'K4']
const CLOCKS = ['', 'T09:20', 'T06:00+02:00', 'T23:30-05:00', 'T00:30+09:00']

const day = (number: number) => momentOfDay(FIRST_DAY + number).text
const small = (max: number) => fc.nat({ max })
const clock = fc.constantFrom(...CLOCKS)

/** Nothing more often than not, so that the ordinary stands beside the odd. */
const seldom = <T>(odd: fc.Arbitrary<T>) => fc.option(odd, { nil: undefined, freq: 2 })

/** @param from day of the test: an exclusion is no earlier */
const excluded = (from: number): fc.Arbitrary<Excludable> =>
  seldom(
    fc.oneof(
      fc.constant<Excludable>({ excluded: 'corner lost' }),
      small(20).map((later): Excludable => ({ excluded: 'found wet', 'excluded-on': day(from + later) })),
    ),
  ).map((why) => why ?? {})

/** @param tested day of the test */
const reported = (tested: number) =>
  seldom(small(25)).map((later) => (later === undefined ? {} : { reported: day(tested + later) }))

const specimens = (tested: number) =>
  fc
    .array(fc.tuple(fc.integer({ min: 60, max: 120 }), excluded(tested)), { minLength: 2, maxLength: 3 })
    .map((list) =>
      Object.fromEntries(
        list.map(([load, more], place) => ['abc'[place] as string, { load: `${load} kN`, ...more }]),
      ),
    )

const reading = (age: number, tested: number) =>
  fc.record({ clock, late: reported(tested), specimens: specimens(tested) }).map(
    (made): Reading => ({
      age: `${age} d`,
      tested: day(tested) + made.clock,
      ...made.late,
      specimens: made.specimens,
    }),
  )

/** The tests at one age: planned, made, or made and made again; a retest is known no earlier than what it replaces. */
const readingsAt = (cast: number, age: number): fc.Arbitrary<Reading[]> => {
  const tested = cast + age
  const planned = fc.constant<Reading[]>([{ age: `${age} d` }])
  const made = reading(age, tested).map((one) => [one])
  const again = fc
    .tuple(reading(age, tested), fc.integer({ min: 1, max: 12 }), small(10), specimens(tested + 12))
    .map(([first, later, after, others]) => {
      // Now and then on one day, without a clock to tell them apart.
      const retested = later < 4 ? tested : tested + later
      const known = Math.max(retested + after, dayOf(first.reported ?? first.tested))
      const retest: Reading = {
        age: `${age} d`,
        tested: day(retested),
        reported: day(known),
        specimens: others,
        'retest-of': first.tested as string,
      }
      return [first, retest]
    })
  return fc.oneof(
    { weight: 1, arbitrary: planned },
    { weight: 4, arbitrary: made },
    { weight: 3, arbitrary: again },
  )
}

const mortar = (cast: number) =>
  fc
    .record({
      ages: fc.tuple(...AGES.map((age) => readingsAt(cast, age))),
      water: small(40),
      flow: small(12),
    })
    .map(
      ({ ages, water, flow }): GeneratedMortar => ({
        cast: `${day(cast)}T09:00`,
        water: `${470 + water} g`,
        flow: `${104 + flow} %`,
        strength: ages.flat(),
      }),
    )

const value = (low: number, high: number, tested: number) =>
  fc
    .tuple(fc.integer({ min: 10 * low, max: 10 * high }), excluded(tested))
    .map(([tenths, more]): Value => ({ value: `${(tenths / 10).toFixed(1)} %`, ...more }))

const analysis = (sampled: number) =>
  small(8).chain((wait) => {
    const tested = sampled + 2 + wait
    return fc
      .record({
        clock,
        late: reported(tested),
        sample: fc.constantFrom('C', 'G', 'H'),
        SO3: value(1, 5, tested),
        SiO2: value(40, 60, tested),
        Al2O3: value(15, 20, tested),
        Fe2O3: value(4, 9, tested),
        finished: seldom(value(60, 110, tested)),
      })
      .map(
        ({ clock: at, late, sample, finished, ...results }): Analysis => ({
          laboratory: 'quay',
          sample,
          tested: day(tested) + at,
          ...late,
          results: finished === undefined ? results : { ...results, ...ofMortar(finished) },
        }),
      )
  })

/** An index that the laboratory reports finished, beside readings of the same mortar or without them. */
const ofMortar = (finished: Value) => ({
  'strength-activity-index': { ...finished, condition: 'warm', age: '7 d' },
})

const revisions = (sampled: number) =>
  fc.array(fc.tuple(fc.integer({ min: 1, max: 15 }), fc.boolean()), { maxLength: 3 }).map((list) => {
    let date = sampled
    let gone = false
    return list.map(([later, withdrawn], number): Revision => {
      date += later
      // A withdrawn lot stays withdrawn; a later line only corrects the withdrawal.
      gone ||= withdrawn && 0 < number
      return {
        number,
        date: day(date),
        by: 'M. Okafor',
        function: 'quality manager',
        reason: 'released',
        ...(gone ? { withdrawn: 'yes' as const } : {}),
        digest: `sha256-${'0'.repeat(64)}`,
      }
    })
  })

const shipments = (sampled: number) =>
  fc
    .array(small(40), { maxLength: 2 })
    .map((list) =>
      list.map((later, place): Shipment => ({ bill: `B${place}`, date: day(sampled + later), mass: '25 t' })),
    )

const lot = (sampled: number): fc.Arbitrary<GeneratedLot> =>
  fc
    .record({
      clock,
      tonnes: fc.integer({ min: 100, max: 900 }),
      analyses: fc.array(analysis(sampled), { maxLength: 3 }),
      tests: fc.array(
        fc
          .integer({ min: 1, max: 3 })
          .chain((after) =>
            fc.tuple(mortar(sampled + after), fc.constantFrom(...CONTROLS), fc.constantFrom('C', 'G')),
          )
          .map(([made, control, sample]): TestMortar => ({ ...made, control, sample })),
        { maxLength: 3 },
      ),
      verification: fc.array(
        analysis(sampled).map((one) => ({ ...one, kind: 'split' as const })),
        { maxLength: 1 },
      ),
      shipments: shipments(sampled),
      revisions: revisions(sampled),
    })
    .map(({ clock: at, tonnes, ...rest }) => ({
      produced: { from: day(sampled - 3), to: day(sampled) },
      quantity: `${tonnes} t`,
      samples: [
        {
          id: 'C',
          kind: 'composite',
          taken: { from: day(sampled - 3), to: day(sampled) + at },
          retained: { place: 'store', until: day(sampled + 20 + (tonnes % 60)) },
        },
        { id: 'G', kind: 'grab', on: day(sampled) },
        { id: 'H', kind: 'grab', duty: 'regular', on: `${day(sampled - 1)}T07:00` },
      ],
      ...rest,
    }))

/** Lots a few days apart, several of a source on one day now and then. */
const lotsOf = (source: string, count: number) =>
  fc
    .tuple(...Array.from({ length: count }, (_, place) => small(4).chain((later) => lot(3 * place + later))))
    .map((lots) => lots.map((one, place) => [`${source}/L${place}`, one] as const))

export const content: fc.Arbitrary<Content> = fc
  .record({
    offset: fc.constantFrom(undefined, 'Z', '+02:00', '-05:00'),
    events: fc.array(
      fc.record({ date: small(30).map(day), restarts: fc.boolean() }).map(
        ({ date, restarts }): GeneratedEvent => ({
          date,
          kind: 'fuel-change',
          title: 'another pit',
          'restarts-series': restarts ? 'yes' : 'no',
        }),
      ),
      { maxLength: 2 },
    ),
    controls: fc.tuple(...CONTROLS.map((_, place) => small(6).chain((later) => mortar(3 * place + later)))),
    tuff: lotsOf('tuff', 5),
    ash: lotsOf('ash', 3),
  })
  .map(({ offset, events, controls, tuff, ash }) => ({
    ...(offset === undefined ? {} : { offset }),
    events,
    controls: Object.fromEntries(CONTROLS.map((id, place) => [id, controls[place] as GeneratedMortar])),
    lots: Object.fromEntries([...tuff, ...ash]),
  }))

/** A day on which something may have been known and something else not yet. */
export const questionDay: fc.Arbitrary<Moment> = fc
  .integer({ min: 0, max: 60 })
  .map((number) => momentOfDay(FIRST_DAY + number))

/** Days since the first one. */
function dayOf(text: string | undefined): number {
  return readMoment(text ?? '').day - FIRST_DAY
}

/** The content as it was on a day: nothing in it was known later. */
export function cutAt(whole: Content, date: Moment): Content {
  const by = (text: string) => readMoment(text).day <= date.day
  const known = ({ tested, reported: late = tested }: Tested) =>
    tested !== undefined && by(tested) && (late === undefined || by(late))
  const counted = <T extends Excludable>(members: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(
      Object.entries(members).map(([name, member]) => {
        const { excluded: _, 'excluded-on': on, ...rest } = member
        return [name, on === undefined || by(on) ? member : (rest as T)]
      }),
    )
  const readings = (list: readonly Reading[]) =>
    list.flatMap((one): Reading[] => {
      if (known(one)) return [{ ...one, specimens: counted(one.specimens ?? {}) }]
      return one['retest-of'] === undefined ? [{ age: one.age }] : []
    })
  const analyses = <T extends Analysis>(list: readonly T[]) =>
    list.filter(known).map((one) => ({ ...one, results: counted(one.results) }))
  const lots = Object.entries(whole.lots)
    .filter(([, { samples }]) => samples.some((one) => 'taken' in one && by(one.taken.to)))
    .map(([id, one]) => [
      id,
      {
        ...one,
        analyses: analyses(one.analyses),
        tests: one.tests
          .filter(({ cast }) => by(cast))
          .map((test) => ({ ...test, strength: readings(test.strength) })),
        verification: analyses(one.verification),
        shipments: one.shipments?.filter((shipment) => by(shipment.date)),
        revisions: one.revisions.filter((revision) => by(revision.date)),
      },
    ])
  return {
    ...whole,
    events: whole.events.filter((event) => by(event.date)),
    controls: Object.fromEntries(
      Object.entries(whole.controls).map(([id, one]) => [id, { ...one, strength: readings(one.strength) }]),
    ),
    lots: Object.fromEntries(lots),
  }
}

/** The same content with the entries of every list in another order; revisions are numbered and stay. */
export function shuffled(whole: Content, seed: number): Content {
  let state = seed
  const shuffle = <T>(list: readonly T[]): T[] => {
    const rest = [...list]
    return list.map(() => {
      state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0
      return rest.splice(state % rest.length, 1)[0] as T
    })
  }
  const strength = <T extends GeneratedMortar>(one: T): T => ({ ...one, strength: shuffle(one.strength) })
  return {
    ...whole,
    events: shuffle(whole.events),
    controls: Object.fromEntries(Object.entries(whole.controls).map(([id, one]) => [id, strength(one)])),
    lots: Object.fromEntries(
      shuffle(Object.entries(whole.lots)).map(([id, one]) => [
        id,
        {
          ...one,
          samples: shuffle(one.samples),
          analyses: shuffle(one.analyses),
          tests: shuffle(one.tests).map(strength),
        },
      ]),
    ),
  }
}

/** Writes the content as a folder and loads it. @param asOf of its site */
export function load(whole: Content, asOf: Moment): LoadedContent {
  const folder = written(whole, asOf)
  const loaded = loadRecords(folder)
  rmSync(folder, { recursive: true })
  return loaded
}

/** Writes the content as a folder. @param asOf of its site */
export function written(whole: Content, asOf: Moment): string {
  const folder = mkdtempSync(join(tmpdir(), 'known-when-'))
  for (const [path, record] of files(whole, asOf)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    // JSON is YAML.
    writeFileSync(join(folder, path), JSON.stringify(record))
  }
  return folder
}

export function files({ offset, events, controls, lots }: Content, asOf: Moment): [string, object][] {
  const site = { title: 'Trial', units: 'SI', 'as-of': asOf.text, criteria: ['trial'], grace: '3 d' }
  const source = (name: string) => ({
    name,
    producer: 'hill',
    kind: 'raw-natural-pozzolan',
    class: 'N',
    ...(events.length === 0 ? {} : { events }),
  })
  return [
    ['site.yaml', offset === undefined ? site : { ...site, offset }],
    ['producers/hill.yaml', { name: 'Hill', address: ['1 Mill Lane'] }],
    ['laboratories/quay.yaml', { name: 'Quay', address: ['2 Quay'], standing: 'in-house' }],
    ['conditions/warm.yaml', WARM],
    ['criteria/trial.yaml', TRIAL],
    ['sources/tuff.yaml', source('Tuff')],
    ['sources/ash.yaml', source('Ash')],
    ...Object.entries(controls).map(([id, one]): [string, object] => [
      `controls/${id}.yaml`,
      { condition: 'warm', laboratory: 'quay', cement: { lot: 'PC-1' }, ...one },
    ]),
    ...Object.entries(lots).map(([id, { tests, ...one }]): [string, object] => [
      `lots/${id}.yaml`,
      withoutEmptyLists({
        ...one,
        tests: tests.map((test) => ({ condition: 'warm', laboratory: 'quay', ...test })),
      }),
    ]),
  ]
}

/** As a record is written: nobody enters a list before there is something in it. */
function withoutEmptyLists(record: object): object {
  return Object.fromEntries(
    Object.entries(record).filter(([, member]) => !Array.isArray(member) || member.length > 0),
  )
}

const WARM = {
  title: 'warm',
  standing: 'modified',
  replacement: { amount: '20 %', by: 'mass' },
  water: { 'flow-within': '5 percentage points' },
  curing: { medium: 'saturated-lime-water', temperature: '50 degC' },
  // So wide that a retest some days later is of the age.
  ages: AGES.map((age) => ({ age: `${age} d`, within: '300 h' })),
  control: { strength: { age: '7 d', 'at-least': '34 MPa' }, broken: 'not-valid' },
  strength: { specimen: { shape: 'cube', side: '50 mm' }, 'batch-range': [{ of: 3, 'at-most': '40 %' }] },
}

const INDEX = { property: 'strength-activity-index', condition: 'warm', age: '7 d' }
const GUARDED = { guarded: 1, 'agreed-in': 'contract 7' }
const TRIAL = {
  title: 'Trial',
  edition: '1',
  kinds: ['raw-natural-pozzolan'],
  clauses: [
    { clause: 'worst', property: 'SO3', 'at-most': '4.0 %' },
    { clause: 'latest', property: 'SO3', 'at-most': '3.0 %', several: 'latest' },
    { clause: 'mean', property: 'SO3', 'at-most': '3.0 %', several: 'mean' },
    { clause: 'oxides', property: 'oxide-sum', 'at-least': '70.0 %' },
    {
      clause: 'uniform',
      property: 'SO3',
      'deviation-from': { preceding: 10 },
      'magnitude-at-most': '1.0 percentage points',
    },
    { clause: 'variability', property: 'SO3', statistic: { variability: { results: 10 } }, report: 'yes' },
    { clause: 'rolling', property: 'SO3', statistic: { 'rolling-mean': 3 }, 'at-most': '3.0 %' },
    { clause: 'index', ...INDEX, 'at-least': '75 %', 'decision-rule': GUARDED },
    { clause: 'early', ...INDEX, age: '2 d', 'at-least': '75 %', 'decision-rule': GUARDED },
    {
      clause: 'index-uniform',
      ...INDEX,
      'deviation-from': { preceding: 10 },
      'magnitude-at-most': '5 percentage points',
    },
    {
      clause: 'uniform-regular',
      property: 'SO3',
      duty: 'regular',
      'deviation-from': { preceding: 3 },
      'magnitude-at-most': '1.0 percentage points',
    },
    {
      clause: 'sampled-regular',
      sampling: { properties: ['SO3'], every: '400 t', duty: 'regular' },
    },
    { clause: 'read', ...INDEX, 'at-least': '75 %', from: 'readings' },
    { clause: 'water', property: 'water-requirement', 'at-most': '105 %' },
    {
      clause: 'sampled',
      sampling: { properties: ['SO3', 'oxide-sum', INDEX.property], every: '800 t', 'or-every': '10 d' },
    },
  ],
}
