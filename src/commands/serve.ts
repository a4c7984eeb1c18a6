/** A plain static server for looking at a built site, on this machine only. */
import { createReadStream, existsSync, statSync } from 'node:fs'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { extname, join, normalize, sep } from 'node:path'
import { CommandFailure, EXIT } from './program.ts'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.png': 'image/png',
}

/**
 * Serves a folder under a base path on 127.0.0.1.
 * @throws CommandFailure when the port is taken
 */
export async function serve(folder: string, base: string, port: number): Promise<Server> {
  const server = createServer((request, response) => answer(folder, base, request, response))
  await new Promise<void>((done, fail) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      fail(
        error.code === 'EADDRINUSE'
          ? new CommandFailure(
              `Port ${port} is taken by another program.\nmend: choose another one with --port`,
              EXIT.failed,
            )
          : error.code === 'EACCES'
            ? new CommandFailure(
                `Port ${port} is not allowed for this user.\nmend: choose one above 1023 with --port`,
                EXIT.failed,
              )
            : error,
      ),
    )
    server.listen(port, '127.0.0.1', done)
  })
  return server
}

function answer(folder: string, base: string, request: IncomingMessage, response: ServerResponse): void {
  const path = pathOf(request)
  if (path !== null && !path.startsWith(base)) {
    response.writeHead(302, { location: base }).end()
    return
  }
  const file = path === null ? null : fileFor(folder, path.slice(base.length))
  if (file === null) send(response, join(folder, '404.html'), 404)
  else if (file.redirect) response.writeHead(301, { location: `${path}/` }).end()
  else send(response, file.path, 200)
}

function pathOf(request: IncomingMessage): string | null {
  try {
    return decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname)
  } catch {
    return null
  }
}

function fileFor(folder: string, path: string): { path: string; redirect: boolean } | null {
  const full = normalize(join(folder, path))
  if ((full !== folder && !full.startsWith(`${folder}${sep}`)) || path.includes('\0')) return null
  if (!existsSync(full)) return null
  if (!statSync(full).isDirectory()) return { path: full, redirect: false }
  const index = join(full, 'index.html')
  return existsSync(index) ? { path: index, redirect: path !== '' && !path.endsWith('/') } : null
}

function send(response: ServerResponse, file: string, status: number): void {
  if (!existsSync(file)) {
    response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Not found\n')
    return
  }
  response.writeHead(status, {
    'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
    'x-content-type-options': 'nosniff',
  })
  createReadStream(file).pipe(response)
}
