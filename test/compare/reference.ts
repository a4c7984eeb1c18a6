/** The results of a commit: from an earlier run, or made now in a work tree of its own. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, realpathSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { capture, captured } from './capture.ts'
import { atEnd, runProgram } from './processes.ts'
import { lanes, RUNS_VERSION } from './runs.ts'
import { WrongUse } from './wrong-use.ts'

/** Kept between runs: a folder for each commit, and lists of differences. */
export const KEPT = join(realpathSync(tmpdir()), 'puteoli-compare')

/** @throws WrongUse */
export function commitHash(project: string, commit: string): string {
  try {
    return git(project, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${commit}^{commit}`).trim()
  } catch {
    throw new WrongUse(`There is no commit "${commit}" in this repository.`)
  }
}

/**
 * @param hash full hash of the commit
 * @param use 'fresh' makes the results anew
 * @returns folder with the results
 */
export async function referenceResults(
  project: string,
  hash: string,
  use: 'kept' | 'fresh',
): Promise<string> {
  const kept = join(KEPT, `${hash}-v${RUNS_VERSION}`)
  if (use === 'fresh') rmSync(kept, { recursive: true, force: true })
  if (existsSync(kept)) return kept
  mkdirSync(KEPT, { recursive: true })
  const folder = mkdtempSync(join(KEPT, 'work-'))
  atEnd(() => rmSync(folder, { recursive: true, force: true }))
  const tree = join(folder, 'tree')
  atEnd(() => removeTree(project, tree))
  await installedTree(project, hash, tree)
  await capture(tree, join(folder, 'results'))
  checkAllWell(join(folder, 'results'))
  if (!existsSync(kept)) renameSync(join(folder, 'results'), kept)
  return kept
}

async function installedTree(project: string, hash: string, tree: string): Promise<void> {
  git(project, 'worktree', 'add', '--detach', '--quiet', tree, hash)
  const options = ['ci', '--omit=dev', '--no-audit', '--no-fund', '--prefer-offline', '--silent']
  const status = await runProgram('npm', options, tree, ['ignore', 'ignore', 'inherit'])
  if (status !== 0) throw new Error(`npm ci of the reference ended with status ${status}.`)
}

function removeTree(project: string, tree: string): void {
  if (!existsSync(tree)) return
  // Files first, with patience: a program stopped a moment ago may still be writing.
  rmSync(tree, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
  git(project, 'worktree', 'remove', '--force', '--force', tree)
}

/** A reference that fails would agree with a present state that fails in the same way. */
function checkAllWell(folder: string): void {
  for (const run of lanes(folder).flat()) {
    const { status, err } = captured(run, folder)
    if (status !== 0) throw new Error(`"${run.name}" of the reference ended with status ${status}:\n${err}`)
  }
}

/** Hooks set these variables, which would lead git to another repository. */
function git(project: string, ...options: string[]): string {
  const { GIT_DIR: _, GIT_WORK_TREE: __, GIT_INDEX_FILE: ___, ...environment } = process.env
  return execFileSync('git', options, {
    cwd: project,
    encoding: 'utf8',
    env: environment,
    stdio: ['ignore', 'pipe', 'ignore'],
  })
}
