/**
 * The validators of all schemas as code that is made already: making them takes longer than most commands do besides.
 * The packed program brings them; a clone makes them when they are first asked for, and keeps them among its packages
 * until what they are made of changes.
 */
import { createHash, hash, randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { compileFunction } from 'node:vm'
import type { ErrorObject } from 'ajv/dist/2020.js'
import { recordValidators, SHARED, writtenValidators } from './make-validators.ts'
import { RECORD_KINDS } from './schema-set.ts'
import { readSchema, schemaText } from './schema-texts.ts'

/** It leaves the faults of the value that it was last called with. */
export interface Validator {
  (value: unknown): boolean
  readonly errors?: readonly ErrorObject[] | null
}

/** What people write. */
const READ = [...RECORD_KINDS, 'import-map'] as const

/** What the program wrote itself: the list of a site, documents and their parts. */
const WRITTEN = {
  manifest: 'manifest.json',
  issued: 'issued.json',
  'issued/shared': 'issued.json#/$defs/shared',
  'issued/lot': 'issued.json#/$defs/lot',
  'issued/controls': 'issued.json#/$defs/controls',
  'issued/private': 'issued.json#/$defs/private',
} as const

export type Validators = Readonly<Record<(typeof READ)[number] | keyof typeof WRITTEN, Validator>>

const require = createRequire(import.meta.url)

/** @param folder that a clone keeps them in; where it cannot be written they are made each time */
export function readyValidators(folder = pathOf('../../../node_modules/.cache/puteoli')): Validators {
  const packed = pathOf('./validators.cjs')
  if (existsSync(packed)) return require(packed) as Validators
  const path = join(folder, `${PREFIX}${keyOfMaking()}.cjs`)
  return kept(path) ?? made(path)
}

/** A script for `require` that exports every validator by its name. */
export function validatorsScript(): string {
  const scripts = [
    recordValidators(READ, readSchema, 'script'),
    writtenValidators(['manifest', 'issued'].map(readSchema), WRITTEN),
  ]
  return scripts.map((script) => `(() => {${script}})();\n`).join('')
}

function pathOf(place: string): string {
  return fileURLToPath(new URL(place, import.meta.url))
}

/** Changes with whatever the validators are made of. */
function keyOfMaking(): string {
  const { version } = require('ajv/package.json') as { version: string }
  const code = ['./make-validators.ts', './ready-validators.ts'].map((name) => readFileSync(pathOf(name)))
  const schemas = [...SHARED, ...READ, 'manifest', 'issued'].map(schemaText)
  const key = createHash('sha256')
  for (const part of [version, ...code, ...schemas]) key.update(part).update('\0')
  return key.digest('hex')
}

/** The first line is the digest of the script: undefined where there is none yet, or somebody spoiled it. */
function kept(path: string): Validators | undefined {
  try {
    const text = readFileSync(path, 'utf8')
    const script = text.slice(text.indexOf('\n') + 1)
    return text === withDigest(script) ? validatorsOf(script) : undefined
  } catch {
    return undefined
  }
}

function withDigest(script: string): string {
  return `// ${hash('sha256', script)}\n${script}`
}

function made(path: string): Validators {
  const script = validatorsScript()
  keep(path, script)
  return validatorsOf(script)
}

function validatorsOf(script: string): Validators {
  const exports = {}
  compileFunction(script, ['exports', 'require'])(exports, require)
  return exports as Validators
}

const PREFIX = 'validators-'

/** In place of those kept before, under its name only once it is whole; what else lies there is not ours. */
function keep(path: string, script: string): void {
  const folder = dirname(path)
  const part = join(folder, `${PREFIX}${randomUUID()}`)
  try {
    mkdirSync(folder, { recursive: true })
    for (const name of readdirSync(folder)) if (name.startsWith(PREFIX)) rmSync(join(folder, name))
    writeFileSync(part, withDigest(script))
    renameSync(part, path)
  } catch {
    // They are made again the next time.
  }
}
