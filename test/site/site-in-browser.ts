/** The built demo in a browser, for all tests of a file. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, inject } from 'vitest'
import { startBrowser } from './browser.ts'
import { serveDemo, type TestSite } from './built-site.ts'

export interface SiteInBrowser {
  readonly site: TestSite
  readonly browser: Browser
  /** A page in a context of its own. */
  readonly open: (path: string, options?: Parameters<Browser['newContext']>[0]) => Promise<Page>
}

/**
 * Starts both before the file's tests and stops them after; to be called once, outside of any test.
 * @param until when a page counts as open: 'networkidle' where its scripts fetch something
 */
export function siteInBrowser(until: 'load' | 'networkidle'): SiteInBrowser {
  let [site, browser]: [TestSite?, Browser?] = []
  beforeAll(async () => {
    site = await serveDemo(inject('demoFolder'))
    browser = await startBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    site?.stop()
  })
  const started = <T>(part: T | undefined): T => {
    if (part === undefined)
      throw new RangeError('siteInBrowser needs its tests to run before it is asked, got none yet')
    return part
  }
  return {
    get site() {
      return started(site)
    },
    get browser() {
      return started(browser)
    },
    open: async (path, options = {}) => {
      const page = await (await started(browser).newContext(options)).newPage()
      await page.goto(started(site).url + path, { waitUntil: until })
      return page
    },
  }
}
