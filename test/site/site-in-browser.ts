/** The built demo in a browser, for all tests of a file. */
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, inject } from 'vitest'
import { serveDemo, type TestSite } from './built-site.ts'

export interface SiteInBrowser {
  readonly site: TestSite
  readonly browser: Browser
  /** A page in a context of its own, closed after the file's tests at the latest. */
  readonly open: (path: string, options?: Parameters<Browser['newContext']>[0]) => Promise<Page>
}

/** The demo's build has ended by then, on a slow machine that does other work too. */
const BUILT_MS = 600_000

/** For a page on a machine that has other work: whether it is fast is no test's question. */
export const SLOW_MS = 120_000

/** Both are kept for the files that the same process tests next. */
let connected: Promise<Browser> | undefined
let demo: Promise<TestSite> | undefined

/** The browser that all test files share; this process sees its own contexts alone. */
export function sharedBrowser(): Promise<Browser> {
  connected ??= chromium.connect(inject('browserAddress'))
  return connected
}

/**
 * Has both ready before the file's tests; to be called once, outside of any test.
 * @param until when a page counts as open: 'networkidle' where its scripts fetch something
 */
export function siteInBrowser(until: 'load' | 'networkidle'): SiteInBrowser {
  let [site, browser]: [TestSite?, Browser?] = []
  beforeAll(async () => {
    demo ??= serveDemo(inject('demoFolder'))
    ;[site, browser] = await Promise.all([demo, sharedBrowser()])
  }, BUILT_MS)
  afterAll(async () => {
    for (const context of browser?.contexts() ?? []) await context.close()
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
      page.setDefaultTimeout(SLOW_MS)
      await page.goto(started(site).url + path, { waitUntil: until })
      return page
    },
  }
}

/** A page waits for most of its time, so that a few are looked at together. */
const TOGETHER = 4

/**
 * Looks at each of several pages.
 * @returns what was seen, in the order of the paths
 */
export async function eachPage<T>(
  paths: readonly string[],
  look: (path: string) => Promise<T>,
): Promise<T[]> {
  const seen: T[] = []
  const left = paths.entries()
  const lookOn = async () => {
    for (const [place, path] of left) seen[place] = await look(path)
  }
  await Promise.all(Array.from({ length: TOGETHER }, lookOn))
  return seen
}
