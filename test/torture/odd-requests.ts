/** Odd requests to the server, over the wire as they stand. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import type { Server } from 'node:http'
import { type AddressInfo, connect } from 'node:net'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { MARKER } from '../../src/commands/output-marker.ts'
import { serve } from '../../src/commands/serve.ts'
import type { Chance } from '../../src/demo/chance.ts'
import { oneOf } from './spoil/spoil-text.ts'
import { chanceFor } from './spoiled-record.ts'

const SECRET = 'not for the public'
const FILES: Readonly<Record<string, string>> = {
  'site/index.html': 'front',
  'site/404.html': 'not here',
  'site/lots/index.html': 'lots',
  'site/.hidden/x.html': SECRET,
  [`site/${MARKER}`]: SECRET,
  'outside.html': SECRET,
  'site2/index.html': SECRET,
}

const PIECES = [
  '/', '//', '/.', '/..', '..', '.', '%2e%2e', '%2e', '%2f', '%5c', '\\', '%00', '%', '%zz', '%ff', '%C0%AE', '%25',
  'lots', 'index.html', 'outside.html', 'site2', MARKER, '.hidden', 'evil.example', '@', ':', '?', '#', '&', ';', '中', '%E4%B8%AD',
  'http://evil.example', '\t', ' ', '\u0000', 'a'.repeat(3000), '~', '*', '|', '"', '<script>', '\r', 'LOTS',
] // biome-ignore format: a table of pieces reads best in rows
const METHODS = ['GET', 'GET', 'GET', 'HEAD', 'POST', 'PUT', 'TRACE', 'OPTIONS', 'CONNECT', 'get', 'X', '', 'PRI'] // biome-ignore format: one line
const VERSIONS = ['HTTP/1.1', 'HTTP/1.1', 'HTTP/1.0', 'HTTP/2.0', 'HTTP/9.9', '', 'http/1.1'] // biome-ignore format: one line
const HEADERS = [
  'Range: bytes=0-',
  'Range: bytes=5-1',
  'Range: bytes=-999999999999999999999',
  'If-None-Match: *',
  'If-Modified-Since: yesterday',
  'Host: evil.example',
  'Host:',
  'Expect: 100-continue',
  'Expect: x',
  'Upgrade: h2c',
  'Transfer-Encoding: chunked',
  'Content-Length: -1',
  'Content-Length: 5',
  'Accept-Encoding: x',
  'X: \u0000',
  `Cookie: ${'c'.repeat(20_000)}`,
  ': x',
]

/** Milliseconds after which a request counts as not answered. */
const LONGEST = 5000

function oddRequest(chance: Chance): string {
  const path = Array.from({ length: chance.whole(0, 5) }, () => oneOf(PIECES, chance)).join('')
  const base = oneOf(['/a/b/', '/a/b/', '/a/b', '/', ''], chance)
  const headers = Array.from({ length: chance.whole(0, 2) }, () => `${oneOf(HEADERS, chance)}\r\n`).join('')
  return `${oneOf(METHODS, chance)} ${base}${path} ${oneOf(VERSIONS, chance)}\r\nHost: 127.0.0.1\r\nConnection: close\r\n${headers}\r\n`
}

let running: Promise<Server> | undefined

/** One server for all requests of a process: it has to outlive them. */
function server(): Promise<Server> {
  if (running !== undefined) return running
  const top = mkdtempSync(join(tmpdir(), 'torture-served-'))
  process.on('exit', () => rmSync(top, { recursive: true, force: true }))
  for (const [path, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(top, path)), { recursive: true })
    writeFileSync(join(top, path), text)
  }
  running = serve(join(top, 'site'), '/a/b/', 0).then((started) => started.unref())
  return running
}

/** What is wrong with the answer to one odd request, or with that to a plain one after it. */
export async function oddRequests(seed: number, number: number): Promise<readonly string[]> {
  const { port } = (await server()).address() as AddressInfo
  const request = oddRequest(chanceFor(seed, number))
  const answer = await answered(port, request)
  const after = await answered(port, 'GET /a/b/ HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n')
  return [
    ...answerFaults(answer, request),
    ...(/^HTTP\/1\.1 200 [\s\S]*front$/.test(after ?? '') ? [] : ['the server does not go on']),
  ]
}

function answerFaults(answer: string | null, request: string): string[] {
  if (answer === null) return [`no answer to ${JSON.stringify(request.slice(0, 200))}`]
  const location = /^location: *(.*)$/im.exec(answer)?.[1]?.trim()
  const host = location === undefined ? '127.0.0.1' : new URL(location, 'http://127.0.0.1/').hostname
  return [
    ...(answer.includes(SECRET) ? ['what is not for the public is served'] : []),
    ...(/^HTTP\/1\.1 5(?!05)/.test(answer) ? [`answered ${answer.slice(0, 40)}`] : []),
    ...(host === '127.0.0.1' ? [] : [`leads to ${host}`]),
  ]
}

/** All that comes back; null where the server neither answers nor closes in time. Note: a closed line is an answer. */
function answered(port: number, request: string): Promise<string | null> {
  return new Promise((done) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(Buffer.from(request, 'utf8')))
    let text = ''
    const finish = (answer: string | null) => {
      clearTimeout(timer)
      socket.destroy()
      done(answer)
    }
    const timer = setTimeout(() => finish(null), LONGEST)
    socket.on('data', (piece) => {
      text += piece.toString()
    })
    socket.on('error', () => finish(text))
    socket.on('close', () => finish(text))
  })
}
