/** The bench page in a browser: a whole lot by keyboard, kept over a reload, saved, read by the program. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Download, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../src/commands/program.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { paths } from '../../src/edition/shape/addresses.ts'
import { loadRecords } from '../../src/records/load.ts'
import { lotStanding } from '../../src/words/standing.ts'
import { sentence } from '../../src/words/sentences.ts'
import { SLOW_MS, siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

const LONG_MS = 300_000
const KNOWN = 'orrinmoss-ash/OM-2024-010'

async function openBench(path: string, options = {}): Promise<Page> {
  const page = await demo.open(path, options)
  await page.waitForSelector('#bench[data-ready="yes"]', { timeout: SLOW_MS })
  return page
}

const focused = (page: Page) => page.evaluate(() => document.activeElement?.id ?? '')

/** Presses Tab until the focus is there: whoever has no mouse can get there as well. */
async function tabTo(page: Page, id: string): Promise<void> {
  const [from, seen] = [await focused(page), new Set<string>()]
  for (let step = 0; step < 400; step += 1) {
    const at = await focused(page)
    if (at === id) return
    seen.add(at)
    await page.keyboard.press('Tab')
  }
  throw new RangeError(`Tab does not lead from ${from} to ${id}; it passed ${[...seen].join(', ')}`)
}

async function type(page: Page, id: string, text: string): Promise<void> {
  await tabTo(page, id)
  await page.keyboard.type(text)
}

async function press(page: Page, id: string): Promise<void> {
  await tabTo(page, id)
  await page.keyboard.press('Enter')
}

/** A further detail, chosen from its list by its first letters; the focus goes into its field. */
async function addDetail(page: Page, of: string, label: string): Promise<void> {
  await type(page, `${of}-further`, label)
  await press(page, `${of}-further-add`)
}

const headline = (page: Page) => page.textContent('#bench-headline')

async function until(page: Page, text: string): Promise<void> {
  await page.waitForFunction(
    (asked) => (document.querySelector('#bench-headline')?.textContent ?? '').includes(asked),
    text,
    { timeout: SLOW_MS },
  )
}

const RESULTS: readonly (readonly [string, string, string])[] = [
  ['Al2O3', 'Aluminium', '24.15 %'],
  ['Fe2O3', 'Iron', '7.09 %'],
  ['CaO', 'Calcium oxide', '5.42 %'],
  ['SO3', 'Sulfur tri', '0.590 %'],
  ['moisture', 'Moisture', '0.11 %'],
  ['loss-on-ignition', 'Loss on', '2.38 %'],
  ['residue-45um', 'Residue on 45', '18.4 %'],
  ['density', 'Density', '2.35 g/cm3'],
  ['autoclave-expansion', 'Autoclave', '0.04 %'],
]

/** The lot on the sheet, field by field. */
async function writeLot(page: Page): Promise<void> {
  await tabTo(page, 'bench-source')
  await page.keyboard.type('Orrinmoss')
  await type(page, 'bench-lot', 'OM-2024-910')
  await type(page, 'lot/produced/from', '2024-06-22')
  await type(page, 'lot/produced/to', '2024-06-28')
  await type(page, 'lot/quantity', '900 t')
  await press(page, 'lot/samples-add')
  expect(await focused(page)).toBe('lot/samples/0/id')
  await page.keyboard.type('C')
  await type(page, 'lot/samples/0/kind', 'composite')
  await type(page, 'lot/samples/0/taken/from', '2024-06-22T06:00')
  await type(page, 'lot/samples/0/taken/to', '2024-06-28T14:30')
  await press(page, 'lot/analyses-add')
  await page.keyboard.type('millrace-lane')
  await type(page, 'lot/analyses/0/sample', 'C')
  await type(page, 'lot/analyses/0/tested', '2024-07-02')
  // The first result stands ready in an analysis that is added.
  await type(page, 'lot/analyses/0/results/SiO2', '54.97 %')
  for (const [key, label, value] of RESULTS) {
    await addDetail(page, 'lot/analyses/0/results', label)
    expect(await focused(page)).toBe(`lot/analyses/0/results/${key}`)
    await page.keyboard.type(value)
  }
  await press(page, 'lot/tests-add')
  await page.keyboard.type('C')
  await type(page, 'lot/tests/0/condition', 'c311')
  await type(page, 'lot/tests/0/control', 'ML-2024-0703-AL')
  await type(page, 'lot/tests/0/laboratory', 'millrace-lane')
  await type(page, 'lot/tests/0/cast', '2024-07-03T09:20')
  await type(page, 'lot/tests/0/water', '233 g')
  await type(page, 'lot/tests/0/flow', '105 %')
  await press(page, 'lot/tests/0/strength-add')
  await page.keyboard.type('7 d')
  await type(page, 'lot/tests/0/strength/0/tested', '2024-07-10T09:56')
  await type(page, 'lot/tests/0/strength/0/specimens/a', '59.30 kN')
  await type(page, 'lot/tests/0/strength/0/specimens/b', '60.1 kN')
}

describe('the bench page', () => {
  it(
    'takes a whole lot by keyboard alone, says what the next cube must carry, keeps it, and saves what the program reads alike',
    async () => {
      const page = await openBench(paths.bench)
      const requests: string[] = []
      page.on('request', (request) => requests.push(`${request.method()} ${new URL(request.url()).origin}`))
      await writeLot(page)
      await page.waitForFunction(() =>
        /specimen left/.test(document.querySelector('#bench-next')?.textContent ?? ''),
      )
      expect((await page.textContent('#bench-next'))?.replaceAll('\u00a0', ' ')).toMatch(
        /^7 d strength, 2 of 3 specimens read: the specimen left must reach \d+\.\d\d kN for an index of at least 75 %.*All 3 stay within the permissible range of 8\.7 % of the mean if it reads \d+\.\d\d kN to \d+\.\d\d kN\.$/,
      )
      await type(page, 'lot/tests/0/strength/0/specimens/c', '60.2 kN')
      await page.waitForFunction(() => document.querySelector('#bench-next')?.textContent === '')
      await until(page, 'Meets')
      expect(await page.locator('.bench-fault:not(:empty)').allTextContents()).toEqual([])

      // Unsaved work is there again after a reload, without its address.
      await page.waitForTimeout(600)
      await page.reload({ waitUntil: 'networkidle' })
      await page.waitForSelector('#bench[data-ready="yes"]')
      await until(page, 'Meets')
      expect(await page.inputValue('#bench-lot')).toBe('OM-2024-910')
      expect(await page.inputValue('[id="lot/tests/0/strength/0/specimens/a"]')).toBe('59.30 kN')
      const shown = await headline(page)

      const download = page.waitForEvent('download')
      await press(page, 'bench-save')
      const text = await savedText(await download)
      expect((await download).suggestedFilename()).toBe('OM-2024-910.yaml')
      expect(text).toContain('a: 59.30 kN')
      expect(text).toContain('SO3: 0.590 %')
      const program = programOn('orrinmoss-ash/OM-2024-910', text)
      expect(program.diagnostics).toEqual([])
      expect(shown?.trim()).toBe(program.headline)

      // Nothing was sent: all that was asked for are the site's own files.
      expect(new Set(requests)).toEqual(new Set([`GET ${new URL(demo.site.url).origin}`]))
      await page.context().close()
    },
    LONG_MS,
  )

  it(
    'opens a published lot with the verdict of its certificate, and works on without a network',
    async () => {
      const page = await openBench(paths.benchWith(KNOWN))
      await page.context().setOffline(true)
      await until(page, 'Meets')
      await page.locator('[id="lot/analyses/0/results/SiO2"]').fill('24.97 %')
      await until(page, 'Does not meet')
      const load = page.locator('[id="lot/tests/0/strength/1/specimens/a"]')
      await load.fill('82,2 kN')
      await until(page, 'Not judged')
      const fault = page.locator('[id="lot/tests/0/strength/1/specimens/a-fault"]')
      expect(await fault.textContent()).toMatch(/82,2/)
      expect(await load.getAttribute('aria-invalid')).toBe('true')
      expect(await load.getAttribute('aria-describedby')).toContain(
        'lot/tests/0/strength/1/specimens/a-fault',
      )
      await load.fill('82.2 kN')
      await until(page, 'Does not meet')
      // A source that was not looked at before: its lots came with the page.
      const asked: string[] = []
      page.on('request', (request) => asked.push(request.url()))
      await page.selectOption('#bench-source', 'hollenby-ash')
      await page.locator('[id="lot/quantity"]').fill('901 t')
      await page.waitForFunction(() =>
        /kept in this browser/.test(document.querySelector('#bench-state')?.textContent ?? ''),
      )
      expect(await headline(page)).not.toContain('could not be fetched')
      expect(asked).toEqual([])
      await page.context().close()
    },
    LONG_MS,
  )

  it(
    'is one record with its text: a change of either is in the other, comments and digits stay',
    async () => {
      const page = await openBench(paths.benchWith(KNOWN))
      const editor = page.locator('#bench-text .cm-content')
      const text = () =>
        editor.evaluate((content) =>
          [...content.querySelectorAll('.cm-line')].map((line) => line.textContent).join('\n'),
        )
      await editor.click()
      await page.keyboard.press('Control+Home')
      await page.keyboard.type('# sheet 14, second shift\n')
      await page.locator('[id="lot/quantity"]').fill('905.0 t')
      expect(await text()).toMatch(/^# sheet 14, second shift\nproduced: .*\nquantity: 905.0 t\n/)
      await editor.click()
      await page.keyboard.press('Control+Home')
      await page.keyboard.press('ArrowDown')
      await page.keyboard.press('ArrowDown')
      await page.keyboard.press('End')
      await page.keyboard.press('Backspace')
      await page.keyboard.type('t # weighed')
      await page.waitForFunction(
        () => (document.getElementById('lot/quantity') as HTMLInputElement).value === '905.0 t',
      )
      await page.locator('[id="lot/silo"]').fill('O2')
      expect(await text()).toContain('quantity: 905.0 t # weighed\nsilo: O2\n')
      await page.context().close()
    },
    LONG_MS,
  )

  it(
    'asks what the comma of a pasted column is before it puts it into the readings',
    async () => {
      const page = await openBench(paths.benchWith(KNOWN))
      const first = page.locator('[id="lot/tests/0/strength/1/specimens/a"]')
      await first.focus()
      await first.evaluate((field) => {
        const clipboardData = new DataTransfer()
        clipboardData.setData('text/plain', '81,4\n80,2\n79,95\n80,0')
        field.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
      })
      const panel = page.locator('#bench-asked')
      expect(await panel.textContent()).toContain('What is the comma in “81,4”?')
      await panel.getByRole('button', { name: 'Put them in' }).click()
      expect(await panel.textContent()).toContain('Say first what the comma is.')
      await panel.getByLabel('the decimal sign: 81.4').check()
      await panel.getByRole('button', { name: 'Put them in' }).click()
      expect(await panel.textContent()).toContain('Say first in which unit they were read.')
      await panel.getByLabel('Unit of figures without one').selectOption('kN')
      await panel.getByRole('button', { name: 'Put them in' }).click()
      const values = await page
        .locator('[id^="lot/tests/0/strength/1/specimens/"]')
        .evaluateAll((all) =>
          all.filter((one) => one instanceof HTMLInputElement).map((one) => (one as HTMLInputElement).value),
        )
      expect(values).toEqual(['81.4 kN', '80.2 kN', '79.95 kN', '80.0 kN'])
      expect(await focused(page)).toBe('lot/tests/0/strength/1/specimens/a')
      await page.context().close()
    },
    LONG_MS,
  )

  it(
    'compares a dropped file of a published lot with the published record',
    async () => {
      const page = await openBench(paths.bench)
      const address = `${demo.site.url}${paths.lotData(KNOWN)}`
      const data = (await (await page.request.get(address)).text()).replaceAll('"900 t"', '"910 t"')
      await page.setInputFiles('#bench-file', {
        name: 'OM-2024-010.json',
        mimeType: 'application/json',
        buffer: Buffer.from(data),
      })
      await page.waitForSelector('#bench-compared table')
      const cells = await page
        .locator('#bench-compared tbody tr')
        .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent)))
      expect(cells).toEqual([
        ['Quantity', '910 t', '900 t'],
        ['Sample C, composite, Represents', '910 t', '900 t'],
      ])
      expect(await page.inputValue('#bench-lot')).toBe('OM-2024-010')

      // A file that cannot be taken leaves the sheet as it is; what was compared goes with its text.
      await page.setInputFiles('#bench-file', {
        name: 'scan.yaml',
        mimeType: 'application/octet-stream',
        buffer: Buffer.from([0x25, 0x50, 0x44, 0x46, 0, 0xff]),
      })
      await page.waitForFunction(() =>
        /not text in UTF-8/.test(document.querySelector('#bench-state')?.textContent ?? ''),
      )
      expect(await page.inputValue('[id="lot/quantity"]')).toBe('910 t')
      expect(await page.locator('#bench-compared table').count()).toBe(1)
      await page.locator('[id="lot/quantity"]').fill('920 t')
      expect(await page.locator('#bench-compared').innerHTML()).toBe('')
      await page.context().close()
    },
    LONG_MS,
  )

  it('says without JavaScript what it is and how the record is written instead', async () => {
    const page = await demo.open(paths.bench, { javaScriptEnabled: false })
    expect(await page.locator('#bench').isVisible()).toBe(false)
    expect(await page.locator('main').innerText()).toMatch(/needs JavaScript.*command check/s)
    await page.context().close()
  })

  it(
    'forgets unsaved work that is discarded, and says so where nothing can be kept',
    async () => {
      const page = await openBench(paths.benchWith(KNOWN))
      await page.locator('[id="lot/quantity"]').fill('1 t')
      await page.waitForFunction(() =>
        /kept in this browser/.test(document.querySelector('#bench-state')?.textContent ?? ''),
      )
      await page.click('#bench-discard')
      await page.waitForFunction(
        () => (document.getElementById('lot/quantity') as HTMLInputElement).value === '900 t',
      )
      await page.evaluate(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('full', 'QuotaExceededError')
        }
      })
      await page.locator('[id="lot/quantity"]').fill('2 t')
      await page.waitForFunction(() =>
        /keeps nothing/.test(document.querySelector('#bench-state')?.textContent ?? ''),
      )
      await page.context().close()
    },
    LONG_MS,
  )

  it(
    'has targets of 44 px for a finger on a phone, and is led to from a certificate and its working',
    async () => {
      const page = await openBench(paths.benchWith(KNOWN), {
        viewport: { width: 390, height: 844 },
        hasTouch: true,
      })
      const small = await page
        .locator('#bench :is(button, select, summary, input:not(.unseen), .button)')
        .evaluateAll((all) =>
          all
            .filter((one) => one.checkVisibility())
            .map((one) => ({ id: one.id || one.textContent, height: one.getBoundingClientRect().height }))
            .filter(({ height }) => height < 44),
        )
      expect(small).toEqual([])
      for (const path of [paths.certificate(KNOWN), paths.working(KNOWN)]) {
        await page.goto(demo.site.url + path)
        const link = page.getByRole('link', { name: 'Compute this lot again' })
        expect(new URL((await link.getAttribute('href')) ?? '', page.url()).href).toBe(
          demo.site.url + paths.benchWith(KNOWN),
        )
      }
      await page.context().close()
    },
    LONG_MS,
  )
})

async function savedText(download: Download): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  await download.saveAs(join(folder, 'lot.yaml'))
  const text = readFileSync(join(folder, 'lot.yaml'), 'utf8')
  rmSync(folder, { recursive: true })
  return text
}

/** What the program says of a lot whose file lies among the others. */
function programOn(id: string, text: string): { diagnostics: readonly unknown[]; headline: string } {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  cpSync(resolve(ROOT, 'content'), folder, { recursive: true })
  writeFileSync(join(folder, 'lots', `${id}.yaml`), text)
  const { records, diagnostics } = loadRecords(folder)
  const { asOf, lot } = computeEdition(records, { program: 'test' })
  const { verdicts } = lot(id)
  rmSync(folder, { recursive: true })
  const outcome = verdicts[0]?.outcome ?? null
  const { brief } = lotStanding({ state: 'complete', outcome, awaited: [] })
  expect(asOf.text).toBe('2026-04-10')
  return { diagnostics, headline: sentence(brief) }
}
