/**
 * npm run dev: serves the pages and computes them anew when a record is saved; diagnostics show in the page.
 */
import { watch } from 'node:fs'
import { dev } from 'astro'
import type { AstroIntegration } from 'astro'
import { computeEdition } from '../edition/compute.ts'
import { dataFile } from '../edition/writers/outputs.ts'
import { forAudience } from '../edition/publishing.ts'
import { currentEdition, putEdition } from '../edition/shape/slot.ts'
import { diagnosticsText } from '../records/diagnostics/diagnostic-text.ts'
import { onInterruption } from './interruption.ts'
import { makeStage } from './page-stage.ts'
import { command, EXIT, HOME, openLine, portOption, PROGRAM, run, today } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'

/** Saving in an editor touches a file more than once; a short wait makes one reload of it. */
const SETTLE_MS = 150

let reload: (() => void) | undefined

await run(async () => {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  const options = command('dev', 'Serve the site and reload it when a record is saved.')
    .option('--port <number>', 'port to serve on', portOption, 4321)
    .parse()
    .opts<{ content: string; port: number }>()
  let fault = load(options.content)
  const stage = makeStage(HOME)
  onInterruption(stage.remove)
  const server = await dev({
    ...stage.place,
    base: currentEdition().address.base,
    server: { port: options.port },
    logLevel: 'warn',
    integrations: [recordPages(() => fault)],
  })
  let timer: NodeJS.Timeout | undefined
  watch(options.content, { recursive: true }, (_event, path) => {
    // No record: version control, a swap file, or the stage where this folder is the one that dev was started in.
    if (path?.startsWith('.') === true) return
    clearTimeout(timer)
    timer = setTimeout(() => {
      fault = load(options.content)
      reload?.()
    }, SETTLE_MS)
  })
  process.stdout.write(openLine(`http://localhost:${server.address.port}${currentEdition().address.base}`))
  return EXIT.well
})

/**
 * Computes and puts the edition, drafts included; the diagnostics' text where there are errors, with the
 * earlier edition kept.
 */
function load(folder: string): string | undefined {
  const content = readContent(folder)
  printDiagnostics(content)
  if (content.errors > 0) {
    putEdition(currentOrEmpty(content))
    return diagnosticsText(content.diagnostics, content.records.contentDir)
  }
  putEdition(withDrafts(content))
  return undefined
}

function withDrafts({ records }: ReturnType<typeof readContent>): ReturnType<typeof currentEdition> {
  const edition = computeEdition(records, { program: PROGRAM, today: today() })
  return forAudience({ ...edition, site: { ...edition.site, drafts: 'yes' } }, 'public')
}

function currentOrEmpty(content: ReturnType<typeof readContent>): ReturnType<typeof currentEdition> {
  try {
    return currentEdition()
  } catch {
    return withDrafts({ ...content, records: { ...content.records, lots: new Map() } })
  }
}

/** Data files and, while a record is at fault, its diagnostics in place of every page. */
function recordPages(fault: () => string | undefined): AstroIntegration {
  return {
    name: 'record-pages',
    hooks: {
      'astro:server:setup': ({ server }) => {
        reload = () => server.ws.send({ type: 'full-reload' })
        server.middlewares.use((request, response, next) => {
          const edition = currentEdition()
          const path = pathUnder(edition.address.base, request.url)
          const text = fault()
          if (text !== undefined && request.headers.accept?.includes('text/html') === true) {
            response.writeHead(500, { 'content-type': 'text/html; charset=utf-8' }).end(faultPage(text))
            return
          }
          const data = /^(data\/|feed\.xml$|studies\/[^/]+\/calendar\.ics$)/.test(path)
            ? dataFile(edition, path)
            : undefined
          if (data === undefined) next()
          else
            response
              .writeHead(200, {
                'content-type': path.endsWith('.json') ? 'application/json' : 'text/plain; charset=utf-8',
              })
              .end(data)
        })
      },
    },
  }
}

/**
 * A request's path below the base; the development server hands some requests on with the base already taken
 * off.
 */
function pathUnder(base: string, address = '/'): string {
  const path = address.split('?')[0] ?? '/'
  return path.startsWith(base) ? path.slice(base.length) : path.slice(1)
}

/** Reloads itself until the fault is fixed. */
function faultPage(text: string): string {
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')
  return [
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta http-equiv="refresh" content="2">',
    '<title>Records to fix</title><h1>Records to fix</h1>',
    `<pre>${escaped}</pre></html>`,
  ].join('')
}
