/**
 * What makes a resistance reading unfit for judgement: its temperature, its conditioning, its contacts and
 * meter.
 */
import { isQuantity, type MortarCondition, type ResistivityReading } from '../mortar/mortar.ts'
import { resistancesOf } from './bulk-resistivity.ts'
import type { ResultReason, ResultReasonParams } from '../result/reason.ts'
import type { Quantity } from '../measure/units.ts'

/** Binary dust of a difference or a share must not break a limit that is met exactly. */
const DUST = 1e-9

type Asked = NonNullable<MortarCondition['resistivity']>

/** Empty for a reading taken as its condition asks. */
export function readingFaults(
  reading: ResistivityReading,
  { resistivity: asked }: Pick<MortarCondition, 'resistivity'>,
): ResultReason[] {
  if (asked === undefined) return [{ code: 'reading-not-described', params: {} }]
  return [
    ...conditioningFaults(reading, asked),
    ...temperatureFaults(reading, asked),
    ...coreFaults(reading, asked),
    ...outOfLiquidFaults(reading, asked.handling?.['out-of-liquid-at-most']),
    ...contactFaults(reading, asked.reading['end-contact-at-most']),
    ...meterFaults(reading, asked.reading['verification-within']),
  ]
}

/**
 * Conduction moves by about 2 % a degree, so test and control must be read at nearly one temperature.
 * @param readWithinCelsius largest difference where the condition sets none
 * Notes: 1. a temperature that is not on record is a fault of its own reading; 2. where both cores are on record they are
 * compared, for conduction goes through the whole specimen.
 */
export function temperaturesApart(
  { test, control }: { readonly test: ResistivityReading; readonly control: ResistivityReading },
  { resistivity: asked }: Pick<MortarCondition, 'resistivity'>,
  readWithinCelsius: number,
): ResultReason[] {
  const of = test.core === undefined || control.core === undefined ? 'temperature' : 'core'
  const [testCelsius, controlCelsius] = [test[of]?.value, control[of]?.value]
  if (testCelsius === undefined || controlCelsius === undefined) return []
  const withinCelsius = asked?.reading['control-and-test-within']?.value ?? readWithinCelsius
  return Math.abs(testCelsius - controlCelsius) <= withinCelsius + DUST
    ? []
    : [{ code: 'temperatures-apart', params: { testCelsius, controlCelsius, withinCelsius } }]
}

/** What the reading says of its conditioning goes before what the condition says of all of them. */
function conditioningFaults(reading: ResistivityReading, asked: Asked): ResultReason[] {
  const read = reading.conditioning ?? asked.conditioning
  if (read === undefined) return [{ code: 'conditioning-not-on-record', params: {} }]
  return asked.conditioning === undefined || read === asked.conditioning
    ? []
    : [{ code: 'conditioning-differs', params: { read, asked: asked.conditioning } }]
}

function temperatureFaults({ temperature }: ResistivityReading, { reading: asked }: Asked): ResultReason[] {
  if (temperature === undefined) return [{ code: 'temperature-not-on-record', params: {} }]
  const params = {
    readCelsius: temperature.value,
    askedCelsius: asked.temperature.value,
    withinCelsius: asked.within.value,
  }
  return isWithin(params) ? [] : [{ code: 'temperature-outside', params }]
}

function isWithin({
  readCelsius,
  askedCelsius,
  withinCelsius,
}: ResultReasonParams['temperature-outside']): boolean {
  return Math.abs(readCelsius - askedCelsius) <= withinCelsius + DUST
}

/** A core that is warmer than the surface conducts better: the same band holds for it. */
function coreFaults({ core }: ResistivityReading, { reading: asked }: Asked): ResultReason[] {
  if (core === undefined) return []
  const params = {
    readCelsius: core.value,
    askedCelsius: asked.temperature.value,
    withinCelsius: asked.within.value,
  }
  return isWithin(params) ? [] : [{ code: 'core-temperature-outside', params }]
}

/**
 * As with a temperature outside its band: a surface that dries raises the reading by an amount that nobody can take off
 * again.
 */
function outOfLiquidFaults(
  { 'out-of-liquid': out }: ResistivityReading,
  most: Quantity | undefined,
): ResultReason[] {
  return out === undefined || most === undefined || out.value <= most.value + DUST
    ? []
    : [
        {
          code: 'out-of-liquid-too-long',
          params: { written: out.written, writtenLimit: most.written },
        },
      ]
}

/**
 * End contacts as a share of each reading that counts; resistivities as reported hold no reading to compare
 * with.
 */
function contactFaults(reading: ResistivityReading, allowed: Quantity | undefined): ResultReason[] {
  const contact = reading['end-contact']?.value
  if (allowed === undefined || contact === undefined) return []
  const shares = countedResistancesOhm(reading).map((resistance) => (100 * contact) / resistance)
  const percent = Math.max(0, ...shares)
  return percent <= allowed.value + DUST
    ? []
    : [{ code: 'end-contacts-beyond', params: { percent, writtenLimit: allowed.written } }]
}

function countedResistancesOhm({ specimens }: ResistivityReading): number[] {
  return Object.values(specimens ?? {})
    .flatMap((specimen) => {
      return isQuantity(specimen) || specimen.excluded === undefined ? resistancesOf(specimen) : []
    })
    .map(({ value }) => value)
}

function meterFaults({ verification }: ResistivityReading, allowed: Quantity | undefined): ResultReason[] {
  if (allowed === undefined) return []
  if (verification === undefined) return [{ code: 'meter-not-verified', params: {} }]
  const { known, read } = verification
  const percentOff = (100 * Math.abs(read.value - known.value)) / known.value
  return percentOff <= allowed.value + DUST
    ? []
    : [
        {
          code: 'meter-off',
          params: { writtenRead: read.written, writtenKnown: known.written, writtenLimit: allowed.written },
        },
      ]
}
