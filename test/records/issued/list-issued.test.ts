/** A folder that cannot be read: told; one below issued/ is no cover for what lies beside it, one of records is told alone. */
import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { expect, it, vi } from 'vitest'
import { listIssued } from '../../../src/records/files.ts'
import { hasSite, loadRecords } from '../../../src/records/load.ts'

// The superuser, who runs tests in containers, may read every folder: permissions alone would show nothing.
vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>()
  const refused = (path: unknown) => {
    if (/(?:issued[\\/]tuff[\\/]shut|shut-lots-\w+[\\/]content[\\/]lots)[\\/]?$/.test(String(path)))
      throw Object.assign(new Error('permission denied'), { code: 'EACCES' })
  }
  return {
    ...fs,
    readdirSync: (...args: Parameters<typeof fs.readdirSync>) => {
      // Reading all folders below comes to the one that is shut, too.
      if ((args[1] as { recursive?: boolean } | undefined)?.recursive)
        refused(join(String(args[0]), 'tuff/shut'))
      refused(args[0])
      return fs.readdirSync(...args)
    },
  }
})

function withShutFolder(name = 'shut-'): string {
  const folder = join(mkdtempSync(join(tmpdir(), name)), 'content')
  cpSync(resolve(import.meta.dirname, '../../diagnostics/base'), folder, { recursive: true })
  mkdirSync(join(folder, 'issued/tuff/shut'), { recursive: true })
  writeFileSync(join(folder, 'issued/tuff/notes.txt'), 'x')
  return folder
}

it('lists a folder that cannot be read beside all others', () => {
  expect(listIssued(withShutFolder())).toEqual(['tuff/notes.txt', 'tuff/shut/'])
})

it('tells the folder as an error, and the strays beside it', () => {
  const { diagnostics } = loadRecords(withShutFolder())
  expect(diagnostics.map(({ file, code, severity }) => `${file} ${code} ${severity}`)).toEqual([
    'issued/tuff/notes.txt issued-stray error',
    'issued/tuff/shut/ file-unreadable error',
  ])
})

it('tells a folder of records alone, and none of the faults that would come of it', () => {
  const { records, diagnostics } = loadRecords(withShutFolder('shut-lots-'))
  expect(diagnostics.map(({ file, code, severity }) => `${file} ${code} ${severity}`)).toEqual([
    'lots file-unreadable error',
  ])
  expect(hasSite(records)).toBe(false)
})
