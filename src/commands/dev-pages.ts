/** What npm run dev adds to Astro's server: data files, and what is wrong with the records on every page. */
import type { ServerResponse } from 'node:http'
import type { AstroIntegration } from 'astro'
import { presentId } from '../core/measure/lot-id.ts'
import { currentEdition } from '../edition/shape/slot.ts'
import { dataFile } from '../edition/writers/outputs.ts'
import type { DevFault } from './dev-records.ts'

export interface DevPages {
  readonly integration: AstroIntegration
  /** Has every open page fetch itself anew. */
  readonly reload: () => void
}

/** @param fault what is wrong now, undefined for nothing */
export function devPages(fault: () => DevFault | undefined): DevPages {
  let reload: () => void = () => undefined
  const integration: AstroIntegration = {
    name: 'record-pages',
    hooks: {
      'astro:server:setup': ({ server }) => {
        reload = () => {
          forgetAddresses(server)
          server.ws.send({ type: 'full-reload' })
        }
        server.middlewares.use((request, response, next) => {
          const path = pathUnder(currentEdition().address.base, request.url)
          const data = dataAt(path)
          const wrong = request.headers.accept?.includes('text/html') === true ? fault() : undefined
          if (data !== undefined) sendData(response, path, data)
          else if (wrong?.hides(path) === true) sendFault(response, wrong.text)
          else {
            if (wrong !== undefined) withBanner(response, wrong.text)
            if (isOfNoLot(path)) request.url = `${currentEdition().address.base}${NO_PAGE}`
            next()
          }
        })
      },
    },
  }
  return { integration, reload: () => reload() }
}

/** Below it are the pages of lots; it is none itself. */
const NO_PAGE = 'lots/'

/**
 * Whether a page is asked for of a lot that is on record no more: an open page is asked for again the moment that its record
 * is gone, when Astro may still have its address and find no lot behind it.
 */
function isOfNoLot(path: string): boolean {
  const id = /^lots\/([^/]+\/[^/]+)\//.exec(path)?.[1]
  return id !== undefined && presentId(currentEdition().lots, id) === undefined
}

type DevServer = Parameters<NonNullable<AstroIntegration['hooks']['astro:server:setup']>>[0]['server']

/** Which addresses a page has is asked once of each module of a page, so that a new lot would have none. */
function forgetAddresses({ environments }: DevServer): void {
  for (const { moduleGraph } of Object.values(environments))
    for (const [id, module] of moduleGraph.idToModuleMap)
      if (id.includes('/src/pages/')) moduleGraph.invalidateModule(module)
}

function dataAt(path: string): string | Uint8Array | undefined {
  return /^(data\/|feed\.xml$|studies\/[^/]+\/calendar\.ics$)/.test(path)
    ? dataFile(currentEdition(), path)
    : undefined
}

function sendData(response: ServerResponse, path: string, data: string | Uint8Array): void {
  response.writeHead(200, { 'content-type': contentType(path) }).end(data)
}

function contentType(path: string): string {
  if (path.endsWith('.json')) return 'application/json'
  return path.endsWith('.parquet') ? 'application/vnd.apache.parquet' : 'text/plain; charset=utf-8'
}

/**
 * A request's path below the base; the development server hands some requests on with the base already taken
 * off.
 */
function pathUnder(base: string, address = '/'): string {
  const path = address.split('?')[0] ?? '/'
  return path.startsWith(base) ? path.slice(base.length) : path.slice(1)
}

/** The server's own script has the page fetch itself again at the next save; the refresh is for who has none. */
function sendFault(response: ServerResponse, text: string): void {
  const page = [
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta http-equiv="refresh" content="5">',
    `<title>Records to fix</title><script type="module" src="/@vite/client"></script>`,
    `<body>${banner(text)}</body></html>`,
  ].join('')
  response.writeHead(500, { 'content-type': 'text/html; charset=utf-8' }).end(page)
}

/** Text of a record is data: not one sign of it is markup. */
export function banner(text: string): string {
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
  return `<section role="alert"><h1>Records to fix</h1><pre>${escaped}</pre></section>`
}

/** Puts the faults before everything else in the page that is about to be sent. */
function withBanner(response: ServerResponse, text: string): void {
  const write = response.write.bind(response) as (chunk: unknown, ...rest: unknown[]) => boolean
  const end = response.end.bind(response) as (chunk?: unknown, ...rest: unknown[]) => ServerResponse
  let placed = false
  const placedIn = (chunk: unknown): unknown => {
    const type = String(response.getHeader('content-type') ?? '')
    if (
      placed ||
      !type.startsWith('text/html') ||
      (typeof chunk !== 'string' && !(chunk instanceof Uint8Array))
    )
      return chunk
    const html = typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8')
    const body = /<body[^>]*>/.exec(html)
    if (body === null) return chunk
    placed = true
    const after = body.index + body[0].length
    return `${html.slice(0, after)}${banner(text)}${html.slice(after)}`
  }
  response.write = ((chunk: unknown, ...rest: unknown[]) =>
    write(placedIn(chunk), ...rest)) as typeof response.write
  response.end = ((chunk?: unknown, ...rest: unknown[]) =>
    end(placedIn(chunk), ...rest)) as typeof response.end
}
