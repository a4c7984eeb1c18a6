/**
 * The output folder: written beside itself, checked, then swapped in by renaming, so that a failed or
 * interrupted build leaves the earlier site as it was.
 */
import { mkdirSync, realpathSync, renameSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve, sep } from 'node:path'
import type { Edition } from '../edition/shape/edition.ts'
import { type ChangedPaths, syncFolder, syncPaths } from './durable.ts'
import { takeLock } from './folder-lock.ts'
import { type FolderPaths, type FolderTree, treeOf } from './folder-tree.ts'
import {
  isOurs,
  makeMarked,
  MARKER,
  markerOf,
  removeMarked,
  removeMarkedAtOnce,
  stands,
  unremovable,
  writeMarker,
} from './output-marker.ts'
import { type RefuseLater, refuseForeignFiles } from './kept-files.ts'
import { CommandFailure, EXIT } from './program.ts'
import { setAside, takeSpare } from './spare-site.ts'
import { faultWords } from './system-faults.ts'

export interface OutputFolder {
  /** Where the build writes. */
  readonly next: string
  readonly final: string
  readonly program: string
  readonly audience: Edition['audience']
  /** Refuses what has come into the folder that is replaced since it was looked through. */
  readonly refuseLater: RefuseLater
  /** All that lies in `next` from an earlier site, to be brought up to date; undefined where it is empty. */
  readonly spare: FolderPaths | undefined
  /** Lets the next build at the folder. */
  readonly release: () => void
}

export interface OutputRequest {
  readonly folder: string
  /** Folders that an output must neither hold nor lie in. */
  readonly apart: readonly string[]
  readonly program: string
  readonly audience: Edition['audience']
  /** Names in the folder that are the owner's. */
  readonly keep: readonly string[]
}

/**
 * Locks the folder, finishes or undoes an interrupted swap, refuses a folder that is not ours, and makes
 * `DIR.next`, of the spare site where there is one.
 * @throws CommandFailure
 */
export function prepareOutput({ folder, apart, program, audience, keep }: OutputRequest): OutputFolder {
  const final = realPath(folder)
  refuseOverlap(final, apart)
  makeParent(final)
  const release = takeLock(`${final}.lock`, `Another command is building in ${final}.`)
  try {
    recoverSwap(final)
    refuseForeign(final, audience)
    const refuseLater = refuseForeignFiles(final, treeOfReplaced(final), keep)
    const next = `${final}.next`
    const spare = takeSpare(next, final, { program, audience })
    if (spare === undefined) makeMarked(next, { program, audience })
    return { next, final, program, audience, refuseLater, spare, release }
  } catch (error) {
    release()
    throw error
  }
}

function refuseOverlap(final: string, apart: readonly string[]): void {
  const other = apart.map(realPath).find((path) => within(final, path) || within(path, final))
  if (other === undefined) return
  throw new CommandFailure(
    `The output folder ${final} holds or lies in ${other}.`,
    EXIT.wrongUse,
    'choose another folder with --out',
  )
}

function makeParent(final: string): void {
  try {
    makeFolders(dirname(final))
  } catch (error) {
    throw new CommandFailure(
      `The output folder ${final} cannot be made: ${faultWords(error)}.`,
      EXIT.wrongUse,
      'choose another folder with --out',
    )
  }
}

/** One folder at a time: Node's own recursion never ends where a parent refuses as if it were missing (/proc). */
function makeFolders(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === true) return
  makeFolders(dirname(path))
  mkdirSync(path)
}

function refuseForeign(final: string, audience: Edition['audience']): void {
  if (!stands(final)) return
  const refuse = (message: string, mend: string) => {
    throw new CommandFailure(message, EXIT.wrongUse, mend)
  }
  if (statSync(final, { throwIfNoEntry: false })?.isDirectory() !== true)
    refuse(`The output ${final} is no folder.`, 'choose another one with --out')
  if (!isOurs(final))
    refuse(
      `The output folder ${final} holds files, and not the ${MARKER} that a build of this program leaves in a site.`,
      `choose another folder with --out, empty this one yourself, or restore ${MARKER} if it is a site`,
    )
  const before = markerOf(final)?.audience ?? audience
  if (before !== audience)
    refuse(
      `The output folder ${final} holds the ${before} edition, which the ${audience} one does not replace.`,
      'choose another folder with --out',
    )
}

/** A site that may be moved away and not removed would be in the way of every later build. */
function treeOfReplaced(final: string): FolderTree | undefined {
  if (!stands(final)) return undefined
  try {
    const tree = treeOf(final)
    const refused = unremovable(final, tree)
    if (refused === undefined) return tree
    throw refused
  } catch (error) {
    throw cannotBeReplaced(final, error as NodeJS.ErrnoException)
  }
}

function cannotBeReplaced(final: string, refused: NodeJS.ErrnoException): CommandFailure {
  return new CommandFailure(
    `The output folder ${final} cannot be replaced: ${refused.path} cannot be written to (${faultWords(refused)}).`,
    EXIT.failed,
    'give yourself permission to write there, or choose another folder with --out',
  )
}

/**
 * Puts the finished build in the place of the earlier one, which stays where that fails and becomes the spare.
 * @param changed what is not on the disk yet
 * @returns lines for the reader of the command: the new site is in place, whatever became of the earlier one
 */
export async function swapIn(
  { next, final, program, audience }: OutputFolder,
  changed: ChangedPaths,
): Promise<string[]> {
  writeMarker(next, { program, audience, state: 'whole' })
  await syncPaths(next, { files: [...changed.files, MARKER], folders: [...changed.folders, ''] })
  const old = `${final}.old`
  const replaces = stands(final)
  if (replaces) renameSync(final, old)
  try {
    renameSync(next, final)
  } catch (error) {
    if (replaces) renameSync(old, final)
    throw error
  }
  syncFolder(dirname(final))
  const left = replaces && !setAside(old, final) ? await leftAfterAll(old) : undefined
  return left === undefined
    ? []
    : [`The site is in place. ${left}; remove it yourself: the next build cannot begin while it is there.`]
}

/** Removes a folder of ours. @returns what is left, as a sentence without its stop; undefined where nothing is */
function leftOf(folder: string): string | undefined {
  try {
    removeMarked(folder)
    return undefined
  } catch (error) {
    return leftWords(folder, error)
  }
}

/** The same of a whole site, which is large. */
async function leftAfterAll(folder: string): Promise<string | undefined> {
  try {
    await removeMarkedAtOnce(folder)
    return undefined
  } catch (error) {
    return leftWords(folder, error)
  }
}

function leftWords(folder: string, error: unknown): string {
  return `${folder}, left by an earlier build, cannot be removed: ${faultWords(error)}`
}

export function discard({ next, final, spare, release }: OutputFolder): void {
  try {
    // What was taken is given back: whatever has come of it, the next build goes by what it finds.
    const isAway = spare !== undefined && stands(next) && setAside(next, final)
    if (!isAway && stands(next)) removeMarked(next)
  } finally {
    release()
  }
}

function recoverSwap(final: string): void {
  const [next, old] = [`${final}.next`, `${final}.old`]
  for (const path of [next, old]) {
    if (stands(path) && !isOurs(path))
      throw new CommandFailure(
        `${path} stands in the way and was not written by this program.`,
        EXIT.wrongUse,
        'move it elsewhere, or choose another folder with --out',
      )
  }
  const whole = [next, old].find((path) => markerOf(path)?.state === 'whole')
  if (!stands(final) && whole !== undefined) renameSync(whole, final)
  const left = leftOf(next) ?? leftOf(old)
  if (left !== undefined)
    throw new CommandFailure(`${left}.`, EXIT.failed, 'remove it yourself, then build again')
}

/** Of the folder itself where a link leads to it; its parents need not be there. */
function realPath(folder: string): string {
  const path = resolve(folder)
  const parent = dirname(path)
  if (!stands(path)) return parent === path ? path : join(realPath(parent), basename(path))
  try {
    return realpathSync(path)
  } catch (error) {
    throw new CommandFailure(
      `The link ${path} cannot be followed: ${faultWords(error)}.`,
      EXIT.wrongUse,
      'choose another folder with --out',
    )
  }
}

function within(inner: string, outer: string): boolean {
  return inner === outer || inner.startsWith(outer.endsWith(sep) ? outer : `${outer}${sep}`)
}
