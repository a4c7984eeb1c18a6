import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { finishWriting, writeTogether } from '../../src/commands/write-together.ts'
import { contentCopy, noTrace, run, spoil } from './run-command.ts'

const MAP = `every: { source: tuff, laboratory: quay, condition: warm, control: K1, sample: C, sample-kind: composite, cast: 2026-03-11T09:20 }
tables:
  - holds: tests
    planned: [7 d]
    columns:
      Lot: lot
      Made: produced
      Tons (t): quantity
      Broken: tested
      Age (d): age
      Load 1 (kN): load
      Load 2 (kN): load
      Load 3 (kN): load
`
const HEAD = 'Lot,Made,Tons (t),Broken,Age (d),Load 1 (kN),Load 2 (kN),Load 3 (kN)\n'
const GOOD = `${HEAD}T-2,2026-03-03,1400,2026-03-18T10:30,7,90.1,91.2,92.0\n`

interface Bench {
  readonly content: string
  readonly table: string
  readonly map: string
}

function bench(table: string, map = MAP): Bench {
  const content = contentCopy()
  const folder = dirname(content)
  const files = { content, table: join(folder, 'march.csv'), map: join(folder, 'bench.yaml') }
  writeFileSync(files.table, table)
  writeFileSync(files.map, map)
  return files
}

function take({ content, table, map }: Bench, ...more: readonly string[]) {
  return run('import', table, '--map', map, '--content', content, ...more)
}

/** Every file of a content folder with its text. */
function filesOf(content: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(content, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [path.slice(content.length), readFileSync(path, 'utf8')]),
  )
}

describe('npm run import', () => {
  it('shows records and verdicts first, writes them when asked, and finds nothing to do the second time', async () => {
    const files = bench(GOOD)
    const before = filesOf(files.content)
    const dry = await take(files, '--records')
    expect(dry).toMatchObject({ status: 0, error: '' })
    expect(dry.out).toContain('new lot tuff/T-2: ')
    // Mean of 90.1, 91.2 and 92.0 over that of 118.2, 120.4 and 119.0: 76.4 %, above the limit of 60 %.
    expect(dry.out).toContain('  strength: Draft, never issued; would meet')
    expect(dry.out).toContain('specimens: { a: 90.1 kN, b: 91.2 kN, c: 92.0 kN }')
    expect(dry.out).toContain('Nothing was written yet')
    expect(filesOf(files.content)).toEqual(before)
    expect(await take(files, '--write')).toMatchObject({ status: 0, error: '' })
    const after = filesOf(files.content)
    expect(Object.keys(after).filter((path) => !(path in before))).toEqual(['/lots/tuff/T-2.yaml'])
    expect(after['/lots/tuff/T-2.yaml']).toContain('imported:\n  - { file: march.csv, digest: sha256-')
    const again = await take(files, '--write')
    expect(again).toMatchObject({ status: 0, error: '' })
    expect(again.out).toContain('nothing is to do')
    expect(filesOf(files.content)).toEqual(after)
  })

  it('tells what is wrong with a record at the cell that it comes from, and writes none of the records', async () => {
    const files = bench(
      `${GOOD}T-3,2026-03-04,1400,2026-03-10T10:30,7,90.1,91.2,92.0\nT-4,2026-03-04,1400,2026-03-18T10:30,9,90,91,92\nT-5,2026-03-04,1400,2026-03-18T10:30,7,90,9l,92\n`,
    )
    const before = filesOf(files.content)
    const ended = await take(files, '--write')
    noTrace(ended)
    expect(ended.status).toBe(1)
    expect(ended.error).toMatch(/^march\.csv!D3: lot tuff\/T-3: .*\[import-record\]$/m)
    expect(ended.error).toMatch(/^march\.csv![A-H]4: lot tuff\/T-4: .*age.*\[import-record\]$/m)
    expect(ended.error).toContain('march.csv!G5: found "9l"; a number in kN was expected [import-cell]')
    expect(ended.error).toMatch(/\d errors\. Nothing was written\.\n$/)
    expect(filesOf(files.content)).toEqual(before)
  })

  it('overwrites a value on record only when told to', async () => {
    const files = bench(
      `${HEAD}T-1,2026-03-03,1400,2026-03-18T10:05,7,78.4,80.1,77.2\n`,
      MAP.replace('      Made: produced\n', '      Made: ignore\n'),
    )
    const refused = await take(files, '--write')
    expect(refused.status).toBe(1)
    expect(refused.error).toContain(
      'march.csv!C2: lot tuff/T-1, quantity: on record "1450 t", in the file "1400 t" [import-differs]',
    )
    const path = join(files.content, 'lots/tuff/T-1.yaml')
    const before = readFileSync(path, 'utf8')
    expect(await take(files, '--write', '--replace')).toMatchObject({ status: 0 })
    expect(readFileSync(path, 'utf8').startsWith(before.replace('1450 t', '1400 t'))).toBe(true)
  })

  it('tells the faults of a map by line, and wrong use by itself', async () => {
    const files = bench(GOOD, MAP.replace('quantity', 'quanttiy'))
    const faulty = await take(files)
    expect(faulty.status).toBe(1)
    expect(faulty.error).toMatch(/^bench\.yaml:8:17: "quanttiy" is no field of a table of tests/)
    expect(faulty.error).toContain('did you mean quantity?')
    expect((await run('import', files.table, '--content', files.content)).error).toContain('give --map FILE')
    expect(await run('import', join(files.content, 'none.csv'), '--map', bench(GOOD).map)).toMatchObject({
      status: 2,
    })
    const old = join(files.content, 'old.xls')
    writeFileSync(old, 'x')
    expect((await take({ ...bench(GOOD), table: old })).error).toContain('fix: save it as .xlsx')
  })

  it('is not stopped by a record that had a fault before', async () => {
    const files = bench(GOOD)
    spoil(files.content)
    const ended = await take(files, '--write')
    expect(ended.status).toBe(0)
    expect(ended.error).toContain('1 error in other records, as before')
  })

  it('proposes a map once, and does not take the place of one that is there', async () => {
    const files = bench(GOOD)
    const out = join(dirname(files.content), 'proposed.yaml')
    const ended = await run('import', files.table, '--propose', '--map', out, '--content', files.content)
    expect(ended).toMatchObject({ status: 0, error: '' })
    expect(readFileSync(out, 'utf8')).toContain(
      '      Load 1 (kN): { to: load, unit: kN }   # guessed: one reading of several\n',
    )
    expect((await run('import', files.table, '--propose', '--map', out)).error).toContain('is there already')
  })
})

describe('npm run export', () => {
  it('writes a workbook and a map from which an import makes the same records again', async () => {
    const content = contentCopy()
    const out = join(dirname(content), 'table.xlsx')
    expect(await run('export', '--content', content, '--out', out)).toMatchObject({ status: 0, error: '' })
    const map = join(dirname(content), 'table.map.yaml')
    const same = await run('import', out, '--map', map, '--content', content)
    expect(same).toMatchObject({ status: 0, error: '' })
    expect(same.out).toContain('nothing is to do')
    const none = await run('export', '--content', content, '--out', out, '--source', 'tufff')
    expect(none).toMatchObject({ status: 2 })
    expect(none.error).toContain('did you mean tuff?')
  })
})

describe('writeTogether', () => {
  const TEXTS = [
    { path: 'lots/tuff/T-1.yaml', text: 'one\n' },
    { path: 'lots/other/T-9.yaml', text: 'two\n' },
  ]
  it('writes all records, and leaves nothing beside them', () => {
    const content = contentCopy()
    const before = Object.keys(filesOf(content))
    writeTogether(content, TEXTS)
    for (const { path, text } of TEXTS) expect(readFileSync(join(content, path), 'utf8')).toBe(text)
    expect(Object.keys(filesOf(content)).sort()).toEqual([...before, '/lots/other/T-9.yaml'].sort())
  })
  it('changes no record where one of them cannot be written', () => {
    const content = contentCopy()
    writeFileSync(join(content, 'lots/other'), 'a file stands here')
    const before = filesOf(content)
    expect(() => writeTogether(content, TEXTS)).toThrow('None was changed')
    expect(filesOf(content)).toEqual(before)
  })
  it('finishes what was killed behind the list, and undoes what was killed before it', () => {
    const content = contentCopy()
    const beside = join(content, 'lots/tuff/.T-1.yaml.import')
    const whole = readFileSync(join(content, 'lots/tuff/T-1.yaml'), 'utf8')
    writeFileSync(beside, 'half')
    expect(finishWriting(content)).toBe(0)
    expect([existsSync(beside), readFileSync(join(content, 'lots/tuff/T-1.yaml'), 'utf8')]).toEqual([
      false,
      whole,
    ])
    mkdirSync(join(content, 'lots/other'))
    writeFileSync(beside, 'one\n')
    writeFileSync(join(content, 'lots/other/.T-9.yaml.import'), 'two\n')
    writeFileSync(join(content, '.import-list'), JSON.stringify(TEXTS.map(({ path }) => path)))
    expect(finishWriting(content)).toBe(2)
    for (const { path, text } of TEXTS) expect(readFileSync(join(content, path), 'utf8')).toBe(text)
    expect(existsSync(join(content, '.import-list'))).toBe(false)
  })
})
