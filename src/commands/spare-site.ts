/**
 * The site before the last one, kept beside the output. The next build brings it up to date in place of making 40,000
 * folders and links anew: most of its files are those of the site, under a second name. Nothing in it is trusted: what is not
 * the very file of the site is taken out (folder-writer.ts). It may be deleted at any time.
 */
import { linkSync, mkdirSync, renameSync, rmdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { type FolderPaths, type FolderTree, pathsOf, treeOf } from './folder-tree.ts'
import { isOurs, MARKER, type Marker, markerOf, stands, unremovable, writeMarker } from './output-marker.ts'
import { WORK } from './page-stage.ts'

function spareOf(final: string): string {
  return join(dirname(final), WORK, `spare-of-${basename(final)}`)
}

/**
 * Keeps a folder of ours as the spare of a site, where there is none yet and the disk is of use for it.
 * @returns whether the folder is away
 */
export function setAside(folder: string, final: string): boolean {
  const spare = spareOf(final)
  try {
    if (stands(spare) || markerOf(folder) === null || !canShareFiles(folder)) return false
    mkdirSync(dirname(spare), { recursive: true })
    renameSync(folder, spare)
    return true
  } catch {
    // It lies on another disk, or is closed to us.
    return false
  }
}

/**
 * Puts the spare of a site in the place of the folder that the next site is built in.
 * @returns all that lies in it beside its marker; undefined where there is no spare that can be used
 */
export function takeSpare(
  next: string,
  final: string,
  marker: Omit<Marker, 'state'>,
): FolderPaths | undefined {
  const spare = spareOf(final)
  try {
    if (!isOurs(spare) || !canShareFiles(spare)) return undefined
    const tree = treeOf(spare)
    if (unremovable(spare, tree) !== undefined || !hasPermissionsOfNew(spare, tree)) return undefined
    rmSync(join(spare, MARKER))
    writeMarker(spare, { ...marker, state: 'being-built' })
    renameSync(spare, next)
    return pathsOf(tree, new Set([MARKER]))
  } catch {
    return undefined
  }
}

/** Whether every folder has the permissions that one has which is made now. */
function hasPermissionsOfNew(spare: string, tree: FolderTree): boolean {
  const made = join(spare, `${MARKER}.folder`)
  mkdirSync(made)
  const permissions = treeOf(made).get('')?.permissions
  rmdirSync(made)
  return [...tree.values()].every((folder) => folder.permissions === permissions)
}

/**
 * Whether a file can have two names there, and two names that differ by case are two files: elsewhere a spare would save
 * nothing, or keep the old spelling of a name.
 */
function canShareFiles(folder: string): boolean {
  const [name, other] = [join(folder, MARKER), join(folder, `${MARKER}.other`)]
  if (stands(join(folder, MARKER.toUpperCase()))) return false
  try {
    rmSync(other, { force: true })
    linkSync(name, other)
    rmSync(other)
    return true
  } catch {
    return false
  }
}
