/**
 * npm run axe -- [--site FOLDER]: holds one page of each kind of the demo's site against the accessibility rules, on
 * a phone, a tablet and a wide screen, light and dark. Prints what breaks a rule and how many views were seen; ends
 * with status 1 where there was something.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { type Seen, violationsIn } from './accessibility.ts'
import { startBrowser } from './browser.ts'
import { ADDRESS, buildDemo, serveDemo } from './built-site.ts'
import { filledPages, kindsOfPage } from './kinds-of-page.ts'

const WIDTHS = [390, 820, 1440]
const VIEWS: readonly Seen[] = WIDTHS.flatMap((width) => [
  { width, colorScheme: 'light' },
  { width, colorScheme: 'dark' },
])

const { values } = parseArgs({ options: { site: { type: 'string' } } })
// Under another path the pages would stand there without their styles.
if (
  values.site !== undefined &&
  !readFileSync(join(values.site, 'index.html'), 'utf8').includes('href="/a/b/')
) {
  process.stderr.write(
    `${values.site} was built for another address.\nfix: build it with --address ${ADDRESS}\n`,
  )
  process.exit(2)
}
const site = await serveDemo(values.site ?? (await buildDemo()).folder)
const browser = await startBrowser()
const kinds = [...kindsOfPage(site.edition), ...filledPages(site.edition)]
let broken = 0
for (const path of kinds) {
  const context = await browser.newContext()
  const page = await context.newPage()
  await page.goto(site.url + path, { waitUntil: 'networkidle' })
  for (const seen of VIEWS)
    for (const violation of await violationsIn(page, seen)) {
      broken += 1
      process.stdout.write(`${path}: ${violation}\n`)
    }
  await context.close()
}
await browser.close()
process.stdout.write(`${kinds.length} pages in ${VIEWS.length} views each: ${broken} break a rule.\n`)
process.exit(broken === 0 ? 0 : 1)
