import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')

interface Report {
  readonly asOf: string
  readonly diagnostics: readonly Readonly<Record<'code' | 'file' | 'message' | 'mend', string>>[]
  readonly lots: readonly {
    readonly id: string
    readonly findings: readonly { readonly check: string }[]
    readonly verdicts: readonly { readonly clauses: readonly { readonly outcome: string }[] }[]
  }[]
}

/** @param epoch value of SOURCE_DATE_EPOCH; none without it */
function check(folder: string, epoch?: string, ...more: readonly string[]) {
  const { SOURCE_DATE_EPOCH: _, ...env } = process.env
  const ended = spawnSync(
    process.execPath,
    [join(ROOT, 'src/commands/check.ts'), '--json', '--content', folder, ...more],
    { encoding: 'utf8', env: epoch === undefined ? env : { ...env, SOURCE_DATE_EPOCH: epoch } },
  )
  return { ...ended, report: (ended.status === 2 ? undefined : JSON.parse(ended.stdout)) as Report }
}

/** The good records of the diagnostics. @param site what becomes of the line "as-of" */
function contentWith(site: string): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'as-of-')), 'content')
  cpSync(join(ROOT, 'test/diagnostics/base'), folder, { recursive: true })
  const path = join(folder, 'site.yaml')
  writeFileSync(path, readFileSync(path, 'utf8').replace('as-of: 2026-04-10\n', site))
  return folder
}

describe('the as-of date', () => {
  it('is the one asked for, else that of the site, else the day of SOURCE_DATE_EPOCH', () => {
    // 1775865600 s is 2026-04-11T00:00Z; a second earlier it is still the 10th.
    const [stated, silent] = [contentWith('as-of: 2026-04-09\n'), contentWith('')]
    expect(check(stated, '1775865600', '--as-of', '2026-03-30').report.asOf).toBe('2026-03-30')
    expect(check(stated, '1775865600').report.asOf).toBe('2026-04-09')
    expect(check(silent, '1775865600').report.asOf).toBe('2026-04-11')
    expect(check(silent, '1775865599').report.asOf).toBe('2026-04-10')
  })
  it('is today in UTC where nothing says otherwise', () => {
    const today = () => new Date().toISOString().slice(0, 10)
    const before = today()
    const { asOf } = check(contentWith('')).report
    expect([before, today()]).toContain(asOf)
  })
  it('is refused as a SOURCE_DATE_EPOCH that is no number of seconds', () => {
    const ended = check(contentWith(''), 'yesterday')
    expect(ended.status).toBe(2)
    expect(ended.stderr).toContain('SOURCE_DATE_EPOCH is "yesterday"')
  })
  it('leaves later facts out where an earlier day is asked for, and refuses them where it is the site’s', () => {
    expect(check(contentWith('as-of: 2026-04-10\n'), undefined, '--as-of', '2026-03-12')).toMatchObject({
      status: 0,
      report: { diagnostics: [] },
    })
    const late = check(contentWith('as-of: 2026-03-12\n'))
    expect(late.status).toBe(1)
    expect([...new Set(late.report.diagnostics.map(({ code }) => code))]).toEqual(['date-ahead'])
    // 1773273600 s is 2026-03-12.
    const byClock = check(contentWith(''), '1773273600').report.diagnostics
    expect(byClock.map(({ message }) => message)).toEqual(
      late.report.diagnostics.map(({ message }) => message),
    )
    expect([...new Set(late.report.diagnostics.map(({ mend }) => mend))]).toEqual([
      'correct the date, or move as-of in site.yaml',
    ])
    expect([...new Set(byClock.map(({ mend }) => mend))]).toEqual([
      'correct the date; what has not happened yet is written once it has',
    ])
  })
  it('takes what lies ahead of the site’s day as having happened by a later day that is asked for', () => {
    const ahead = check(contentWith('as-of: 2026-03-12\n'), undefined, '--as-of', '2026-04-10')
    expect(ahead).toMatchObject({ status: 0, report: { diagnostics: [], asOf: '2026-04-10' } })
  })
  it('is that of a build as well', () => {
    const content = contentWith('as-of: 2026-03-12\n')
    const build = (...more: readonly string[]) => {
      const all = ['--content', content, '--out', join(content, '../site'), ...more]
      return spawnSync(process.execPath, [join(ROOT, 'src/commands/build.ts'), ...all], { encoding: 'utf8' })
    }
    expect(build()).toMatchObject({ status: 1, stderr: expect.stringContaining('[date-ahead]') })
    expect(build('--as-of', '2026-04-10')).toMatchObject({ status: 0, stderr: '' })
  })
})

const FILES = {
  'producers/hill.yaml':
    'name: Hill\naddress: [1 Mill Lane]\nsignatories: [{ name: M. Okafor, function: quality manager }]\n',
  'laboratories/quay.yaml': 'name: Quay\naddress: [2 Quay]\nstanding: in-house\n',
  'sources/tuff.yaml': 'name: Tuff\nproducer: hill\nkind: raw-natural-pozzolan\nclass: N\n',
  'conditions/warm.yaml': `title: warm
standing: modified
replacement: { amount: 20 %, by: mass }
water: { w/cm: 0.485 }
curing: { medium: saturated-lime-water, temperature: 50 degC }
ages: [{ age: 7 d, within: 400 h }]
strength: { specimen: { shape: cube, side: 50 mm } }
`,
  'criteria/trial.yaml': `title: Trial
edition: "1"
kinds: [raw-natural-pozzolan]
clauses:
  - { clause: uniform, property: strength-activity-index, condition: warm, age: 7 d, deviation-from: { preceding: 10 }, magnitude-at-most: 5.0 percentage points }
`,
  'controls/K1.yaml': `condition: warm
laboratory: quay
cement: { lot: PC-1 }
cast: 2026-03-01T09:00
strength: [{ age: 7 d, tested: 2026-03-08T09:00, mean: 40.0 MPa, of: 3 }]
`,
  // 32.0 of 40.0 MPa is 80 %.
  'lots/tuff/A.yaml': lot(
    '2026-02-27',
    '2026-03-01',
    '{ age: 7 d, tested: 2026-03-08T09:30, mean: 32.0 MPa, of: 3 }',
  ),
  // 33.6 of 40.0 MPa is 84 %.
  'lots/tuff/B.yaml': lot(
    '2026-03-05',
    '2026-03-07',
    '{ age: 7 d, tested: 2026-03-14T09:30, mean: 33.6 MPa, of: 3 }',
  ),
}

function lot(sampled: string, cast: string, readings: string): string {
  return `produced: { from: ${sampled}, to: ${sampled} }
quantity: 500 t
samples: [{ id: C, kind: grab, on: ${sampled} }]
tests:
  - { sample: C, condition: warm, control: K1, laboratory: quay, cast: ${cast}T09:00, strength: [${readings}] }
`
}

const site = (asOf: string) => `title: Trial\nunits: SI\nas-of: ${asOf}\ncriteria: [trial]\ngrace: 7 d\n`

describe('a retest of an earlier lot after a later one was issued', () => {
  it('changes the outcome from its own day on, and is no reason to judge the certificate otherwise', () => {
    const folder = mkdtempSync(join(tmpdir(), 'retest-'))
    const write = (path: string, text: string) => {
      mkdirSync(dirname(join(folder, path)), { recursive: true })
      writeFileSync(join(folder, path), text)
    }
    for (const [path, text] of Object.entries(FILES)) write(path, text)
    write('site.yaml', site('2026-03-15'))
    const options = ['--content', folder, '--by', 'M. Okafor', '--reason', 'released']
    const issue = [join(ROOT, 'src/commands/issue.ts'), 'tuff/B', ...options]
    execFileSync(process.execPath, issue)
    // 36.0 of 40.0 MPa is 90 %: B, 4 points above 80 %, lies 6 below it.
    const retest =
      '{ age: 7 d, tested: 2026-03-20T09:30, retest-of: 2026-03-08T09:30, mean: 36.0 MPa, of: 3 }'
    const path = 'lots/tuff/A.yaml'
    write(path, FILES[path].replace('of: 3 }]', `of: 3 }, ${retest}]`))
    write('site.yaml', site('2026-04-10'))
    const on = (...asOf: readonly string[]) => {
      const { report } = check(folder, undefined, ...asOf)
      expect(report.diagnostics).toEqual([])
      const later = report.lots.find(({ id }) => id === 'tuff/B')
      const findings = later?.findings.map((finding) => finding.check)
      return [later?.verdicts[0]?.clauses[0]?.outcome, findings]
    }
    expect(on('--as-of', '2026-03-19')).toEqual(['meets', []])
    expect(on('--as-of', '2026-03-20')).toEqual(['does-not-meet', []])
    expect(on()).toEqual(['does-not-meet', []])
  })
})
