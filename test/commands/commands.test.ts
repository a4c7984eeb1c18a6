import { execFile } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { createServer } from 'node:net'
import { hostname, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { contentCopy, type Ended, run, start } from './run-command.ts'

/** Checks on what was issued, and on what is awaited. */
const OF_DOCUMENTS = /\[(?:changed-after-issue|would-now-be-judged-otherwise|result-overdue)\//

const ROOT = resolve(import.meta.dirname, '../..')

function spoil(folder: string): void {
  const path = join(folder, 'lots/tuff/T-1.yaml')
  writeFileSync(path, readFileSync(path, 'utf8').replace('1450 t', '1450,5 t'))
}

function noTrace(ended: Ended): void {
  expect(ended.error).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m)
}

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
    const faulty = await run('check', '--content', content, '--lots', 'tuff/T-1')
    expect(faulty.status).toBe(1)
    expect(faulty.error).toContain('quantity-comma')
  })
  it('ends quietly where its reader has seen enough', async () => {
    const check = join(ROOT, 'src/commands/check.ts')
    const shell = `"${process.execPath}" "${check}" --json | head -c 10`
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

describe('npm run issue', () => {
  const issue = (folder: string, ...more: readonly string[]) =>
    run(
      'issue',
      'tuff/T-1',
      '--content',
      folder,
      '--by',
      'A. Mason',
      '--function',
      'manager',
      '--reason',
      'all tests done',
      ...more,
    )

  it('freezes a document, adds its line and finds nothing changed afterwards', async () => {
    const folder = contentCopy()
    expect(await issue(folder)).toMatchObject({ status: 0, error: '' })
    const document = JSON.parse(readFileSync(join(folder, 'issued/tuff/T-1/0.json'), 'utf8')) as {
      state: string
      revision: number
    }
    expect(document).toMatchObject({ revision: 0, state: 'complete' })
    expect(readFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'utf8')).toMatch(
      /revisions:\n {2}- \{ number: 0, date: 2026-04-10, by: A\. Mason, /,
    )
    expect((await run('check', '--content', folder)).out).not.toMatch(OF_DOCUMENTS)
  })
  it('is provisional while a planned test is awaited, and complete in the next revision', async () => {
    const folder = contentCopy()
    const record = join(folder, 'lots/tuff/T-1.yaml')
    const whole = readFileSync(record, 'utf8')
    // Before the cubes were crushed, the age is only planned.
    writeFileSync(record, whole.replace(/\{ age: 7 d, tested: .* \}$/m, '{ age: 7 d }'))
    expect(await issue(folder, '--date', '2026-03-17')).toMatchObject({ status: 0, error: '' })
    const line = /revisions:[\s\S]*/.exec(readFileSync(record, 'utf8'))?.[0] ?? ''
    writeFileSync(record, `${whole.trimEnd()}\n\n${line}`)
    const second = await issue(folder)
    expect(
      [0, 1].map(
        (number) =>
          (
            JSON.parse(readFileSync(join(folder, `issued/tuff/T-1/${number}.json`), 'utf8')) as {
              state: string
            }
          ).state,
      ),
    ).toEqual(['provisional', 'complete'])
    expect(second.out).toContain('revision 1, all planned tests reported: meets')
  })
  it('leaves the document alone when the record changes, and finds the change and the other verdict', async () => {
    const folder = contentCopy()
    await issue(folder)
    const path = join(folder, 'issued/tuff/T-1/0.json')
    const before = readFileSync(path, 'utf8')
    const record = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(
      record,
      readFileSync(record, 'utf8').replace(
        'a: 78.4 kN, b: 80.1 kN, c: 77.2 kN',
        'a: 58.4 kN, b: 60.1 kN, c: 57.2 kN',
      ),
    )
    const { out } = await run('check', '--content', folder)
    expect(out).toMatch(/differs from revision 0 as issued in 3 places \[changed-after-issue\//)
    expect(out).toContain('specimens › a: 78.4 kN when issued, 58.4 kN today')
    expect(out).toMatch(/Strength, edition trial: issued as "meets", today "does not meet"/)
    expect(readFileSync(path, 'utf8')).toBe(before)
  })
  it('stops check where a document is not the one whose digest is on record', async () => {
    const folder = contentCopy()
    await issue(folder)
    const path = join(folder, 'issued/tuff/T-1/0.json')
    writeFileSync(path, readFileSync(path, 'utf8').replace('78.4 kN', '88.4 kN'))
    const ended = await run('check', '--content', folder)
    expect(ended.status).toBe(1)
    expect(ended.error).toContain('[issued-altered]')
  })
  it('writes neither document nor line where the record’s revisions are a list that a line does not fit into', async () => {
    const folder = contentCopy()
    const path = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(path, `${readFileSync(path, 'utf8')}revisions: []\n`)
    const before = readFileSync(path, 'utf8')
    const ended = await issue(folder)
    expect(ended.status).toBe(1)
    expect(ended.error).toMatch(/cannot be added.*fix: write revisions: as a list/s)
    noTrace(ended)
    expect(readFileSync(path, 'utf8')).toBe(before)
    expect(existsSync(join(folder, 'issued'))).toBe(false)
  })
  it('says in one line which file cannot be written, and leaves nothing half written', async () => {
    const folder = contentCopy()
    const document = join(folder, 'issued/tuff/T-1/0.json')
    mkdirSync(document, { recursive: true })
    const ended = await issue(folder)
    expect(ended.status).toBe(1)
    expect(ended.error).toBe(
      `${document} cannot be written: a folder stands in its place.\n` +
        'fix: check the permissions, the free space and what is in its place, then issue again\n',
    )
    expect(readdirSync(join(folder, 'issued/tuff/T-1'))).toEqual(['0.json'])
    rmSync(join(folder, 'issued'), { recursive: true })
    writeFileSync(join(folder, 'issued'), '')
    expect((await issue(folder)).error).toMatch(/^issued\/:1:1: this is not a folder, or it cannot be read/)
  })
  it('says to resume where a document is there and its line cannot be written', async () => {
    const folder = contentCopy()
    // A folder stands where the new text is written first.
    mkdirSync(join(folder, 'lots/tuff/.T-1.yaml.next'))
    const ended = await issue(folder)
    expect(ended.status).toBe(1)
    expect(ended.error).toMatch(
      /lots\/tuff\/T-1\.yaml cannot be written: .*\nfix: .*, then run npm run issue -- --resume\n$/,
    )
    rmSync(join(folder, 'lots/tuff/.T-1.yaml.next'), { recursive: true })
    expect((await run('issue', '--resume', '--content', folder)).out).toContain('revision 0 is finished')
  })
  it('keeps the permissions of a record', async () => {
    const folder = contentCopy()
    const record = join(folder, 'lots/tuff/T-1.yaml')
    chmodSync(record, 0o600)
    expect((await issue(folder)).status).toBe(0)
    expect(statSync(record).mode & 0o777).toBe(0o600)
  })
  it('issues several lots, or all that are due, and then has nothing more to issue', async () => {
    const both = contentCopy()
    expect((await issue(both, 'tuff/T-9')).out).toContain('2 revisions issued.')
    const folder = contentCopy()
    const due = () =>
      run(
        'issue',
        '--due',
        '--yes',
        '--content',
        folder,
        '--by',
        'A. Mason',
        '--function',
        'm',
        '--reason',
        'r',
      )
    expect((await due()).out).toMatch(
      /^tuff\/T-1, revision 0, all planned tests reported: .*^tuff\/T-9, revision 0/ms,
    )
    expect(await due()).toMatchObject({ status: 0, out: 'No lot is due.\n' })
    expect(await run('check', '--content', folder)).toMatchObject({ status: 0, error: '' })
  })
  it('leaves what is due of another producer to that producer’s signatories', async () => {
    const folder = contentCopy()
    const write = (path: string, text: string) => {
      writeFileSync(join(folder, path), text)
    }
    const producer = (name: string, by: string) =>
      `name: ${name}\naddress: [1 Lane]\nplants: { mill: { name: Mill } }\nsignatories: [{ name: ${by}, function: manager }]\n`
    write('producers/hill.yaml', producer('Hill', 'A. Mason'))
    write('producers/dale.yaml', producer('Dale', 'B. Reed'))
    write(
      'sources/dale-tuff.yaml',
      readFileSync(join(folder, 'sources/tuff.yaml'), 'utf8').replace('producer: hill', 'producer: dale'),
    )
    mkdirSync(join(folder, 'lots/dale-tuff'))
    renameSync(join(folder, 'lots/tuff/T-9.yaml'), join(folder, 'lots/dale-tuff/D-9.yaml'))
    const due = (by: string, ...more: string[]) =>
      run('issue', '--due', '--yes', '--content', folder, '--by', by, '--reason', 'r', ...more)
    expect(await due('C. Wood')).toMatchObject({
      status: 2,
      error: expect.stringContaining('C. Wood is not among the signatories of any producer'),
    })
    const own = await due('B. Reed', '--function', 'manager')
    expect(own.out).toMatch(/^dale-tuff\/D-9, revision 0(?!.*tuff\/T-1)/s)
    expect(own.error).toBe('1 lot of other producers is due as well; B. Reed does not sign for them.\n')
    expect((await due('A. Mason')).out).toMatch(/^tuff\/T-1, revision 0/)
  })
  it('leaves a lot provisional while a result is overdue, and takes it as due when the late one comes', async () => {
    const folder = contentCopy()
    const edit = (path: string, from: string | RegExp, to: string) => {
      const file = join(folder, path)
      writeFileSync(file, readFileSync(file, 'utf8').replace(from, to))
    }
    const dueOn = (date: string) => {
      edit('site.yaml', /as-of: .*/, `as-of: ${date}`)
      const said = ['--by', 'A. Mason', '--function', 'm', '--reason', '28-day results added']
      return run('issue', '--due', '--yes', '--content', folder, ...said)
    }
    rmSync(join(folder, 'lots/tuff/T-9.yaml'))
    edit('lots/tuff/T-1.yaml', 'shipments:', '      - { age: 28 d }\nshipments:')
    expect((await dueOn('2026-04-10')).out).toMatch(
      /^tuff\/T-1, revision 0, provisional: meets so far; 28 d .* due 8 April 2026 \(under strength\)$/m,
    )
    expect(await dueOn('2026-05-01')).toMatchObject({ status: 0, out: 'No lot is due.\n' })
    expect((await run('check', '--content', folder)).out).toContain('[result-overdue/')
    const late = 'age: 28 d, tested: 2026-04-08T10:00, reported: 2026-05-06'
    edit('lots/tuff/T-1.yaml', 'age: 28 d', `${late}, specimens: { d: 98.4 kN, e: 99.1 kN, f: 97.2 kN }`)
    const control = `  - { ${late}, specimens: { d: 128.2 kN, e: 130.4 kN, f: 129.0 kN } }\n`
    edit('controls/K1.yaml', /$/, control)
    expect((await dueOn('2026-05-07')).out).toMatch(
      /^tuff\/T-1, revision 1, all planned tests reported: .*state: provisional before, all planned tests reported now/s,
    )
    expect((await run('check', '--content', folder)).out).not.toMatch(OF_DOCUMENTS)
  })
  it('refuses what has not changed, and says what a correction changes', async () => {
    const folder = contentCopy()
    await issue(folder)
    const again = await issue(folder)
    expect(again).toMatchObject({ status: 1, out: '' })
    expect(again.error).toContain('tuff/T-1 would say nothing new after revision 0; nothing was issued.')
    const record = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(record, readFileSync(record, 'utf8').replace('a: 78.4 kN', 'a: 79.4 kN'))
    const corrected = await issue(folder)
    expect(corrected.out).toContain('specimens › a: 78.4 kN when issued, 79.4 kN today')
    expect(corrected.out).not.toContain('state:')
    expect((await run('check', '--content', folder)).out).not.toMatch(OF_DOCUMENTS)
  })
  it('finishes a whole document without its line, and removes one that is not whole', async () => {
    const folder = contentCopy()
    await issue(folder)
    const record = join(folder, 'lots/tuff/T-1.yaml')
    const after = readFileSync(record, 'utf8')
    // Ended after the document: the line is still to be written.
    writeFileSync(record, after.replace(/\nrevisions:[\s\S]*/, '\n'))
    expect((await run('check', '--content', folder)).error).toContain('[issued-unrecorded]')
    const resume = () => run('issue', '--resume', '--content', folder)
    expect((await resume()).out).toBe('tuff/T-1: revision 0 is finished.\n')
    expect(readFileSync(record, 'utf8')).toBe(after)
    writeFileSync(join(folder, 'issued/tuff/T-1/1.json'), '{"format":2,"cert')
    expect((await resume()).out).toBe(
      'tuff/T-1: a half-written document of revision 1 (17 bytes) was removed.\n',
    )
    expect(await resume()).toMatchObject({ status: 0, out: 'Nothing was left behind.\n' })
    expect(await run('check', '--content', folder)).toMatchObject({ status: 0, error: '' })
  })
  it('lets two commands at once not spoil each other', async () => {
    const folder = contentCopy()
    const ended = await Promise.all([issue(folder), issue(folder), issue(folder)])
    expect(ended.filter(({ status }) => status === 0)).toHaveLength(1)
    // Who issued nothing tells of no revision.
    expect(ended.filter(({ out }) => out !== '')).toHaveLength(1)
    for (const own of ended) noTrace(own)
    expect(await run('check', '--content', folder)).toMatchObject({ status: 0, error: '' })
    expect(readdirSync(join(folder, 'issued/tuff/T-1'))).toEqual(['0.json'])
  })
  it('takes over the lock of a command that was killed, and not that of one at work', async () => {
    const folder = contentCopy()
    const lock = join(folder, '.issue-lock')
    writeFileSync(lock, JSON.stringify({ pid: process.pid, host: hostname() }))
    expect((await issue(folder)).error).toContain('Another command is issuing')
    writeFileSync(lock, JSON.stringify({ pid: 2 ** 30, host: hostname() }))
    expect((await issue(folder)).status).toBe(0)
    expect(existsSync(lock)).toBe(false)
  })
  it('names the lots that an interruption left out, and issues each of the others whole', async () => {
    const folder = contentCopy()
    const text = readFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'utf8')
    const lots = Array.from({ length: 100 }, (_, index) => `tuff/U-${index}`)
    for (const lot of lots) writeFileSync(join(folder, `lots/${lot}.yaml`), text)
    const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'all tests done']
    const { child, ended } = start('issue', ...lots, '--content', folder, ...said)
    const begun = join(folder, 'issued/tuff/U-0/0.json')
    while (!existsSync(begun) && child.exitCode === null) await new Promise((done) => setTimeout(done, 1))
    child.kill('SIGINT')
    const { status, out, error } = await ended
    expect([status, out.includes('100 revisions issued')]).toEqual([130, false])
    const [, issued = '', left = ''] =
      /^Interrupted: (\d+) of 100 revisions issued\.\nNot begun: (.*)\n/.exec(error) ?? []
    const whole = lots.filter((lot) => existsSync(join(folder, `issued/${lot}/0.json`)))
    expect(whole).toHaveLength(Number(issued))
    expect([...whole, ...left.split(', ')].sort()).toEqual([...lots].sort())
    expect(await run('check', '--content', folder, '--lots', 'tuff/U-0')).toMatchObject({
      status: 0,
      error: '',
    })
  }, 60_000)
  it.each([
    ['--by', '', /^--by says nothing\.\nfix: /],
    ['--by', ' ', /^--by says nothing\.\nfix: /],
    ['--function', '', /^--function says nothing\.\nfix: /],
    ['--reason', 'a\nb', /^--reason holds U\+000A, which nobody sees\.\nfix: /],
    ['--by', 'A'.repeat(20_000), /^--by is a text of 20000 characters, and a record takes 500\.\nfix: /],
  ])(
    'refuses %s where it says nothing that a record takes, with 2 and one clear line',
    async (option, text, message) => {
      const ended = await issue(contentCopy(), option, text)
      expect(ended.status).toBe(2)
      expect(ended.error).toMatch(message)
      expect(ended.error.trimEnd().split('\n')).toHaveLength(2)
    },
  )
  it('withdraws with a reason and a replacement', async () => {
    const folder = contentCopy()
    await issue(folder)
    expect((await issue(folder, '--withdraw', '--replaced-by', 'tuff/T-9')).out).toContain(
      'tuff/T-1, revision 1, withdrawn 10 April 2026; was: meets (under strength)\n',
    )
    expect(JSON.parse(readFileSync(join(folder, 'issued/tuff/T-1/1.json'), 'utf8'))).toMatchObject({
      state: 'withdrawn',
      // T-9 was never issued: which lot it is stands in the private part.
      replacedBy: 'a lot not yet issued',
      replaces: { revision: 0 },
    })
  })
  it.each([
    [['tuff/T-7'], /There is no lot tuff\/T-7/],
    [['tuff/T-1', '--withdraw'], /was never issued/],
    [['tuff/T-1', '--replaced-by', 'tuff/T-9'], /can be used only with --withdraw/],
    [['tuff/T-1', '--date', '2026-03-01'], /was sampled after/],
    [['tuff/T-1', '--date', '2030-01-01'], /later than the as-of date/],
    [['tuff/T-1', '--date', '2026-03-12'], /holds a result of 2026-03-18T10:05, later/],
    [[], /No lot is named/],
    [['tuff/T-1', '--due'], /not both/],
    [['tuff/T-1', '--resume'], /--resume takes neither lots nor --due/],
    [['--due'], /2 lots would be issued.*give --yes/s],
  ])('refuses wrong use with one line and 2: %o', async (args, message) => {
    const ended = await run(
      'issue',
      ...args,
      '--content',
      contentCopy(),
      '--by',
      'A. Mason',
      '--function',
      'manager',
      '--reason',
      'x',
    )
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(message)
    noTrace(ended)
  })
})

describe('npm run build and npm start', () => {
  it('leave the earlier site as it was when a record is at fault', async () => {
    const folder = contentCopy()
    const out = join(folder, '../site')
    expect(await run('build', '--content', folder, '--out', out)).toMatchObject({ status: 0 })
    const before = readFileSync(join(out, 'index.html'), 'utf8')
    spoil(folder)
    const ended = await run('build', '--content', folder, '--out', out)
    expect(ended.status).toBe(1)
    expect(ended.error).toContain('the earlier site stays as it was')
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe(before)
  })
  it('refuse an output folder that holds something else', async () => {
    const ended = await run('build', '--content', contentCopy(), '--out', join(ROOT, 'src'))
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(/holds or lies in/)
    noTrace(ended)
  })
  it('say in one line that a port is taken', async () => {
    const server = createServer()
    const port = await new Promise<number>((done) => {
      server.listen(0, '127.0.0.1', () => {
        done((server.address() as { port: number }).port)
      })
    })
    const folder = contentCopy()
    const ended = await run(
      'start',
      '--content',
      folder,
      '--out',
      join(folder, '../site'),
      '--port',
      String(port),
    )
    server.close()
    expect(ended.status).toBe(1)
    expect(ended.error).toContain(`Port ${port} is taken`)
    noTrace(ended)
  })
})
