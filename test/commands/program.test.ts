import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { commandLine, INSTALLED, ROOT, usualContent, usualOut } from '../../src/commands/program.ts'

it('knows that this is a clone, whose folders lie in it', () => {
  expect(INSTALLED).toBe(false)
  expect(usualContent(ROOT)).toBe(join(ROOT, 'content'))
  expect(usualOut('/records/content', 'dist')).toBe(join(ROOT, 'dist'))
})

it('takes the folder that an installed program is started in for its records where it holds site.yaml', () => {
  const folder = mkdtempSync(join(tmpdir(), 'home-'))
  expect(usualContent(folder, true)).toBe(join(folder, 'content'))
  writeFileSync(join(folder, 'site.yaml'), '')
  expect(usualContent(folder, true)).toBe(folder)
  expect(usualContent(folder, false)).toBe(join(folder, 'content'))
})

it('puts the site of an installed program beside its records, never among them', () => {
  expect(usualOut(join(tmpdir(), 'records'), 'dist', true)).toBe(join(tmpdir(), 'dist'))
})

it.each([
  ['start', '', false, 'npm start'],
  ['start', '--port 80', false, 'npm start -- --port 80'],
  ['issue', '--resume', false, 'npm run issue -- --resume'],
  ['check', '', false, 'npm run check'],
  ['check', '', true, 'npx puteoli check'],
  ['issue', '--resume', true, 'npx puteoli issue --resume'],
] as const)(
  'writes the command %s "%s" as its reader types it, installed: %s',
  (name, rest, installed, line) => {
    expect(commandLine(name, rest, installed)).toBe(line)
  },
)
