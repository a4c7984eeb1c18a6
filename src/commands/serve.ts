/** A static server for looking at a built site, on this machine only. */
import { createReadStream } from 'node:fs'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { join } from 'node:path'
import serveStatic from 'serve-static'
import { CommandFailure, EXIT } from './program.ts'

const LOOPBACK = '127.0.0.1'

/**
 * Serves a folder under a base path to this machine alone.
 * @param folder absolute; read at each request, so that a later build shows
 * @param base begins and ends in "/"; what is asked for outside of it leads to it
 * @param port 0 for any that is free
 * @returns the server, listening
 * @throws CommandFailure when the port is taken or not allowed
 */
export async function serve(folder: string, base: string, port: number): Promise<Server> {
  const server = createServer(answerer(folder, base))
  await new Promise<void>((done, fail) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      fail(portFailure(error, port))
    })
    server.listen(port, LOOPBACK, done)
  })
  return server
}

function portFailure(error: NodeJS.ErrnoException, port: number): Error {
  switch (error.code) {
    case 'EADDRINUSE':
      return new CommandFailure(
        `Port ${port} is taken by another program.`,
        EXIT.failed,
        'choose another one with --port',
      )
    case 'EACCES':
      return new CommandFailure(
        `Port ${port} is not allowed for this user.`,
        EXIT.failed,
        'choose one above 1023 with --port',
      )
    default:
      return error
  }
}

type Answer = (request: IncomingMessage & { originalUrl?: string }, response: ServerResponse) => void

function answerer(folder: string, base: string): Answer {
  // Dot files, the folder's own marker among them, are as if they were not there.
  const files = serveStatic(folder, {
    dotfiles: 'ignore',
    fallthrough: false,
    setHeaders: (response) => response.setHeader('x-content-type-options', 'nosniff'),
  })
  return (request, response) => {
    const address = request.url ?? '/'
    if (!address.startsWith(base)) {
      response.writeHead(302, { location: base }).end()
      return
    }
    request.originalUrl = address
    request.url = `/${address.slice(base.length)}`
    files(request, response, () => {
      sendNotFound(folder, response)
    })
  }
}

/** The site's own page for it; a line of text in a folder without one. */
function sendNotFound(folder: string, response: ServerResponse): void {
  const page = createReadStream(join(folder, '404.html'))
  page.once('error', () => {
    response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Not found\n')
  })
  page.once('open', () => {
    response.writeHead(404, { 'content-type': 'text/html; charset=utf-8' })
    page.pipe(response)
  })
}
