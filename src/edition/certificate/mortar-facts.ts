/** What a certificate states of its mortars: castings, controls, readings as written, departures. */
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { defined } from '../../core/measure/defined.ts'
import { type Excludable, exclusionOn, knownFrom } from '../../core/mortar/known-when.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { Records } from '../../records/load.ts'
import type { Control, ResistivityTest, StrengthTest } from '../../records/schema/loaded-records.ts'
import { printedUnits, written } from '../../words/as-written.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import type { CertificateMortar, CertificateReading } from '../shape/certificate-facts.ts'

/** Each mortar cast by the day with its control, and the readings on record by it. */
export function mortarFacts({ record, asOf }: JudgedLot, records: Records): CertificateMortar[] {
  return (record.tests ?? [])
    .filter((test) => isBy(test.cast, asOf))
    .flatMap((test) => {
      const control = test.control === undefined ? undefined : records.controls.get(test.control)
      if (control === undefined && test.control !== undefined) return []
      return [
        {
          condition: test.condition,
          laboratory: test.laboratory,
          sample: test.sample,
          cast: test.cast.text,
          ...optional('flow', test.flow && written(test.flow)),
          ...optional('water', test.water && written(test.water)),
          ...optional('deviations', test.deviations),
          ...optional('control', control && controlFacts(test.control ?? '', control)),
          readings: [
            ...readings('test', asOf, readingsBy(asOf, test)),
            ...(control === undefined
              ? []
              : readings('control', asOf, atAgesOf(test, readingsBy(asOf, control)))),
          ],
        },
      ]
    })
}

function controlFacts(
  id: string,
  { cast, flow, water, cement }: Control,
): NonNullable<CertificateMortar['control']> {
  return {
    id,
    cast: cast.text,
    ...optional('flow', flow && written(flow)),
    ...optional('water', water && written(water)),
    ...optional('cementLot', cement?.lot),
    ...optional('cementType', cement?.type),
    ...optional('cementAlkalis', cement?.['Na2O-equivalent'] && written(cement['Na2O-equivalent'])),
  }
}

interface Readings {
  readonly strength: readonly Tested<StrengthTest>[]
  readonly resistivity: readonly Tested<ResistivityTest>[]
}
type Tested<Reading> = Reading & { readonly tested: Moment }

function readingsBy(asOf: Moment, mortar: Pick<Control, 'strength' | 'resistivity'>): Readings {
  const known = <Reading extends { tested?: Moment }>(list: readonly Reading[] = []) =>
    list.filter(
      (reading): reading is Tested<Reading> =>
        reading.tested !== undefined && isBy(knownFrom({ ...reading, tested: reading.tested }), asOf),
    )
  return { strength: known(mortar.strength), resistivity: known(mortar.resistivity) }
}

/** Of a control's readings those at an age at which the test mortar is tested. */
function atAgesOf(
  test: Pick<Control, 'strength' | 'resistivity'>,
  { strength, resistivity }: Readings,
): Readings {
  const hours = new Set([...(test.strength ?? []), ...(test.resistivity ?? [])].map(({ age }) => age.hours))
  return {
    strength: strength.filter(({ age }) => hours.has(age.hours)),
    resistivity: resistivity.filter(({ age }) => hours.has(age.hours)),
  }
}

function readings(
  of: 'test' | 'control',
  asOf: Moment,
  { strength, resistivity }: Readings,
): CertificateReading[] {
  return [
    ...strength.map((reading) => strengthReading(of, asOf, reading)),
    ...resistivity.map((reading) => resistivityReading(of, asOf, reading)),
  ]
}

function strengthReading(
  of: 'test' | 'control',
  asOf: Moment,
  reading: Tested<StrengthTest>,
): CertificateReading {
  return {
    of,
    what: 'strength',
    age: reading.age.text,
    tested: reading.tested.text,
    ...optional('deviations', reading.deviations),
    specimens: specimens(asOf, reading, (specimen) => specimen.load ?? specimen.strength),
  }
}

function resistivityReading(
  of: 'test' | 'control',
  asOf: Moment,
  reading: Tested<ResistivityTest>,
): CertificateReading {
  return {
    of,
    what: 'resistivity',
    age: reading.age.text,
    tested: reading.tested.text,
    ...optional('deviations', reading.deviations),
    ...optional('temperature', reading.temperature && written(reading.temperature)),
    ...optional('endContact', reading['end-contact'] && written(reading['end-contact'])),
    ...optional('frequency', reading.frequency && written(reading.frequency)),
    ...optional('conditioning', reading.conditioning),
    ...optional('saturation', reading.saturation),
    ...optional(
      'verification',
      reading.verification &&
        `${written(reading.verification.read)} on a known ${written(reading.verification.known)}`,
    ),
    specimens: specimens(asOf, reading, (specimen) => specimen.resistance ?? specimen.resistivity),
  }
}

/** Readings of single specimens as written, or the mean where only that is on record. */
function specimens<Detailed extends Excludable>(
  asOf: Moment,
  reading: { mean?: Quantity; of?: number; specimens?: { [mark: string]: Quantity | Detailed } },
  readingOf: (specimen: Detailed) => Quantity | undefined,
): CertificateReading['specimens'] {
  if (reading.mean !== undefined)
    return [{ mark: `mean of ${reading.of ?? '?'}`, reading: written(reading.mean) }]
  return Object.entries(reading.specimens ?? {}).map(([mark, specimen]) =>
    'written' in specimen
      ? { mark, reading: written(specimen) }
      : {
          mark,
          reading: printedUnits(readingOf(specimen)?.written ?? 'no reading'),
          ...optional('size', sizeInWords(specimen)),
          ...optional('excluded', exclusionOn(specimen, asOf)),
        },
  )
}

function sizeInWords(specimen: object): string | undefined {
  const sizes = Object.entries(specimen)
    .filter(([key]) => ['side', 'other-side', 'length', 'diameter', 'area'].includes(key))
    .map(([key, size]) => `${key.replace('-', ' ')} ${printedUnits((size as { written: string }).written)}`)
  return sizes.length === 0 ? undefined : sizes.join(', ')
}

/** Departures from the methods, of analyses, mortars and readings on record by the day. */
export function deviationFacts({ record, asOf }: JudgedLot): string[] {
  const analyses = (record.analyses ?? [])
    .filter((analysis) => isBy(knownFrom(analysis), asOf))
    .map((analysis) => analysis.deviations)
  const tests = (record.tests ?? []).filter((test) => isBy(test.cast, asOf))
  const readings = tests
    .flatMap((test) => [...(test.strength ?? []), ...(test.resistivity ?? [])])
    .filter(
      ({ tested, reported }) => tested !== undefined && isBy(knownFrom(defined({ tested, reported })), asOf),
    )
  return [
    ...analyses,
    ...tests.map((test) => test.deviations),
    ...readings.map((reading) => reading.deviations),
  ].filter((text): text is string => text !== undefined)
}

function optional<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V })
}
