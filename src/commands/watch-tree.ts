/**
 * Tells when anything in a folder changes, however it is saved: in place, by renaming another file over it, by deleting
 * and creating it, by moving files or whole folders in. Folders are watched and not files: a watch on a file follows
 * the file that was renamed away.
 */
import { type FSWatcher, readdirSync, statSync, watch } from 'node:fs'
import { join } from 'node:path'

/** Saving touches a file more than once, and `git pull` many files: what comes within this time is one change. */
const SETTLE_MS = 40
/** Where a folder cannot be watched, it is looked at as often. */
const POLL_MS = 700

/** Folders of version control, of a build, and of the installed tool. */
const HOLDS_NO_RECORD = /^(?:\.|node_modules$)/

interface Watched {
  /** A folder of the same name may be another folder by now. */
  readonly inode: number
  readonly watcher: FSWatcher
}

export interface WatchOptions {
  /** Watches one folder, by default the system's; throws where it cannot. */
  readonly watchFolder?: (folder: string, changed: () => void) => FSWatcher
}

/**
 * Watches a folder and all folders below it.
 * @param changed called after a change has settled; whatever is written before the call is there to be read
 * @returns ends the watch
 */
export function watchTree(
  folder: string,
  changed: () => void,
  { watchFolder = (path, tell) => watch(path, tell) }: WatchOptions = {},
): () => void {
  const watched = new Map<string, Watched>()
  let settling: NodeJS.Timeout | undefined
  let polling: NodeJS.Timeout | undefined
  const heard = () => {
    clearTimeout(settling)
    settling = setTimeout(settled, SETTLE_MS)
  }
  const settled = () => {
    // New folders are watched before anything is read, so that no later change in them is missed.
    if (rescan()) heard()
    else changed()
  }
  const poll = () => {
    if (polling !== undefined) return
    let seen = stateOf(folder)
    polling = setInterval(() => {
      const now = stateOf(folder)
      if (now === seen) return
      seen = now
      heard()
    }, POLL_MS)
  }
  const leave = (path: string) => {
    watched.get(path)?.watcher.close()
    watched.delete(path)
  }
  /** @returns whether a folder came or went */
  const rescan = (): boolean => {
    const now = foldersBelow(folder)
    const gone = [...watched].filter(([path, { inode }]) => now.get(path) !== inode)
    for (const [path] of gone) leave(path)
    const come = [...now].filter(([path]) => !watched.has(path))
    // A folder that is gone is watched by nobody; it may be on its way back.
    let unwatched = now.size === 0
    for (const [path, inode] of come) {
      try {
        const watcher = watchFolder(path, heard)
        watcher.on('error', heard)
        watched.set(path, { inode, watcher })
      } catch {
        unwatched = true
      }
    }
    if (unwatched) poll()
    else {
      clearInterval(polling)
      polling = undefined
    }
    return gone.length > 0 || (come.length > 0 && !unwatched)
  }
  rescan()
  return () => {
    clearTimeout(settling)
    clearInterval(polling)
    for (const path of [...watched.keys()]) leave(path)
  }
}

/** The folder and every folder below it, by path, with its inode; links are not followed. */
function foldersBelow(folder: string): Map<string, number> {
  const found = new Map<string, number>()
  const visit = (path: string) => {
    try {
      found.set(path, statSync(path).ino)
      for (const entry of readdirSync(path, { withFileTypes: true }))
        if (entry.isDirectory() && !HOLDS_NO_RECORD.test(entry.name)) visit(join(path, entry.name))
    } catch {
      // It went while it was looked at, or may not be read, of which the reader of the records tells.
    }
  }
  visit(folder)
  return found
}

/** Changes whenever a file below a folder comes, goes or is saved. */
function stateOf(folder: string): string {
  return [...foldersBelow(folder).keys()]
    .flatMap((path) => {
      try {
        return readdirSync(path).map((name) => {
          const status = statSync(join(path, name), { throwIfNoEntry: false })
          return `${path}/${name} ${status?.ino} ${status?.size} ${status?.mtimeMs}`
        })
      } catch {
        return [path]
      }
    })
    .join('\n')
}
