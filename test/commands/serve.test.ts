import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { request, type Server } from 'node:http'
import { type AddressInfo, connect } from 'node:net'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MARKER } from '../../src/commands/output-marker.ts'
import { serve } from '../../src/commands/serve.ts'

const FILES = {
  'site/index.html': 'front',
  'site/404.html': 'not here',
  'site/lots/index.html': 'lots',
  'site/中/index.html': 'middle',
  'site/data/lots.csv': 'lot\n',
  'site/data/.hidden/lots.csv': 'secret',
  [`site/${MARKER}`]: 'secret',
  'outside.txt': 'secret',
}

let top: string
let server: Server

beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), 'served-'))
  for (const [path, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(top, path)), { recursive: true })
    writeFileSync(join(top, path), text)
  }
  server = await serve(join(top, 'site'), '/a/b/', 0)
})
afterAll(() => server.close())

interface Given {
  readonly status: number
  readonly location?: string | undefined
  readonly type: string
  readonly text: string
}

/** The path goes over the wire as it stands: `fetch` would clean it first. */
function asked(path: string, { method = 'GET', of = server } = {}): Promise<Given> {
  return new Promise((done, fail) => {
    const { port } = of.address() as AddressInfo
    request({ host: '127.0.0.1', port, path, method }, (response) => {
      const pieces: Buffer[] = []
      response.on('data', (piece: Buffer) => pieces.push(piece))
      response.on('end', () => {
        done({
          status: response.statusCode ?? 0,
          location: response.headers.location,
          type: response.headers['content-type'] ?? '',
          text: Buffer.concat(pieces).toString(),
        })
      })
    })
      .on('error', fail)
      .end()
  })
}

describe('serve', () => {
  it('listens to this machine alone', () => {
    expect((server.address() as AddressInfo).address).toBe('127.0.0.1')
  })
  it('answers a directory with its index, and a file with its type', async () => {
    expect(await asked('/a/b/')).toMatchObject({
      status: 200,
      type: 'text/html; charset=utf-8',
      text: 'front',
    })
    expect(await asked('/a/b/lots/')).toMatchObject({ status: 200, text: 'lots' })
    expect(await asked('/a/b/lots/?q=1')).toMatchObject({ status: 200, text: 'lots' })
    expect(await asked('/a/b/data/lots.csv')).toMatchObject({ status: 200, type: 'text/csv; charset=utf-8' })
  })
  it('leads a directory without its stroke to the address with it, and what lies outside to the front', async () => {
    expect(await asked('/a/b/lots')).toMatchObject({ status: 301, location: '/a/b/lots/' })
    expect(await asked('/')).toMatchObject({ status: 302, location: '/a/b/' })
    expect(await asked('/a/b')).toMatchObject({ status: 302, location: '/a/b/' })
    expect(await asked('http://evil.example/a/b/')).toMatchObject({ status: 302, location: '/a/b/' })
  })
  it('answers what is not there with the page of the site for it, and with text where it has none', async () => {
    expect(await asked('/a/b/nowhere/')).toEqual({
      status: 404,
      location: undefined,
      type: 'text/html; charset=utf-8',
      text: 'not here',
    })
    const bare = await serve(join(top, 'site/lots'), '/', 0)
    expect(await asked('/nowhere', { of: bare })).toMatchObject({ status: 404, text: 'Not found\n' })
    bare.close()
  })
  it('answers GET and HEAD only', async () => {
    expect(await asked('/a/b/lots/', { method: 'HEAD' })).toMatchObject({ status: 200, text: '' })
    expect(await asked('/a/b/nowhere/', { method: 'HEAD' })).toMatchObject({ status: 404, text: '' })
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])
      expect(await asked('/a/b/lots/', { method })).toMatchObject({ status: 405, text: '' })
  })
  it('serves neither the marker of the folder nor any other dot file', async () => {
    for (const path of [MARKER, MARKER.replace('.', '%2e'), `./${MARKER}`, 'data/.hidden/lots.csv'])
      expect(await asked(`/a/b/${path}`)).toMatchObject({ status: 404, text: 'not here' })
  })
  it('leads no request off the site or out of the folder, and outlives each', async () => {
    const paths = [
      '%2f%E4%B8%AD%2f..',
      '%2f%E4%B8%AD',
      '%2fevil.example',
      '%2fevil.example%2f..',
      '%2f%2fevil.example%2f..%2flots',
      '/evil.example/..',
      '%5cevil.example',
      '../outside.txt',
      '..%2foutside.txt',
      'lots/%2e%2e/%2e%2e/outside.txt',
      '..%5coutside.txt',
      '%00',
      '%',
      '%ff',
      '%C0%AE%C0%AE/outside.txt',
      'a'.repeat(9000),
      '?%2f',
      '#x',
    ]
    const root = await serve(join(top, 'site'), '/', 0)
    for (const path of paths)
      for (const [of, base] of [
        [server, '/a/b/'],
        [root, '/'],
      ] as const) {
        const { location, status, text } = await asked(`${base}${path}`, { of })
        expect(text).not.toContain('secret')
        expect(status, path).toBeLessThan(500)
        if (location !== undefined)
          expect(new URL(location, 'http://127.0.0.1/').host, location).toBe('127.0.0.1')
      }
    expect(await asked('/a/b/')).toMatchObject({ status: 200 })
    root.close()
  })
  it('answers a line that is no request, and goes on', async () => {
    const { port } = server.address() as AddressInfo
    const answer = await new Promise<string>((done) => {
      const socket = connect(port, '127.0.0.1', () => socket.write('GET /a/b/\0 HTTP/1.1\r\n\r\n'))
      let text = ''
      socket.on('data', (piece) => (text += piece.toString()))
      socket.on('close', () => done(text))
    })
    expect(answer).toMatch(/^HTTP\/1\.1 400/)
    expect(await asked('/a/b/')).toMatchObject({ status: 200 })
  })
})
