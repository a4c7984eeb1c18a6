import { describe, expect, it } from 'vitest'
import { judge } from '../../src/core/judging/verdict.ts'
import { unpackSource } from '../../src/core/evidence/source-evidence.ts'
import { sourceEvidenceData } from '../../src/edition/writers/lot-data.ts'

import { lotStanding } from '../../src/words/standing.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

function sourceOf(id: string) {
  const source = demo.site.edition.sources.get(id)
  if (source === undefined) throw new RangeError(`the demo needs the source ${id}`)
  return source
}

/** The verdict that the core gives outside the demo.browser. */
function verdict(source: ReturnType<typeof sourceOf>, lot: string, set: string) {
  const criterion = demo.site.edition.criteria.get(set)
  if (criterion === undefined) throw new RangeError(`the demo needs the set ${set}`)
  const { lots, evidenceOf } = unpackSource(sourceEvidenceData(demo.site.edition, source.id))
  return judge(criterion, evidenceOf(lots.findIndex(({ id }) => id === lot)))
}

describe('a certificate under another set', () => {
  const [source, lot, set] = ['skarnmere-ash', 'skarnmere-ash/SA-2025-014', 'varrow-roads']

  it('says what the core says, clause by clause, when the address names the set', async () => {
    const wanted = verdict(sourceOf(source), lot, set)
    const page = await demo.open(`lots/${lot}/?under=${set}`)
    await page.waitForSelector('.under-result table')
    expect(await page.locator('.under-result .verdict').textContent()).toContain(
      'Varrow Roads supplement, edition 3, class F',
    )
    expect(await page.locator('.under-result .verdict').getAttribute('class')).toContain(
      `verdict-${wanted.outcome}`,
    )
    const rows = await page
      .locator('.under-result tbody tr')
      .evaluateAll((lines) => lines.map((line) => line.querySelectorAll('td')[1]?.textContent?.trim()))
    const flat = (clauses: typeof wanted.clauses): string[] =>
      clauses.flatMap((clause) => [clause.outcome.replaceAll('-', ' '), ...flat(clause.clauses ?? [])])
    expect(rows).toEqual(flat(wanted.clauses))
    expect(await page.locator('.under-result').textContent()).toContain(
      'Relaxed by varrow-roads; before: at least 70.0\u00a0%',
    )
  })

  it('keeps the choice in the address, and takes it back', async () => {
    const page = await demo.open(`lots/${lot}/`)
    await page.selectOption('#under select', 'c618-19')
    await page.waitForSelector('.under-result .verdict')
    expect(page.url()).toContain('?under=c618-19')
    await page.selectOption('#under select', '')
    await page.waitForFunction(() => document.querySelector('.under-result')?.childElementCount === 0)
    expect(page.url()).not.toContain('under')
  })

  it('is not offered where no script runs, and asks for nothing until a set is chosen', async () => {
    const plain = await demo.open(`lots/${lot}/`, { javaScriptEnabled: false })
    expect(await plain.locator('#under').isVisible()).toBe(false)
    const context = await demo.browser.newContext()
    const page = await context.newPage()
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.url()))
    await page.goto(`${demo.site.url}lots/${lot}/`, { waitUntil: 'networkidle' })
    expect(asked.filter((url) => /evidence|criteria\.json|judge/.test(url))).toEqual([])
  })
})

describe('a source under another set', () => {
  it('lists every lot with its state and its outcome under it', async () => {
    const source = sourceOf('skarnmere-ash')
    const page = await demo.open('sources/skarnmere-ash/?under=varrow-roads')
    await page.waitForSelector('.under-result table')
    const shown = await page
      .locator('.under-result tbody tr')
      .evaluateAll((lines) => lines.map((line) => line.querySelectorAll('td')[1]?.textContent?.trim()))
    expect(shown).toEqual(
      demo.site.edition
        .lotsOf(source.id)
        .map(({ id, state, awaited }) => {
          const { outcome } = verdict(source, id, 'varrow-roads')
          const named = awaited.map((test) => ({ ...test, conditionName: null }))
          return lotStanding({ state, outcome, awaited: named }).brief
        })
        .reverse(),
    )
  })
})

describe('the comparison of sets', () => {
  it('counts the lots that change outcome, as the core does', async () => {
    const source = sourceOf('skarnmere-ash')
    const lots = demo.site.edition.lotsOf(source.id)
    const pairs = lots.map((lot) => [
      verdict(source, lot.id, 'c618-12a').outcome,
      verdict(source, lot.id, 'fell-county-works').outcome,
    ])
    const page = await demo.open(
      'comparison/?set=c618-12a&set=fell-county-works&source=skarnmere-ash&changed=yes',
    )
    await page.waitForSelector('#compare-result h2')
    expect(await page.locator('.compare-state').textContent()).toBe(
      `ASTM C618, edition 12a judges ${lots.length} lots; Fell County supplement, edition 2 judges ${lots.length} lots. ${pairs.filter(([a, b]) => a !== b).length} lots change outcome.`,
    )
    expect(await page.locator('#compare-result tbody tr').count()).toBe(
      pairs.filter(([a, b]) => a !== b).length,
    )
  })

  it('asks for two sets, and says so', async () => {
    const page = await demo.open('comparison/?set=c618-12a&source=skarnmere-ash')
    await page.waitForFunction(() => document.querySelector('.compare-state')?.textContent !== '')
    expect(await page.locator('.compare-state').textContent()).toBe(
      'Choose a second specification, or one whose activity clause stands in for the first one’s.',
    )
  })

  it('shows the sets in force without JavaScript, as the verdicts of the edition', async () => {
    const page = await demo.open('comparison/', { javaScriptEnabled: false })
    const source = sourceOf('quellan-ash')
    const changed = demo.site.edition
      .lotsOf(source.id)
      .filter(({ outcomes }) => outcomes.some(({ outcome }) => outcome !== outcomes[0]?.outcome)).length
    const text = await page
      .locator('#in-force section', { hasText: 'Quellan Basin fly ash' })
      .first()
      .textContent()
    expect(text).toContain(`${changed} lots change outcome`)
  })
})

describe('the page of a supplement', () => {
  it('names the layer of each limit and flags what was relaxed or taken out', async () => {
    const page = await demo.open('criteria/high-fell-viaduct/')
    const text = (await page.locator('main').textContent()) ?? ''
    expect(text).toContain('This supplement relaxes its base in 2 places')
    expect(await page.locator('.change-relax').count()).toBe(2)
    expect(text).toContain('activity-1 of ASTM C618, edition 12a, removed by High Fell project specification')
    expect(text).toContain('in up to about 5 % of cases')
  })
})

describe('the limits by property', () => {
  it('show every set that limits loss on ignition, once for each clause', async () => {
    const page = await demo.open('limits/loss-on-ignition/')
    const clauses = [...demo.site.edition.criteria.values()].flatMap((criterion) =>
      criterion.clauses.filter(
        (clause) => clause.form === 'comparison' && clause.property === 'loss-on-ignition',
      ),
    )
    expect(await page.locator('tbody tr').count()).toBe(clauses.length)
    expect(clauses.length).toBeGreaterThan(8)
  })
})

describe('why the resistivity moved', () => {
  const lot = 'skarnmere-ash/SA-2025-014'

  it('recomputes from the reader’s inputs, and says which inputs give nothing', async () => {
    const page = await demo.open(`lots/${lot}/working/`)
    await page.evaluate(() => {
      for (const details of document.querySelectorAll<HTMLDetailsElement>('main details')) details.open = true
    })
    const words = page.locator('.explained-words').first()
    const before = await words.textContent()
    await page.locator('form.explain input[name="cementAlkalis"]').first().fill('1.2')
    expect(await words.textContent()).not.toBe(before)
    expect(await page.locator('.explain-state').first().textContent()).toBe('Computed from your inputs.')
    await page.locator('form.explain input[name="waterToCementitious"]').first().fill('0.1')
    expect(await page.locator('.explain-state').first().textContent()).toContain(
      'These inputs give no pore solution',
    )
  })

  it('shows the same numbers without JavaScript, and no form', async () => {
    const page = await demo.open(`lots/${lot}/working/`, { javaScriptEnabled: false })
    expect(await page.locator('form.explain').first().isVisible()).toBe(false)
    expect(await page.locator('.explained-words').first().textContent()).toContain(
      'their product is the index',
    )
  })
})
