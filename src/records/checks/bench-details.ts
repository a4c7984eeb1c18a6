/** Details of a hot-cured test that need each other or leave no room for each other. */
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'

export function checkBenchDetails(condition: DescribedCondition, report: FileReport): void {
  checkEntry(condition, report)
  checkRenewal(condition, report)
  checkResistors(condition, report)
}

/** A ramp takes time, a step takes none. */
function checkEntry({ curing: { entry } }: DescribedCondition, report: FileReport): void {
  if (entry?.by === 'ramp' && entry.over === undefined)
    report.atKey(
      '/curing/entry',
      'key-missing',
      'the ramp does not say how long it takes',
      'add the time from the temperature of the first day to that of the bath: over: 6 h',
    )
  if (entry?.by === 'step' && entry.over !== undefined)
    report.at(
      '/curing/entry/over',
      'detail-contradicted',
      `the specimens enter the bath in one step, which does not take ${entry.over.written}`,
      'write by: ramp, or remove "over"',
    )
}

function checkRenewal({ curing: { bath } }: DescribedCondition, report: FileReport): void {
  const renewal = bath?.renewal
  if (renewal?.at === 'intervals' && renewal.every === undefined)
    report.atKey(
      '/curing/bath/renewal',
      'key-missing',
      'the liquid is renewed at intervals, but it is not said at which',
      'add the interval: every: 7 d',
    )
  if (renewal !== undefined && renewal.at !== 'intervals' && renewal.every !== undefined)
    report.at(
      '/curing/bath/renewal/every',
      'detail-contradicted',
      renewal.at === 'never'
        ? `the liquid is never renewed, but also every ${renewal.every.written}`
        : `the liquid is renewed after each age, but also every ${renewal.every.written}`,
      'write at: intervals, or remove "every"',
    )
}

/** A resistor that the meter cannot read checks nothing. */
function checkResistors({ resistivity }: DescribedCondition, report: FileReport): void {
  const { ceiling, 'check-resistors': resistors = [] } = resistivity?.meter ?? {}
  resistors.forEach((resistor, index) => {
    // A ceiling of nothing has a fault of its own.
    if (ceiling === undefined || ceiling.value <= 0 || resistor.value < ceiling.value) return
    report.at(
      `/resistivity/meter/check-resistors/${index}`,
      'detail-contradicted',
      `the meter reads up to ${ceiling.written}, so it cannot be checked on ${resistor.written}`,
      'name a resistor below the ceiling, or correct the ceiling',
    )
  })
}
