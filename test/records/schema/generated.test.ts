import { execFile } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../../..')

describe('npm run generate -- --check', () => {
  it('finds no stale file: schemas and types are as their sources make them', async () => {
    const output = await new Promise<string>((done) => {
      execFile(process.execPath, [join(ROOT, 'src/commands/generate.ts'), '--check'], (_error, out) => {
        done(out)
      })
    })
    expect(output).toBe('')
  })
})

/** Every node that describes a value, by its pointer. */
function* values(node: unknown, pointer: string): Generator<[string, Record<string, unknown>]> {
  if (typeof node !== 'object' || node === null) return
  const { properties } = node as { properties?: Record<string, Record<string, unknown>> }
  if (properties !== undefined && !pointer.endsWith('/properties'))
    for (const [key, value] of Object.entries(properties)) yield [`${pointer}/${key}`, value]
  for (const [key, value] of Object.entries(node)) yield* values(value, `${pointer}/${key}`)
}

describe('schemas', () => {
  const files = readdirSync(join(ROOT, 'schemas')).filter(
    (name) => !['check.json', 'lot-data.json', 'quantities.json'].includes(name),
  )
  it.each(files)('%s describes each property, or refers to a part that does', (name) => {
    const bare = [...values(JSON.parse(readFileSync(join(ROOT, 'schemas', name), 'utf8')), '')].filter(
      ([, value]) =>
        value['description'] === undefined &&
        value['$ref'] === undefined &&
        value['items'] === undefined &&
        value['const'] === undefined,
    )
    expect(bare.map(([pointer]) => pointer)).toEqual([])
  })
})
