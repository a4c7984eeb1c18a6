/**
 * npm run generate: writes the schemas' generated parts and the types of loaded records; --check tells
 * whether they are stale.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { PROPERTIES, property, type PropertyKey, reportableKeys } from '../core/measure/properties.ts'
import { isFinishable, isMortarResult } from '../core/measure/ratio-indices.ts'
import { literalPattern } from '../core/measure/text-pattern.ts'
import { acceptedSpellings, KINDS, type QuantityKind } from '../core/measure/units.ts'
import { loadedTypes, type SchemaNode, TIMES, typeName } from './loaded-types.ts'
import { command, EXIT, ROOT, run } from './program.ts'

/** Kinds of record with the name of their type. */
const KINDS_OF_RECORD: Readonly<Record<string, string>> = {
  site: 'Site',
  producer: 'Producer',
  laboratory: 'Laboratory',
  source: 'Source',
  condition: 'Condition',
  control: 'Control',
  criterion: 'CriterionRecord',
  lot: 'Lot',
  study: 'Study',
  method: 'MethodHeading',
}

/** A quantity as editors check it: perhaps a bound, a number with a sign that may be a true minus, a unit. */
const BELOW = '(<\\s*|below\\s+)?'
const NUMBER = '[+\\-−]?\\d+(\\.\\d+)?'

await run(() => {
  const options = command('generate', 'Write generated schemas and types.')
    .option('--check', 'write nothing; exit 1 when a file is stale')
    .parse()
    .opts<{ check?: boolean }>()
  const stale: string[] = []
  const put = (path: string, text: string) => {
    const file = resolve(ROOT, path)
    if (readIfThere(file) === text) return
    stale.push(path)
    if (options.check !== true) writeFileSync(file, text)
  }
  put('schemas/quantities.json', json(quantitiesSchema()))
  put('schemas/properties.json', json(propertiesSchema()))
  put('src/records/schema/loaded-records.ts', types())
  for (const path of stale) process.stdout.write(`${options.check === true ? 'stale' : 'written'}: ${path}\n`)
  return options.check === true && stale.length > 0 ? EXIT.failed : EXIT.well
})

function readIfThere(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`
}

function symbols(kind: QuantityKind): string {
  return KINDS[kind].units.map((unit) => unit.symbol).join(', ')
}

function quantitiesSchema(): unknown {
  const kinds = (Object.keys(KINDS) as QuantityKind[]).filter((kind) => kind !== 'ratio')
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'quantities.json',
    title: 'quantities',
    description: 'Generated from the list of units: quantities with their unit, as written on a bench sheet.',
    $defs: Object.fromEntries(
      kinds.map((kind) => [
        kind,
        {
          type: 'string',
          maxLength: 60,
          quantity: kind,
          description: `${sentence(KINDS[kind].title)} with its unit: ${symbols(kind)}.`,
          examples: [KINDS[kind].example],
          pattern: `^${BELOW}${NUMBER}\\s*(${acceptedSpellings(kind).map(pattern).join('|')})$`,
        },
      ]),
    ),
  }
}

/**
 * A unit's spelling as a pattern for editors, with the signs that loading accepts in place of plain letters.
 */
function pattern(spelling: string): string {
  return literalPattern(spelling)
    .replace(/ohm/g, '(ohm|Ω|Ω)')
    .replace(/deg/g, '(deg ?|° ?)')
    .replace(/(?<=m)2/g, '[2²]')
    .replace(/(?<=m)3/g, '[3³]')
    .replace(/ /g, '[ ·.]?')
}

function sentence(text: string): string {
  return text[0]?.toUpperCase() + text.slice(1)
}

function propertiesSchema(): unknown {
  const keys = Object.keys(PROPERTIES) as PropertyKey[]
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'properties.json',
    title: 'properties',
    description: 'Generated from the list of properties: what a laboratory reports and the tool derives.',
    $defs: {
      key: {
        type: 'string',
        enum: keys,
        description: keys.map((key) => `${key}: ${property(key).title}`).join('; '),
      },
      results: {
        type: 'object',
        additionalProperties: false,
        minProperties: 1,
        description: 'Results by property, each with its unit.',
        properties: Object.fromEntries(reportableKeys().map((key) => [key, resultSchema(key)])),
      },
    },
  }
}

/** A result of a mortar may be a list, one figure for each condition and age. */
function resultSchema(key: PropertyKey): unknown {
  const { title, kind, description, basis } = property(key)
  const usual = basis === undefined ? '' : `; usual basis: ${basis}`
  const figure = figureSchema(key)
  const list = {
    maxItems: 100,
    minItems: 1,
    items: { type: 'object', description: 'One of several finished figures.', ...figure },
  }
  return {
    type: ['string', 'object', ...(isFinishable(key) ? ['array'] : [])],
    quantity: kind,
    maxLength: 60,
    title,
    description: `${description} Written in ${symbols(kind)}${usual}.${finishedWords(key)}`,
    examples: [KINDS[kind].example],
    ...figure,
    ...(isFinishable(key) ? list : {}),
  }
}

function finishedWords(key: PropertyKey): string {
  if (!isMortarResult(key)) return ''
  const example = KINDS[property(key).kind].example
  return ` A figure that the laboratory reports finished names its mortar: { value: ${example}, condition: ID, age: 28 d }, or a list of such.`
}

function figureSchema(key: PropertyKey): Readonly<Record<string, unknown>> {
  const { kind } = property(key)
  return {
    additionalProperties: false,
    required: ['value'],
    properties: {
      value: { $ref: `quantities.json#/$defs/${kind}`, description: 'Result with its unit.' },
      ...(isFinishable(key) ? finishedMembers(key) : {}),
      basis: {
        enum: ['as received', 'dry', 'ignited'],
        type: 'string',
        description: 'Basis, where it differs from the method’s.',
      },
      method: {
        type: 'string',
        minLength: 1,
        maxLength: 200,
        description: 'Method, where it differs from the laboratory’s.',
      },
      of: { type: 'number', minimum: 1, maximum: 100, description: 'Number of determinations behind it.' },
      excluded: {
        type: 'string',
        minLength: 1,
        maxLength: 500,
        description: 'Why this result does not count.',
      },
      'excluded-on': {
        $ref: 'common.json#/$defs/date',
        description: 'Since when it is excluded; without it, from the reading on.',
      },
      note: { type: 'string', minLength: 1, maxLength: 500, description: 'Note.' },
    },
  }
}

/** What a figure says of the mortar that only its laboratory knows. */
function finishedMembers(key: PropertyKey): Readonly<Record<string, unknown>> {
  const kind = property(key).kind === 'fraction' ? 'points' : property(key).kind
  return {
    condition: { $ref: 'common.json#/$defs/id', description: 'Condition at which the mortar was made.' },
    ...(isMortarResult(key)
      ? { age: { $ref: 'common.json#/$defs/age', description: 'Age at which it was tested.' } }
      : {}),
    'standard-uncertainty': {
      $ref: `quantities.json#/$defs/${kind}`,
      description: 'Standard uncertainty that the laboratory states with the figure.',
    },
  }
}

/** Types of every kind of record, shared parts first. */
function types(): string {
  const common = schemaNamed('common')['$defs'] as Record<string, SchemaNode>
  const shared = Object.entries(common)
    .filter(([name]) => TIMES[name] === undefined)
    .map(([name, node]) => [typeName(name), node] as const)
  const records = Object.entries(KINDS_OF_RECORD).flatMap(([name, recordType]) => {
    const schema = schemaNamed(name)
    const own = Object.entries((schema['$defs'] ?? {}) as Record<string, SchemaNode>).map(
      ([part, node]) => [typeName(part), node] as const,
    )
    return [...own, [recordType, schema] as const]
  })
  return loadedTypes([
    ...shared,
    ['ReportedValue', resultSchema('strength-activity-index') as SchemaNode],
    ...records,
  ])
}

function schemaNamed(name: string): SchemaNode {
  return JSON.parse(readFileSync(resolve(ROOT, `schemas/${name}.json`), 'utf8')) as SchemaNode
}
