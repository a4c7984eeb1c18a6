/** What the owner keeps in the output folder beside the site (CNAME, .git, robots.txt), and what nobody knows of. */
import { cpSync, lstatSync, readdirSync, readlinkSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { countWords } from '../words/numbers.ts'
import { syncPaths, syncTree } from './durable.ts'
import { asItWas, type FolderTree, treeOf } from './folder-tree.ts'
import { foreignFiles, readManifest } from './manifest-file.ts'
import { MARKER, stands } from './output-marker.ts'
import { CommandFailure, EXIT } from './program.ts'

/** Refuses what has come since, held against the folder that is to take its place. @throws CommandFailure */
export type RefuseLater = (next: string) => void

/**
 * Refuses a folder that holds what no build wrote and nobody keeps; one whose build told nothing of its files passes for now.
 * @param tree all that lies in it; undefined where there is no such folder
 * @param keep names in the folder that are the owner's
 * @throws CommandFailure with the name of a file
 */
export function refuseForeignFiles(
  final: string,
  tree: FolderTree | undefined,
  keep: readonly string[],
): RefuseLater {
  const manifest = tree === undefined ? null : readManifest(final)
  if (tree !== undefined && manifest !== null) refuse(final, foreignFiles(tree, manifest, keep))
  const isAsItWas = tree === undefined || manifest === null ? () => false : asItWas(final, tree)
  return (next) => {
    if (!stands(final) || isAsItWas()) return
    const [now, told] = [treeOf(final), readManifest(final)]
    refuse(final, told === null ? unknownEntries(now, keep, next) : foreignFiles(now, told, keep))
  }
}

function refuse(final: string, [first, ...others]: readonly string[]): void {
  if (first === undefined) return
  throw new CommandFailure(
    `The output folder ${final} holds ${first}${others.length === 0 ? '' : ` and ${countWords(others.length, 'other file')}`} that no build of this program wrote.`,
    EXIT.wrongUse,
    `to keep it, list ${first.split('/')[0]} under keep: in site.yaml; otherwise take it out yourself`,
  )
}

/** Of a site without a manifest only what has no counterpart in the next one is known to be foreign. */
function unknownEntries(tree: FolderTree, keep: readonly string[], next: string): string[] {
  const known = new Set([...readdirSync(next), ...keep, MARKER])
  const { files = [], folders = [] } = tree.get('') ?? {}
  return [...files, ...folders].filter((name) => !known.has(name))
}

/**
 * Copies what the owner keeps into the folder that is to take the place of another, and onto the disk.
 * @throws CommandFailure where the build writes a file of that name itself
 */
export async function carryOver(final: string, next: string, keep: readonly string[]): Promise<void> {
  if (!stands(final)) return
  for (const name of keep) {
    if (!stands(join(final, name))) continue
    if (stands(join(next, name)))
      throw new CommandFailure(
        `${name} is listed under keep: in site.yaml, and the build writes it itself.`,
        EXIT.wrongUse,
        `take ${name} out of keep:`,
      )
    copy(join(final, name), join(next, name))
    await syncCopy(next, name)
  }
}

function copy(from: string, to: string): void {
  if (lstatSync(from).isSymbolicLink()) symlinkSync(readlinkSync(from), to)
  else cpSync(from, to, { recursive: true, preserveTimestamps: true, verbatimSymlinks: true })
}

function syncCopy(next: string, name: string): Promise<void> {
  const place = join(next, name)
  return lstatSync(place).isDirectory() ? syncTree(place) : syncPaths(next, { files: [name], folders: [] })
}
