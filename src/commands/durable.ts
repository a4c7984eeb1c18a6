/** Puts files on the disk itself, so that a renaming never leads to what only the memory held. */
import { closeSync, fchmodSync, fsyncSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { lstat, open } from 'node:fs/promises'
import { join } from 'node:path'
import { pathsOf, treeOf } from './folder-tree.ts'

/** Files synced at once: the disk commits several together, in a third of the time. */
const AT_ONCE = 16

/** What has changed below a folder, by paths from there; "" is the folder itself. */
export interface ChangedPaths {
  readonly files: readonly string[]
  /** Those whose entries have changed. */
  readonly folders: readonly string[]
}

/** Every file below a folder, then every folder. */
export function syncTree(folder: string): Promise<void> {
  const tree = treeOf(folder)
  return syncPaths(folder, pathsOf(tree))
}

/** Files, then the folders that list them. */
export async function syncPaths(folder: string, { files, folders }: ChangedPaths): Promise<void> {
  await each(files, (path) => syncPlain(join(folder, path)))
  await each(folders, (path) => syncEntries(join(folder, path)))
}

async function each(paths: readonly string[], sync: (path: string) => Promise<void>): Promise<void> {
  const waiting = paths.values()
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const path of waiting) await sync(path)
    }),
  )
}

/** A folder's list of its entries; some systems do not open folders. */
async function syncEntries(path: string): Promise<void> {
  try {
    await syncFile(path)
  } catch {
    // Nothing to do: the files themselves are whole.
  }
}

/** What systems answer that sync no file which is only read; the bytes are written all the same. */
const CANNOT_SYNC = ['EPERM', 'EINVAL', 'EBADF']

/** Not what a link leads to, which is not ours. */
async function syncPlain(path: string): Promise<void> {
  if ((await lstat(path)).isFile()) await syncFile(path)
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r')
  try {
    await file.sync()
  } catch (error) {
    if (!CANNOT_SYNC.includes((error as NodeJS.ErrnoException).code ?? '')) throw error
  } finally {
    await file.close()
  }
}

/** A renaming is on the disk when its folder is; some systems do not open folders. */
export function syncFolder(path: string): void {
  try {
    const folder = openSync(path, 'r')
    try {
      fsyncSync(folder)
    } finally {
      closeSync(folder)
    }
  } catch {
    // Nothing to do: the files themselves are whole.
  }
}

/**
 * Writes a file, on the disk when it returns.
 * @param mode permissions of the file that it replaces; those of any new file without it
 */
export function writeOnDisk(
  path: string,
  content: string | Uint8Array | Iterable<string>,
  mode?: number,
): void {
  const file = openSync(path, 'w')
  try {
    if (mode !== undefined) fchmodSync(file, mode)
    if (typeof content === 'string' || content instanceof Uint8Array) writeFileSync(file, content)
    else for (const piece of content) writeFileSync(file, piece)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/** Removes what a failure left. */
export function discard(path: string): void {
  try {
    rmSync(path, { force: true })
  } catch {
    // The failure that is told is the one before.
  }
}
