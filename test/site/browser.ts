/** The browser that npm brings, for tests of the built site. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import chromiumPackage from '@sparticuz/chromium'
import { type Browser, chromium } from 'playwright-core'

/**
 * Starts the browser; its files are unpacked into a folder of their own, since the package reuses whatever
 * lies in the temporary folder.
 */
export async function startBrowser(): Promise<Browser> {
  process.env['TMPDIR'] = mkdtempSync(join(tmpdir(), 'browser-'))
  return chromium.launch({
    executablePath: await chromiumPackage.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--font-render-hinting=none'],
    headless: true,
  })
}
