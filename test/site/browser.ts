/** The browser that npm brings, for tests of the built site. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import chromiumPackage from '@sparticuz/chromium'
import { type Browser, type BrowserServer, chromium, type LaunchOptions } from 'playwright-core'

/** Starts a browser for this process alone. */
export async function startBrowser(): Promise<Browser> {
  return chromium.launch(await launchOptions())
}

/** Starts a browser that other processes connect to by its address: unpacking takes seconds, so once is enough. */
export async function startBrowserServer(): Promise<BrowserServer> {
  return chromium.launchServer(await launchOptions())
}

/**
 * Unpacks the browser into a folder of its own, since the package reuses whatever lies in the temporary folder;
 * the folder goes when this process ends.
 */
async function launchOptions(): Promise<LaunchOptions> {
  const usual = process.env['TMPDIR']
  const folder = mkdtempSync(join(tmpdir(), 'browser-'))
  process.env['TMPDIR'] = folder
  try {
    const executablePath = await chromiumPackage.executablePath()
    process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
    return {
      executablePath,
      args: ['--no-sandbox', '--disable-gpu', '--font-render-hinting=none'],
      headless: true,
    }
  } finally {
    if (usual === undefined) delete process.env['TMPDIR']
    else process.env['TMPDIR'] = usual
  }
}
