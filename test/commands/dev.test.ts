/** The pages of npm run dev beside an editor, by what the server sends: a script of the page listens to the same socket. */
import type { ChildProcess } from 'node:child_process'
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { contentCopy, start } from './run-command.ts'

let folder = ''
let child: ChildProcess
let address = ''
let socket: WebSocket
let reloads = 0
let told = ''

beforeAll(async () => {
  folder = contentCopy()
  child = start('dev', '--content', folder, '--port', String(20_000 + (process.pid % 20_000))).child
  child.stderr?.on('data', (text: Buffer) => (told += text))
  address = await new Promise<string>((done) => {
    let out = ''
    child.stdout?.on('data', (text: Buffer) => {
      out += text
      const found = /open (\S+)/.exec(out)?.[1]
      if (found !== undefined) done(found)
    })
  })
  const { host, origin } = new URL(address)
  const script = await (await fetch(`${origin}/@vite/client`)).text()
  const token = /wsToken = "([^"]+)"/.exec(script)?.[1]
  socket = new WebSocket(`ws://${host}/?token=${token}`, 'vite-hmr')
  socket.addEventListener('message', ({ data }) => {
    if (String(data).includes('full-reload')) reloads += 1
  })
  await new Promise((done) => socket.addEventListener('open', done))
})

afterAll(() => {
  socket.close()
  child.kill()
})

async function page(path: string): Promise<{ status: number; text: string }> {
  const response = await fetch(`${address}${path}`, { headers: { accept: 'text/html' } })
  return { status: response.status, text: await response.text() }
}

/** Saves and waits until open pages have been told to fetch themselves anew. */
async function saved(save: () => void): Promise<void> {
  const before = reloads
  save()
  const ends = Date.now() + 20_000
  while (reloads === before && Date.now() < ends) await new Promise((done) => setTimeout(done, 10))
  expect(reloads).toBeGreaterThan(before)
}

const lot = (name: string) => join(folder, `lots/tuff/${name}.yaml`)
const text = () => readFileSync(lot('T-1'), 'utf8')

describe('npm run dev', () => {
  it('shows what was saved, in place and by renaming, one after the other', async () => {
    const sound = text()
    expect((await page('lots/tuff/T-1/')).text).toContain('1450')
    for (const [place, tonnes] of [1451, 1452, 1453, 1454].entries()) {
      const next = sound.replace('1450 t', `${tonnes} t`)
      await saved(() => {
        writeFileSync(place % 2 === 0 ? lot('T-1') : `${lot('T-1')}~`, next)
        if (place % 2 === 1) renameSync(`${lot('T-1')}~`, lot('T-1'))
      })
      expect((await page('lots/tuff/T-1/')).text).toContain(String(tonnes))
    }
    await saved(() => writeFileSync(lot('T-1'), sound))
  })
  it('shows a fault as text, on its own page alone and above every other, and recovers', async () => {
    const sound = text()
    await saved(() => writeFileSync(lot('T-1'), sound.replace('1450 t', '<script>alert(1)</script>')))
    const [own, other] = [await page('lots/tuff/T-1/'), await page('lots/tuff/T-9/')]
    expect([own.status, other.status]).toEqual([500, 200])
    for (const shown of [own, other]) {
      expect(shown.text).toContain('lots/tuff/T-1.yaml:2:')
      expect(shown.text).toContain('&lt;script&gt;alert(1)')
      expect(shown.text).not.toContain('<script>alert(1)')
    }
    expect(other.text).toMatch(/<body[^>]*><section role="alert">[\s\S]*T-9/)
    expect(told).toContain('lots/tuff/T-1.yaml:2:')
    await saved(() => writeFileSync(lot('T-1'), sound))
    const mended = await page('lots/tuff/T-1/')
    expect([mended.status, mended.text.includes('role="alert"')]).toEqual([200, false])
    expect(told).toContain('All records can be read again.')
  })
  it('has a page for a lot that is moved in, and none once it is gone', async () => {
    await saved(() => writeFileSync(lot('T-7'), text().replace('BL-1', 'BL-7')))
    expect((await page('lots/tuff/T-7/')).status).toBe(200)
    await saved(() => rmSync(lot('T-7')))
    for (const path of ['lots/tuff/T-7/', 'lots/tuff/T-7/working/']) {
      const { status, text: shown } = await page(path)
      expect([status, shown.includes('RangeError')]).toEqual([404, false])
    }
  })
  it('goes on where the site, or the whole folder, is gone for a while', async () => {
    const site = readFileSync(join(folder, 'site.yaml'), 'utf8')
    await saved(() => rmSync(join(folder, 'site.yaml')))
    const without = await page('')
    expect([without.status, without.text.includes('every content folder needs site.yaml')]).toEqual([
      500,
      true,
    ])
    await saved(() => writeFileSync(join(folder, 'site.yaml'), site))
    await saved(() => renameSync(folder, `${folder}-away`))
    expect((await page('')).text).toContain('does not exist')
    await saved(() => renameSync(`${folder}-away`, folder))
    expect((await page('lots/tuff/T-1/')).status).toBe(200)
  })
})
