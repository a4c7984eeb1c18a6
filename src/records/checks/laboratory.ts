/** A laboratory: its periods, the conditions it names, and the unit of each stated standard deviation. */
import { deviationKinds } from '../../core/doubt/stated-repeatability.ts'
import { isFault, readQuantity } from '../../core/measure/units.ts'
import { checkDate, checkOrder, checkPeriod } from './dates.ts'
import { checkLaboratoryYears } from './laboratory-years.ts'
import { checkReference, type AllRecords } from './references.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { checkScatterBound } from './scatter-bound.ts'
import { reportQuantity } from '../schema/quantity-faults.ts'
import type { Laboratory } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'

/** @param id of the laboratory */
export function checkLaboratory(
  id: string,
  laboratory: Laboratory,
  all: AllRecords,
  report: FileReport,
): void {
  laboratory.accreditation?.forEach((entry, index) => {
    checkPeriod(entry, `/accreditation/${index}`, report)
    entry.conditions?.forEach((id, which) => {
      checkReference('condition', id, `/accreditation/${index}/conditions/${which}`, all, report)
    })
  })
  for (const [key, methods] of Object.entries(laboratory.methods ?? {})) {
    methods?.forEach((method, index) => {
      checkPeriod(method, below(below('/methods', key), index), report)
    })
  }
  laboratory.moulds?.forEach((entry, index) => {
    checkPeriod(entry, `/moulds/${index}`, report)
  })
  laboratory.repeatability?.forEach((entry, index) => {
    checkPeriod(entry, `/repeatability/${index}`, report)
    checkReference('condition', entry.condition, `/repeatability/${index}/condition`, all, report)
    checkDeviation(entry, `/repeatability/${index}/standard-deviation`, report)
  })
  laboratory.proficiency?.forEach((round, index) => {
    const at = `/proficiency/${index}`
    if (checkDate(round.date, `${at}/date`, report) && checkDate(round.closed, `${at}/closed`, report))
      checkOrder(
        {
          earlier: round.date,
          later: round.closed,
          pointer: `${at}/closed`,
          earlierAt: `${at}/date`,
          sentence: 'closed before the score was reported',
        },
        report,
      )
  })
  checkLaboratoryYears(id, laboratory, all, report)
}

type Repeatability = NonNullable<Laboratory['repeatability']>[number]

function checkDeviation(entry: Repeatability, pointer: string, report: FileReport): void {
  const text = entry['standard-deviation']
  if (text === undefined) return
  const kinds = deviationKinds(entry.property)
  const readings = kinds.map((kind) => readQuantity(text, kind))
  const quantity = readings.find((reading) => !isFault(reading))
  const fault = readings.find(isFault)
  if (quantity === undefined) {
    if (fault !== undefined) reportQuantity(pointer, fault, kinds, report)
  } else if (!isFault(quantity) && (quantity.value <= 0 || quantity.censored !== undefined)) {
    report.at(
      pointer,
      'quantity-range',
      `${text} is not a standard deviation`,
      'write a number above zero, or leave the entry out',
    )
  } else if (!isFault(quantity)) checkScatterBound(entry.property, quantity, pointer, report)
}
