/** Material that left otherwise than as certified lots, with what was measured on it. */
import { isSameAge } from '../../core/measure/age.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { figuresOf } from '../../core/mortar/mortar.ts'
import { written } from '../../words/as-written.ts'
import { shortDate } from '../../words/dates.ts'
import { fixedDigits } from '../../words/numbers.ts'
import { mass } from '../../words/source-strip.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import { unitSign } from '../../words/unit-signs.ts'
import type { Edition, Series, SourceEntry } from '../shape/edition.ts'

export interface DivertedLine {
  readonly on: string
  readonly mass: string
  readonly reason: string
  /** Where it went. */
  readonly where: string
  /** "Strength activity index, 7 d: 69.8 %". */
  readonly results: readonly string[]
}

type Diverted = NonNullable<SourceEntry['record']['diverted']>[number]

/** The newest first; null where no ledger is kept. */
export function divertedLines(
  { site }: Pick<Edition, 'site'>,
  record: SourceEntry['record'],
): DivertedLine[] | null {
  if (record.diverted === undefined) return null
  return [...record.diverted]
    .sort((a, b) => b.on.day - a.on.day)
    .map((entry) => ({
      on: shortDate(entry.on),
      mass: mass(entry.mass.value, site.units),
      reason: entry.reason,
      where: entry.where ?? 'not recorded',
      results: measuredOn(entry).map(
        ({ key, age, value }) =>
          `${[property(key).title, age?.text].filter(Boolean).join(', ')}: ${written(value)}`,
      ),
    }))
}

/** "strength activity index, 7 d 69.7 to 74.9 %": what was measured of the series that governs; null without any. */
export function divertedRange(
  diverted: readonly Diverted[],
  series: Series | undefined,
  units: UnitSystem,
): string | null {
  if (series === undefined) return null
  const values = diverted
    .flatMap(measuredOn)
    .filter(
      ({ key, condition, age }) =>
        key === series.property && condition === series.condition && isSameAge(age, series.age),
    )
    .map(({ value }) => value.value)
  if (values.length === 0) return null
  const { of, decimals, unit } = printedUnit(series.unit, series.decimals, units)
  const ends = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]
  const range = [...new Set(ends.map((end) => fixedDigits(of(end), decimals)))].join(' to ')
  const { title } = property(series.property)
  const name = `${title.charAt(0).toLowerCase()}${title.slice(1)}`
  return `${[name, series.age?.text].filter(Boolean).join(', ')} ${range} ${unitSign(unit)}`
}

function measuredOn({ results = {} }: Diverted) {
  return Object.entries(results).flatMap(([key, reported]) =>
    reported === undefined
      ? []
      : figuresOf(reported).map((figure) => ({ ...figure, key: key as PropertyKey })),
  )
}
