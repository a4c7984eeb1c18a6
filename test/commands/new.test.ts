import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fillIn } from './new-site-folder.ts'
import { noTrace, run } from './run-command.ts'

const place = () => join(mkdtempSync(join(tmpdir(), 'new-')), 'works')

/** Options that leave nothing to be replaced. */
const NAMES = [
  ...['--producer', 'Hill Ash', '--producer-address', '1 Lane, Hill', '--signatory', 'A. Mason'],
  ...['--function', 'manager', '--laboratory', 'Quay laboratory'],
]

describe('npm run new', () => {
  it('goes from nothing to an issued certificate, and on to the next lot', async () => {
    const folder = place()
    const laidOut = await run('new', 'site', folder, ...NAMES)
    expect(laidOut).toMatchObject({ status: 0, error: '' })
    const lot = /issue -- (\S+) /.exec(laidOut.out)?.[1] ?? ''
    expect(lot).toMatch(/^coal-fly-ash\/CFA-\d{4}-001$/)
    const content = ['--content', folder]
    expect((await run('check', ...content)).error).toMatch(
      /^lots\/.*\[value-blank\]\n(?:.*\n)*0 errors, 1 warning\n$/,
    )
    const beside = await run('new', 'lot', 'coal-fly-ash', 'CFA-X', ...content)
    expect(beside.out).toContain(`Laid out before and not on record yet: ${lot}.`)
    rmSync(join(folder, 'lots/coal-fly-ash/CFA-X.yaml'))
    fillIn(folder, lot, ['84 %', '92 %'])
    const site = join(folder, 'site.yaml')
    writeFileSync(site, `${readFileSync(site, 'utf8')}as-of: 2026-11-27\n`)
    const checked = (await run('check', ...content)).out
    expect(checked).toContain('coal-fly-ash, c618-23e1: 1 draft (would meet all that can be evaluated)')
    const trial =
      'c618-23e1: trial judgement, not a statement of conformity, since some limits are from memory'
    expect(checked).toContain(`\n${trial}`)
    const said = ['--by', 'A. Mason', '--reason', 'first results']
    const issued = (await run('issue', lot, ...content, ...said)).out
    expect(issued.startsWith(trial)).toBe(true)
    expect(issued).toContain('1 revision issued.')
    const made = ['--from', '2026-11-16', '--to', '2026-11-22', '--quantity', '1450 t']
    const next = await run('new', 'lot', 'coal-fly-ash', ...content, ...made, '--cast', '2026-11-25')
    expect(next).toMatchObject({ status: 0, error: '' })
    expect(next.out).toMatch(
      /-002\.yaml: lot coal-fly-ash\/CFA-\d{4}-002, with room for 13 figures that c618-23e1 asks for/,
    )
    expect(next.out).not.toContain('Laid out before')
    expect(next.out).toContain(
      'Due, if the mortars are cast on 2026-11-25: 7 d on 2026-12-02, 28 d on 2026-12-23.',
    )
    const last = await run('check', ...content)
    expect(last).toMatchObject({ status: 0 })
    // Cast on 25 November and on record as such: 7 d are due on 2 December, 28 d on 23 December.
    expect(last.out).toContain('7 d strength activity index due 2 December 2026')
    // Beside a certificate no text that the producer's record was laid out with is published.
    const producer = join(folder, 'producers/hill-ash.yaml')
    writeFileSync(producer, readFileSync(producer, 'utf8').replace('Hill Ash', '<your company>'))
    const refused = await run('build', ...content, '--out', `${folder}-site`)
    expect(refused.status).toBe(1)
    expect(refused.error).toMatch(
      /A site with certificates cannot be public with .*:\n {2}producers\/hill-ash\.yaml:\d+: .*<your company>\nNothing was built.*\nfix: write your own text/,
    )
  })
  it('lays out a site that builds at once, with what is still to be replaced named', async () => {
    const folder = place()
    const { out, status } = await run('new', 'site', folder, '--yes', '--material', 'slag', '--units', 'US')
    expect(status).toBe(0)
    expect(out).toMatch(/Replace each <your \.\.\.> in \S+producer\.yaml, \S+laboratory\.yaml\./)
    expect(readdirSync(folder).sort()).toEqual([
      ...['.github', '.gitignore', '.schemas', 'conditions', 'criteria', 'laboratories', 'lots', 'methods'],
      ...['package.json', 'producers', 'site.yaml', 'sources'],
    ])
    expect(await run('build', '--content', folder, '--out', `${folder}-site`)).toMatchObject({ status: 0 })
    expect(readFileSync(`${folder}-site/index.html`, 'utf8')).toContain('Works')
  })
  it('says where the results of a new laboratory are written, those of an agency apart', async () => {
    const folder = place()
    await run('new', 'site', folder, ...NAMES)
    const next = async (id: string, standing: string) =>
      (await run('new', 'laboratory', id, '--standing', standing, '--content', folder)).out
    expect(await next('dock', 'independent')).toContain('Next: name it in analyses: and tests: of lots.')
    expect(await next('county', 'agency')).toContain(
      'Next: name it in verification: of the lots that it checks.',
    )
  })
  it('brings the schemas for editors up to this version, and nothing else', async () => {
    const folder = place()
    await run('new', 'site', folder, ...NAMES)
    const [schema, site] = [
      join(folder, '.schemas/lot.json'),
      readFileSync(join(folder, 'site.yaml'), 'utf8'),
    ]
    const own = readFileSync(schema, 'utf8')
    writeFileSync(schema, '{}\n')
    expect(await run('new', 'schemas', '--content', folder)).toMatchObject({ status: 0, error: '' })
    expect(readFileSync(schema, 'utf8')).toBe(own)
    expect(readFileSync(join(folder, 'site.yaml'), 'utf8')).toBe(site)
  })
  it('reads past what npm keeps in the folder', async () => {
    const folder = place()
    await run('new', 'site', folder, ...NAMES)
    mkdirSync(join(folder, 'node_modules/other/lots'), { recursive: true })
    writeFileSync(join(folder, 'node_modules/other/lots/a.yaml'), 'a: [\n')
    writeFileSync(join(folder, 'package-lock.json'), '{}\n')
    expect((await run('check', '--content', folder)).error).toMatch(/0 errors, 1 warning\n$/)
  })
  it.each([
    [['site', 'a b'], /^"a b" is not a valid id\.\nfix: /],
    [['site'], /missing required argument/],
    [['site', 'works', '--units', 'metric'], /Allowed choices are SI, US/],
    [['site', 'works', '--address', 'works'], /an address such as/],
    [['site', 'works', '--material', 'ash'], /^There is no kind of material "ash"/],
    [['lot', 'coal'], /^There is no source "coal".*\nfix: /],
    [['lot', 'tuff', '--from', '2026-02-30'], /a date such as/],
    [['lot', 'tuff', '--cast', '2026-03-20'], /^--cast goes with --from, --to and --quantity/],
    [['criterion', 'roads'], /required option '--extends <set>'/],
    [['study', 'survey'], /^There is no kind of study "survey"/],
    [['mortar'], /unknown command 'mortar'\nfix: --help lists what there is\n$/],
  ])('refuses wrong use with 2 and in words: %o', async (args, message) => {
    const ended = await run('new', ...args, '--content', join(import.meta.dirname, '../diagnostics/base'))
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(message)
    noTrace(ended)
  })
  it.runIf(existsSync('/proc/self'))('says in one line that nothing can be made there', async () => {
    const ended = await run('new', 'site', '/proc/works', ...NAMES)
    expect(ended).toMatchObject({ status: 1, out: '' })
    expect(ended.error).toMatch(/^\/proc\/works cannot be written: .*\nfix: .*\n$/)
  })
  it('refuses a folder that is not empty, and a record that is there, and changes nothing', async () => {
    const folder = place()
    await run('new', 'site', folder, ...NAMES)
    const before = readdirSync(folder, { recursive: true }).sort()
    const again = await run('new', 'site', folder)
    expect(again).toMatchObject({ status: 2, out: '' })
    expect(again.error).toMatch(/^\S+ is there already and not empty; nothing was written\.\nfix: .*\n$/)
    const producer = await run('new', 'producer', 'hill-ash', '--content', folder)
    expect(producer.error).toMatch(
      /^\S+producers\/hill-ash\.yaml is there already; nothing was written\.\nfix: .*\n$/,
    )
    expect(readdirSync(folder, { recursive: true }).sort()).toEqual(before)
  })
})
