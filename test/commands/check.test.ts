import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { contentCopy, copyWithManyLots, noTrace, run, spoil } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/** Characters that a pipe holds although nobody reads them. */
const PIPE = 65_536

describe('npm run check', () => {
  it('explains a set with what it leaves out of its specification', async () => {
    const content = contentCopy()
    const path = join(content, 'criteria/strength.yaml')
    writeFileSync(path, `${readFileSync(path, 'utf8')}lacks: ["Air content: its limit was not seen."]\n`)
    const { status, out } = await run('check', '--content', content, '--explain', 'strength')
    expect(status).toBe(0)
    expect(out).toMatch(/ {2}index: .*at least 60 %/)
    expect(out).toContain('\nLeft out of this set:\n  Air content: its limit was not seen.\n')
  })
  it('ends with 0 on good records and says how each source stands', async () => {
    const ended = await run('check', '--content', contentCopy())
    expect(ended).toMatchObject({ status: 0, error: '' })
    expect(ended.out).toContain('tuff, strength: 2 draft (would meet)')
  })
  it('warns of an answer that names no finding, with the id that is near', async () => {
    const folder = contentCopy()
    const record = join(folder, 'lots/tuff/T-1.yaml')
    const answer = (finding: string) =>
      `answers: [{ finding: ${finding}, date: 2026-04-02, by: A. Mason, answer: mistyped }]\n`
    const text = readFileSync(record, 'utf8').replace('bill: BL-1', 'bill: BL-2')
    writeFileSync(record, `${text}${answer('bill-twice/tuff/T-1/BL2')}`)
    const ended = await run('check', '--content', folder)
    expect(ended.status).toBe(0)
    expect(ended.error).toMatch(
      /^lots\/tuff\/T-1\.yaml:\d+:22: warning: no finding of today has the id "bill-twice\/tuff\/T-1\/BL2" \[reference-unknown\]/,
    )
    expect(ended.error).toMatch(/fix: did you mean bill-twice\/tuff\/T-1\/BL-2.*\n0 errors, 1 warning\n$/s)
    writeFileSync(record, `${text}${answer('bill-twice/tuff/T-1/BL-2')}`)
    expect(await run('check', '--content', folder)).toMatchObject({ status: 0, error: '' })
  })
  it('prints one JSON document as schemas/check.json describes, with unrounded values and the clause that decided', async () => {
    const { out, status } = await run('check', '--content', contentCopy(), '--json')
    const report = JSON.parse(out) as {
      lots: {
        id: string
        results: { property: string; value: number }[]
        verdicts: {
          outcome: string
          reasonCodes: { code: string }[]
          clauses: { decides: boolean; reasonCodes: { code: string }[] }[]
        }[]
      }[]
    }
    const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true, strict: false }).compile(
      JSON.parse(readFileSync(join(ROOT, 'schemas/check.json'), 'utf8')) as object,
    )
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true)
    expect(status).toBe(0)
    // Worked by hand from the loads: (78.4 + 80.1 + 77.2) / (118.2 + 120.4 + 119.0) = 235.7 / 357.6.
    expect(
      report.lots[0]?.results.find((result) => result.property === 'strength-activity-index')?.value,
    ).toBeCloseTo((100 * 235.7) / 357.6, 10)
    expect(report.lots[0]?.verdicts[0]).toMatchObject({
      outcome: 'meets',
      reasonCodes: [{ code: 'all-met', params: { count: 1 } }],
      clauses: [{ decides: true, reasonCodes: [{ code: 'compared-with-limit', params: { met: true } }] }],
    })
  })
  it('narrows the report to the lots asked for', async () => {
    const { out } = await run('check', '--content', contentCopy(), '--json', '--lots', 'tuff/T-9')
    expect((JSON.parse(out) as { lots: { id: string }[] }).lots.map((lot) => lot.id)).toEqual(['tuff/T-9'])
  })
  it('lists what it found of the lots asked for, and apart from it what it found of their source', async () => {
    const content = contentCopy()
    const [one, source, whole] = await Promise.all(
      [['--lots', 'tuff/T-9'], ['--lots', 'tuff'], []].map(async (more) => {
        const { out } = await run('check', '--content', content, '--all', ...more)
        const ids = (text = '') => [...text.matchAll(/^ {2}\w+: .*\[([\w/.-]+)\]$/gm)].map(([, id]) => id)
        const [own, ofSource] = out.split(/\n\d+ findings? on the source as a whole:\n/)
        return { own: ids(own), ofSource: ids(ofSource), as: out.includes('on the source as a whole') }
      }),
    )
    expect(source).toEqual(whole)
    expect(whole?.as).toBe(false)
    expect(one?.own.every((id) => id?.includes('/tuff/T-9'))).toBe(true)
    expect(one?.ofSource.length).toBeGreaterThan(0)
    expect([...(one?.own ?? []), ...(one?.ofSource ?? [])].length).toBeLessThan(whole?.own.length ?? 0)
    expect(one?.ofSource.some((id) => /\/tuff\/T-/.test(id ?? ''))).toBe(false)
  })
  it('refuses a lot, source or set that is not there, with what may be meant', async () => {
    const content = contentCopy()
    const [lot, set] = await Promise.all([
      run('check', '--content', content, '--lots', 'tuff/T-11'),
      run('check', '--content', content, '--criteria', 'strenght'),
    ])
    expect([lot.status, lot.out, set.status, set.out]).toEqual([2, '', 2, ''])
    expect(lot.error).toMatch(/^There is no lot or source "tuff\/T-11" as of .*\n.*did you mean tuff\/T-1/)
    expect(set.error).toMatch(/^There is no criterion "strenght" as of .*\n.*did you mean strength/)
    spoil(content)
    const [faulty, other] = await Promise.all([
      run('check', '--content', content, '--lots', 'tuff/T-1'),
      run('check', '--content', content, '--lots', 'tuff/T-11'),
    ])
    expect(faulty.status).toBe(1)
    expect(faulty.error).toContain('quantity-comma')
    expect(faulty.out).toContain('\n  tuff/T-1: not judged, its record has 1 error\n')
    expect([other.status, other.out]).toEqual([2, ''])
    expect(other.error).toMatch(/^There is no lot or source "tuff\/T-11" as of .*\n.*did you mean tuff\/T-1/)
    writeFileSync(join(content, 'site.yaml'), '[')
    expect((await run('check', '--content', content, '--lots', 'tuff/T-11')).status).toBe(2)
  })
  it('lists each lot with where it stands, as many as a screen holds, and all when asked', async () => {
    const content = copyWithManyLots(40)
    const [folded, all] = await Promise.all([
      run('check', '--content', content),
      run('check', '--content', content, '--all'),
    ])
    expect(folded.out).toMatch(/^42 lots, those that need something first, then the newest:\n {2}tuff\//)
    expect(folded.out).toContain('\n... and 22 more lots; --all shows them\n\nAs of 2026-04-10: 42 lots')
    expect(folded.out).toMatch(/\n\.\.\. and \d+ more findings; --all shows them\n$/)
    expect(all.out).toContain(
      '\n  tuff/T-1, 8 March 2026, strength: Draft, never issued; would meet; ready to issue\n',
    )
    expect(all.out).not.toContain('... and')
  })
  it('judges what a broken source or criterion leaves', async () => {
    const content = contentCopy()
    writeFileSync(join(content, 'sources/tuff.yaml'), '[')
    const lost = await run('check', '--content', content, '--lots', 'tuff/T-1')
    expect(lost.status).toBe(1)
    const whole = await run('check', '--content', content)
    expect(whole.out).toMatch(/^1 error: what is at fault was not judged, and what follows is without it\.\n/)
    expect(whole.out).toContain('\n  tuff: not judged, its record has 1 error; nor were its 2 lots\n')
    noTrace(whole)
  })
  it('ends quietly where its reader has seen enough', async () => {
    const content = copyWithManyLots(100)
    const check = join(ROOT, 'src/commands/check.ts')
    const whole = await run('check', '--content', content, '--json')
    expect(whole.out.length).toBeGreaterThan(PIPE)
    const shell = `"${process.execPath}" "${check}" --content "${content}" --json | head -c 10`
    const error = await new Promise<string>((done) => {
      execFile('sh', ['-c', shell], (_failed, _out, text) => done(text))
    })
    expect(error).toBe('')
  })
  it('reads the records on an earlier date: the reading is still awaited', async () => {
    const { out } = await run('check', '--content', contentCopy(), '--as-of', '2026-03-12')
    expect(out).toContain('tuff, strength: 2 draft (pending)')
  })
  it('ends with 1 on a spoiled record, tells it and still reports the others', async () => {
    const folder = contentCopy()
    spoil(folder)
    const ended = await run('check', '--content', folder)
    expect(ended.status).toBe(1)
    expect(ended.error).toContain('lots/tuff/T-1.yaml:2:11')
    expect(ended.error).toContain('fix: write a decimal point: 1450.5 t')
    expect(ended.out).toContain('tuff, strength: 1 draft (would meet)')
    noTrace(ended)
  })
  it('judges nothing without site.yaml, whose criteria and grace it would need, and says what is missing', async () => {
    const folder = contentCopy()
    rmSync(join(folder, 'site.yaml'))
    const ended = await run('check', '--content', folder, '--json')
    expect(ended.status).toBe(1)
    expect(JSON.parse(ended.out)).toMatchObject({
      asOf: null,
      diagnostics: [{ code: 'file-missing', file: 'site.yaml' }],
      lots: [],
    })
  })
  it.each([
    [['--content', '/nowhere/at/all'], /does not exist/],
    [['--colour'], /unknown option '--colour'/],
    [['--as-of', '2026-02-30'], /a date such as/],
    [['--as-of', '0000-01-01'], /a date such as .*from 1900 on/],
    [['--content', mkdtempSync(join(tmpdir(), 'empty-'))], /is empty/],
  ])('ends with 2 on wrong use: %o', async (args, message) => {
    const ended = await run('check', ...args)
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(message)
    noTrace(ended)
  })
})
