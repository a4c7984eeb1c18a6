/** Reference tests without a thermogram, as the core takes them. */
import type { Entry, PlacedReadings, TestPlace } from './placed-readings.ts'
import { HEAT_ROWS, ownRows, type ReadRows, readRows } from './reading-rows.ts'

/** Units in which readings belong to one gram already. */
const PER_GRAM = ['specific-power', 'heat']
const POWERS = ['power', 'specific-power']

/** @returns null where something is missing or at fault, which is told */
export function heatOf(entry: Entry<'heat'>, at: TestPlace): PlacedReadings | null {
  const { sample, share, start, age } = entry
  const { pointer, report } = at
  const rows = at.tables.rowsOf(entry, HEAT_ROWS, at)
  if (rows === null) return null
  const perGram = PER_GRAM.includes(rows.kind)
  if (!perGram && sample === undefined) {
    report.atKey(
      pointer,
      'key-missing',
      `the readings are of the whole sample, in ${rows.kind === 'power' ? 'mW' : 'J'}, and its mass is not stated`,
      'add sample, the mass of paste in the calorimeter',
    )
    return null
  }
  const baseline = baselineOf(entry, rows, at)
  if (baseline === null) return null
  return {
    rows,
    of: {
      test: 'heat',
      readings: {
        readings: rows.points,
        of: POWERS.includes(rows.kind) ? 'power' : 'heat',
        sampleG: perGram ? 1 : (sample?.value ?? 1),
        share: share.value / 100,
        baseline,
        startHours: start.value,
        atHours: age.hours,
      },
    },
  }
}

function baselineOf(
  { baseline }: Entry<'heat'>,
  { kind }: ReadRows,
  { pointer, report }: TestPlace,
): ReadRows['points'] | null {
  const isPower = POWERS.includes(kind)
  if (isPower && baseline === undefined)
    report.atKey(
      pointer,
      'key-missing',
      'the test has no baseline, and a power without one sums to any heat',
      'add baseline, a blank reading or two: ["0 h, 0.10 mW"]; 0 mW where it was taken off already',
    )
  if (!isPower && baseline !== undefined)
    report.atKey(
      `${pointer}/baseline`,
      'key-unknown',
      'a baseline belongs to readings of power, and these are of heat',
      'take it out, or give the power',
    )
  if (!isPower) return baseline === undefined ? [] : null
  if (baseline === undefined) return null
  if (2 < baseline.length) {
    report.atKey(
      `${pointer}/baseline`,
      'schema',
      `the baseline has ${baseline.length} readings; one, or two with a drift between them, were expected`,
      'keep the one before and the one after',
    )
    return null
  }
  const own = ownRows(baseline, `${pointer}/baseline`, report)
  const read = own === null ? null : readRows(own, { ...HEAT_ROWS, y: [kind] })
  return read?.points ?? null
}

export function waterOf({ crucibles }: Entry<'bound-water'>): PlacedReadings {
  return {
    rows: null,
    of: {
      test: 'bound-water',
      readings: crucibles.map(({ crucible, dried, ignited }) => ({
        crucibleG: crucible.value,
        driedG: dried.value,
        ignitedG: ignited.value,
      })),
    },
  }
}

export function fixationOf(entry: Entry<'calcium-hydroxide-fixed'>): PlacedReadings {
  return {
    rows: null,
    of: {
      test: 'calcium-hydroxide-fixed',
      readings: {
        materialG: entry.material.value,
        limeG: entry.lime.value,
        blankLimeG: (entry['blank-lime'] ?? entry.lime).value,
        acidMmolPerL: entry.acid.value,
        sampleMl: entry['sample-volume'].value,
        blankMl: entry['blank-volume'].value,
        aliquotMl: entry.aliquot.value,
        totalMl: entry.total.value,
      },
    },
  }
}

export function pozzolanicityOf(entry: Entry<'pozzolanicity'>): PlacedReadings {
  const { aliquot, acid, complex } = entry
  return {
    rows: null,
    of: {
      test: 'pozzolanicity',
      readings: {
        aliquotMl: aliquot.value,
        acidMmolPerL: acid.concentration.value,
        acidMl: acid.volume.value,
        complexMmolPerL: complex.concentration.value,
        complexMl: complex.volume.value,
        errorMl: entry['volume-error'].value,
      },
    },
  }
}

export function limeStrengthOf(
  { cube, area, loads }: Entry<'lime-strength'>,
  { pointer, report }: TestPlace,
): PlacedReadings | null {
  const areaMm2 = area?.value ?? (cube === undefined ? undefined : cube.value * cube.value)
  if (areaMm2 === undefined || (area !== undefined && cube !== undefined)) {
    report.atKey(
      pointer,
      areaMm2 === undefined ? 'key-missing' : 'reading-twice',
      areaMm2 === undefined
        ? 'the loads have no area to be divided by'
        : 'the test states the side of a cube and an area',
      'write one of the two: cube, or area',
    )
    return null
  }
  return {
    rows: null,
    of: { test: 'lime-strength', readings: { loadsKN: loads.map(({ value }) => value), areaMm2 } },
  }
}
