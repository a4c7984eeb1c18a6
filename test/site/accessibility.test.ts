/**
 * WCAG 2.2 AA on one page of each kind, by the rules that a program can check; npm run axe has a tablet and the other
 * colours as well.
 */
import { describe, expect, it } from 'vitest'
import { type Seen, violationsIn } from './accessibility.ts'
import { filledPages, kindsOfPage } from './kinds-of-page.ts'
import { eachPage, siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

const SEEN: readonly Seen[] = [
  { width: 390, colorScheme: 'light' },
  { width: 1440, colorScheme: 'dark' },
]

describe('the built site', () => {
  it('breaks no accessibility rule on a phone in the light and on a wide screen in the dark', async () => {
    const { edition } = demo.site
    const broken = await eachPage([...kindsOfPage(edition), ...filledPages(edition)], async (path) => {
      const page = await demo.open(path)
      const violations: string[] = []
      for (const seen of SEEN) violations.push(...(await violationsIn(page, seen)))
      await page.context().close()
      return violations.map((violation) => `${path}: ${violation}`)
    })
    expect(broken.flat()).toEqual([])
  }, 400_000)
})
