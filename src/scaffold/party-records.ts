/** Records of a producer, a laboratory and a source, with what only their owner knows left to be replaced. */
import type { Criterion } from '../core/criteria/criterion.ts'
import type { MaterialKind } from '../core/measure/material-kind.ts'
import { scalar } from '../records/edit/revision-line.ts'
import { type AskedFigure, askedFacts, declaredProperties } from './asked-figures.ts'
import { type NewFile, remarked, textOf } from './new-file.ts'
import { schemaLine } from './schema-line.ts'

export interface NewProducer {
  readonly id: string
  readonly name: string
  /** Lines of its postal address. */
  readonly address: readonly string[]
  readonly signatory: { readonly name: string; readonly function: string }
}

export function producerRecord({ id, name, address, signatory }: NewProducer): NewFile {
  const path = `producers/${id}.yaml`
  return {
    path,
    text: textOf([
      schemaLine('producer', path),
      `name: ${scalar(name)}`,
      addressLine(address),
      '# Plants and terminals by an id of their own, which a source then names: plant: works',
      '# plants:',
      '#   works: { name: NAME OF THE PLANT }',
      '# Who may sign certificates; `issue --by NAME` names one of them.',
      'signatories:',
      `  - { name: ${scalar(signatory.name)}, function: ${scalar(signatory.function)} }`,
    ]),
  }
}

function addressLine(lines: readonly string[]): string {
  return `address: [${lines.map((line) => JSON.stringify(line)).join(', ')}]`
}

/** What a laboratory is to the producer. */
export const STANDINGS = ['in-house', 'independent', 'agency'] as const
export type Standing = (typeof STANDINGS)[number]

export interface NewLaboratory {
  readonly id: string
  readonly name: string
  readonly address: readonly string[]
  readonly standing: Standing
  /** What it is to test. */
  readonly asked: readonly AskedFigure[]
}

export function laboratoryRecord({ id, name, address, standing, asked }: NewLaboratory): NewFile {
  const path = `laboratories/${id}.yaml`
  const methods = new Map(asked.map(({ property, named = 'NAME OF THE METHOD' }) => [property, named]))
  return {
    path,
    text: textOf([
      schemaLine('laboratory', path),
      `name: ${scalar(name)}`,
      addressLine(address),
      remarked(`standing: ${standing}`, STANDINGS.join(', ')),
      '# Its accreditation, if it has one; results outside its scope are marked on the certificate.',
      '# accreditation:',
      `#   - { body: NAME, number: "NUMBER", from: 2026-01-01, to: 2028-12-31, scope: [${[...methods.keys()].join(', ')}] }`,
      '# The method of each property, which the certificate prints: take out "# " where yours is the one that the',
      '# specification names.',
      '# methods:',
      ...[...methods].map(([key, method]) => `#   ${key}: [ { method: ${JSON.stringify(method)} } ]`),
    ]),
  }
}

export interface NewSource {
  readonly id: string
  readonly name: string
  readonly producer: string
  readonly kind: MaterialKind
  readonly class: string | null
  readonly lotNumberPattern: string
  readonly governing: Criterion
  /** Whether its set is another than the site's. */
  readonly isOwnSet: boolean
  readonly units: 'SI' | 'US'
}

export function sourceRecord(source: NewSource): NewFile {
  const { id, name, producer, kind, governing, isOwnSet } = source
  const path = `sources/${id}.yaml`
  return {
    path,
    text: textOf([
      schemaLine('source', path),
      `name: ${scalar(name)}`,
      `producer: ${scalar(producer)}`,
      `kind: ${kind}`,
      ...(source.class === null
        ? []
        : [remarked(`class: ${classText(source.class)}`, 'the class that you claim')]),
      '# YYYY stands for the year, # for a digit of the running number; `new lot` takes the next one.',
      `lot-number-pattern: ${scalar(source.lotNumberPattern)}`,
      ...(isOwnSet ? ['criteria:', `  - { set: ${governing.id} }`] : []),
      ...statedLines(source),
      ...planLines(source),
      '# What a certificate prints of the source: take out "# " where it applies.',
      ...MADE_FROM[/ash/.test(kind) ? 'ash' : 'other'].map((line) => `# ${line}`),
      '# What happened at the source, shown in its history and on its charts.',
      '# events:',
      '#   - { date: 2026-03-11, kind: outage, title: "boiler outage" }',
    ]),
  }
}

/** What a material is made from, as certificates name it. */
const MADE_FROM = {
  ash: [
    'unit: BOILER UNIT',
    'coal-sources: [COAL]',
    'co-firing: NONE',
    'additives: NONE',
    'safety-data-sheet: NUMBER',
  ],
  other: ['deposit: QUARRY, MILL OR KILN', 'additives: NONE', 'safety-data-sheet: NUMBER'],
} as const

/** A class such as "100" is text. */
function classText(name: string): string {
  return /^\d/.test(name) ? JSON.stringify(name) : name
}

/** What the specification asks of the source besides results. */
function statedLines({ governing, kind, class: claimed }: NewSource): string[] {
  const of = { kind, class: claimed }
  const [facts, declared] = [askedFacts(governing, of), declaredProperties(governing, of)]
  return [
    ...(facts.length === 0
      ? []
      : [
          '# Facts that the specification asks for: take out "# " and answer.',
          `# facts: { ${facts.map((fact) => `${fact}: yes`).join(', ')} }`,
        ]),
    ...(declared.length === 0
      ? []
      : [
          '# Values that you declare, which the specification compares results with.',
          '# declared:',
          ...declared.map((key) => `#   ${key}: VALUE WITH ITS UNIT`),
        ]),
  ]
}

function planLines({ units }: NewSource): string[] {
  const [small, large] = units === 'SI' ? ['360 t', '2900 t'] : ['400 short ton', '3200 short ton']
  return [
    '# How often you sample; `new lot` then lays out the regular samples too.',
    '# sampling-plan:',
    `#   - { properties: [moisture, loss-on-ignition, residue-45um], every: ${small}, or-every: 1 d, kind: grab }`,
    `#   - { properties: [density, strength-activity-index], every: ${large}, or-every: 31 d, kind: composite }`,
  ]
}
