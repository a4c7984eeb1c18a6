/** State and verdict together, everywhere a reader or a program meets a lot: one withdrawn, one overdue. */
import { describe, expect, it } from 'vitest'
import { paths } from '../../src/edition/shape/addresses.ts'
import type { ListedLot } from '../../src/edition/shape/edition.ts'
import { standingOf } from '../../src/edition/shape/standing.ts'
import { textOf } from './built-site.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

const WITHDRAWN = 'Withdrawn 9 February 2026; was: meets'
const OVERDUE = '28 d strength activity index overdue since 5 February 2026'
const LATE = 'tarn-hollow-tuff/TH-2025-014'

const plain = (text: string | null) => (text ?? '').replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim()

function withdrawnLot(): ListedLot {
  const lot = [...demo.site.edition.lots.values()].find(({ state }) => state === 'withdrawn')
  if (lot === undefined) throw new RangeError('the demo needs a withdrawn lot')
  return lot
}

/** What each place of a page that names the lot says of it, with the marks that it draws. */
async function saidOf(path: string, lot: ListedLot): Promise<{ texts: string[]; marks: string[] }> {
  const page = await demo.open(path)
  const rows = page
    .locator(`main :is(tr, li:not(.source-row)):has(a[href^="/a/b/lots/${lot.id}/"])`)
    .filter({ has: page.locator('.outcome') })
  const texts = (await rows.locator('.outcome').allTextContents()).map(plain)
  const marks = await rows
    .locator('.outcome .mark')
    .evaluateAll((drawn) => drawn.map((mark) => mark.getAttribute('class')?.replace('mark mark-', '') ?? ''))
  await page.context().close()
  return { texts, marks }
}

/** The lines of a file that name the lot. */
function linesOf(path: string, id: string): string[] {
  return textOf(demo.site.folder, path)
    .split('\n')
    .filter((line) => line.includes(id))
}

describe('a withdrawn lot', () => {
  it('is never a plain “meets” on a page: source, register, its filter, look-up, shipments, sets', async () => {
    const lot = withdrawnLot()
    const year = lot.sampled.text.slice(0, 4)
    for (const path of [
      `sources/${lot.source}/`,
      `sources/${lot.source}/c618-12a/`,
      `register/${lot.source}/${year}/`,
      `look-up/?q=${lot.number}`,
      `register/?source=${lot.source}&outcome=withdrawn`,
    ]) {
      const { texts, marks } = await saidOf(path, lot)
      expect(texts.length, path).toBeGreaterThan(0)
      expect(new Set(texts), path).toEqual(new Set([WITHDRAWN]))
      expect(new Set(marks), path).toEqual(new Set(['withdrawn']))
    }
    const shipped = await saidOf(`shipments/${lot.source}/${year}/`, lot)
    expect([new Set(shipped.texts), new Set(shipped.marks)]).toEqual([
      new Set(['withdrawn (was: meets)']),
      new Set(['withdrawn']),
    ])
    const under = await saidOf(`sources/${lot.source}/?under=modified-strength`, lot)
    expect(new Set(under.texts)).toEqual(new Set([WITHDRAWN, 'withdrawn (was: meets)']))
  })

  it('is among the lots that meet neither in the filter nor in the counts of a set', async () => {
    const lot = withdrawnLot()
    const { texts } = await saidOf(`register/?source=${lot.source}&outcome=meets`, lot)
    expect(texts).toEqual([])
    const page = await demo.open('criteria/c618-12a/')
    const row = page.locator(`tr:has(a[href="/a/b/sources/${lot.source}/c618-12a/"])`)
    expect(plain(await row.textContent())).toContain('1 withdrawn (was: meets)')
    await page.context().close()
  })

  it('is no plain “meets” among the newest certificates, where each lot has its state and verdict', async () => {
    const page = await demo.open('')
    const newest = page.locator('section[aria-labelledby="newest"] tbody tr')
    const said = await newest.locator('.outcome').allTextContents()
    const links = await newest
      .locator('th a')
      .evaluateAll((anchors) => anchors.map((anchor) => anchor.getAttribute('href') ?? ''))
    await page.context().close()
    const { edition } = demo.site
    const rows = links.map((href) => edition.lots.get(href.replace('/a/b/lots/', '').replace(/\/$/, '')))
    expect(said.map(plain)).toEqual(rows.map((lot) => lot && standingOf(edition, lot).text))
    expect(said).toHaveLength(10)
  })

  it('is left out of the counts where sets are compared, and listed there as withdrawn', async () => {
    const lot = withdrawnLot()
    const path = `comparison/?set=c618-12a&set=modified-strength&source=${lot.source}`
    const { texts, marks } = await saidOf(path, lot)
    expect([new Set(texts), new Set(marks)]).toEqual([
      new Set(['withdrawn (was: meets)']),
      new Set(['withdrawn']),
    ])
    const page = await demo.open(path)
    for (const place of ['#compare-result', '#in-force'])
      expect(await page.locator(place).textContent()).toContain('1 withdrawn lot not counted')
    await page.context().close()
  })

  it('has its state beside its outcome in every data file, and both in words', () => {
    const { id } = withdrawnLot()
    const lines = linesOf(paths.lotsTable, id)
    expect(lines).toHaveLength(5)
    for (const line of [...lines, ...linesOf(paths.shipmentsTable, id)]) {
      expect(line).toContain(',withdrawn,')
      expect(line).toContain(WITHDRAWN)
    }
    const data = JSON.parse(textOf(demo.site.folder, `data/lots/${id}.json`))
    expect([data.state, data.outcome, data.standing, data.overdueSince]).toEqual([
      'withdrawn',
      'meets',
      WITHDRAWN,
      null,
    ])
    for (const { standing } of data.verdicts) expect(standing).toBe(WITHDRAWN)
    const index = JSON.parse(textOf(demo.site.folder, paths.indexData))
    const place = index.columns.lot.indexOf(id)
    const standings = [index.columns.governingStanding, ...Object.values<number[]>(index.columns.standing)]
    expect(index.columns.state[place]).toBe('withdrawn')
    for (const column of standings)
      expect([
        'withdrawn',
        'Withdrawn 9 February 2026; was: meets',
        'Withdrawn 9 February 2026; was: not judged',
      ]).toEqual(
        expect.arrayContaining([index.standings[column[place]].mark, index.standings[column[place]].text]),
      )
    const titles = textOf(demo.site.folder, paths.feed).match(/<title.*?<\/title>/g) ?? []
    const own = titles.filter((title) => title.includes(id))
    expect(own.filter((title) => title.includes('meets') || title.includes('Meets'))).toEqual(
      own.filter((title) => title.includes(WITHDRAWN)),
    )
  })
})

describe('an overdue result', () => {
  const line = '28 d strength activity index, due 28 January 2026, overdue since 5 February 2026'

  it('is named on the front page, in its source’s row there, on the source and above the certificate', async () => {
    const seen = async (path: string, place: string) => {
      const page = await demo.open(path)
      const text = plain(await page.locator(place).first().textContent())
      await page.context().close()
      return text
    }
    expect(await seen('', 'section[aria-labelledby="overdue"]')).toContain(`TH-2025-014: ${line}`)
    expect(await seen('', '.source-row:has(a[href="/a/b/sources/tarn-hollow-tuff/"])')).toContain(
      '1 result overdue',
    )
    expect(await seen('sources/tarn-hollow-tuff/', '.overdue')).toContain(`TH-2025-014: ${line}`)
    expect(await seen(`lots/${LATE}/`, 'main > aside.warn')).toContain(line)
    expect(await seen(`lots/${LATE}/`, '.today')).toContain(`Meets so far; ${OVERDUE}`)
    expect(await seen(`lots/${LATE}/`, 'main article')).not.toContain('overdue')
  })

  it('stands beside the state in lists and data, and is a finding', async () => {
    const late = demo.site.edition.lots.get(LATE)
    if (late === undefined) throw new RangeError(`the demo needs ${LATE}`)
    const { texts, marks } = await saidOf('register/tarn-hollow-tuff/2025/', late)
    expect([texts, marks]).toEqual([[`Meets so far; ${OVERDUE}`], ['meets-so-far']])
    const { due, overdueSince, standing } = JSON.parse(textOf(demo.site.folder, `data/lots/${LATE}.json`))
    expect([due, overdueSince, standing]).toEqual([null, '2026-02-05', `Meets so far; ${OVERDUE}`])
    expect(plain(textOf(demo.site.folder, 'findings/index.html'))).toContain(
      `of lot TH-2025-014 of Tarn Hollow tuff has been overdue since 5 February 2026`,
    )
  })
})
