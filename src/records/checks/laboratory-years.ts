/** What a laboratory states of its years: devices, closed days, proficiency, and bridges between control cements. */
import { compareMoments } from '../../core/measure/moment.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { isFault, KINDS, type QuantityKind, readQuantity } from '../../core/measure/units.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Laboratory } from '../schema/loaded-records.ts'
import { checkDate, checkOrder, checkPeriod } from './dates.ts'
import type { Happening } from './happenings.ts'
import { type AllRecords, checkReference } from './references.ts'

/** @param id of the laboratory */
export function checkLaboratoryYears(
  id: string,
  laboratory: Laboratory,
  all: AllRecords,
  report: FileReport,
): void {
  checkEquipment(laboratory.equipment ?? [], all, report)
  for (const [index, period] of (laboratory['closed-days'] ?? []).entries())
    checkPeriod(period, `/closed-days/${index}`, report)
  for (const [index, bridge] of (laboratory['cement-bridges'] ?? []).entries())
    checkBridge(bridge, `/cement-bridges/${index}`, { id, all, report })
}

/** Verifications, scores and their closing; closed days may be planned. */
export function* laboratoryHappenings(laboratory: Laboratory): Generator<Happening> {
  for (const [index, { date, closed }] of (laboratory.proficiency ?? []).entries()) {
    yield [date, `/proficiency/${index}/date`]
    yield [closed, `/proficiency/${index}/closed`]
  }
  for (const [index, { verified }] of (laboratory.equipment ?? []).entries())
    for (const [place, day] of verified.entries()) yield [day, `/equipment/${index}/verified/${place}`]
}

type Device = NonNullable<Laboratory['equipment']>[number]

function checkEquipment(devices: readonly Device[], all: AllRecords, report: FileReport): void {
  const marks = new Map<string, number>()
  for (const [index, device] of devices.entries()) {
    const { mark, resolution, verified, due, used = {}, conditions = [] } = device
    const at = `/equipment/${index}`
    const first = marks.get(mark)
    if (first === undefined) marks.set(mark, index)
    else
      report.at(
        `${at}/mark`,
        'duplicate-id',
        `two devices have the mark ${mark}`,
        'give each device its own mark',
        [report.place(`/equipment/${first}/mark`, 'the first device of this mark')],
      )
    if (resolution !== undefined) checkResolution(resolution, device.properties, `${at}/resolution`, report)
    checkVerified(verified, `${at}/verified`, report)
    checkPeriod(used, `${at}/used`, report)
    for (const [place, id] of conditions.entries())
      checkReference('condition', id, `${at}/conditions/${place}`, all, report)
    const sentence = 'the verification no longer holds on its own day'
    if (checkDate(due, `${at}/due`, report))
      checkOrder({ earlier: verified.at(-1), later: due, pointer: `${at}/due`, sentence }, report)
  }
}

/** Readings that serve one property and its index alone; a mass, a length or a temperature may serve any. */
const OWN_READINGS: readonly (readonly [measured: PropertyKey, kinds: readonly QuantityKind[]])[] = [
  ['compressive-strength', ['force', 'stress', 'pressure']],
  ['bulk-resistivity', ['resistance', 'resistivity']],
]

/** Which unit a device shows depends on the device: one in which something that it measures is read, above zero. */
function checkResolution(
  text: string,
  measured: Device['properties'],
  pointer: string,
  report: FileReport,
): void {
  const read = (Object.keys(KINDS) as QuantityKind[]).flatMap((kind) => {
    const reading = readQuantity(text, kind)
    return isFault(reading) ? [] : [reading]
  })
  if (read.some(({ value, censored }) => 0 < value && censored === undefined)) {
    const own = OWN_READINGS.find(([, kinds]) => read.every(({ kind }) => kinds.includes(kind)))
    if (own !== undefined && !measured.some((key) => (RATIO_OF[key] ?? key) === own[0]))
      report.at(
        pointer,
        'quantity-unit',
        `${text} is a step of ${KINDS[own[1][0] ?? 'force'].title}, and the device measures ${measured.join(', ')}`,
        `write the step in the unit that the device shows, or add ${own[0]} to properties`,
      )
    return
  }
  const isNumber = 0 < read.length
  report.at(
    pointer,
    isNumber ? 'quantity-range' : 'quantity',
    isNumber
      ? `${text} is not the step of a device`
      : `found the text "${text}"; a number with its unit was expected`,
    'write the smallest step that the device shows, such as 0.1 kN',
  )
}

/** Days in order, so that the last is the latest. */
function checkVerified(verified: Device['verified'], at: string, report: FileReport): void {
  for (const [index, day] of verified.entries()) {
    const pointer = `${at}/${index}`
    const earlier = verified[index - 1]
    if (!checkDate(day, pointer, report) || earlier === undefined) continue
    if (compareMoments(earlier, day) === 0)
      report.at(pointer, 'duplicate-id', `${day} is listed twice`, 'list each verification once')
    const sentence = 'the verifications are not in order'
    checkOrder({ earlier, later: day, pointer, sentence, earlierAt: `${at}/${index - 1}` }, report)
  }
}

type Bridge = NonNullable<Laboratory['cement-bridges']>[number]

interface Against {
  /** Of the laboratory. */
  readonly id: string
  readonly all: AllRecords
  readonly report: FileReport
}

/** A bridge joins batches of one laboratory and condition, each made with the cement that it says. */
function checkBridge({ from, to, pairs }: Bridge, at: string, against: Against): void {
  const { all, report } = against
  if (from === to)
    report.at(
      `${at}/to`,
      'reference-mismatch',
      `both control cements are ${to}`,
      'name the cement before the change and the one after it',
    )
  for (const [index, { earlier, later }] of pairs.entries()) {
    const here = `${at}/pairs/${index}`
    checkBatch(earlier, from, `${here}/earlier`, against)
    checkBatch(later, to, `${here}/later`, against)
    const [one, other] = [all.controls.get(earlier), all.controls.get(later)]
    if (one !== undefined && other !== undefined && one.condition !== other.condition)
      report.at(
        `${here}/later`,
        'reference-mismatch',
        `${later} was made at the condition ${other.condition}, ${earlier} at ${one.condition}`,
        'pair batches of one condition',
        [
          all.place('control', later, '/condition', 'the condition of the later batch'),
          all.place('control', earlier, '/condition', 'that of the earlier one'),
        ],
      )
  }
}

function checkBatch(batch: string, cement: string, pointer: string, { id, all, report }: Against): void {
  checkReference('control', batch, pointer, all, report)
  const control = all.controls.get(batch)
  if (control === undefined) return
  const mend = 'name a batch of this laboratory with that cement, or correct the cement'
  if (control.laboratory !== id)
    report.at(pointer, 'reference-mismatch', `${batch} was made by ${control.laboratory}`, mend, [
      all.place('control', batch, '/laboratory', 'the laboratory of the batch'),
    ])
  if (control.cement?.lot !== cement)
    report.at(
      pointer,
      'reference-mismatch',
      control.cement?.lot === undefined
        ? `the cement of ${batch} is not on record`
        : `${batch} was made with cement ${control.cement.lot}, not with ${cement}`,
      mend,
      [all.place('control', batch, '/cement/lot', 'the cement of the batch')],
    )
}
