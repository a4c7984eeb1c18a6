/** What may be in the way of an issue: wrong use, other commands, files that cannot be written, an interruption. */
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { contentCopy, copyWithManyLots, issue, noTrace, run, start } from './run-command.ts'

describe('npm run issue', () => {
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
    // One part holds who issued it, which nothing may leave behind unsaid.
    expect(readdirSync(join(folder, 'issued/parts'))).toEqual([])
    rmSync(join(folder, 'issued'), { recursive: true })
    writeFileSync(join(folder, 'issued'), '')
    expect((await issue(folder)).error).toMatch(/^issued\/:1:1: this is not a folder, or it cannot be read/)
  })
  it('issues a lot that a faulty record does not touch, keeps every part, and refuses those that it does with the reason', async () => {
    const folder = contentCopy()
    const text = readFileSync(join(folder, 'lots/tuff/T-9.yaml'), 'utf8')
    // Dated, and sampled after T-1.
    writeFileSync(join(folder, 'lots/tuff/T-9.yaml'), text.replace('laboratory: quay', 'laboratory: harbour'))
    writeFileSync(join(folder, 'studies/heat.yaml'), 'title: [')
    const left = join(folder, `issued/parts/sha256-${'0'.repeat(64)}.json`)
    mkdirSync(join(folder, 'issued/parts'), { recursive: true })
    writeFileSync(left, '{}')
    const well = await issue(folder)
    expect(well).toMatchObject({
      status: 0,
      error: '2 other records have faults; npm run check shows them.\n',
    })
    expect(well.out).toContain('1 revision issued')
    // What the revisions of a record at fault refer to is not known.
    expect(existsSync(left)).toBe(true)
    const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'due', '--content', folder]
    const refused = await run('issue', 'tuff/T-9', ...said)
    expect([refused.status, refused.out]).toEqual([1, ''])
    expect(refused.error).toMatch(/^lots\/tuff\/T-9\.yaml:\d+:\d+: there is no laboratory "harbour"/)
    expect(refused.error).toContain(
      '\ntuff/T-9 cannot be issued because of a fault in lots/tuff/T-9.yaml, which is its own record.\nNothing was issued.\n',
    )
    expect(refused.error).not.toContain('heat')
    noTrace(refused)
  })
  it('leaves out of what is due the lots that a fault touches, names them and ends with 1', async () => {
    const folder = contentCopy()
    const path = join(folder, 'lots/tuff/T-9.yaml')
    writeFileSync(path, `${readFileSync(path, 'utf8')}]`)
    const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'due', '--content', folder]
    const ended = await run('issue', '--due', '--yes', ...said)
    expect(ended).toMatchObject({ status: 1, out: 'Nothing was issued.\n' })
    expect(ended.error).toBe(
      'tuff/T-1 cannot be issued because of a fault in lots/tuff/T-9.yaml, which is a lot of the same source, perhaps sampled before it: its dates cannot be read.\n' +
        '1 other record has a fault; npm run check shows it.\n',
    )
    writeFileSync(join(folder, 'producers/hill.yaml'), '[')
    expect((await run('issue', '--due', '--yes', ...said)).error).toMatch(
      /^producers\/hill\.yaml has a fault, so it is not known whom A\. Mason signs for\.\nfix: /,
    )
  })
  it('leaves out of what is due a lot whose list of revisions takes no further one, and issues the others', async () => {
    const folder = contentCopy()
    const path = join(folder, 'lots/tuff/T-9.yaml')
    const text = `${readFileSync(path, 'utf8')}\nrevisions: []\n`
    writeFileSync(path, text)
    const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'due', '--content', folder]
    const ended = await run('issue', '--due', '--yes', ...said)
    expect(ended.status).toBe(1)
    expect(ended.out).toContain('1 revision issued.')
    expect(ended.error).toMatch(
      /^tuff\/T-9 is left out\. The revision cannot be added to .*T-9\.yaml, .*\nfix: write revisions: as a list/,
    )
    expect(readFileSync(path, 'utf8')).toBe(text)
    expect(readFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'utf8')).toContain('reason: due')
    expect(existsSync(join(folder, 'issued/tuff/T-9'))).toBe(false)
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
    expect((await issue(folder)).error).toContain('Another command is writing')
    writeFileSync(lock, JSON.stringify({ pid: 2 ** 30, host: hostname() }))
    expect((await issue(folder)).status).toBe(0)
    expect(existsSync(lock)).toBe(false)
  })
  it('names the lots that an interruption left out, and issues each of the others whole', async () => {
    const folder = copyWithManyLots(100)
    const lots = Array.from({ length: 100 }, (_, index) => `tuff/U-${index}`)
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
