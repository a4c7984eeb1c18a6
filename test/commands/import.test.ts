import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { newSite } from './new-site-folder.ts'
import { noTrace, run } from './run-command.ts'

const MAP = `
numbers: { decimal: comma }
dates: day-month-year
every: { source: coal-fly-ash, laboratory: laboratory, sample: C, sample-kind: composite, sampled-from: 2026-01-05T06:00, sampled-to: 2026-01-11T14:00 }
tables:
  - holds: analyses
    columns:
      Lot: lot
      From: produced-from
      To: produced-to
      Tonnes: { to: quantity, unit: t }
      Tested: tested
      LOI: { to: loss-on-ignition, unit: "%" }
      7 d: { to: strength-activity-index, unit: "%", condition: c311, age: 7 d }
`
const TABLE = `Lot;From;To;Tonnes;Tested;LOI;7 d
CFA-A;05.01.2026;11.01.2026;1450;14.01.2026;2,7;82
CFA-B;12.01.2026;18.01.2026;1380;21.01.2026;6,6;84
`

async function prepared(table = TABLE) {
  const { folder } = await newSite({ producer: 'Hill Ash' })
  const near = dirname(folder)
  writeFileSync(join(near, 'sheet.csv'), table)
  writeFileSync(join(near, 'map.yaml'), MAP)
  const args = [join(near, 'sheet.csv'), '--map', join(near, 'map.yaml'), '--content', folder]
  const lot = (name: string) => join(folder, 'lots/coal-fly-ash', `${name}.yaml`)
  return { near, folder, args, lot }
}

describe('npm run import', () => {
  it('shows records and verdicts first, writes them when told to, and finds nothing to do the second time', async () => {
    const { args, lot } = await prepared()
    const dry = await run('import', ...args)
    expect(dry).toMatchObject({ status: 0, error: '' })
    expect(dry.out).toContain('new lot coal-fly-ash/CFA-B')
    expect(dry.out).toMatch(/CFA-B:.*\n\s+c618-23e1: .*would not meet/)
    expect(() => readFileSync(lot('CFA-A'))).toThrow()
    expect((await run('import', ...args, '--write')).out).toContain('2 records written.')
    const text = readFileSync(lot('CFA-A'), 'utf8')
    expect(text).toContain('loss-on-ignition: 2.7 %')
    const again = await run('import', ...args, '--write')
    expect(again).toMatchObject({ status: 0, error: '' })
    expect(again.out).toContain('nothing is to do')
    expect(readFileSync(lot('CFA-A'), 'utf8')).toBe(text)
    // A silo for both, another loss on ignition for one: only what was not on record is added.
    const [file = '', , map = ''] = args
    writeFileSync(map, MAP.replace('      LOI', '      Silo: silo\n      LOI'))
    const silos = TABLE.replace('LOI', 'Silo;LOI').replace('6,6', '3;6,6').replace('2,7', '3;2,8')
    writeFileSync(file, silos)
    const { out } = await run('import', ...args, '--replace')
    expect(out).toMatch(
      /^lot coal-fly-ash\/CFA-A: adds silo; changes analyses 1, results, loss-on-ignition$/m,
    )
    expect(out).toMatch(/^lot coal-fly-ash\/CFA-B: adds silo$/m)
  })
  it('refuses a file with a cell that cannot be taken: its address, the reason, how to fix it; nothing is written', async () => {
    const { args, lot } = await prepared(TABLE.replace('6,6', '6.6.6'))
    const ended = await run('import', ...args, '--write')
    noTrace(ended)
    expect(ended.status).toBe(1)
    expect(ended.error).toMatch(/^sheet\.csv!F3: .*6\.6\.6.* \[import-cell\]\n {2}fix: .+$/m)
    expect(() => readFileSync(lot('CFA-A'))).toThrow()
  })
  it('tells one fault of each cause with the first places and a count, each with --all', async () => {
    const rows = Array.from(
      { length: 30 },
      (_, at) => `CFA-${at};05.01.2026;11.01.2026;1450;14.01.2026;${at}.6.6;82`,
    )
    const { args } = await prepared(`${[TABLE.split('\n')[0], ...rows].join('\n')}\n`)
    const short = await run('import', ...args)
    expect(short.status).toBe(1)
    expect(short.error).toMatch(
      /^sheet\.csv!F2: found "0\.6\.6".*\[import-cell\]\n {2}likewise F3, F4 and 27 more; --all shows each\n {2}fix: .+\n30 errors\. Nothing was written\.\n$/,
    )
    const whole = await run('import', ...args, '--all')
    expect(whole.error.match(/^sheet\.csv!F\d+: /gm)).toHaveLength(30)
    expect(whole.error).not.toContain('likewise')
  })
  it('says in one line what is wrong with a file or a map', async () => {
    const { near, args } = await prepared()
    const missing = await run('import', join(near, 'none.csv'), ...args.slice(1))
    expect([missing.status, missing.error]).toEqual([
      2,
      expect.stringMatching(/^There is no file .*\nfix: .*\n$/),
    ])
    writeFileSync(
      join(near, 'map.yaml'),
      MAP.replace('LOI: { to: loss-on-ignition', 'LOI: { to: loss-of-ignition'),
    )
    const map = await run('import', ...args)
    expect(map.status).toBe(1)
    expect(map.error).toMatch(/map\.yaml:\d+:\d+: .*loss-of-ignition/)
    expect(map.error).toContain('loss-on-ignition')
  })
})
