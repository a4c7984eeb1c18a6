/** Each way in which editors and version control save, one after the other on the same file. */
import { execFileSync } from 'node:child_process'
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  type FSWatcher,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { watchTree } from '../../src/commands/watch-tree.ts'

let folder = ''
let file = ''
let stop: () => void = () => undefined
let changes = 0

beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'watched-')), 'content')
  mkdirSync(join(folder, 'lots/tuff'), { recursive: true })
  file = join(folder, 'lots/tuff/T-1.yaml')
  writeFileSync(file, 'one')
  changes = 0
})

afterEach(() => stop())

/** Waits until a change was told whose reader finds what was written. */
async function toldOf(write: () => void, isThere: () => boolean): Promise<void> {
  const before = changes
  write()
  const ends = Date.now() + 10_000
  while ((changes === before || !isThere()) && Date.now() < ends)
    await new Promise((done) => setTimeout(done, 5))
  expect([before < changes, isThere()]).toEqual([true, true])
  // What comes late of this change is not taken for the next one.
  await new Promise((done) => setTimeout(done, 150))
}

const holds = (text: string) => () => readFileSync(file, 'utf8') === text
const byRenaming = (text: string) => {
  writeFileSync(`${file}~`, text)
  renameSync(`${file}~`, file)
}
const anew = (text: string) => {
  rmSync(file)
  writeFileSync(file, text)
}
const inPlace = (text: string) => writeFileSync(file, text)

function watching(options = {}): void {
  stop = watchTree(folder, () => (changes += 1), options)
}

async function everyWay(): Promise<void> {
  for (const [place, save] of [
    inPlace,
    byRenaming,
    byRenaming,
    inPlace,
    anew,
    anew,
    byRenaming,
    inPlace,
  ].entries()) {
    const text = `save ${place}`
    await toldOf(() => save(text), holds(text))
  }
}

describe('watchTree', () => {
  it('tells of every save of one file, in whatever ways it was saved before', async () => {
    watching()
    await everyWay()
  })
  it('tells of a file that is moved in, in a folder that is new, too', async () => {
    watching()
    const outside = join(folder, '../outside')
    mkdirSync(join(outside, 'ash'), { recursive: true })
    writeFileSync(join(outside, 'ash/A-1.yaml'), 'one')
    await toldOf(
      () => renameSync(join(outside, 'ash'), join(folder, 'lots/ash')),
      () => true,
    )
    file = join(folder, 'lots/ash/A-1.yaml')
    await everyWay()
    await toldOf(
      () => rmSync(join(folder, 'lots/ash'), { recursive: true }),
      () => true,
    )
    cpSync(join(folder, 'lots/tuff'), join(folder, 'lots/ash'), { recursive: true })
    await toldOf(
      () => appendFileSync(join(folder, 'lots/ash/T-1.yaml'), ' two'),
      () => true,
    )
  })
  it('tells of what version control writes at once, and of what is saved after it', async () => {
    const git = (...args: string[]) =>
      execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@example.org', ...args], {
        cwd: folder,
        stdio: 'ignore',
      })
    git('init', '-q', '-b', 'first')
    git('add', '.')
    git('commit', '-qm', 'one')
    git('checkout', '-qb', 'next')
    mkdirSync(join(folder, 'lots/ash'))
    for (let index = 0; index < 200; index++) writeFileSync(join(folder, `lots/ash/A-${index}.yaml`), 'two')
    writeFileSync(file, 'two')
    git('add', '.')
    git('commit', '-qm', 'two')
    git('checkout', '-q', 'first')
    watching()
    await toldOf(() => git('checkout', '-q', 'next'), holds('two'))
    file = join(folder, 'lots/ash/A-7.yaml')
    await everyWay()
    file = join(folder, 'lots/tuff/T-1.yaml')
    git('checkout', '-qf', 'next')
    await toldOf(() => git('checkout', '-q', 'first'), holds('one'))
    await toldOf(() => git('checkout', '-q', 'next'), holds('two'))
    file = join(folder, 'lots/ash/A-7.yaml')
    await everyWay()
  })
  it('looks at the folder now and then where the system cannot watch it', async () => {
    watching({
      watchFolder: (): FSWatcher => {
        throw Object.assign(new Error('no watches left'), { code: 'ENOSPC' })
      },
    })
    await everyWay()
  })
})
