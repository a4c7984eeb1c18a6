/** What the tool ships for others' sites: acceptance criteria, test conditions, method pages, schemas. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { assemble, noFiles } from '../records/checks/assemble.ts'
import type { Records } from '../records/load.ts'
import { loadText } from '../records/checks/load-record.ts'
import { recordAt } from '../records/record-path.ts'
import { parseYaml } from '../records/yaml/parse-yaml.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { SCHEMA_FOLDER, schemaLine } from '../scaffold/schema-line.ts'
import { ROOT } from './program.ts'

const CONTENT = resolve(ROOT, 'content')
const SCHEMAS = resolve(ROOT, 'schemas')

/** Sets that show what one may change, for invented agencies: nobody is to build on them. */
const INVENTED = /\(invented example\)/

/** How the demo's own thresholds say who set them; another's site has an owner of its own. */
const OWNER = 'owner of this register, for this invented scenario'

export interface Shipped {
  readonly criteria: Records['criteria']
  readonly conditions: Records['conditions']
  /** Texts of the records by path. */
  readonly texts: ReadonlyMap<string, string>
}

let shipped: Shipped | undefined

/** Sets and conditions, read once. */
export function shippedRecords(): Shipped {
  shipped ??= readShipped()
  return shipped
}

function readShipped(): Shipped {
  const files = noFiles(CONTENT)
  const texts = new Map(['criteria', 'conditions'].flatMap(textsIn))
  for (const [path, text] of texts) {
    const name = recordAt(path)
    if (!('kind' in name)) continue
    files.ids[name.kind].add(name.id)
    loadText(files, name, { path, text }, [])
  }
  const { criteria, conditions } = assemble(files)
  return { criteria, conditions, texts }
}

function textsIn(folder: string): [path: string, text: string][] {
  return readdirSync(join(CONTENT, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => [`${folder}/${name}`, readFileSync(join(CONTENT, folder, name), 'utf8')] as const)
    .filter(([, text]) => !INVENTED.test(text))
    .map(([path, text]) => [path, text.replaceAll(OWNER, '<your organisation>')])
}

/** Records that name one another: a set, those it extends or is superseded by, and the conditions of their clauses. */
export function shippedWith(criterion: string, texts = shippedRecords().texts): NewFile[] {
  const paths = new Set([`criteria/${criterion}.yaml`])
  for (const path of paths)
    for (const named of namedIn(texts.get(path) ?? '')) if (texts.has(named)) paths.add(named)
  return [...paths].sort().flatMap((path) => {
    const text = texts.get(path)
    return text === undefined ? [] : [shippedFile(path, text)]
  })
}

/** A condition by its id. */
export function shippedCondition(id: string): NewFile[] {
  const path = `conditions/${id}.yaml`
  const text = shippedRecords().texts.get(path)
  return text === undefined ? [] : [shippedFile(path, text)]
}

function shippedFile(path: string, text: string): NewFile {
  const name = recordAt(path)
  if (!('kind' in name)) return { path, text }
  const head = [schemaLine(name.kind, path), ...(name.kind === 'criterion' ? CONFIRMING : [])]
  return { path, text: `${head.join('\n')}\n${text}` }
}

/** Limits that nobody has held against the standard make trial judgements. */
const CONFIRMING = [
  '# Compare every limit with the standard itself, then say so here; until then verdicts are trial judgements where limits',
  '# are from memory.',
  '# confirmed: { by: NAME, date: 2026-03-11, edition: "EDITION" }',
]

const FOLDER_OF_KEY: Readonly<Record<string, string>> = {
  set: 'criteria',
  'superseded-by': 'criteria',
  condition: 'conditions',
}

function namedIn(text: string): string[] {
  const yaml = parseYaml(text)
  return 'fault' in yaml ? [] : [...named(yaml.value)]
}

function* named(value: unknown): Generator<string> {
  if (typeof value !== 'object' || value === null) return
  for (const [key, member] of Object.entries(value)) {
    const folder = FOLDER_OF_KEY[key]
    if (folder !== undefined && typeof member === 'string') yield `${folder}/${member}.yaml`
    else yield* named(member)
  }
}

/** Pages that explain what every certificate rests on. */
const METHOD_PAGES = ['cautions', 'reading-a-certificate']

export function shippedMethods(): NewFile[] {
  return METHOD_PAGES.map((id) => ({
    path: `methods/${id}.mdx`,
    text: readFileSync(join(CONTENT, 'methods', `${id}.mdx`), 'utf8'),
  }))
}

/** Schemas that are of no use to an editor of records. */
const NOT_OF_RECORDS = ['check.json', 'issued.json', 'lot-data.json', 'manifest.json', 'method.json']

/** The schemas that the first line of every record names. */
export function schemaFiles(): NewFile[] {
  return readdirSync(SCHEMAS)
    .filter((name) => name.endsWith('.json') && !NOT_OF_RECORDS.includes(name))
    .sort()
    .map((name) => ({ path: `${SCHEMA_FOLDER}/${name}`, text: readFileSync(join(SCHEMAS, name), 'utf8') }))
}

/** Those of a folder that lacks them; what is there is left as it is. */
export function missingSchemas(contentDir: string): NewFile[] {
  return schemaFiles().filter(({ path }) => !existsSync(join(contentDir, path)))
}
