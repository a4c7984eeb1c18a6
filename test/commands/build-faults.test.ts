import { readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { contentCopy, noTrace, run, spoil } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')

describe('npm run build and npm start', () => {
  it('leave the earlier site as it was when a record is at fault', async () => {
    const folder = contentCopy()
    const out = join(folder, '../site')
    expect(await run('build', '--content', folder, '--out', out)).toMatchObject({ status: 0 })
    const before = readFileSync(join(out, 'index.html'), 'utf8')
    spoil(folder)
    const ended = await run('build', '--content', folder, '--out', out)
    expect(ended.status).toBe(1)
    expect(ended.error).toContain('the output folder is as it was')
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe(before)
  })
  it('refuse an output folder that holds something else', async () => {
    const ended = await run('build', '--content', contentCopy(), '--out', join(ROOT, 'src'))
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(/holds or lies in/)
    noTrace(ended)
  })
  it('say in one line that a port is taken', async () => {
    const server = createServer()
    const port = await new Promise<number>((done) => {
      server.listen(0, '127.0.0.1', () => {
        done((server.address() as { port: number }).port)
      })
    })
    const folder = contentCopy()
    const ended = await run(
      'start',
      '--content',
      folder,
      '--out',
      join(folder, '../site'),
      '--port',
      String(port),
    )
    server.close()
    expect(ended.status).toBe(1)
    expect(ended.error).toContain(`Port ${port} is taken`)
    noTrace(ended)
  })
})
