/** The sheet of a new lot: everything that its specification asks for, with room for what is not known yet. */
import { scalar } from '../records/edit/revision-line.ts'
import type { Age } from '../core/measure/age.ts'
import { type PropertyKey, property } from '../core/measure/properties.ts'
import { isFinishable, isMortarResult, RATIO_OF } from '../core/measure/ratio-indices.ts'
import { KINDS, type QuantityKind } from '../core/measure/units.ts'
import type { DescribedCondition } from '../records/records.ts'
import { plainSpaces } from '../words/sentences.ts'
import type { AskedFigure } from './asked-figures.ts'
import { filled, type NewFile, remarked, textOf } from './new-file.ts'
import { castingLines, mortarLines } from './mortar-sheet.ts'
import { schemaLine } from './schema-line.ts'

/** A laboratory's finished figures, or the readings that the program computes them from. */
export type Figures = 'finished' | 'readings'

export interface LotSheet {
  /** SOURCE/LOT. */
  readonly lot: string
  readonly sourceName: string
  readonly laboratory: string
  readonly units: 'SI' | 'US'
  readonly figures: Figures
  readonly asked: readonly AskedFigure[]
  /** Regular samples of the sampling plan, each with what is tested on it. */
  readonly regular: readonly RegularSamples[]
  readonly conditions: ReadonlyMap<string, DescribedCondition>
  /** The newest control batch of the laboratory at each condition. */
  readonly controls: ReadonlyMap<string, string>
  /** What is known of the production, as written. */
  readonly from?: string
  readonly to?: string
  readonly quantity?: string
  /** Day on which mortars are cast, as written. */
  readonly cast?: string
}

export interface RegularSamples {
  readonly properties: readonly PropertyKey[]
  readonly count: number
}

export function lotSheet(sheet: LotSheet): NewFile {
  const path = `lots/${sheet.lot}.yaml`
  const grabs = sheet.regular.flatMap(({ properties, count }) =>
    Array.from({ length: count }, () => properties),
  )
  const samples = grabs.map((properties, index) => ({ id: `R${index + 1}`, properties }))
  const mortars = sheet.asked.filter((figure) => isMortarFigure(figure))
  const onGrabs = new Set(grabs.flat())
  const others = sheet.asked.filter(
    (figure) => !isMortarFigure(figure) && !isFromReadings(figure, sheet) && !onGrabs.has(figure.property),
  )
  const lines = [
    schemaLine('lot', path),
    ...headLines(sheet),
    ...productionLines(sheet),
    '',
    'samples:',
    ...compositeLines(sheet.units),
    ...samples.flatMap(({ id }) => regularLines(id)),
    '',
    'analyses:',
    ...samples.flatMap(({ id, properties }) => analysisLines(sheet, id, properties.map(plainly))),
    ...analysisLines(sheet, 'C', others),
    ...(sheet.figures === 'readings'
      ? mortarLines(sheet, mortars)
      : [
          ...finishedLines(sheet, mortars),
          ...castingLines(sheet, mortars),
          ...readingsModel(sheet, mortars),
        ]),
    ...shipmentsModel(sheet),
  ]
  return { path, text: textOf(lines) }
}

function headLines({ lot, sourceName }: LotSheet): string[] {
  return [
    `# Lot ${lot.slice(lot.indexOf('/') + 1)} of ${sourceName.replace(/\s+/g, ' ')}.`,
    '# Write each value behind its colon, with its unit: "2.4 %". What is still blank counts as not known yet; take out the',
    '# lines that you never need.',
  ]
}

function productionLines({ from, to, quantity, units }: LotSheet): string[] {
  const massUnit = units === 'SI' ? '1450 t' : '1600 short ton'
  return [
    'produced:',
    filled('  from:', from, 'first day of production, year-month-day'),
    filled('  to:', to, 'last day'),
    filled('quantity:', quantity, `such as ${massUnit}`),
    remarked('silo:', 'silo or bin, such as "3"'),
  ]
}

/** What a certificate prints of a sample. */
function compositeLines(units: LotSheet['units']): string[] {
  return [
    '  - id: C',
    '    kind: composite',
    remarked('    taken: { from: , to: }', 'days or, if known, times: 2026-03-11T06:00'),
    remarked('    place:', 'where, such as the loading spout'),
    remarked('    method:', 'sampling method'),
    remarked('    by:', 'who took it'),
    remarked('    increments:', 'how many it is made of'),
    remarked(
      '    represents:',
      `mass that it stands for, such as ${units === 'SI' ? '1450 t' : '1600 short ton'}`,
    ),
    remarked('    received:', 'day on which the laboratory received it'),
    remarked('    retained: { place: , until: }', 'where a part is kept, and until when'),
  ]
}

function regularLines(id: string): string[] {
  return [`  - id: ${id}`, '    kind: grab', remarked('    on:', 'day, or day and time'), '    by:']
}

const plainly = (key: PropertyKey): AskedFigure => ({ property: key, limit: '' })

/** Figures of a mortar, which belong to a condition and an age and become known on days of their own. */
function isMortarFigure({ property: key, condition }: AskedFigure): boolean {
  return isMortarResult(key) && condition !== undefined
}

/** The water requirement follows from the water of two mortars. */
function isFromReadings({ property: key, method }: AskedFigure, { figures }: LotSheet): boolean {
  return figures === 'readings' && isFinishable(key) && method === undefined
}

function analysisLines({ laboratory }: LotSheet, sample: string, asked: readonly AskedFigure[]): string[] {
  if (asked.length === 0) return []
  return [
    `  - laboratory: ${scalar(laboratory)}`,
    `    sample: ${scalar(sample)}`,
    remarked('    tested:', 'day of the test'),
    '    results:',
    ...asked.flatMap(resultLines),
  ]
}

function resultLines(figure: AskedFigure): string[] {
  const { property: key, method } = figure
  if (method === undefined) return [remarked(`      ${key}:`, figureRemark(figure))]
  return [
    `      ${key}:`,
    remarked('        value:', figureRemark(figure)),
    remarked(`        method: ${method}`, 'only results by this method count'),
  ]
}

/** Title, unit and limit. */
function figureRemark({ property: key, limit }: AskedFigure): string {
  const { title, kind } = property(key)
  const what = title.toLowerCase().startsWith(key.replaceAll('-', ' ').slice(0, 6)) ? '' : `${title}, `
  return plainSpaces(`${what}in ${unitWords(kind)}${limit === '' ? '' : `; ${limit}`}`)
}

function unitWords(kind: QuantityKind): string {
  return KINDS[kind].stored === '' ? 'plain figures' : KINDS[kind].stored
}

/** One analysis for each age, since each has a day of its own. */
function finishedLines(sheet: LotSheet, mortars: readonly AskedFigure[]): string[] {
  return byAge(mortars).flatMap(([age, figures]) => [
    `  - laboratory: ${scalar(sheet.laboratory)}`,
    '    sample: C',
    remarked('    tested:', `day of the test${age === undefined ? '' : ` at ${age.text}`}`),
    '    results:',
    ...figures.flatMap(({ property: key, condition, limit }) => [
      `      ${key}:`,
      remarked('        value:', figureRemark({ property: key, limit })),
      `        condition: ${condition}`,
      ...(age === undefined ? ['        age:'] : [`        age: ${age.text}`]),
    ]),
  ])
}

function byAge(figures: readonly AskedFigure[]): [age: Age | undefined, figures: AskedFigure[]][] {
  const ages = new Map<number, AskedFigure[]>()
  for (const figure of figures)
    ages.set(figure.age?.hours ?? 0, [...(ages.get(figure.age?.hours ?? 0) ?? []), figure])
  return [...ages.entries()]
    .toSorted(([a], [b]) => a - b)
    .map(([, own]) => [own[0]?.age, own] as [Age | undefined, AskedFigure[]])
}

/** How readings would be written in place of finished figures. */
function readingsModel(sheet: LotSheet, mortars: readonly AskedFigure[]): string[] {
  const lines = mortarLines(
    { ...sheet, cast: undefined },
    mortars.filter(({ property: key }) => key in RATIO_OF),
  )
  if (lines.length === 0) return []
  return [
    '',
    '# If your laboratory gives the readings of the specimens, write them in place of the finished indices and the tests above:',
    ...lines.filter((line) => line !== '').map((line) => `# ${line}`),
  ]
}

function shipmentsModel({ units }: LotSheet): string[] {
  return [
    '',
    '# Each shipment, once it has left:',
    '# shipments:',
    `#   - { bill: BL-0001, date: 2026-03-11, mass: ${units === 'SI' ? '24.8 t' : '25.2 short ton'} }`,
  ]
}
