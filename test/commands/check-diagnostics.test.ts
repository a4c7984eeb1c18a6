import { readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { contentCopy, copyWithManyLots, run, spoil } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/** A copy of the good records whose lot was tested before it was cast. */
function castLate(): string {
  const folder = contentCopy()
  const path = join(folder, 'lots/tuff/T-1.yaml')
  writeFileSync(path, readFileSync(path, 'utf8').replace('cast: 2026-03-11', 'cast: 2026-03-21'))
  return folder
}

describe('npm run check -- --explain-code CODE', () => {
  it('prints meaning, example and fix, and reads no record', async () => {
    const { status, out } = await run('check', '--content', '/nowhere', '--explain-code', 'yaml-comma-split')
    expect(status).toBe(0)
    expect(out).toMatch(/^yaml-comma-split\n\nA comma in a flow mapping/)
    expect(out).toMatch(/Wrong, in lots\/tuff\/T-1\.yaml:\n {2}mass: 24,8 t\n\nRight:\n {2}mass: 24\.8 t\n/)
  })
  it('names the codes that are near an unknown one', async () => {
    expect(await run('check', '--explain-code', 'quantity-units')).toMatchObject({
      status: 2,
      error: 'There is no diagnostic of the code "quantity-units".\nfix: did you mean quantity-unit?\n',
    })
  })
})

describe('npm run check', () => {
  it('shows the other place of a fault below it, and lists it in the report', async () => {
    const folder = castLate()
    const { error } = await run('check', '--content', folder)
    expect(error).toContain(
      'see lots/tuff/T-1.yaml:12:11: 2026-03-21T09:20, which should come first\n  12 | ',
    )
    const report = JSON.parse((await run('check', '--content', folder, '--json')).out) as {
      diagnostics: { related?: unknown }[]
    }
    const schema = JSON.parse(readFileSync(join(ROOT, 'schemas/check.json'), 'utf8')) as object
    expect(new Ajv2020({ allowUnionTypes: true }).validate(schema, report)).toBe(true)
    expect(report.diagnostics.map(({ related }) => related)).toContainEqual([
      {
        ...{ file: 'lots/tuff/T-1.yaml', line: 12, column: 11 },
        message: '2026-03-21T09:20, which should come first',
      },
    ])
  })
  it('shows 40 diagnostics where no terminal is, all with --all, and one line each with --compact', async () => {
    const folder = copyWithManyLots(44)
    for (let index = 0; index < 44; index++) {
      const path = join(folder, `lots/tuff/U-${index}.yaml`)
      writeFileSync(path, readFileSync(path, 'utf8').replace('1450 t', '1450'))
    }
    const [screen, all, compact] = await Promise.all([
      run('check', '--content', folder),
      run('check', '--content', folder, '--all'),
      run('check', '--content', folder, '--compact'),
    ])
    expect(screen.error.match(/\[quantity-unit\]$/gm)).toHaveLength(40)
    expect(screen.error).toMatch(
      /\n4 further diagnostics are not shown; check --all shows every one\n {2}by code: quantity-unit 4\n/,
    )
    expect(screen.error).toMatch(/\n44 errors, 0 warnings\n$/)
    expect(all.error.match(/\[quantity-unit\]$/gm)).toHaveLength(44)
    expect(all.error).not.toMatch(/not shown/)
    const lines = compact.error.trimEnd().split('\n')
    expect(lines).toHaveLength(44)
    for (const line of lines)
      expect(line).toMatch(/^lots\/tuff\/U-\d+\.yaml:2:11: error: .* \[quantity-unit\]$/)
    expect([screen, all, compact].map(({ status }) => status)).toEqual([1, 1, 1])
  })
  it('prints nothing with --compact where all is well', async () => {
    const folder = contentCopy()
    expect(await run('check', '--content', folder, '--compact')).toMatchObject({ status: 0, error: '' })
    spoil(folder)
    expect((await run('check', '--content', folder, '--compact')).error).toMatch(
      /^lots.*\[quantity-comma\]\n$/,
    )
  })
})
